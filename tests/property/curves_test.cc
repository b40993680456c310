// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of flattened outlines. What the ways go round is counted again the slow way, edge by edge in whole
// numbers, and rings are held against each other pair by pair.
#include "shape/curves.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "shape/curve_points.h"
#include "shape/region.h"
#include "shape/wide.h"

namespace insetbook {
namespace {

constexpr std::int64_t limit = std::int64_t{1} << 30;

// ---- The slow ways ----

Int128 cross(Point a, Point b, Point c) {
  return static_cast<Int128>(b.x - a.x) * (c.y - a.y) - static_cast<Int128>(b.y - a.y) * (c.x - a.x);
}

struct Straight {
  Point from, to;
};

std::vector<Straight> edges_of(const std::vector<Ring>& rings) {
  std::vector<Straight> edges;
  for (const Ring& ring : rings) {
    for (std::size_t i = 0; i < ring.points.size(); ++i)
      edges.push_back({ring.points[i], ring.points[(i + 1) % ring.points.size()]});
  }
  return edges;
}

int times_round(const std::vector<Straight>& edges, Point point, FillRule rule) {
  int times = 0;
  for (const auto& [a, b] : edges) {
    if ((a.y <= point.y) == (b.y <= point.y)) continue;
    const Int128 turned = a.y < b.y ? cross(a, b, point) : -cross(a, b, point);
    if (turned > 0) times += rule == FillRule::even_odd || a.y < b.y ? 1 : -1;
  }
  return times;
}

double distance(const Straight& edge, Point point) {
  const auto dx = static_cast<double>(edge.to.x - edge.from.x),
             dy = static_cast<double>(edge.to.y - edge.from.y);
  const auto x = static_cast<double>(point.x - edge.from.x), y = static_cast<double>(point.y - edge.from.y);
  const double square = dx * dx + dy * dy;
  const double t = square == 0 ? 0 : std::clamp((x * dx + y * dy) / square, 0.0, 1.0);
  return std::hypot(x - t * dx, y - t * dy);
}

double distance(const std::vector<Straight>& edges, Point point) {
  double nearest = 1e18;
  for (const Straight& edge : edges) nearest = std::min(nearest, distance(edge, point));
  return nearest;
}

bool inside_of(const Straight& edge, Point point) {
  return cross(edge.from, edge.to, point) == 0 && point != edge.from && point != edge.to &&
         std::min(edge.from.x, edge.to.x) <= point.x && point.x <= std::max(edge.from.x, edge.to.x) &&
         std::min(edge.from.y, edge.to.y) <= point.y && point.y <= std::max(edge.from.y, edge.to.y);
}

// Edges may meet in a point that is an end of one of them, and nowhere else.
bool cross_or_overlap(const Straight& a, const Straight& b) {
  const int of_b = sign_of(cross(a.from, a.to, b.from)) * sign_of(cross(a.from, a.to, b.to));
  const int of_a = sign_of(cross(b.from, b.to, a.from)) * sign_of(cross(b.from, b.to, a.to));
  if (of_a < 0 && of_b < 0) return true;
  if (cross(a.from, a.to, b.from) != 0 || cross(a.from, a.to, b.to) != 0) return false;
  const bool same = (a.from == b.from && a.to == b.to) || (a.from == b.to && a.to == b.from);
  return same || inside_of(a, b.from) || inside_of(a, b.to) || inside_of(b, a.from) || inside_of(b, a.to);
}

void assert_well_formed(const Outline& outline) {
  for (const Ring& ring : outline.rings) {
    RC_ASSERT(ring.points.size() >= 3u);
    for (std::size_t i = 0; i < ring.points.size(); ++i)
      RC_ASSERT(ring.points[i] != ring.points[(i + 1) % ring.points.size()]);
  }
  const std::vector<Straight> edges = edges_of(outline.rings);
  for (std::size_t i = 0; i < edges.size(); ++i) {
    for (std::size_t j = i + 1; j < edges.size(); ++j) RC_ASSERT(!cross_or_overlap(edges[i], edges[j]));
  }
}

// ---- Outlines of straight lines, made on purpose ----

std::int64_t number(std::int64_t least, std::int64_t most) {
  return *rc::gen::inRange<std::int64_t>(least, most + 1);
}

// Points on a grid that is coarse, so that edges meet in corners and lie on each other, with repeated points,
// runs on one line and needles.
Ring ring_on_a_grid(std::int64_t cells, std::int64_t step) {
  Ring ring;
  const std::int64_t count = number(3, 14);
  while (static_cast<std::int64_t>(ring.points.size()) < count) {
    const Point point{number(-cells, cells) * step, number(-cells, cells) * step};
    ring.points.push_back(point);
    const std::int64_t more = number(0, 9);
    if (more == 0) ring.points.push_back(point);                                   // twice
    if (more == 1) ring.points.push_back({point.x + step, point.y});               // a step
    if (more == 2) ring.points.push_back({point.x + number(-1, 1), point.y + 1});  // a nanometre
    if (more == 3 && ring.points.size() > 1) {                                     // and back
      const Point back = ring.points[ring.points.size() - 2];
      ring.points.push_back({(point.x + back.x) / 2, (point.y + back.y) / 2});
      ring.points.push_back(point);
    }
  }
  for (Point& point : ring.points) {
    point.x = std::clamp(point.x, -limit, limit);
    point.y = std::clamp(point.y, -limit, limit);
  }
  return ring;
}

struct Made {
  std::vector<Ring> ways;
  CurvedOutline curves;
  std::int64_t reach = 0;
};

Made made() {
  struct Grid {
    std::int64_t cells, step;
  };
  const Grid grid = *rc::gen::element(Grid{5, 1}, Grid{30, 1}, Grid{4, 1000}, Grid{5, 1'000'000},
                                      Grid{50'000'000, 1}, Grid{4, limit / 4}, Grid{limit, 1});
  Made result;
  result.reach = grid.cells * grid.step;
  const std::int64_t count = number(1, 3);
  for (std::int64_t i = 0; i < count; ++i) result.ways.push_back(ring_on_a_grid(grid.cells, grid.step));
  result.curves.rule = *rc::gen::element(FillRule::even_odd, FillRule::non_zero);
  for (const Ring& way : result.ways) {
    Contour contour{.start = way.points[0], .curves = {}, .closed = true};
    for (std::size_t i = 1; i < way.points.size(); ++i) contour.curves.push_back(LineTo{way.points[i]});
    result.curves.contours.push_back(contour);
  }
  return result;
}

// For the report of a failure.
std::string said(const std::vector<Ring>& rings) {
  std::ostringstream text;
  for (const Ring& ring : rings) {
    for (const Point point : ring.points) text << " " << point.x << "," << point.y;
    text << "\n";
  }
  return text.str();
}
std::string said(const Made& outline, Point point) {
  const std::string at = std::to_string(point.x) + "," + std::to_string(point.y);
  return said(outline.ways) + (outline.curves.rule == FillRule::even_odd ? "even-odd" : "non-zero") +
         ", at " + at + "\n";
}
std::string said(const Result<Flattened>& flat) {
  if (!flat) return flat.error().what;
  return "error " + std::to_string(flat->outline.error) + "\n" + said(flat->outline.rings);
}

Point point_near(const Made& outline) {
  const std::int64_t reach = outline.reach + 3;
  if (*rc::gen::element(true, false)) return {number(-reach, reach), number(-reach, reach)};
  const Ring& way =
      outline.ways[static_cast<std::size_t>(number(0, static_cast<std::int64_t>(outline.ways.size()) - 1))];
  const Point corner =
      way.points[static_cast<std::size_t>(number(0, static_cast<std::int64_t>(way.points.size()) - 1))];
  return {corner.x + number(-9, 9), corner.y + number(-9, 9)};
}

bool counts(int times, FillRule rule) {
  return rule == FillRule::even_odd ? times % 2 != 0 : times != 0;
}

RC_GTEST_PROP(FlattenLaws, WhatStraightWaysGoRound, ()) {
  const Made outline = made();
  const auto flat = flatten(outline.curves, 1);
  const std::vector<Straight> ways = edges_of(outline.ways);
  if (flat) assert_well_formed(flat->outline);
  RC_TAG(!flat                      ? "nothing"
         : flat->outline.error == 0 ? "no crossing"
         : flat->mended.empty()     ? "silent"
                                    : "crossing");
  const double error = flat ? static_cast<double>(flat->outline.error) : 20;
  for (int i = 0; i < 200; ++i) {
    const Point point = point_near(outline);
    if (distance(ways, point) <= error + 0.001) continue;
    const bool wanted = counts(times_round(ways, point, outline.curves.rule), outline.curves.rule);
    const PointSide side = flat ? side_of(flat->outline, point) : PointSide::outside;
    if (side != (wanted ? PointSide::inside : PointSide::outside))
      RC_LOG() << said(outline, point) << said(flat);
    RC_ASSERT(side == (wanted ? PointSide::inside : PointSide::outside));
  }
}

// No edge of the region lies off the ways by more than the error.
RC_GTEST_PROP(FlattenLaws, EdgesLieOnTheWays, ()) {
  const Made outline = made();
  const auto flat = flatten(outline.curves, 1);
  if (!flat) return;
  const std::vector<Straight> ways = edges_of(outline.ways);
  for (const Straight& edge : edges_of(flat->outline.rings)) {
    for (const Point point : {edge.from, Point{(edge.from.x + edge.to.x) / 2, (edge.from.y + edge.to.y) / 2}})
      RC_ASSERT(distance(ways, point) <= static_cast<double>(flat->outline.error) + 0.75);
  }
}

RC_GTEST_PROP(FlattenLaws, ARegionIsItsOwnRegion, ()) {
  const Made outline = made();
  const auto flat = flatten(outline.curves, 1);
  if (!flat) return;
  const auto again = region_of(flat->outline.rings, FillRule::even_odd);
  RC_ASSERT(again.has_value());
  RC_ASSERT(again->rounds == 0);
  for (int i = 0; i < 100; ++i) {
    const Point point = point_near(outline);
    RC_ASSERT(side_of(Outline{again->rings, 0}, point) == side_of(flat->outline, point));
  }
}

// Moved, mirrored and turned by a quarter: the same answer there.
RC_GTEST_PROP(FlattenLaws, MovedMirroredTurned, ()) {
  const Made outline = made();
  const Point by{number(-1000, 1000), number(-1000, 1000)};
  const int way = static_cast<int>(number(0, 3));
  if (way == 0 && outline.reach > limit - 1000) return;
  const auto changed = [&](Point point) {
    if (way == 0) return Point{point.x + by.x, point.y + by.y};
    if (way == 1) return Point{-point.x, point.y};
    if (way == 2) return Point{point.x, -point.y};
    return Point{-point.y, point.x};
  };
  CurvedOutline there{.contours = {}, .rule = outline.curves.rule};
  for (const Contour& contour : outline.curves.contours) {
    Contour moved{.start = changed(contour.start), .curves = {}, .closed = true};
    for (const Curve& curve : contour.curves)
      moved.curves.push_back(LineTo{changed(std::get<LineTo>(curve).to)});
    there.contours.push_back(moved);
  }
  const auto flat = flatten(outline.curves, 1), flat_there = flatten(there, 1);
  if (!flat || !flat_there) return;
  const std::vector<Straight> ways = edges_of(outline.ways);
  const std::int64_t error = std::max(flat->outline.error, flat_there->outline.error);
  for (int i = 0; i < 100; ++i) {
    // Crossings that are rounded from another side may differ, within the error.
    const Point point = point_near(outline);
    if (error > 0 && distance(ways, point) <= static_cast<double>(error) + 0.001) continue;
    RC_ASSERT(side_of(flat->outline, point) == side_of(flat_there->outline, changed(point)));
  }
}

// ---- Curves ----

Point any_point(std::int64_t reach) {
  return {number(-reach, reach), number(-reach, reach)};
}

CurvedOutline any_curves(std::int64_t reach) {
  CurvedOutline outline{.contours = {}, .rule = *rc::gen::element(FillRule::even_odd, FillRule::non_zero)};
  const std::int64_t contours = number(1, 2);
  for (std::int64_t c = 0; c < contours; ++c) {
    Contour contour{.start = any_point(reach), .curves = {}, .closed = true};
    const std::int64_t count = number(1, 5);
    for (std::int64_t i = 0; i < count; ++i) {
      const std::int64_t kind = number(0, 3);
      if (kind == 0) contour.curves.push_back(LineTo{any_point(reach)});
      if (kind == 1) contour.curves.push_back(CubicTo{any_point(reach), any_point(reach), any_point(reach)});
      if (kind >= 2)
        contour.curves.push_back(ArcTo{.radius_x = number(0, reach),
                                       .radius_y = number(0, reach),
                                       .turned = static_cast<double>(number(-720, 720)) / 2,
                                       .large = *rc::gen::element(true, false),
                                       .clockwise = *rc::gen::element(true, false),
                                       .to = any_point(reach)});
    }
    outline.contours.push_back(contour);
  }
  return outline;
}

std::vector<Straight> ways_of(const CurvedOutline& outline, double bound) {
  std::vector<Straight> edges;
  for (const Contour& contour : outline.contours) {
    std::vector<Point> points = {contour.start};
    for (const Curve& curve : contour.curves) {
      if (!add_points(points.back(), curve, bound, points)) return {};
    }
    for (std::size_t i = 0; i < points.size(); ++i)
      edges.push_back({points[i], points[(i + 1) % points.size()]});
  }
  return edges;
}

// Fine and coarse differ nowhere farther from the curves than the coarse one says.
RC_GTEST_PROP(FlattenLaws, FineAndCoarseAgree, ()) {
  const std::int64_t reach = *rc::gen::element<std::int64_t>(200, 100'000, 10'000'000);
  const std::int64_t error = *rc::gen::element<std::int64_t>(2, 30, 1000, 100'000);
  const CurvedOutline curves = any_curves(reach);
  const std::vector<Straight> ways = ways_of(curves, std::max(0.3, static_cast<double>(error) / 100));
  const auto flat = flatten(curves, error);
  if (ways.empty()) {
    RC_ASSERT(!flat.has_value());
    return;
  }
  if (flat && flat->outline.rings.size() < 500) {
    std::size_t points = 0;
    for (const Ring& ring : flat->outline.rings) points += ring.points.size();
    if (points < 1500) assert_well_formed(flat->outline);
  }
  const double held = flat ? static_cast<double>(flat->outline.error) : static_cast<double>(2 * error + 20);
  for (int i = 0; i < 60; ++i) {
    const Point point = any_point(2 * reach);
    if (distance(ways, point) <= held + 1 + static_cast<double>(error) / 100) continue;
    const bool wanted = counts(times_round(ways, point, curves.rule), curves.rule);
    const PointSide side = flat ? side_of(flat->outline, point) : PointSide::outside;
    RC_ASSERT(side == (wanted ? PointSide::inside : PointSide::outside));
  }
}

// Each point of the one lies within both errors of the other: where nothing crosses and nothing is thin.
RC_GTEST_PROP(FlattenLaws, HausdorffOfOvals, ()) {
  const std::int64_t rx = number(1'000'000, 100'000'000), ry = number(1'000'000, 100'000'000);
  ArcTo half{.radius_x = rx,
             .radius_y = ry,
             .turned = static_cast<double>(number(0, 3600)) / 10,
             .large = false,
             .clockwise = *rc::gen::element(true, false),
             .to = {}};
  const Point start = any_point(1'000'000);
  const Point end{start.x + number(1, 200'000'000), start.y + number(-200'000'000, 200'000'000)};
  Contour contour{.start = start, .curves = {}, .closed = true};
  half.to = end;
  contour.curves.push_back(half);
  half.to = start;
  contour.curves.push_back(half);
  const CurvedOutline oval{.contours = {contour}, .rule = FillRule::even_odd};
  const auto fine = flatten(oval, 200), coarse = flatten(oval, 50'000);
  RC_PRE(fine.has_value() && coarse.has_value());
  RC_ASSERT(coarse->outline.error == 50'000);
  const std::vector<Straight> of_fine = edges_of(fine->outline.rings),
                              of_coarse = edges_of(coarse->outline.rings);
  for (std::size_t i = 0; i < of_fine.size(); i += 1 + of_fine.size() / 100)
    RC_ASSERT(distance(of_coarse, of_fine[i].from) <= 50'200.5);
  for (std::size_t i = 0; i < of_coarse.size(); i += 1 + of_coarse.size() / 100) {
    const Straight& edge = of_coarse[i];
    RC_ASSERT(distance(of_fine, edge.from) <= 50'200.5);
    RC_ASSERT(distance(of_fine, {(edge.from.x + edge.to.x) / 2, (edge.from.y + edge.to.y) / 2}) <= 50'200.5);
  }
}

}  // namespace
}  // namespace insetbook
