// SPDX-License-Identifier: GPL-3.0-or-later
//
// A box round one curve of a drawing. Where a curve reaches farthest at one of its ends, its box ends there
// too, at the whole nanometre: so a panel that touches a cusp or the level end of an arc is known to fit,
// though the edges that stand for the curve are only good to its error.
#pragma once

#include "shape/curves.h"

namespace insetbook {

struct CurveBox {
  double x_least, x_most, y_least, y_most;  // nm
};

// A cubic's is round its control points. An arc that leaves its end along the box's side, to a millionth of a
// turn, is taken to reach no farther (10^-4 nm on a shape of 1 m); where it does reach farther, the box is a
// nanometre too wide.
CurveBox box_of_curve(Point from, const Curve& curve);

CurveBox round_both(const CurveBox& a, const CurveBox& b);

}  // namespace insetbook
