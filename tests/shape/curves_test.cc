// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/curves.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace insetbook {
namespace {

Contour polygon(std::vector<Point> points, bool closed = true) {
  Contour contour{.start = points[0], .curves = {}, .closed = closed};
  for (std::size_t i = 1; i < points.size(); ++i) contour.curves.push_back(LineTo{points[i]});
  return contour;
}

// Twice the signed area, exact.
__int128 doubled_area(const Ring& ring) {
  __int128 sum = 0;
  for (std::size_t i = 0; i < ring.points.size(); ++i) {
    const Point a = ring.points[i], b = ring.points[(i + 1) % ring.points.size()];
    sum += static_cast<__int128>(a.x) * b.y - static_cast<__int128>(b.x) * a.y;
  }
  return sum;
}

// Of rings that lie side by side; a hole counts as one.
double area_of_all(const Outline& outline) {
  double sum = 0;
  for (const Ring& ring : outline.rings) sum += std::fabs(static_cast<double>(doubled_area(ring))) / 2;
  return sum;
}

Contour circle(std::int64_t radius, std::int64_t x, std::int64_t y) {
  const ArcTo half{.radius_x = radius, .radius_y = radius, .turned = 0, .large = false, .clockwise = true};
  ArcTo there = half, back = half;
  there.to = {x + radius, y};
  back.to = {x - radius, y};
  return {.start = {x - radius, y}, .curves = {there, back}, .closed = true};
}

TEST(Flatten, LinesAreTheTruth) {
  const auto flat = flatten({{polygon({{0, 0}, {10, 0}, {10, 10}, {0, 10}})}}, 1);
  ASSERT_TRUE(flat) << flat.error().what;
  EXPECT_EQ(flat->outline.error, 0);
  EXPECT_EQ(flat->outline.rings, (std::vector{Ring{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}}}));
  EXPECT_TRUE(flat->mended.empty());
}

TEST(Flatten, CircleStaysWithinItsError) {
  for (const std::int64_t error : {1, 2, 10, 1000, 100'000}) {
    const std::int64_t radius = 80'000'000;
    const auto flat = flatten({{circle(radius, radius, radius)}}, error);
    ASSERT_TRUE(flat) << flat.error().what;
    EXPECT_EQ(flat->outline.error, error);
    ASSERT_EQ(flat->outline.rings.size(), 1u);
    const auto& points = flat->outline.rings[0].points;
    for (std::size_t i = 0; i < points.size(); ++i) {
      const Point a = points[i], b = points[(i + 1) % points.size()];
      const auto distance = [&](long double x, long double y) { return std::hypot(x - radius, y - radius); };
      EXPECT_NEAR(static_cast<double>(distance(a.x, a.y) - radius), 0, 0.7072);
      EXPECT_NEAR(static_cast<double>(distance((a.x + b.x) / 2.0L, (a.y + b.y) / 2.0L) - radius), 0,
                  static_cast<double>(error));
    }
  }
}

TEST(Flatten, PentagramInOneStroke) {
  std::vector<Point> points;
  const double radius = 5e7;
  for (int i = 0; i < 5; ++i) {
    const double angle = 2 * std::numbers::pi * (2 * i) / 5;
    points.push_back({std::llround(radius * std::sin(angle)), std::llround(-radius * std::cos(angle))});
  }
  // Of the regular pentagon in the middle and of the whole star, by the golden ratio.
  const double inner = radius / std::pow(std::numbers::phi, 2);
  const double pentagon = 2.5 * inner * inner * std::sin(2 * std::numbers::pi / 5);
  const double star = 5 * radius * inner * std::sin(std::numbers::pi / 5);
  for (const FillRule rule : {FillRule::even_odd, FillRule::non_zero}) {
    const auto flat = flatten({{polygon(points)}, rule}, 1);
    ASSERT_TRUE(flat) << flat.error().what;
    const double wanted = rule == FillRule::even_odd ? star - pentagon : star;
    EXPECT_NEAR(area_of_all(flat->outline) / wanted, 1, 1e-7);
    EXPECT_EQ(side_of(flat->outline, {0, 0}),
              rule == FillRule::even_odd ? PointSide::outside : PointSide::inside);
    ASSERT_EQ(flat->mended.size(), 1u);
    EXPECT_NE(flat->mended[0].find(" and at 4 more places: "), std::string::npos) << flat->mended[0];
  }
}

// ---- What is mended and said, and what is refused ----

std::int64_t mm(double value) {
  return std::llround(value * 1e6);
}

CurvedOutline millimetres(std::vector<std::vector<Point>> lines, FillRule rule = FillRule::even_odd,
                          bool closed = true) {
  CurvedOutline outline{.contours = {}, .rule = rule};
  for (std::vector<Point>& line : lines) {
    for (Point& point : line) point = {point.x * 500'000, point.y * 500'000};
    outline.contours.push_back(polygon(line, closed));
  }
  return outline;
}

// On the grid of half millimetres: the cells whose middle lies inside.
double area_by_parity(const Outline& outline) {
  int cells = 0;
  for (int x = -5; x < 50; ++x) {
    for (int y = -5; y < 50; ++y) {
      // Of the four triangles that a cell's diagonals part, one each.
      for (const Point part : {Point{1, 2}, Point{2, 1}, Point{3, 2}, Point{2, 3}})
        cells += side_of(outline, {x * 500'000 + part.x * 125'000, y * 500'000 + part.y * 125'000}) ==
                 PointSide::inside;
    }
  }
  return cells / 16.0;
}

struct Case {
  const char* what;
  CurvedOutline outline;
  double area;  // mm²; below zero: refused
  std::size_t rings;
  std::vector<std::string> says;
};

TEST(Flatten, MendsAndSaysSo) {
  // In halves of a millimetre.
  const std::vector<Point> square = {{0, 0}, {20, 0}, {20, 20}, {0, 20}};
  const std::vector<Point> same_way_inside = {{5, 5}, {15, 5}, {15, 15}, {5, 15}};
  const std::vector<Point> other_way_inside = {{5, 5}, {5, 15}, {15, 15}, {15, 5}};
  const std::vector<Point> beside = {{20, 0}, {40, 0}, {40, 20}, {20, 20}};
  const std::vector<Point> over = {{10, 10}, {30, 10}, {30, 30}, {10, 30}};
  const std::vector<Point> at_the_corner = {{20, 20}, {30, 20}, {30, 30}};
  constexpr FillRule odd = FillRule::even_odd, all = FillRule::non_zero;
  const std::string kept_odd = ": what an odd number of lines go round was kept";
  const std::string kept_all = ": what the lines go round, all told, was kept";
  const std::vector<Case> cases = {
      {"a hole", millimetres({square, same_way_inside}, odd), 75, 2, {}},
      {"no hole, all told", millimetres({square, same_way_inside}, all), 100, 1, {}},
      {"a hole by its direction", millimetres({square, other_way_inside}, all), 75, 2, {}},
      {"two that share an edge, odd",
       millimetres({square, beside}, odd),
       200,
       1,
       {"the outline crosses or overlaps itself at 10, 0 mm and at 1 more place" + kept_odd}},
      {"the same, all told",
       millimetres({square, beside}, all),
       200,
       1,
       {"the outline crosses or overlaps itself at 10, 0 mm and at 1 more place" + kept_all}},
      {"two that overlap, odd",
       millimetres({square, over}, odd),
       150,
       2,
       {"the outline crosses or overlaps itself at 10, 5 mm and at 1 more place" + kept_odd}},
      {"two that overlap, all told",
       millimetres({square, over}, all),
       175,
       1,
       {"the outline crosses or overlaps itself at 10, 5 mm and at 1 more place" + kept_all}},
      {"a touch in a corner", millimetres({square, at_the_corner}), 112.5, 2, {}},
      {"drawn twice",
       millimetres({square, square}, all),
       100,
       1,
       {"the outline crosses or overlaps itself at 0, 0 mm and at 3 more places" + kept_all}},
      {"drawn twice, odd",
       millimetres({square, square}, odd),
       -1,
       0,
       {"the outline at 0, 0 mm goes round nothing"}},
      {"a bow",
       millimetres({{{0, 0}, {20, 20}, {20, 0}, {0, 20}}}),
       50,
       2,
       {"the outline crosses or overlaps itself at 5, 5 mm" + kept_odd}},
      {"a way out and back",
       millimetres({{{0, 0}, {20, 0}, {30, 0}, {20, 0}, {20, 20}, {0, 20}}}),
       100,
       1,
       {"the outline crosses or overlaps itself at 10, 0 mm" + kept_odd}},
      {"a line", millimetres({{{0, 0}, {20, 0}}}), -1, 0, {"the outline at 0, 0 mm goes round nothing"}},
      {"a line beside a square",
       millimetres({square, {{30, 0}, {31, 0}}}),
       100,
       1,
       {"the line at 15, 0 mm goes round nothing: it was left out"}},
      {"a flat loop",
       millimetres({{{0, 0}, {20, 0}, {10, 0}}}),
       -1,
       0,
       {"the outline at 0, 0 mm goes round nothing"}},
      {"nothing", {}, -1, 0, {"the outline goes round nothing"}},
      {"open",
       millimetres({square}, odd, false),
       -1,
       0,
       {"the line that starts at 0, 0 mm ends at 0, 10 mm and is not closed"}},
  };
  for (const Case& one : cases) {
    const auto flat = flatten(one.outline, 1);
    ASSERT_EQ(flat.has_value(), one.area >= 0) << one.what;
    if (!flat) {
      EXPECT_EQ(flat.error().what, one.says[0]);
      continue;
    }
    EXPECT_EQ(flat->outline.rings.size(), one.rings) << one.what;
    EXPECT_EQ(area_by_parity(flat->outline), one.area) << one.what;
    EXPECT_EQ(flat->mended, one.says) << one.what;
  }
}

TEST(Flatten, ClosesWhatWasMeantToBeClosed) {
  const auto with_gap = [](std::int64_t size, std::int64_t gap) {
    return CurvedOutline{{polygon({{0, 0}, {size, 0}, {size, size}, {0, size}, {0, gap}}, false)}};
  };
  const auto closed = flatten(with_gap(mm(5), mm(0.1)), 1);
  ASSERT_TRUE(closed);
  EXPECT_EQ(closed->mended,
            (std::vector<std::string>{"the line that starts at 0, 0 mm ended at 0, 0.1 mm: it was closed"}));
  EXPECT_FALSE(flatten(with_gap(mm(5), mm(0.1) + 1), 1));
  EXPECT_TRUE(flatten(with_gap(mm(100), mm(1)), 1));
  EXPECT_FALSE(flatten(with_gap(mm(100), mm(1) + 1), 1));
  const auto back_at_its_start = flatten(with_gap(mm(5), 0), 1);
  ASSERT_TRUE(back_at_its_start);
  EXPECT_TRUE(back_at_its_start->mended.empty());
}

TEST(Flatten, RefusesWhatReachesTooFar) {
  constexpr std::int64_t limit = std::int64_t{1} << 30;
  EXPECT_TRUE(flatten({{polygon({{-limit, -limit}, {limit, -limit}, {limit, limit}})}}, 1));
  const auto far = flatten({{polygon({{0, 0}, {limit + 1, 0}, {0, limit}})}}, 1);
  ASSERT_FALSE(far);
  EXPECT_EQ(far.error().what,
            "the outline near 0, 0 mm reaches too far or has too many parts to compute with");
  // Half an ellipse that has to grow until it is a kilometre high.
  Contour tower{.start = {0, 0}, .curves = {}, .closed = true};
  tower.curves.push_back(ArcTo{.radius_x = 1, .radius_y = 1'000'000, .to = {1'000'000, 0}});
  EXPECT_FALSE(flatten({{tower}}, 1));
}

// Arcs that meet end to end with a touch, as scallops do, cross nothing.
TEST(Flatten, ArcsThatTouch) {
  Contour chain{.start = {0, 0}, .curves = {}, .closed = true};
  for (int i = 1; i <= 10; ++i)
    chain.curves.push_back(
        ArcTo{.radius_x = mm(5), .radius_y = mm(5), .clockwise = true, .to = {mm(10) * i, 0}});
  chain.curves.push_back(LineTo{{mm(100), mm(20)}});
  chain.curves.push_back(LineTo{{0, mm(20)}});
  for (const std::int64_t error : {1, 100, 10'000}) {
    const auto flat = flatten({{chain}}, error);
    ASSERT_TRUE(flat);
    EXPECT_EQ(flat->outline.error, error);
    EXPECT_TRUE(flat->mended.empty());
    EXPECT_EQ(flat->outline.rings.size(), 1u);
  }
}

// A hair's breadth that crossing leaves no room for is said in the outline's own error.
TEST(Flatten, TheErrorThatHolds) {
  Contour eight = circle(mm(20), mm(20), mm(20));
  const auto flat = flatten({{eight, circle(mm(20), mm(45), mm(25))}}, 1);
  ASSERT_TRUE(flat);
  EXPECT_EQ(flat->outline.error, 2);
  const auto wider = flatten({{eight, circle(mm(20), mm(45), mm(25))}}, 10);
  ASSERT_TRUE(wider);
  EXPECT_EQ(wider->outline.error, 10);
  EXPECT_EQ(wider->mended.size(), 1u);
}

}  // namespace
}  // namespace insetbook
