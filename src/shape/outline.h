// SPDX-License-Identifier: GPL-3.0-or-later
//
// Any closed outline, with holes: what the inside of a line is when no single figure says it.
// Coordinates are whole nanometres within ±2^30, x to the right and y down (as in path data), the box's top
// left corner at (0, 0). An outline is kept twice: as its curves (curves.h), which are the truth, and as
// rings of straight edges, which is what decisions are made with. The rings carry how far they may be from
// the truth: no point of the true edge is farther than `error` from the rings' edge, nor the other way round.
// So what keeps a border of b + error to the rings keeps b to the truth, and what keeps not even b - error
// does not: the true outline is held between an inner and an outer one. Rings that are not close enough are
// made again from the curves with a smaller error, down to 1 nm.
#pragma once

#include <cstdint>
#include <vector>

namespace insetbook {

struct Point {
  std::int64_t x = 0, y = 0;  // nm
  bool operator==(const Point&) const = default;
};

// Closed: the last point joins the first. At least three points, no two neighbours alike.
struct Ring {
  std::vector<Point> points;
  bool operator==(const Ring&) const = default;
};

// The region of all points that an odd number of rings go round; its edge belongs to it. Rings do not cross
// themselves or each other; they may touch in points.
struct Outline {
  std::vector<Ring> rings;
  std::int64_t error = 0;  // nm; 0: the rings are the truth
  bool operator==(const Outline&) const = default;
};

// The least upright box round it. No rings: all zero.
struct Box {
  Point least, most;
  std::int64_t width() const { return most.x - least.x; }
  std::int64_t height() const { return most.y - least.y; }
};
Box box_of(const Outline& outline);

// Of a point: the exact answer for the rings as they are, in whole numbers. The region is closed: a point on
// an edge or a corner is on_edge, whichever side it would belong to. Both coordinates within ±2^60.
enum class PointSide { outside, on_edge, inside };
PointSide side_of(const Outline& outline, Point point);

}  // namespace insetbook
