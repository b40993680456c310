// SPDX-License-Identifier: GPL-3.0-or-later
//
// Panels that are outlines themselves, anywhere in an outline, the same way up: the opening's own shape made
// smaller, ovals. What is given passed the exact check at its place; everything larger was excluded at every
// place, or is undecided. That a panel fits says nothing of smaller ones of its shape, nor the other way
// round: the bay of a horseshoe goes round a pillar that a smaller horseshoe runs into. So panels are gone
// through from the largest down. One that misses the border by a distance everywhere takes those with it that
// are smaller by so little that no point of them lies that much better. A panel without an outline (its
// figures do not go into its size) does not fit.
#pragma once

#include "fit/free_rectangle.h"
#include "fit/outline_in_outline.h"

namespace insetbook {

// Panels that grow, as of a chain, with the outline of each; its box from (0, 0).
struct OutlineChain {
  Chain sides;
  std::function<EdgeTree(std::int64_t)> outline;
  bool scaled = false;  // all are one outline, scaled to their sides: smaller ones are excluded together
};

FoundPlace last_outline(const EdgeTree& opening, std::int64_t border, const OutlineChain& chain);

// Where a panel lies deepest (panel_depth): no place is deeper by more than `alike` (nm), or the search was
// ended before that was certain. Starts from a place that is known to be good.
struct DeepPlace {
  Middle middle;
  double depth = 0;  // nm
};
DeepPlace deepest_place(const EdgeTree& opening, const EdgeTree& panel, Middle start, double alike);

}  // namespace insetbook
