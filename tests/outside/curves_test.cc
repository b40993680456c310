// SPDX-License-Identifier: GPL-3.0-or-later
//
// Curves made straight against published figures: boxes, lengths and points of paths as collected in
// svg_path_cases.json (its source file names each; all were computed again there), and GEOS (3.11) as a
// second opinion on what outlines that cross themselves go round.
#include "shape/curves.h"

#include <geos_c.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <random>

#include "outside/outside_data.h"
#include "shape/curve_points.h"
#include "shape/path_data.h"

namespace insetbook {
namespace {

using Json = nlohmann::json;

constexpr double unit = 1e5;  // nm; the widest of the paths is 9000 units

std::optional<Json> cases() {
  const auto file = outside_data("svg_path_cases.json");
  if (!file) return std::nullopt;
  std::ifstream in(*file);
  return Json::parse(in);
}

// Each contour's points as straight ways, as close as a bound of so many nanometres.
std::vector<std::vector<Point>> ways_of(const std::string& path, double nm_for_unit, double bound) {
  const auto curves = read_path_data(path, nm_for_unit, FillRule::even_odd);
  EXPECT_TRUE(curves) << path << ": " << curves.error().what;
  std::vector<std::vector<Point>> ways;
  if (!curves) return ways;
  for (const Contour& contour : curves->contours) {
    std::vector<Point> points = {contour.start};
    for (const Curve& curve : contour.curves) EXPECT_TRUE(add_points(points.back(), curve, bound, points));
    if (contour.closed) points.push_back(contour.start);
    ways.push_back(std::move(points));
  }
  return ways;
}

double way_between(Point a, Point b) {
  return std::hypot(static_cast<double>(a.x - b.x), static_cast<double>(a.y - b.y));
}

Box box_of(const std::vector<std::vector<Point>>& ways) {
  Outline outline;
  for (const auto& way : ways) outline.rings.push_back(Ring{way});
  return box_of(outline);
}

void expect_box(const std::string& path, const Json& box, double printed) {
  const Box ours = box_of(ways_of(path, unit, 1));
  const double close = 2 / unit + printed;  // an error of 2 nm
  EXPECT_NEAR(static_cast<double>(ours.least.x) / unit, box[0].get<double>(), close) << path;
  EXPECT_NEAR(static_cast<double>(ours.least.y) / unit, box[1].get<double>(), close) << path;
  EXPECT_NEAR(static_cast<double>(ours.most.x) / unit, box[2].get<double>(), close) << path;
  EXPECT_NEAR(static_cast<double>(ours.most.y) / unit, box[3].get<double>(), close) << path;
}

TEST(CurvesOutside, Boxes) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  ASSERT_EQ(all->at("tight_bbox").size(), 6u);
  for (const Json& one : all->at("tight_bbox"))
    expect_box(one.at("d"), one.at("bbox_minx_miny_maxx_maxy"), 2e-6);
  for (const char* kind : {"arc_points", "bezier_points"}) {
    ASSERT_GT(all->at(kind).size(), 3u);
    for (const Json& one : all->at(kind)) expect_box(one.at("d"), one.at("bbox"), 1e-5);
  }
}

// The sums of straight ways run below a curve's length by about its bends times the bound.
TEST(CurvesOutside, Lengths) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  const auto check = [](const std::string& path, double length, double printed) {
    double ours = 0;
    for (const auto& way : ways_of(path, unit, 1)) {
      for (std::size_t i = 1; i < way.size(); ++i) ours += way_between(way[i - 1], way[i]);
    }
    EXPECT_NEAR(ours / unit, length, printed + 1e-3 + 1e-6 * length) << path;
  };
  ASSERT_GT(all->at("length").size(), 30u);
  for (const Json& one : all->at("length"))
    check(one.at("d"),
          one.contains("length_adaptive_simpson") ? one.at("length_adaptive_simpson").get<double>()
                                                  : one.at("length").get<double>(),
          1e-5);
  ASSERT_GT(all->at("length_exact_svg_path").size(), 15u);
  for (const Json& one : all->at("length_exact_svg_path")) check(one.at("d"), one.at("length"), 1e-6);
}

double distance_to(const std::vector<std::vector<Point>>& ways, double x, double y) {
  double nearest = 1e18;
  for (const auto& way : ways) {
    for (std::size_t i = 1; i < way.size(); ++i) {
      const auto ax = static_cast<double>(way[i - 1].x), ay = static_cast<double>(way[i - 1].y);
      const double dx = static_cast<double>(way[i].x) - ax, dy = static_cast<double>(way[i].y) - ay;
      const double square = dx * dx + dy * dy;
      const double t = square == 0 ? 0 : std::clamp(((x - ax) * dx + (y - ay) * dy) / square, 0.0, 1.0);
      nearest = std::min(nearest, std::hypot(x - ax - t * dx, y - ay - t * dy));
    }
  }
  return nearest;
}

TEST(CurvesOutside, PointsOfArcsAndCurves) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  constexpr double fine = 1e6;  // the published points have 12 digits; nm
  for (const char* kind : {"arc_points", "bezier_points"}) {
    for (const Json& one : all->at(kind)) {
      const std::string path = one.at("d");
      for (const double bound : {0.3, 30.0, 3000.0}) {
        const auto ways = ways_of(path, fine, bound);
        ASSERT_FALSE(one.at("points_t_x_y").empty());
        for (const Json& point : one.at("points_t_x_y"))
          EXPECT_LE(distance_to(ways, point[1].get<double>() * fine, point[2].get<double>() * fine),
                    bound + rounding_of_points + 1e-3)
              << path << " " << point;
      }
    }
  }
}

TEST(CurvesOutside, CentresOfArcs) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  for (const Json& one : all->at("arc_points")) {
    const auto curves = read_path_data(one.at("d").get<std::string>(), 1e6, FillRule::even_odd);
    ASSERT_TRUE(curves);
    const CentredArc arc = centred(curves->contours[0].start, std::get<ArcTo>(curves->contours[0].curves[0]));
    EXPECT_NEAR(static_cast<double>(arc.x) / 1e6, one.at("center")[0].get<double>(), 1e-9);
    EXPECT_NEAR(static_cast<double>(arc.y) / 1e6, one.at("center")[1].get<double>(), 1e-9);
    const auto degrees = [](long double angle) { return static_cast<double>(angle) * 180 / M_PI; };
    EXPECT_NEAR(degrees(arc.sweep), one.at("sweep_deg").get<double>(), 1e-9);
    EXPECT_NEAR(std::remainder(degrees(arc.start) - one.at("start_angle_deg").get<double>(), 360.0), 0, 1e-9);
  }
}

// ---- GEOS on outlines that cross themselves ----

class Geos {
 public:
  Geos() : context_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(context_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  // The area of what an odd number of the rings' crossing ways go round: the cells that their noded edges
  // part, each judged by a point inside of it. Or of what they go round at all, all told.
  double area_of(const std::vector<std::vector<Point>>& ways, FillRule rule) const {
    std::vector<GEOSGeometry*> lines;
    for (const auto& way : ways) lines.push_back(line_of(way));
    GEOSGeometry* all = GEOSGeom_createCollection_r(context_, GEOS_MULTILINESTRING, lines.data(),
                                                    static_cast<unsigned>(lines.size()));
    GEOSGeometry* noded = GEOSUnaryUnion_r(context_, all);
    GEOSGeometry* cells = GEOSPolygonize_r(context_, &noded, 1);
    double sum = 0;
    const int count = GEOSGetNumGeometries_r(context_, cells);
    for (int i = 0; i < count; ++i) {
      const GEOSGeometry* cell = GEOSGetGeometryN_r(context_, cells, i);
      GEOSGeometry* point = GEOSPointOnSurface_r(context_, cell);
      double x = 0, y = 0, area = 0;
      GEOSGeomGetX_r(context_, point, &x);
      GEOSGeomGetY_r(context_, point, &y);
      GEOSArea_r(context_, cell, &area);
      const int times = times_round(ways, x, y, rule);
      if (rule == FillRule::even_odd ? times % 2 != 0 : times != 0) sum += area;
      GEOSGeom_destroy_r(context_, point);
    }
    for (GEOSGeometry* geometry : {cells, noded, all}) GEOSGeom_destroy_r(context_, geometry);
    return sum;
  }

 private:
  GEOSGeometry* line_of(const std::vector<Point>& way) const {
    const auto size = static_cast<unsigned>(way.size() + 1);
    GEOSCoordSequence* points = GEOSCoordSeq_create_r(context_, size, 2);
    for (unsigned i = 0; i < size; ++i) {
      const Point point = way[i % way.size()];
      GEOSCoordSeq_setXY_r(context_, points, i, static_cast<double>(point.x), static_cast<double>(point.y));
    }
    return GEOSGeom_createLineString_r(context_, points);
  }

  static int times_round(const std::vector<std::vector<Point>>& ways, double x, double y, FillRule rule) {
    int times = 0;
    for (const auto& way : ways) {
      for (std::size_t i = 0; i < way.size(); ++i) {
        const Point a = way[i], b = way[(i + 1) % way.size()];
        const auto ay = static_cast<double>(a.y), by = static_cast<double>(b.y);
        if ((ay <= y) == (by <= y)) continue;
        const double at = static_cast<double>(a.x) + static_cast<double>(b.x - a.x) * (y - ay) / (by - ay);
        if (at > x) times += rule == FillRule::even_odd || ay < by ? 1 : -1;
      }
    }
    return times;
  }

  GEOSContextHandle_t context_;
};

double area_of(const Outline& outline) {
  // Rings as even-odd: each counts or is a hole by how many others go round it.
  double sum = 0;
  for (const Ring& ring : outline.rings) {
    double area = 0;
    for (std::size_t i = 0; i < ring.points.size(); ++i) {
      const Point a = ring.points[i], b = ring.points[(i + 1) % ring.points.size()];
      area += static_cast<double>(a.x) * static_cast<double>(b.y) -
              static_cast<double>(b.x) * static_cast<double>(a.y);
    }
    // Rings touch in points alone: a place in an edge that no other is likely to have a corner at.
    const Point a = ring.points[0], b = ring.points[1];
    const Point place{617 * a.x + 383 * b.x, 617 * a.y + 383 * b.y};
    int others = 0;
    for (const Ring& other : outline.rings) {
      if (&other == &ring) continue;
      Outline larger{{other}, 0};
      for (Point& point : larger.rings[0].points) point = {1000 * point.x, 1000 * point.y};
      const PointSide side = side_of(larger, place);
      EXPECT_NE(side, PointSide::on_edge);
      others += side == PointSide::inside;
    }
    sum += std::fabs(area) / 2 * (others % 2 == 0 ? 1 : -1);
  }
  return sum;
}

TEST(CurvesOutside, WhatCrossingWaysGoRound) {
  const Geos geos;
  std::mt19937_64 random(20261125);
  int crossed = 0;
  for (int round = 0; round < 300; ++round) {
    // A few points on a fine grid, or many on a coarse one where edges lie on each other.
    const std::int64_t step = round % 3 == 0 ? 10'000'000 : 1;
    const std::int64_t across = round % 3 == 0 ? 7 : 80'000'001;
    std::vector<std::vector<Point>> ways(1 + random() % 3);
    CurvedOutline outline;
    for (auto& way : ways) {
      const std::size_t count = 3 + random() % 12;
      while (way.size() < count) {
        const Point point{static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(across)) * step,
                          static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(across)) * step};
        if (way.empty() || (way.back() != point && way.front() != point)) way.push_back(point);
      }
      Contour contour{.start = way[0], .curves = {}, .closed = true};
      for (std::size_t i = 1; i < way.size(); ++i) contour.curves.push_back(LineTo{way[i]});
      outline.contours.push_back(contour);
    }
    for (const FillRule rule : {FillRule::even_odd, FillRule::non_zero}) {
      outline.rule = rule;
      const double wanted = geos.area_of(ways, rule);
      const auto flat = flatten(outline, 1);
      if (!flat) {
        EXPECT_LT(wanted, 1e9) << flat.error().what;
        continue;
      }
      crossed += !flat->mended.empty();
      // All told at most 4 m of ways, bent by a nanometre.
      EXPECT_NEAR(area_of(flat->outline), wanted, 4e9 * 2) << "round " << round;
    }
  }
  EXPECT_GT(crossed, 500);
}

}  // namespace
}  // namespace insetbook
