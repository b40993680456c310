// SPDX-License-Identifier: GPL-3.0-or-later
//
// The exact check: whether a panel, parallel to the opening and anywhere in it, keeps a border to the
// opening's edge. Every promise of fit.h rests on `lies_in`; nothing else decides. All figures are ticks
// (form.h), no floating point.
//
// All openings here are convex and the same left and right, so a panel that fits somewhere fits in the middle
// from left to right: the panel and its mirror image both fit, and so does the place half way between. Where
// both are also the same upside down, the same argument makes the middle from top to bottom as good as any. A
// polygon with an odd number of sides is not, so there the panel's height in it is left free (polygon.cc).
//
// What is exact: rectangles, rounded rectangles and circles in every opening but a polygon whose figures are
// irrational; ovals in circles, ovals and rectangles; everything but irrational polygons in polygons of 3, 4
// and 6 sides; the same polygon without a border; circles, and the same polygon smaller, in polygons of 4, 8,
// 12 … sides that are flat on top and as wide as high. In other polygons the sides are held between two whole
// figures less than a thousandth of a nanometre apart, and only a panel that close is undecided. Undecided
// below 1 nm: ovals in rounded rectangles, and irrational polygons (and triangles, which are not the same
// upside down) in curved openings, whose corners are held in boxes of a tick.
#pragma once

#include <vector>

#include "fit/form.h"
#include "fit/polygon.h"

namespace insetbook {

// An opening with what is worked out once for all checks in it.
class Ground {
 public:
  explicit Ground(const Form& opening);
  const Form& form() const { return form_; }
  const std::vector<Edge>& edges() const { return edges_; }

 private:
  Form form_;
  std::vector<Edge> edges_;  // of a polygon
};

// border ≥ 0, in ticks.
Where lies_in(const Ground& ground, const Form& panel, std::int64_t border);

// How high above the middle of the opening's box (in ticks) the panel's middle lies when it keeps this
// border: 0 where both are the same upside down, else the middle of the heights at which it fits. To be
// shown, to about a nanometre; it decides nothing.
std::int64_t height_in(const Ground& ground, const Form& panel, std::int64_t border);

}  // namespace insetbook
