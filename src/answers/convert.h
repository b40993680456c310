// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reading a length, a size or a range and saying it in both units.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

struct Converted {
  std::string text;              // as typed
  std::string_view kind;         // length, size, range
  std::string shape;             // the shape word read with it, or empty
  std::vector<Length> lengths;   // one for a length or a one-figure size, two for a size or a range
  std::string in_inches, in_mm;  // exact texts
  std::string on_ruler;          // the nearest sixteenths of an inch, where it lies on none; else empty
  std::string means;             // of a named size: "ISO A6, 105 x 148 mm", else empty
};

// A length, a size, a range, or a size by name ("A6").
Result<Converted> convert(std::string_view text, Unit no_unit);
// A text of `in_mm` in centimetres: "60.5 mm" → "6.05 cm".
std::string in_centimetres(const Converted& converted);

}  // namespace insetbook
