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
};

Result<Converted> convert(std::string_view text, Unit no_unit);

}  // namespace insetbook
