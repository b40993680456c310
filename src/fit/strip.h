// SPDX-License-Identifier: GPL-3.0-or-later
//
// The clear height in an upright strip: between which heights nothing of an outline's edge, a border wide on
// both sides, comes into the strip. A rectangle with that border that spans the strip lies within one of
// these gaps; so the widest gap in a strip that many rectangles share is the most that any of them is high.
#pragma once

#include <vector>

#include "fit/edge_tree.h"

namespace insetbook {

struct Gap {
  double low = 0, high = 0;  // nm
  double height() const { return high - low; }
};

class Strips {
 public:
  // `edges` must live as long. border ≥ 0, nm.
  Strips(const EdgeTree& edges, double border) : edges_(edges), border_(border) {}

  // The widest gap inside the outline, as near as doubles are; of no height where there is none.
  Gap widest(double left, double right);

  // As high as the widest gap can be at most, whatever is rounded: what is left after taking from each edge
  // more than its rounding.
  double height_at_most(double left, double right);

 private:
  struct Blocked {
    double low, high;
    bool crosses;  // of the edges in it, an odd number crosses the strip's middle
  };

  void look(double left, double right, bool at_most);
  void block(const OutlineEdge& edge, double left, double right, double middle, bool at_most);
  Gap widest_between();

  const EdgeTree& edges_;
  double border_;
  std::vector<Blocked> blocked_;
};

}  // namespace insetbook
