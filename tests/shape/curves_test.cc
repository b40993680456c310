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
    EXPECT_EQ(side_of(flat->outline, {0, 0}), rule == FillRule::even_odd ? Side::outside : Side::inside);
    ASSERT_EQ(flat->mended.size(), 1u);
    EXPECT_NE(flat->mended[0].find(" and at 4 more places: "), std::string::npos) << flat->mended[0];
  }
}

}  // namespace
}  // namespace insetbook
