// SPDX-License-Identifier: GPL-3.0-or-later
//
// Names of sizes that a card can have. ISO A sizes are those of ISO 216, in millimetres, upright. The
// American names are of envelopes; the card that goes into one, and what "slimline" and "half letter" close
// to, is common practice, no source. Where a name means both, a card is the likelier of the two: "A2" is the
// American card (no card is as large as the ISO sheet), "A6" the ISO one.
#pragma once

#include <optional>
#include <string_view>

#include "measure/length.h"
#include "measure/size.h"

namespace insetbook {

struct PaperName {
  std::string_view name;  // folded
  Length width, height;
  Unit unit;
  std::string_view means;  // what it was read as
  std::string_view other;  // what else it could be, or empty
  std::string_view asks;   // a question for that
};

inline constexpr PaperName paper_names[] = {
    {"a1", Length::inch_fraction(7, 2), Length::inch_fraction(39, 8), Unit::inch,
     "a card for the American A1 envelope, 3-1/2 x 4-7/8 in", "the ISO A1 sheet, 594 x 841 mm",
     "closed:\"594 x 841 mm\""},
    {"a2", Length::inch_fraction(17, 4), Length::inch_fraction(11, 2), Unit::inch,
     "a card for the American A2 envelope, 4-1/4 x 5-1/2 in", "the ISO A2 sheet, 420 x 594 mm",
     "closed:\"420 x 594 mm\""},
    {"a3", Length::mm(297), Length::mm(420), Unit::mm, "ISO A3, 297 x 420 mm", "", ""},
    {"a4", Length::mm(210), Length::mm(297), Unit::mm, "ISO A4, 210 x 297 mm", "", ""},
    {"a5", Length::mm(148), Length::mm(210), Unit::mm, "ISO A5, 148 x 210 mm", "", ""},
    {"a6", Length::mm(105), Length::mm(148), Unit::mm, "ISO A6, 105 x 148 mm",
     "a card for the American A6 envelope, 4-1/2 x 6-1/4 in", "closed:\"4-1/2 x 6-1/4 in\""},
    {"a7", Length::inches(5), Length::inches(7), Unit::inch, "a card for the American A7 envelope, 5 x 7 in",
     "ISO A7, 74 x 105 mm", "closed:\"74 x 105 mm\""},
    {"a8", Length::inch_fraction(21, 4), Length::inch_fraction(63, 8), Unit::inch,
     "a card for the American A8 envelope, 5-1/4 x 7-7/8 in", "ISO A8, 52 x 74 mm", "closed:\"52 x 74 mm\""},
    {"a9", Length::inch_fraction(11, 2), Length::inch_fraction(17, 2), Unit::inch,
     "a card for the American A9 envelope, 5-1/2 x 8-1/2 in", "ISO A9, 37 x 52 mm", "closed:\"37 x 52 mm\""},
    {"4 bar", Length::inch_fraction(7, 2), Length::inch_fraction(39, 8), Unit::inch,
     "a card for the American 4 bar envelope, 3-1/2 x 4-7/8 in", "", ""},
    {"half letter", Length::inch_fraction(17, 4), Length::inch_fraction(11, 2), Unit::inch,
     "a half-letter sheet folded to 4-1/4 x 5-1/2 in", "a half-letter card, 5-1/2 x 8-1/2 in",
     "closed:\"5-1/2 x 8-1/2 in\""},
    {"half letter sheet", Length::inch_fraction(11, 2), Length::inch_fraction(17, 2), Unit::inch,
     "a half-letter sheet, 5-1/2 x 8-1/2 in", "", ""},
    {"slimline", Length::inch_fraction(7, 2), Length::inch_fraction(17, 2), Unit::inch,
     "a slimline card, 3-1/2 x 8-1/2 in", "a card for the DL envelope, 99 x 210 mm",
     "closed:\"99 x 210 mm\""},
    {"c5", Length::mm(148), Length::mm(210), Unit::mm, "a card for the C5 envelope, 148 x 210 mm", "", ""},
    {"c6", Length::mm(105), Length::mm(148), Unit::mm, "a card for the C6 envelope, 105 x 148 mm", "", ""},
    {"dl", Length::mm(99), Length::mm(210), Unit::mm, "a card for the DL envelope, 99 x 210 mm", "", ""},
};

constexpr const PaperName* paper_named(std::string_view folded) {
  for (const PaperName& each : paper_names)
    if (each.name == folded) return &each;
  return nullptr;
}

}  // namespace insetbook
