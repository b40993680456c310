// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a question is about, in a recorded thing or an invented size alike: an opening ("second largest
// tidepool rectangle", "a 3 x 4 in frame") and a panel that is to be framed ("2-3/8 in circle", "moonrise
// circles 3", "the teapot stamp").
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "book/openings.h"
#include "shape/shape.h"

namespace insetbook {

// The opening by name. Where no name is meant but a size, an opening of that size: it has no line
// (`line_id` 0), and its figures are taken as they are said.
struct OpeningSaid {
  OpeningRecord opening;
  bool invented = false;
  std::string note;  // "read as ISO A6, 105 x 148 mm", or empty
};
Result<OpeningSaid> opening_or_size_said(const Book& book, std::string_view text);

struct PanelSaid {
  Shape shape;
  Unit unit = Unit::inch;
  bool may_turn = true;     // no orientation was said
  std::string of;           // the record it is the size of: "Moonrise Circles 3, cut", or empty
  std::int64_t die_id = 0;  // that record is a die
  std::string note;
};
// `shape`: asked beside the size, or empty.
Result<PanelSaid> panel_said(const Book& book, std::string_view text,
                             const std::optional<std::string>& shape);

// "Tidepool Rectangles 2 (second largest), stitched", or "an opening of rectangle 3 x 4 in".
std::string opening_name(const OpeningRecord& opening);
// For an opening whose name was misspelt: "Read as Tidepool Rectangles.", else empty.
std::string read_as_note(const OpeningRecord& opening);

}  // namespace insetbook
