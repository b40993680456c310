// SPDX-License-Identifier: GPL-3.0-or-later
//
// A regular polygon in its box, as certified figures. The box is scaled to -1..1 both ways, x to the right
// and y up, so that a polygon of any box is these figures times half the width and half the height: a polygon
// whose box is not quite that of a regular one is that polygon stretched to its box. A `Near` is a whole
// number of 2^-60ths with the most that it can be wrong by; it is computed in whole numbers only, so that the
// enclosure is proved and not hoped for. Where the figures are rational (3, 4 and 6 sides) they are exact.
#pragma once

#include <cstdint>
#include <vector>

#include "measure/length.h"

namespace insetbook {

inline constexpr int near_bits = 60;
inline constexpr std::int64_t near_one = std::int64_t{1} << near_bits;

struct Near {
  std::int64_t value = 0;  // in 2^-60ths, |value| ≤ 2^62
  std::int64_t error = 0;  // the true value is within value ± error
  constexpr std::int64_t low() const { return value - error; }
  constexpr std::int64_t high() const { return value + error; }
};

// A corner of the right half (x ≥ 0), in the scaled box.
struct PolygonCorner {
  Near x, y;
};

// A side of the right half: a·x + b·y ≤ c in the scaled box, a ≥ 0. Upper sides have b > 0, lower ones b < 0
// and an upright one b = 0. Level and upright sides are exactly y ≤ 1, -y ≤ 1 and x ≤ 1.
struct PolygonSide {
  Near a, b, c;
};

inline constexpr int fewest_polygon_sides = 3;
inline constexpr int most_polygon_sides = 360;

// From the top down. sides between 3 and most_polygon_sides.
std::vector<PolygonCorner> corners_of_polygon(int sides, bool flat_on_top);
std::vector<PolygonSide> sides_of_polygon(int sides, bool flat_on_top);

// Whether all figures above are exact (error 0).
constexpr bool polygon_is_rational(int sides) {
  return sides == 3 || sides == 4 || sides == 6;
}

// The height of the box of a regular polygon of that width, to the nearest nanometre.
Length regular_height(int sides, bool flat_on_top, Length width);

}  // namespace insetbook
