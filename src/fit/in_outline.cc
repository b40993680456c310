// SPDX-License-Identifier: GPL-3.0-or-later
//
// Widths: coordinates are below 2^33 ticks, differences below 2^34, products of two differences below 2^69,
// squares of those below 2^138, which is what Wide is for.
#include "fit/in_outline.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "shape/wide.h"

namespace insetbook {
namespace {

// An edge with the core's middle as origin, in ticks.
struct Segment {
  Int128 x0, y0, x1, y1;
};

std::int64_t as_ticks(double nm) {
  return static_cast<std::int64_t>(nm) * ticks_in_nm;
}

Segment seen_from(const OutlineEdge& edge, Middle middle) {
  return {as_ticks(edge.x0) - middle.x, as_ticks(edge.y0) - middle.y, as_ticks(edge.x1) - middle.x,
          as_ticks(edge.y1) - middle.y};
}

Int128 magnitude(Int128 value) {
  return value < 0 ? -value : value;
}

// Above this share of each other two figures computed in doubles stand as their exact values do.
constexpr double sure = 1 + 1e-9;

// Whether an edge is at least `distance` from a core; with distance 0, does not run through its inside.
class EdgeCheck {
 public:
  EdgeCheck(const Core& core, std::int64_t distance, EdgesSettled& settled)
      : half_width_(core.half_width),
        half_height_(core.half_height),
        distance_(distance),
        settled_(settled) {}

  bool keeps(const Segment& edge) const {
    const Int128 dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0;
    // How far the line is from the core's middle, less what the core reaches towards it, times the edge's
    // length.
    const Int128 apart =
        magnitude(edge.x0 * dy - edge.y0 * dx) - (magnitude(dx) * half_height_ + magnitude(dy) * half_width_);
    const double dx_near = static_cast<double>(dx), dy_near = static_cast<double>(dy);
    const double length = std::sqrt(dx_near * dx_near + dy_near * dy_near);
    if (static_cast<double>(apart) > static_cast<double>(distance_) * length * sure) {
      ++settled_.by_filter;
      return true;
    }
    ++settled_.exactly;
    if (apart < 0 && !beside(edge)) return false;
    if (distance_ == 0) return true;
    if (point_too_near(edge.x0, edge.y0) || point_too_near(edge.x1, edge.y1)) return false;
    if (half_width_ == 0 && half_height_ == 0) return !corner_too_near(edge, 0, 0);
    for (const Int128 x : {-half_width_, half_width_}) {
      for (const Int128 y : {-half_height_, half_height_}) {
        if (corner_too_near(edge, x, y)) return false;
      }
    }
    return true;
  }

 private:
  // The edge lies to the left, to the right, above or below the core.
  bool beside(const Segment& edge) const {
    return std::max(edge.x0, edge.x1) <= -half_width_ || std::min(edge.x0, edge.x1) >= half_width_ ||
           std::max(edge.y0, edge.y1) <= -half_height_ || std::min(edge.y0, edge.y1) >= half_height_;
  }

  bool point_too_near(Int128 x, Int128 y) const {
    const Int128 dx = std::max<Int128>(magnitude(x) - half_width_, 0);
    const Int128 dy = std::max<Int128>(magnitude(y) - half_height_, 0);
    return dx * dx + dy * dy < distance_ * distance_;
  }

  // A corner of the core beside the edge, not beyond its ends, where its distance is that from the line.
  bool corner_too_near(const Segment& edge, Int128 x, Int128 y) const {
    const Int128 dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0;
    const Int128 square = dx * dx + dy * dy;
    const Int128 along = (x - edge.x0) * dx + (y - edge.y0) * dy;
    if (along <= 0 || along >= square) return false;
    const Int128 area = (x - edge.x0) * dy - (y - edge.y0) * dx;
    const double left = static_cast<double>(area) * static_cast<double>(area);
    const double right = static_cast<double>(square) * static_cast<double>(distance_ * distance_);
    if (left > right * sure) return false;
    if (left * sure < right) return true;
    ++settled_.with_wide;
    return compare(product(area, area), product(square, distance_ * distance_)) < 0;
  }

  Int128 half_width_, half_height_, distance_;
  EdgesSettled& settled_;
};

// Whether an edge that may be `error` from the true one is certainly too near.
bool surely_too_near(const Segment& edge, const Core& core, std::int64_t distance, std::int64_t error,
                     EdgesSettled& settled) {
  const std::int64_t into = std::max<std::int64_t>(0, error - distance);
  const Core smaller{core.half_width - into, core.half_height - into};
  if (into > 0 && (smaller.half_width <= 0 || smaller.half_height <= 0)) return false;
  return !EdgeCheck(smaller, std::max<std::int64_t>(0, distance - error), settled).keeps(edge);
}

}  // namespace

// Beyond the quarter's two upright and level
// bounds its ends are nearest; within them, where the core is a box again, the box's nearest and farthest
// point from the circle's middle say how near it comes.
bool keeps_to_quarter(const QuarterArc& arc, const Core& core, Middle middle, std::int64_t distance) {
  const auto reach = [](std::int64_t from_middle, std::int64_t half, int side) {
    const std::int64_t least = from_middle * side - half, most = from_middle * side + half;
    return std::pair{std::max<Int128>(least, 0), Int128{most}};
  };
  const Int128 radius = arc.radius * ticks_in_nm;
  const std::int64_t x = middle.x - arc.x * ticks_in_nm, y = middle.y - arc.y * ticks_in_nm;
  const auto end_too_near = [&](Int128 end_x, Int128 end_y) {
    const Int128 dx = std::max<Int128>(magnitude(end_x - x) - core.half_width, 0);
    const Int128 dy = std::max<Int128>(magnitude(end_y - y) - core.half_height, 0);
    return dx * dx + dy * dy < static_cast<Int128>(distance) * distance;
  };
  if (distance == 0 || end_too_near(radius * arc.to_right, 0) || end_too_near(0, radius * arc.down))
    return false;
  const auto [x_least, x_most] = reach(x, core.half_width, arc.to_right);
  const auto [y_least, y_most] = reach(y, core.half_height, arc.down);
  if (x_most < 0 || y_most < 0) return true;
  const Int128 within = radius - distance, beyond = radius + distance;
  return (within >= 0 && x_most * x_most + y_most * y_most <= within * within) ||
         x_least * x_least + y_least * y_least >= beyond * beyond;
}

namespace {

// What is known of the whole curve that an edge is a part of.
bool keeps_to_curve(const CurveBox& curve, const Core& core, Middle middle, std::int64_t distance) {
  const auto least = [](double nm) { return static_cast<std::int64_t>(std::floor(nm)) * ticks_in_nm; };
  const auto most = [](double nm) { return static_cast<std::int64_t>(std::ceil(nm)) * ticks_in_nm; };
  if (most(curve.x_most) <= middle.x - core.half_width - distance ||
      least(curve.x_least) >= middle.x + core.half_width + distance ||
      most(curve.y_most) <= middle.y - core.half_height - distance ||
      least(curve.y_least) >= middle.y + core.half_height + distance)
    return true;
  return curve.quarter && keeps_to_quarter(*curve.quarter, core, middle, distance);
}

}  // namespace

Where keeps(const EdgeTree& edges, const Core& core, Middle middle, std::int64_t distance,
            EdgesSettled* settled, bool soon) {
  EdgesSettled unasked;
  EdgesSettled& count = settled != nullptr ? *settled : unasked;
  constexpr double nm = 1.0 / ticks_in_nm;
  const double left = static_cast<double>(middle.x - core.half_width - distance) * nm;
  const double right = static_cast<double>(middle.x + core.half_width + distance) * nm;
  const double top = static_cast<double>(middle.y - core.half_height - distance) * nm;
  const double bottom = static_cast<double>(middle.y + core.half_height + distance) * nm;
  Where where = Where::inside;
  edges.walk(
      [&](const EdgeNode& node) {
        const bool near = node.x_most + node.error > left && node.x_least - node.error < right &&
                          node.y_most + node.error > top && node.y_least - node.error < bottom;
        if (!near) ++count.by_box;
        return near;
      },
      [&](const OutlineEdge& edge) {
        const Segment seen = seen_from(edge, middle);
        const std::int64_t error = as_ticks(edge.error);
        if (EdgeCheck(core, distance + error, count).keeps(seen)) return true;
        if (edge.curve >= 0 &&
            keeps_to_curve(edges.curves()[static_cast<std::size_t>(edge.curve)], core, middle, distance))
          return true;
        const bool sure = error == 0 || soon || surely_too_near(seen, core, distance, error, count);
        where = sure && !soon ? Where::outside : Where::undecided;
        return !sure;
      });
  return where;
}

bool goes_round(const EdgeTree& edges, Middle point) {
  constexpr double nm = 1.0 / ticks_in_nm;
  const double x = static_cast<double>(point.x) * nm, y = static_cast<double>(point.y) * nm;
  bool odd = false;
  edges.walk([&](const EdgeNode& node) { return node.x_least <= x && x < node.x_most && node.y_least < y; },
             [&](const OutlineEdge& edge) {
               const Segment seen = seen_from(edge, point);
               if ((seen.x0 <= 0) == (seen.x1 <= 0)) return true;
               // Where the edge crosses the upright line through the point, y is this over x1 - x0.
               const Int128 crossing = seen.y0 * seen.x1 - seen.y1 * seen.x0;
               if ((crossing < 0) == (seen.x1 > seen.x0)) odd = !odd;
               return true;
             });
  return odd;
}

Middle centre_of(const EdgeTree& edges) {
  const Box& box = edges.box();
  return {(box.least.x + box.most.x) * (ticks_in_nm / 2), (box.least.y + box.most.y) * (ticks_in_nm / 2)};
}

Where lies_at(const EdgeTree& edges, const Form& panel, Middle middle, std::int64_t border,
              EdgesSettled* settled) {
  const Core core{panel.half_width - panel.radius, panel.half_height - panel.radius};
  const Where where = keeps(edges, core, middle, border + panel.radius, settled);
  if (where == Where::outside || goes_round(edges, middle)) return where;
  return where == Where::inside ? Where::outside : Where::undecided;
}

bool surely_lies_at(const EdgeTree& edges, const Form& panel, Middle middle, std::int64_t border) {
  const Core core{panel.half_width - panel.radius, panel.half_height - panel.radius};
  return keeps(edges, core, middle, border + panel.radius, nullptr, true) == Where::inside &&
         goes_round(edges, middle);
}

}  // namespace insetbook
