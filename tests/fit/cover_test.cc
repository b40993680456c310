// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/cover.h"

#include <gtest/gtest.h>

#include <cmath>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

constexpr Length step = Length::inch_fraction(1, 16), eighth = Length::inch_fraction(1, 8);

std::string sides(const Shape& shape) {
  return std::string(shape_word(shape.kind)) + " " + std::to_string(shape.width / in64(1)) + " x " +
         std::to_string(shape.height / in64(1));
}

TEST(Cover, PlainShapesAreLargerByTheOverlapOnEachSide) {
  EXPECT_EQ(sides(cover_from_behind(circle(in64(96)), eighth, step)), "circle 112 x 112");
  EXPECT_EQ(sides(cover_from_behind(square(in64(96)), eighth, step)), "square 112 x 112");
  EXPECT_EQ(sides(cover_from_behind(rectangle(in64(96), in64(128)), eighth, step)), "rectangle 112 x 144");
  const Shape round = cover_from_behind(rounded(in64(96), in64(128), in64(8)), eighth, step);
  EXPECT_EQ(sides(round), "rounded rectangle 112 x 144");
  EXPECT_EQ(*round.corner_radius, in64(16));
}

// An oval larger by the overlap on its axes overlaps less between them, so it is larger still; a hexagon that
// overlaps on its flats is wider at its points.
TEST(Cover, OthersAreAsMuchLargerAsTheOverlapAllRoundNeeds) {
  const Shape oval_cover = cover_from_behind(oval(in64(64), in64(128)), eighth, step);
  EXPECT_EQ(sides(oval_cover), "oval 80 x 160");  // in proportion: 1/8 in each side of its width
  // Flat on top: apothem 64·√3/2 /2; with 1/8 in more the width is (apothem + 8)·4/√3 in 64ths: 82.47, and
  // then the next step of 4.
  const Length high = Length::nm(std::llround(static_cast<double>(in64(64).nm()) * std::sqrt(3.0) / 2));
  const Shape hexagon = cover_from_behind(polygon(6, in64(64), high, true), eighth, step);
  EXPECT_EQ(hexagon.width, in64(84));
  EXPECT_EQ(hexagon.kind, ShapeKind::polygon);
}

TEST(Cover, OneStepLessDoesNotOverlapAllRound) {
  for (const Shape& window : {oval(in64(120), in64(90)), plain(ShapeKind::heart, in64(100), in64(96)),
                              plain(ShapeKind::arch, in64(64), in64(120))}) {
    Shape cover = cover_from_behind(window, eighth, step);
    ASSERT_EQ(cover.kind, window.kind);
    const auto held = framing({cover, Length()}, window, eighth, step, false);
    ASSERT_TRUE(held && *held);
    EXPECT_GE((*held)->greatest_border, eighth);
    cover.height = Length::nm(cover.height.nm() * (cover.width - step).nm() / cover.width.nm());
    cover.width = cover.width - step;
    if (cover.width < window.width + 2 * eighth) continue;
    const auto less = framing({cover, Length()}, window, eighth, step, false);
    EXPECT_FALSE(less && *less) << shape_word(window.kind);
  }
}

TEST(Cover, ADrawnWindowIsCoveredByTheRectangleRoundIt) {
  Shape window = plain(ShapeKind::outline, in64(96), in64(64));
  window.outline = "M0 0L30 0L15 20Z";
  EXPECT_EQ(sides(cover_from_behind(window, eighth, step)), "rectangle 112 x 80");
  Shape unknown = plain(ShapeKind::polygon, in64(96), in64(96));  // of how many sides is not known
  EXPECT_EQ(sides(cover_from_behind(unknown, eighth, step)), "square 112 x 112");
}

}  // namespace
}  // namespace insetbook
