// SPDX-License-Identifier: GPL-3.0-or-later
//
// GEOS (3.11, its C interface) as a second opinion on computed fits: seeded random openings, flattened into
// polygons, GEOS' own distances. It works in floating point on flattened curves, so that it is asked with 1
// µm and the flattening bound to spare, and never judges a touch.
#include <geos_c.h>
#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>
#include <random>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

struct Point {
  double x, y;
};

// ---- Outlines, in millimetres ----

constexpr int points_a_turn = 720;

// A chord of a circle of that radius is at most so far from it; a curve of larger axes is no farther than its
// larger half axis says.
double flattening_bound(double radius) {
  return radius * (1 - std::cos(std::numbers::pi / points_a_turn));
}

double mm(Length length) {
  return static_cast<double>(length.nm()) / 1e6;
}

std::vector<Point> curve(double half_width, double half_height, double radius) {
  std::vector<Point> points;
  for (int i = 0; i < points_a_turn; ++i) {
    const double angle = 2 * std::numbers::pi * (i + 0.5) / points_a_turn;
    const double x = std::cos(angle), y = std::sin(angle);
    points.push_back({(half_width - radius) * (x > 0 ? 1 : -1) + radius * x,
                      (half_height - radius) * (y > 0 ? 1 : -1) + radius * y});
  }
  return points;
}

std::vector<Point> ellipse(double half_width, double half_height) {
  std::vector<Point> points;
  for (int i = 0; i < points_a_turn; ++i) {
    const double angle = 2 * std::numbers::pi * i / points_a_turn;
    points.push_back({half_width * std::cos(angle), half_height * std::sin(angle)});
  }
  return points;
}

std::vector<Point> regular(int sides, bool flat_on_top, double half_width, double half_height) {
  std::vector<Point> points;
  double x0 = 0, x1 = 0, y0 = 0, y1 = 0;
  for (int i = 0; i < sides; ++i) {
    const double angle = 2 * std::numbers::pi * i / sides + (flat_on_top ? std::numbers::pi / sides : 0);
    points.push_back({std::sin(angle), std::cos(angle)});
    x0 = std::min(x0, points.back().x);
    x1 = std::max(x1, points.back().x);
    y0 = std::min(y0, points.back().y);
    y1 = std::max(y1, points.back().y);
  }
  for (Point& p : points) {
    p = {half_width * (2 * p.x - x0 - x1) / (x1 - x0), half_height * (2 * p.y - y0 - y1) / (y1 - y0)};
  }
  return points;
}

std::vector<Point> outline(const Shape& shape) {
  const double half_width = mm(shape.width) / 2, half_height = mm(shape.height) / 2;
  switch (shape.kind) {
    case ShapeKind::circle:
      return curve(half_width, half_height, half_width);
    case ShapeKind::oval:
      return ellipse(half_width, half_height);
    case ShapeKind::rounded_rectangle:
      return curve(half_width, half_height, mm(*shape.corner_radius));
    case ShapeKind::polygon:
      return regular(shape.sides, shape.flat_on_top, half_width, half_height);
    default:
      return {{half_width, half_height},
              {-half_width, half_height},
              {-half_width, -half_height},
              {half_width, -half_height}};
  }
}

// ---- GEOS ----

class Geos {
 public:
  Geos() : context_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(context_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  // The distance from the panel, moved up, to the opening's edge; negative when the opening does not cover
  // it.
  double border(const std::vector<Point>& opening, const std::vector<Point>& panel, double up) const {
    const Geometry outer = polygon(opening, 0), inner = polygon(panel, up);
    const Geometry edge(GEOSBoundary_r(context_, outer.get()), Destroy{context_});
    double distance = 0;
    EXPECT_EQ(GEOSDistance_r(context_, edge.get(), inner.get(), &distance), 1);
    return GEOSCovers_r(context_, outer.get(), inner.get()) == 1 ? distance : -1;
  }

 private:
  struct Destroy {
    GEOSContextHandle_t context;
    void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(context, geometry); }
  };
  using Geometry = std::unique_ptr<GEOSGeometry, Destroy>;

  Geometry polygon(const std::vector<Point>& points, double up) const {
    const auto count = static_cast<unsigned>(points.size());
    GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(context_, count + 1, 2);
    for (unsigned i = 0; i <= count; ++i) {
      const Point& point = points[i % count];
      GEOSCoordSeq_setXY_r(context_, sequence, i, point.x, point.y + up);
    }
    GEOSGeometry* ring = GEOSGeom_createLinearRing_r(context_, sequence);
    return Geometry(GEOSGeom_createPolygon_r(context_, ring, nullptr, 0), Destroy{context_});
  }

  GEOSContextHandle_t context_;
};

bool odd(const Shape& shape) {
  return shape.kind == ShapeKind::polygon && shape.sides % 2 == 1;
}

// The greatest border that GEOS finds for a panel: in the middle, or for a polygon that is not the same
// upside down at the best height.
double geos_border(const Geos& geos, const Shape& opening, const Shape& panel) {
  const std::vector<Point> outer = outline(opening), inner = outline(panel);
  if (!odd(opening)) return geos.border(outer, inner, 0);
  const double room = (mm(opening.height) - mm(panel.height)) / 2;
  double low = -room, high = room;
  // -1 stands for every place outside, so the valley is walled by flat ground: look for a place inside first.
  double best = -1, at = 0;
  for (int i = 0; i <= 60; ++i) {
    const double up = low + (high - low) * i / 60;
    const double here = geos.border(outer, inner, up);
    if (here > best) {
      best = here;
      at = up;
    }
  }
  low = at - room / 20;
  high = at + room / 20;
  for (int round = 0; round < 45; ++round) {
    const double first = low + (high - low) / 3, second = high - (high - low) / 3;
    const double a = geos.border(outer, inner, first), b = geos.border(outer, inner, second);
    best = std::max({best, a, b});
    (a < b || (a == b && first < at) ? low : high) = a < b || (a == b && first < at) ? first : second;
  }
  return best;
}

// ---- The openings ----

class Openings {
 public:
  explicit Openings(unsigned seed) : random_(seed) {}

  Length between(std::int64_t low, std::int64_t high) {
    return Length::nm(std::uniform_int_distribution<std::int64_t>(low, high)(random_));
  }

  Shape next(ShapeKind kind) {
    const Length width = between(20'000'000, 150'000'000);
    const bool equal = kind == ShapeKind::circle || kind == ShapeKind::square;
    Shape shape = plain(kind, width, equal ? width : between(20'000'000, 150'000'000));
    if (kind == ShapeKind::rounded_rectangle) {
      shape.corner_radius = between(0, std::min(shape.width, shape.height).nm() / 2);
    }
    if (kind == ShapeKind::polygon) {
      shape.sides = static_cast<int>(between(3, 12).nm());
      shape.flat_on_top = between(0, 1).nm() == 1;
    }
    return shape;
  }

 private:
  std::mt19937 random_;
};

constexpr double to_spare = 0.001;  // 1 µm

class GeosOpinion : public testing::TestWithParam<ShapeKind> {};

// Every panel keeps its border by GEOS' distances, and no panel a step wider or higher does.
TEST_P(GeosOpinion, OfEveryComputedPanel) {
  const Geos geos;
  Openings openings(20260311 + static_cast<unsigned>(GetParam()));
  int checked = 0;
  for (int round = 0; round < 12; ++round) {
    const Shape opening = openings.next(GetParam());
    FitQuestion question;
    question.border = openings.between(0, 6'000'000);
    question.step = round % 2 == 0 ? Length::inch_fraction(1, 16) : Length::mm(1);
    question.shapes = {opening.kind, ShapeKind::rectangle, ShapeKind::square, ShapeKind::circle,
                       ShapeKind::oval};
    const auto panels = panels_inside({opening, Length()}, question);
    ASSERT_TRUE(panels);
    const double bound = to_spare + 2 * flattening_bound(std::max(mm(opening.width), mm(opening.height)));
    for (const Panel& panel : *panels) {
      EXPECT_GE(geos_border(geos, opening, panel.shape), mm(question.border) - bound)
          << describe(opening, Unit::mm) << " " << line(panel);
      ++checked;
      const bool one_figure = panel.shape.kind == ShapeKind::circle || panel.shape.kind == ShapeKind::square;
      if (panel.kind != PanelKind::largest || panel.shape.kind == ShapeKind::polygon) continue;
      for (const bool wider : {true, false}) {
        Shape larger = panel.shape;
        if (wider || one_figure) larger.width += question.step;
        if (!wider || one_figure) larger.height += question.step;
        EXPECT_LE(geos_border(geos, opening, larger), mm(question.border) + bound)
            << describe(opening, Unit::mm) << " " << line(panel);
      }
    }
  }
  EXPECT_GE(checked, 12);
}

// The greatest border of any panel is the one that GEOS measures.
TEST_P(GeosOpinion, OfTheGreatestBorder) {
  const Geos geos;
  Openings openings(19521207 + static_cast<unsigned>(GetParam()));
  int checked = 0;
  for (int round = 0; round < 40; ++round) {
    const Shape opening = openings.next(GetParam());
    if (odd(opening) && round > 6) continue;  // these take GEOS a search each
    for (const ShapeKind kind :
         {ShapeKind::rectangle, ShapeKind::circle, ShapeKind::oval, ShapeKind::rounded_rectangle}) {
      Shape panel = openings.next(kind);
      panel.width = Length::nm(panel.width.nm() / 3);
      panel.height = Length::nm(panel.height.nm() / 3);
      if (panel.corner_radius) panel.corner_radius = Length::nm(panel.corner_radius->nm() / 3);
      const auto framed = framing({opening, Length()}, panel, Length(), Length::mm(1), false);
      ASSERT_TRUE(framed);
      if (!*framed) continue;
      const double bound = to_spare + 2 * flattening_bound(std::max(mm(opening.width), mm(opening.height)));
      EXPECT_NEAR(geos_border(geos, opening, panel), mm((*framed)->greatest_border), bound)
          << describe(opening, Unit::mm) << " " << describe(panel, Unit::mm);
      ++checked;
    }
  }
  EXPECT_GE(checked, 20);
}

std::string test_name(const testing::TestParamInfo<ShapeKind>& info) {
  std::string name(shape_word(info.param));
  std::erase(name, ' ');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Openings, GeosOpinion,
                         testing::Values(ShapeKind::circle, ShapeKind::oval, ShapeKind::square,
                                         ShapeKind::rectangle, ShapeKind::rounded_rectangle,
                                         ShapeKind::polygon),
                         test_name);

}  // namespace
}  // namespace insetbook
