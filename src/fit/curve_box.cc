// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/curve_box.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "shape/curve_points.h"

namespace insetbook {
namespace {

void take_in(CurveBox& box, double x, double y) {
  box.x_least = std::min(box.x_least, x);
  box.x_most = std::max(box.x_most, x);
  box.y_least = std::min(box.y_least, y);
  box.y_most = std::max(box.y_most, y);
}

void take_in(CurveBox& box, Point point) {
  take_in(box, static_cast<double>(point.x), static_cast<double>(point.y));
}

// Whether the arc comes through that angle, not just at one of its ends.
bool comes_through(const CentredArc& arc, long double angle) {
  constexpr long double whole = 2 * std::numbers::pi_v<long double>, at_an_end = whole * 1e-6L;
  long double along = std::fmod((angle - arc.start) * (arc.sweep < 0 ? -1 : 1), whole);
  if (along < 0) along += whole;
  return along > at_an_end && along < std::fabs(arc.sweep) - at_an_end;
}

void take_in(CurveBox& box, const CentredArc& arc, long double angle) {
  const long double c = std::cos(angle) * arc.radius_x, s = std::sin(angle) * arc.radius_y;
  const auto x = static_cast<double>(arc.x + arc.cosine * c - arc.sine * s);
  const auto y = static_cast<double>(arc.y + arc.sine * c + arc.cosine * s);
  take_in(box, x - 1, y - 1);
  take_in(box, x + 1, y + 1);
}

void take_in(CurveBox& box, Point from, const ArcTo& drawn) {
  if (drawn.radius_x == 0 || drawn.radius_y == 0 || from == drawn.to) return;
  const CentredArc arc = centred(from, drawn);
  constexpr long double half = std::numbers::pi_v<long double>;
  const long double across = std::atan2(-arc.radius_y * arc.sine, arc.radius_x * arc.cosine);
  const long double upright = std::atan2(arc.radius_y * arc.cosine, arc.radius_x * arc.sine);
  for (const long double angle : {across, across + half, upright, upright + half}) {
    if (comes_through(arc, angle)) take_in(box, arc, angle);
  }
}

// The circle of a short arc over a square has its middle at one of the square's two other corners; the arc
// turns clockwise round it, or not.
std::optional<QuarterArc> quarter_of(Point from, const ArcTo& arc) {
  const std::int64_t radius = std::abs(arc.radius_x);
  const Point to = arc.to;
  const bool quarter = radius > 0 && std::abs(arc.radius_y) == radius && !arc.large &&
                       std::abs(to.x - from.x) == radius && std::abs(to.y - from.y) == radius;
  if (!quarter) return std::nullopt;
  for (const Point middle : {Point{from.x, to.y}, Point{to.x, from.y}}) {
    const std::int64_t turning =
        (from.x - middle.x) * (to.y - middle.y) - (from.y - middle.y) * (to.x - middle.x);
    if ((turning > 0) != arc.clockwise) continue;
    return QuarterArc{middle.x, middle.y, radius, from.x + to.x > 2 * middle.x ? 1 : -1,
                      from.y + to.y > 2 * middle.y ? 1 : -1};
  }
  return std::nullopt;
}

}  // namespace

CurveBox box_of_curve(Point from, const Curve& curve) {
  const auto x = static_cast<double>(from.x), y = static_cast<double>(from.y);
  CurveBox box{x, x, y, y};
  take_in(box, end_of(curve));
  if (const auto* cubic = std::get_if<CubicTo>(&curve)) {
    take_in(box, cubic->first);
    take_in(box, cubic->second);
  } else if (const auto* arc = std::get_if<ArcTo>(&curve)) {
    take_in(box, from, *arc);
    box.quarter = quarter_of(from, *arc);
  }
  return box;
}

CurveBox round_both(const CurveBox& a, const CurveBox& b) {
  return {std::min(a.x_least, b.x_least), std::max(a.x_most, b.x_most), std::min(a.y_least, b.y_least),
          std::max(a.y_most, b.y_most)};
}

}  // namespace insetbook
