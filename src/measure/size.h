// SPDX-License-Identifier: GPL-3.0-or-later
//
// What people write about lengths: a length with the unit it was written in, a size of one or two figures, a
// range. `measure/read.h` reads them, `measure/write.h` writes them back.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "measure/length.h"

namespace insetbook {

// The unit a person wrote, remembered so that it can be shown back: inches as mixed fractions, metric as mm.
enum class Unit { inch, mm };

struct ReadLength {
  Length length;
  Unit unit = Unit::inch;
  bool operator==(const ReadLength&) const = default;
};

// Which way round the two figures of a size are.
enum class Orientation {
  either,  // nothing was said: 2 x 3 is also 3 x 2
  said,    // width and height were labelled, or "tall" / "wide" was said: width is width
};

// A size: a circle has one figure (its diameter: width == height), every other size two.
struct Size {
  Length width;
  Length height;
  Unit unit = Unit::inch;
  bool one_figure = false;  // written with one figure ("2-3/8 in circle", "2 in across")
  Orientation orientation = Orientation::either;
  std::string shape;  // the shape word read with it ("circle", "square"), or empty
  bool operator==(const Size&) const = default;
};

// From the lesser to the greater, both ends included.
struct Range {
  Length low;
  Length high;
  Unit unit = Unit::inch;
  bool operator==(const Range&) const = default;
};

using Measurement = std::variant<ReadLength, Size, Range>;

}  // namespace insetbook
