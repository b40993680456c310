// SPDX-License-Identifier: GPL-3.0-or-later
//
// Points on a curve, so close to each other that the straight ways between them stay within a bound of the
// curve, and the curve of them; each point is then rounded to the nearest nanometre, which moves it by at
// most 0.7072 nm more. Both together hold for the straight ways between the rounded points, because a way
// whose ends move by so much moves by no more. The same curve and bound give the same points.
#pragma once

#include <cstddef>
#include <vector>

#include "shape/curves.h"

namespace insetbook {

inline constexpr double rounding_of_points = 0.7072;  // nm, half the diagonal of a nanometre
inline constexpr double least_curve_bound = 0.25;     // nm, far above what the arithmetic here rounds
inline constexpr std::size_t most_points = std::size_t{1} << 22;

inline Point end_of(const Curve& curve) {
  return std::visit([](const auto& any) { return any.to; }, curve);
}

// The points after `from`, the curve's end included, onto `points`. False where there would be more than
// most_points of them or where the curve reaches beyond ±2^30 nm. bound ≥ least_curve_bound, in nm.
bool add_points(Point from, const Curve& curve, double bound, std::vector<Point>& points);

// SVG 2, appendix B.2.4 and B.2.5: an arc by its centre. Angles in radians on the unit circle that the
// ellipse is the image of, clockwise as seen where `sweep` is above zero.
struct CentredArc {
  long double x = 0, y = 0;                // the centre
  long double radius_x = 0, radius_y = 0;  // grown where they had to be
  long double cosine = 1, sine = 0;        // of how it is turned
  long double start = 0, sweep = 0;
};
// Radii above zero, from and to different.
CentredArc centred(Point from, const ArcTo& arc);

}  // namespace insetbook
