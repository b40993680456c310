// SPDX-License-Identifier: GPL-3.0-or-later
//
// The hull of a panel that is drawn, and bounds of the border it keeps in an opening that is a plain shape:
// those are convex, so that the hull says all. In floating point, and given away by more than its rounding:
// bounds only put off a search, or spare one that cannot succeed.
#pragma once

#include <optional>
#include <vector>

#include "fit/edge_tree.h"
#include "fit/form.h"

namespace insetbook {

struct HullCorner {
  double x = 0, y = 0;  // nm, from the middle of the panel's box
};

// The corners of the convex hull of a panel's edges, which may be their error from the panel.
std::vector<HullCorner> hull_of(const EdgeTree& panel);

// All in nm, to about a micrometre on the safe side.
struct HullBounds {
  double in_middle = 0;  // at least so much in the middle; negative: not known to fit there
  double somewhere = 0;  // at least so much in some place
  double most = 0;       // and no more than that anywhere
};
// Empty: an empty hull is no panel.
std::optional<HullBounds> hull_bounds(const Form& form, const std::vector<HullCorner>& hull);

}  // namespace insetbook
