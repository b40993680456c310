// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/transform.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace insetbook {
namespace {

TEST(Transform, ReadsEachKind) {
  struct Case {
    std::string text;
    Vector2 from, to;
  };
  // The maps are those of SVG 2, 8.5.
  const Case cases[] = {
      {"", {3, 4}, {3, 4}},
      {"translate(10)", {3, 4}, {13, 4}},
      {"translate(10 -2)", {3, 4}, {13, 2}},
      {" translate ( 10 , -2 ) ", {3, 4}, {13, 2}},
      {"scale(2)", {3, 4}, {6, 8}},
      {"scale(2,-1)", {3, 4}, {6, -4}},
      {"rotate(90)", {3, 4}, {-4, 3}},
      {"rotate(90 1 1)", {3, 4}, {-2, 3}},
      {"skewX(45)", {3, 4}, {7, 4}},
      {"skewY(45)", {3, 4}, {3, 7}},
      {"matrix(1 2 3 4 5 6)", {1, 1}, {9, 12}},
      {"translate(10,0) scale(2)", {3, 4}, {16, 8}},
      {"scale(2),translate(10,0)", {3, 4}, {26, 8}},
      {"scale(.5-1)", {2, 2}, {1, -2}},
  };
  for (const Case& one : cases) {
    const auto map = read_transform(one.text);
    ASSERT_TRUE(map) << one.text;
    const Vector2 to = (*map)(one.from);
    EXPECT_NEAR(to.x, one.to.x, 1e-12) << one.text;
    EXPECT_NEAR(to.y, one.to.y, 1e-12) << one.text;
  }
}

TEST(Transform, WhatCannotBeReadIsSaid) {
  for (const std::string text : {"turn(3)", "scale", "scale(", "scale()", "rotate(1 2)", "matrix(1 2 3)",
                                 "translate(1,)", "translate(nan)", "translate(1e999)", "scale(2)x"}) {
    const auto map = read_transform(text);
    ASSERT_FALSE(map) << text;
    EXPECT_EQ(map.error().what, "transform \"" + text + "\" cannot be read");
  }
}

TEST(Transform, LengthsOfDrawings) {
  // CSS Values and Units 3, 6.2: 1in = 2.54cm = 25.4mm = 101.6q = 72pt = 6pc = 96px.
  for (const std::string text : {"1in", "2.54cm", "25.4 mm", "101.6Q", "72pt", "6pc", "96px"}) {
    const auto length = read_drawn_length(text);
    ASSERT_TRUE(length) << text;
    EXPECT_TRUE(length->is_absolute);
    EXPECT_NEAR(length->value, 25'400'000, 1e-6) << text;
    EXPECT_EQ(length->is_pixels, text == "96px");
  }
  const auto bare = read_drawn_length(" 12.5 ");
  ASSERT_TRUE(bare);
  EXPECT_FALSE(bare->is_absolute);
  EXPECT_EQ(bare->value, 12.5);
  for (const std::string text : {"", "mm", "5%", "3em", "1 2", "1e400mm", "0x10"})
    EXPECT_FALSE(read_drawn_length(text)) << text;
}

TEST(Transform, AnEllipseStaysOneUnderEachMap) {
  const char* maps[] = {"",          "rotate(30)",          "scale(-1 1)",           "scale(3 1) rotate(20)",
                        "skewX(40)", "matrix(1 2 3 4 5 6)", "rotate(70) scale(1 -2)"};
  for (const char* text : maps) {
    const Transform map = *read_transform(text);
    const double rx = 5, ry = 2, turned = 25;
    const MappedEllipse ellipse = map_ellipse(map, rx, ry, turned);
    // Points of the first, mapped, lie on the second: their equation in its own axes is 1.
    const double a = turned * std::numbers::pi / 180, b = ellipse.turned * std::numbers::pi / 180;
    const Vector2 centre = map({0, 0});
    for (int i = 0; i < 12; ++i) {
      const double t = i * std::numbers::pi / 6;
      const double u = rx * std::cos(t), v = ry * std::sin(t);
      const Vector2 at = map({u * std::cos(a) - v * std::sin(a), u * std::sin(a) + v * std::cos(a)});
      const double x = at.x - centre.x, y = at.y - centre.y;
      const double along = (x * std::cos(b) + y * std::sin(b)) / ellipse.rx;
      const double across = (-x * std::sin(b) + y * std::cos(b)) / ellipse.ry;
      EXPECT_NEAR(along * along + across * across, 1, 1e-9) << text << " " << i;
    }
  }
}

}  // namespace
}  // namespace insetbook
