// SPDX-License-Identifier: GPL-3.0-or-later
//
// What fits anywhere in an outline, against closed forms, published polygons and their inscribed circles, and
// GEOS. Rows marked "table" are rows of geometry_closed_forms.csv of the published data, whose own sources
// are named there, typed in here.
#include <geos_c.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <memory>
#include <nlohmann/json.hpp>
#include <numbers>
#include <random>
#include <sstream>

#include "fit/free_circle.h"
#include "fit/free_rectangle.h"
#include "fit/outlines.h"
#include "outside/outside_data.h"

namespace insetbook {
namespace {

using namespace testing_outlines;
using Json = nlohmann::json;

// 1 of a table's figures is 10 mm here; panels are cut in steps of 1 µm.
constexpr double unit = 10'000'000;
constexpr std::int64_t step = 1000;

using Corners = std::vector<std::pair<double, double>>;

Ring ring_of(const Corners& corners, double nm) {
  Ring points;
  for (const auto& [x, y] : corners) points.points.push_back({std::llround(x * nm), std::llround(y * nm)});
  if (points.points.front() == points.points.back()) points.points.pop_back();
  return points;
}

// Corners on a circle, the first at `from` of a turn; only those as far as `part` of a turn.
Corners on_circle(int corners, double from, double part = 1) {
  Corners result;
  const int last = part < 1 ? corners : corners - 1;
  for (int i = 0; i <= last; ++i) {
    const double angle = 2 * std::numbers::pi * (from + part * i / corners);
    result.push_back({std::cos(angle), std::sin(angle)});
  }
  return result;
}

Chain equal_sides(std::int64_t by) {
  return {std::int64_t{1} << 30, [by](std::int64_t n) { return Sides{n * by, n * by}; }};
}

double area(const FoundPlace& found, double nm) {
  return found.placed ? static_cast<double>(found.placed->sides.width) *
                            static_cast<double>(found.placed->sides.height) / (nm * nm)
                      : 0;
}
double side(const FoundPlace& found, double nm) {
  return found.placed ? static_cast<double>(found.placed->sides.width) / nm : 0;
}

struct ClosedForm {
  const char* what;
  Corners corners;
  double largest_area;  // of a rectangle parallel to the axes; 0: not asked
  double square;        // its side
  double circle;        // its radius
};

const double root2 = std::sqrt(2.0), root3 = std::sqrt(3.0), root5 = std::sqrt(5.0);

// Curves are drawn with 20 000 edges inside them: that takes less than 1 part in 10^7 away.
std::vector<ClosedForm> closed_forms() {
  const Corners semicircle = on_circle(20'000, 0, 0.5);
  Corners quarter = on_circle(20'000, 0, 0.25);
  quarter.push_back({0, 0});
  return {
      // base 10, height 6: half the triangle (table)
      {"any triangle", {{0, 0}, {10, 0}, {3, 6}}, 15, 60.0 / 16, 0},
      // 13-14-15 on its side of 13: a h / (a + h); inscribed circle 4 (table). Its area 84 makes h 168/13.
      {"13-14-15",
       {{0, 0}, {13, 0}, {13 / 2.0 + (14.0 * 14 - 15 * 15) / 26, 168.0 / 13}},
       42,
       6.480712166,
       4},
      // legs 3 and 4: ab / (a + b); inscribed circle 1 (table); half its area (table: any triangle)
      {"right triangle", {{0, 0}, {3, 0}, {0, 4}}, 3, 1.714285714, 1},
      // side 1 (table); inscribed circle √3 / 6 (area by half the perimeter)
      {"equilateral triangle", {{0, 0}, {1, 0}, {0.5, root3 / 2}}, root3 / 8, 2 * root3 - 3, root3 / 6},
      // radius 1: r², 2r / √5 (table); circle r / 2 (it touches the middle of the diameter and of the arc)
      {"semicircle", semicircle, 1, 2 / root5, 0.5},
      // radius 1: r² / 2, r / √2 (table); circle r / (1 + √2) (its middle as far from both radii)
      {"quarter circle", quarter, 0.5, 1 / root2, 1 / (1 + root2)},
      // diagonals 10 and 6, parallel to the axes: pq / 4 and pq / (p + q); inscribed circle (table)
      {"rhombus", {{5, 0}, {0, 3}, {-5, 0}, {0, -3}}, 15, 3.75, 2.572478777},
      // diagonals 9 (6 and 3) and 8 (table)
      {"kite", {{6, 0}, {0, 4}, {-3, 0}, {0, -4}}, 0, 0, 2.948136735},
      // side 1, flat on top: √3 and 3 - √3; inscribed circle √3 / 2 (table)
      {"hexagon", on_circle(6, 0), root3, 3 - root3, root3 / 2},
      // side 2 sin(π/5) of radius 1; inscribed circle cos(π/5) (table: a / (2 tan(π/n)))
      {"pentagon", on_circle(5, 0.25), 0, 0, std::cos(std::numbers::pi / 5)},
      // radius 1, a corner to the right: the square on alternate corners (table, where the side is 1)
      {"octagon", on_circle(8, 0), 2, root2, std::cos(std::numbers::pi / 8)},
      // half axes 4 and 3: 2ab and 2ab / √(a² + b²) (table)
      {"ellipse", {}, 24, 4.8, 3},
  };
}

TEST(FitOutlineOutside, ClosedForms) {
  for (ClosedForm form : closed_forms()) {
    SCOPED_TRACE(form.what);
    if (form.corners.empty()) {
      form.corners = on_circle(20'000, 0);
      for (auto& [x, y] : form.corners) x *= 4, y *= 3;
    }
    const EdgeTree edges(one(ring_of(form.corners, unit)));
    const double tolerance = 1.5e-4;  // one step on sides of 1 to 10
    if (form.largest_area > 0) {
      const double found = area(largest_rectangle(edges, 0, step), unit);
      EXPECT_LE(found, form.largest_area * (1 + 1e-6));
      EXPECT_GT(found, form.largest_area * (1 - 4 * tolerance));
    }
    if (form.square > 0) {
      const double found = side(last_rectangle(edges, 0, equal_sides(step)), unit);
      EXPECT_LE(found, form.square * (1 + 1e-6));
      EXPECT_GT(found, form.square - tolerance);
    }
    if (form.circle > 0) {
      const double found = side(last_circle(edges, 0, equal_sides(step)), unit) / 2;
      EXPECT_LE(found, form.circle * (1 + 1e-6));
      EXPECT_GT(found, form.circle - tolerance);
    }
  }
}

// ---- Published polygons ----

std::optional<Json> read(const std::string& name) {
  const auto file = outside_data(name);
  if (!file) return std::nullopt;
  std::ifstream stream(*file);
  return Json::parse(stream);
}

// "POLYGON ((1 1, 1 7, 9 1, 1 1), (…))"
std::vector<Corners> rings_of_wkt(const std::string& wkt) {
  std::vector<Corners> rings;
  for (std::size_t at = wkt.find('(') + 1; (at = wkt.find('(', at)) != std::string::npos;) {
    const std::size_t end = wkt.find(')', at);
    std::istringstream numbers(wkt.substr(at + 1, end - at - 1));
    Corners corners;
    double x = 0, y = 0;
    while (numbers >> x >> y) {
      corners.push_back({x, y});
      numbers.ignore(1);
    }
    rings.push_back(corners);
    at = end;
  }
  return rings;
}

Outline outline_of(const std::vector<Corners>& rings, double nm) {
  Outline outline;
  for (const Corners& corners : rings) outline.rings.push_back(ring_of(corners, nm));
  return outline;
}

// The rows of JTS' test of its greatest inscribed circle, as polygon_inscribed_cases.json has them.
TEST(FitOutlineOutside, PublishedInscribedCircles) {
  const auto cases = read("polygon_inscribed_cases.json");
  if (!cases) GTEST_SKIP() << "polygon_inscribed_cases.json is not there";
  int seen = 0;
  for (const Json& row : cases->at("max_inscribed_circle_jts")) {
    SCOPED_TRACE(row.at("name").get<std::string>());
    const std::string wkt = row.at("wkt");
    const double nm = wkt.find("00") != std::string::npos ? 100'000 : unit;  // some are some hundred wide
    const FoundPlace found = last_circle(EdgeTree(outline_of(rings_of_wkt(wkt), nm)), 0, equal_sides(10));
    ASSERT_TRUE(found.placed);
    const double tolerance = row.at("tolerance").get<double>() + 10 / nm;
    EXPECT_NEAR(side(found, nm) / 2, row.at("r").get<double>(), tolerance);
    ++seen;
  }
  EXPECT_GE(seen, 11);
}

// Outlines of two lakes with islands; the library's result with its precision holds the true one between
// them.
TEST(FitOutlineOutside, PublishedLakes) {
  const auto cases = read("polygon_inscribed_cases.json");
  if (!cases) GTEST_SKIP() << "polygon_inscribed_cases.json is not there";
  int seen = 0;
  for (const Json& row : cases->at("pole_of_inaccessibility_polylabel")) {
    if (!row.contains("file")) continue;
    const auto lake = read(row.at("file"));
    if (!lake) GTEST_SKIP() << row.at("file") << " is not there";
    const double nm = 50'000;
    const EdgeTree edges(outline_of(lake->get<std::vector<Corners>>(), nm));
    const FoundPlace found = last_circle(edges, 0, equal_sides(10));
    ASSERT_TRUE(found.placed);
    const double radius = side(found, nm) / 2, least = row.at("expected_of_library").at("distance");
    EXPECT_GE(radius, least - 10 / nm);
    EXPECT_LE(radius, least + row.at("precision").get<double>());
    EXPECT_NEAR(radius, row.at("precise").at("distance").get<double>(), 10 / nm + 1e-6);
    ++seen;
  }
  EXPECT_EQ(seen, 3);
}

double fraction(const Json& figure) {
  if (!figure.is_string()) return figure;
  const std::string text = figure;
  return std::stod(text) / std::stod(text.substr(text.find('/') + 1));
}

TEST(FitOutlineOutside, PublishedRectangles) {
  const auto cases = read("polygon_inscribed_cases.json");
  if (!cases) GTEST_SKIP() << "polygon_inscribed_cases.json is not there";
  int seen = 0;
  for (const Json& row : cases->at("largest_axis_aligned_rectangle")) {
    if (!row.contains("polygon")) continue;
    SCOPED_TRACE(row.at("name").get<std::string>());
    const Json& exact = row.at("exact");
    const double wide = fraction(exact.at("x1")) - fraction(exact.at("x0"));
    const double high = fraction(exact.at("y1")) - fraction(exact.at("y0"));
    const double nm = wide > 20 ? 100'000 : unit;
    const EdgeTree edges(outline_of({row.at("polygon").get<Corners>()}, nm));
    const double found = area(largest_rectangle(edges, 0, step), nm);
    EXPECT_LE(found, wide * high * (1 + 1e-9));
    EXPECT_GE(found, wide * high - (wide + high) * step / nm);
    ++seen;
  }
  EXPECT_EQ(seen, 3);
}

// ---- GEOS (3.11, its C interface), a second opinion in floating point ----

class Geos {
 public:
  Geos() : context_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(context_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  struct Destroy {
    GEOSContextHandle_t context;
    void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(context, geometry); }
  };
  using Geometry = std::unique_ptr<GEOSGeometry, Destroy>;

  // In millimetres.
  Geometry polygon(const Ring& ring) const {
    const auto count = static_cast<unsigned>(ring.points.size());
    GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(context_, count + 1, 2);
    for (unsigned i = 0; i <= count; ++i) {
      const Point& point = ring.points[i % count];
      GEOSCoordSeq_setXY_r(context_, sequence, i, static_cast<double>(point.x) / 1e6,
                           static_cast<double>(point.y) / 1e6);
    }
    return owned(
        GEOSGeom_createPolygon_r(context_, GEOSGeom_createLinearRing_r(context_, sequence), nullptr, 0));
  }

  double inscribed_radius(const Geometry& polygon) const {
    const Geometry line = owned(GEOSMaximumInscribedCircle_r(context_, polygon.get(), 1e-5));
    double length = 0;
    EXPECT_EQ(GEOSLength_r(context_, line.get(), &length), 1);
    return length;
  }

  Geometry pulled_in(const Geometry& polygon, double border) const {
    return owned(GEOSBuffer_r(context_, polygon.get(), -border, 256));
  }

  bool covers(const Geometry& outer, const Geometry& inner) const {
    return GEOSCovers_r(context_, outer.get(), inner.get()) == 1;
  }

 private:
  Geometry owned(GEOSGeometry* geometry) const { return Geometry(geometry, Destroy{context_}); }

  GEOSContextHandle_t context_;
};

Outline seeded_star(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> radius(20e6, 50e6);
  const int corners = 5 + static_cast<int>(seed % 40);
  Ring points;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / corners, reach = radius(random);
    points.points.push_back({std::llround(reach * std::cos(angle)), std::llround(reach * std::sin(angle))});
  }
  return one(points);
}

Ring box_round(const Placed& placed, std::int64_t smaller) {
  const std::int64_t x = placed.middle.x / ticks_in_nm, y = placed.middle.y / ticks_in_nm;
  const std::int64_t half_width = placed.sides.width / 2 - smaller,
                     half_height = placed.sides.height / 2 - smaller;
  return box_ring(x - half_width, y - half_height, x + half_width, y + half_height);
}

TEST(FitOutlineOutside, GeosInscribedCircles) {
  const Geos geos;
  for (unsigned seed = 0; seed < 60; ++seed) {
    const Outline outline = seeded_star(seed);
    const FoundPlace found = last_circle(EdgeTree(outline), 0, equal_sides(10));
    ASSERT_TRUE(found.placed);
    EXPECT_NEAR(side(found, 1e6) / 2, geos.inscribed_radius(geos.polygon(outline.rings[0])), 2e-5) << seed;
  }
}

// What is found lies in what GEOS leaves after taking the border away, and no rectangle a step larger that
// GEOS is asked about does, at 32 x 32 places.
TEST(FitOutlineOutside, GeosCoversWhatIsFound) {
  const Geos geos;
  constexpr std::int64_t coarse = 1'587'500, border = 2'000'000;
  for (unsigned seed = 0; seed < 30; ++seed) {
    const Outline outline = seeded_star(seed);
    const EdgeTree edges(outline);
    const FoundPlace found = largest_rectangle(edges, border, coarse);
    if (!found.placed) continue;
    const Geos::Geometry room = geos.pulled_in(geos.polygon(outline.rings[0]), border / 1e6);
    EXPECT_TRUE(geos.covers(room, geos.polygon(box_round(*found.placed, 2000)))) << seed;
    for (const bool wider : {true, false}) {
      Placed larger = *found.placed;
      (wider ? larger.sides.width : larger.sides.height) += coarse;
      for (int i = 0; i < 32 * 32; ++i) {
        const Box& box = edges.box();
        larger.middle = {(box.least.x + box.width() * (i % 32) / 31) * ticks_in_nm,
                         (box.least.y + box.height() * (i / 32) / 31) * ticks_in_nm};
        EXPECT_FALSE(geos.covers(room, geos.polygon(box_round(larger, -2000)))) << seed;
      }
    }
  }
}

}  // namespace
}  // namespace insetbook
