// SPDX-License-Identifier: GPL-3.0-or-later
//
// "Where is it?" The place where a set, a die or a supply is kept, as it is recorded. A die without a place
// of its own lies with its set; asked for a colour, its supplies are answered.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "book/names.h"

namespace insetbook {

struct StoredThing {
  std::string kind;   // set, die, supply
  std::string name;   // "Tidepool Rectangles", "ink, ink pad, sage"
  std::string place;  // as recorded; empty: nothing is recorded
};

struct StoredAnswer {
  std::vector<StoredThing> things;  // those with a place first
  std::size_t more = 0;             // so many answer to the name besides
  std::string read_as;              // where the name was misspelt: what was typed
};

// The sets, dies and supplies that a text names, all or in part; a set takes its dies along. Empty: none.
std::vector<NameHit> things_stored(const Book& book, const std::string& name);
Result<StoredAnswer> where_stored(const Book& book, const std::string& name);

}  // namespace insetbook
