// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/regular_polygon.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace insetbook {
namespace {

long double value(Near near) {
  return std::ldexp(static_cast<long double>(near.value), -near_bits);
}

// A long double has 64 bits: a few of its units, and the enclosure itself.
void expect_holds(Near near, long double exact) {
  const long double blur = 1e-17L + std::ldexp(static_cast<long double>(near.error), -near_bits);
  EXPECT_LE(std::fabs(value(near) - exact), blur);
  EXPECT_LE(near.error, 4096);
}

TEST(RegularPolygon, CornersAreThoseOfTheLibrary) {
  const long double pi = std::numbers::pi_v<long double>;
  for (int sides = 3; sides <= most_polygon_sides; ++sides) {
    for (const bool flat : {false, true}) {
      const auto corners = corners_of_polygon(sides, flat);
      long double right = 0, top = -2, bottom = 2;
      for (int i = flat ? 1 : 0; i <= sides; i += 2) {
        right = std::max(right, std::sin(pi * i / sides));
        top = std::max(top, std::cos(pi * i / sides));
        bottom = std::min(bottom, std::cos(pi * i / sides));
      }
      std::size_t n = 0;
      for (int i = flat ? 1 : 0; i <= sides; i += 2, ++n) {
        ASSERT_LT(n, corners.size());
        expect_holds(corners[n].x, std::sin(pi * i / sides) / right);
        expect_holds(corners[n].y, (2 * std::cos(pi * i / sides) - top - bottom) / (top - bottom));
      }
      EXPECT_EQ(n, corners.size());
    }
  }
}

// Each corner lies on two sides (or on one and, in the mirror image, on the same) and on the inner side of
// all others.
TEST(RegularPolygon, SidesRunThroughTheCorners) {
  for (int sides = 3; sides <= 60; ++sides) {
    for (const bool flat : {false, true}) {
      const auto edges = sides_of_polygon(sides, flat);
      for (const PolygonCorner& corner : corners_of_polygon(sides, flat)) {
        int on = 0;
        for (const PolygonSide& side : edges) {
          const long double over =
              value(side.a) * value(corner.x) + value(side.b) * value(corner.y) - value(side.c);
          EXPECT_LT(over, 1e-14L);
          on += over > -1e-14L ? 1 : 0;
        }
        EXPECT_GE(on, std::fabs(value(corner.x)) < 1e-15L ? 1 : 2) << sides << " " << flat;
      }
    }
  }
}

TEST(RegularPolygon, RationalFiguresAreExact) {
  for (const int sides : {3, 4, 6}) {
    for (const bool flat : {false, true}) {
      for (const PolygonSide& side : sides_of_polygon(sides, flat)) {
        EXPECT_EQ(side.a.error + side.b.error + side.c.error, 0);
        EXPECT_GE(side.a.value, 0);
      }
      for (const PolygonCorner& corner : corners_of_polygon(sides, flat))
        EXPECT_EQ(corner.x.error + corner.y.error, 0);
    }
  }
}

TEST(RegularPolygon, TheHeightOfItsBox) {
  const Length width = Length::mm(100);
  EXPECT_EQ(regular_height(3, false, width), Length::nm(86'602'540));  // √3/2
  EXPECT_EQ(regular_height(4, true, width), width);
  EXPECT_EQ(regular_height(4, false, width), width);
  EXPECT_EQ(regular_height(5, false, width), Length::nm(95'105'652));  // (1 + cos 36°)/(2 sin 72°)
  EXPECT_EQ(regular_height(6, true, width), Length::nm(86'602'540));
  EXPECT_EQ(regular_height(6, false, width), Length::nm(115'470'054));  // 2/√3
  EXPECT_EQ(regular_height(8, true, width), width);
  EXPECT_EQ(regular_height(12, false, width), width);
}

}  // namespace
}  // namespace insetbook
