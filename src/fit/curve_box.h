// SPDX-License-Identifier: GPL-3.0-or-later
//
// A box round one curve of a drawing. Where a curve reaches farthest at one of its ends, its box ends there
// too, at the whole nanometre: so a panel that touches a cusp or the level end of an arc is known to fit,
// though the edges that stand for the curve are only good to its error.
#pragma once

#include <optional>

#include "shape/curves.h"

namespace insetbook {

// A quarter of a circle with a whole middle and radius, which begins and ends level and upright, as rounded
// corners and the tops of arches do: what is near it is decided exactly.
struct QuarterArc {
  std::int64_t x, y, radius;   // of the circle, nm
  int to_right = 1, down = 1;  // or -1: on which side of the middle it lies
};

struct CurveBox {
  double x_least, x_most, y_least, y_most;  // nm
  std::optional<QuarterArc> quarter = std::nullopt;
};

// A cubic's is round its control points. An arc that leaves its end along the box's side, to a millionth of a
// turn, is taken to reach no farther (10^-4 nm on a shape of 1 m); where it does reach farther, the box is a
// nanometre too wide.
CurveBox box_of_curve(Point from, const Curve& curve);

CurveBox round_both(const CurveBox& a, const CurveBox& b);

}  // namespace insetbook
