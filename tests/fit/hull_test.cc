// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/hull.h"

#include <gtest/gtest.h>

#include <cmath>

#include "fit/outlines.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_outlines;
using namespace testing_shapes;

constexpr std::int64_t mm = 1'000'000;

EdgeTree square_of(std::int64_t size) {
  return EdgeTree(one(box_ring(0, 0, size, size)));
}

TEST(Hull, OfAHorseshoeIsItsBox) {
  const EdgeTree horseshoe(one(ring({{0, 0},
                                     {40 * mm, 0},
                                     {40 * mm, 40 * mm},
                                     {30 * mm, 40 * mm},
                                     {30 * mm, 10 * mm},
                                     {10 * mm, 10 * mm},
                                     {10 * mm, 40 * mm},
                                     {0, 40 * mm}})));
  const std::vector<HullCorner> hull = hull_of(horseshoe);
  ASSERT_EQ(hull.size(), 4u);
  for (const HullCorner& corner : hull) {
    EXPECT_EQ(std::abs(corner.x), 20.0 * mm);
    EXPECT_EQ(std::abs(corner.y), 20.0 * mm);
  }
}

// What a square of 20 mm leaves in the middle, which is the most: of a circle of 60 mm the radius less half
// its diagonal; of a rectangle of 60 x 50 mm half of what it is lower; of a hexagon 60 mm wide, flat on top,
// the distance of its slanted sides from the middle, 15 √3, less that of the corner along their normal, 10
// cos 30° + 10 sin 30°.
TEST(Hull, WhatASquareLeaves) {
  const std::vector<HullCorner> square = hull_of(square_of(20 * mm));
  Shape hexagon =
      plain(ShapeKind::polygon, Length::mm(60), Length::nm(std::llround(30 * std::sqrt(3.0) * mm)));
  hexagon.sides = 6;
  const struct {
    Shape opening;
    double left;
  } rows[] = {{circle(Length::mm(60)), 30 - 10 * std::sqrt(2.0)},
              {rectangle(Length::mm(60), Length::mm(50)), 15},
              {hexagon, 15 * std::sqrt(3.0) - 10 * std::sqrt(0.75) - 5}};
  for (const auto& row : rows) {
    const auto bounds = hull_bounds(form_of(row.opening), square);
    ASSERT_TRUE(bounds);
    EXPECT_LE(bounds->in_middle, row.left * mm) << describe(row.opening, Unit::mm);
    EXPECT_GE(bounds->in_middle, row.left * mm - 1010) << describe(row.opening, Unit::mm);
    EXPECT_GE(bounds->somewhere, bounds->in_middle);
    EXPECT_LE(bounds->somewhere, row.left * mm);
    EXPECT_GE(bounds->most, row.left * mm) << describe(row.opening, Unit::mm);
    EXPECT_LE(bounds->most, row.left * mm + 1010) << describe(row.opening, Unit::mm);
  }
}

// A triangle lies deeper in a circle when it is moved so that its corners are alike far from the middle: of
// one 20 mm wide and 20 high they lie on a circle of radius 12.5.
TEST(Hull, BesideTheMiddleThereMayBeMore) {
  const EdgeTree triangle(one(ring({{0, 20 * mm}, {10 * mm, 0}, {20 * mm, 20 * mm}})));
  const auto bounds = hull_bounds(form_of(circle(Length::mm(60))), hull_of(triangle));
  ASSERT_TRUE(bounds);
  EXPECT_LE(bounds->in_middle, (30 - 10 * std::sqrt(2.0)) * mm);
  EXPECT_LE(bounds->somewhere, 17.5 * mm);
  EXPECT_GE(bounds->somewhere, 17.48 * mm);
  EXPECT_GE(bounds->most, 17.5 * mm);
  EXPECT_LE(bounds->most, 18 * mm);
}

}  // namespace
}  // namespace insetbook
