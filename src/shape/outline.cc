// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/outline.h"

#include <algorithm>

#include "shape/edges.h"

namespace insetbook {
namespace {

bool in_box_of(Point a, Point b, Point point) {
  return std::min(a.x, b.x) <= point.x && point.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= point.y &&
         point.y <= std::max(a.y, b.y);
}

// Whether the level line from the point to the right meets the edge. Of an edge its end with the smaller y
// counts and the other does not, so that a corner is met once where the ring goes on and twice or never where
// it turns back; a level edge is never met.
bool met_to_the_right(Point a, Point b, Point point) {
  if ((a.y <= point.y) == (b.y <= point.y)) return false;
  return a.y < b.y ? turn_of(a, b, point) > 0 : turn_of(a, b, point) < 0;
}

}  // namespace

Box box_of(const Outline& outline) {
  Box box;
  bool first = true;
  for (const Ring& ring : outline.rings) {
    for (const Point point : ring.points) {
      if (first) box = {point, point};
      first = false;
      box.least = {std::min(box.least.x, point.x), std::min(box.least.y, point.y)};
      box.most = {std::max(box.most.x, point.x), std::max(box.most.y, point.y)};
    }
  }
  return box;
}

PointSide side_of(const Outline& outline, Point point) {
  bool inside = false;
  for (const Ring& ring : outline.rings) {
    if (ring.points.empty()) continue;
    Point a = ring.points.back();
    for (const Point b : ring.points) {
      if (in_box_of(a, b, point) && turn_of(a, b, point) == 0) return PointSide::on_edge;
      if (met_to_the_right(a, b, point)) inside = !inside;
      a = b;
    }
  }
  return inside ? PointSide::inside : PointSide::outside;
}

}  // namespace insetbook
