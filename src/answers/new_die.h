// SPDX-License-Identifier: GPL-3.0-or-later
//
// The words for a die that the book does not have yet: "Moonrise Circles 4, stitched", "biscuit ovals 1 cut".
// A set that the book has is known by its name; of a new one the last word before the line is the die. The
// line stands after a comma, or is the last word behind the die's number; nothing said means the cut line.
#pragma once

#include <string>
#include <string_view>

#include "book/book.h"

namespace insetbook {

struct NewDie {
  std::string set, die;         // as typed; the die's label, or its order as a number
  std::string line, line_kind;  // "window 2", "window"
};

// A word where a line should be that is none is a Problem that names the nearest.
Result<NewDie> new_die_said(const Book& book, std::string_view text);

}  // namespace insetbook
