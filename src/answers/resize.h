// SPDX-License-Identifier: GPL-3.0-or-later
//
// "The same design on another base." Every piece in its new size, and those that no longer suit the die they
// were cut by, with the nearest die that does.
//
// Rules: a side of a piece that leaves at most 1/2 in (13 mm) in all on either side of what it lies on is a
// layer's, and keeps its border; any other side keeps its length, and where it is then longer than what it
// lies on, that is said. New sides are rounded down to the cutting step, so that a border is never narrower.
// Scores keep their part of the sheet, or follow the fold's entry.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answers/sample_card.h"

namespace insetbook {

struct ResizedPiece {
  std::string name;
  std::optional<Length> was_width, was_height, width, height;
  Unit unit = Unit::inch;      // in which the old size was written
  bool too_large = false;      // for what it lies on now
  std::string die;             // it was cut by; empty: none, or it still suits
  std::string nearest_die;     // that cuts nearest to the new size, with its size; empty: none is near
  std::vector<Length> border;  // left and top on its ground, where it has a place: what shows now
};

struct ResizeAnswer {
  std::string sample, instead_of;
  Unit unit = Unit::inch;  // of the new base
  Base was, base;
  FoldedBase was_folded, folded;
  std::vector<ResizedPiece> pieces;
  CheckedCard checked;  // of the new card
};

Result<ResizeAnswer> resize_sample(const Book& book, std::string_view sample, const std::string& base);

}  // namespace insetbook
