// SPDX-License-Identifier: GPL-3.0-or-later
//
// Figures without a unit get the one that they were read in, so that what is kept means the same in every
// book.
#pragma once

#include <string>
#include <string_view>

#include "measure/size.h"

namespace insetbook {

// Whether the text names a unit of length somewhere.
bool says_unit(std::string_view text);

// A text that is one size: the unit stands at its end.
std::string size_with_unit(std::string_view text, std::string_view unit);

// A text with figures in it ("left 2", "radius 1/4", "2-1/8; 4-1/4 from the top"): the unit follows each
// figure that has none. A whole number is a figure only where `numbers` says so, and never where sides are
// counted.
enum class Numbers { are_lengths, are_counts };
std::string with_units(std::string_view text, Unit unit, Numbers numbers);

}  // namespace insetbook
