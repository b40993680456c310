// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/sizes_shown.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(SizesShown, WhatADrawingSaysToTheNanometreIsShownAsARulerWould) {
  const auto mm = [](std::int64_t nm_wide, std::int64_t nm_high) {
    return recorded_size_text("outline", Length::nm(nm_wide), Length::nm(nm_high), Unit::mm);
  };
  EXPECT_EQ(mm(29'491'081, 40'000'000), "about 29.5 x 40 mm");
  EXPECT_EQ(mm(29'490'000, 40'000'000), "29.49 x 40 mm");
  EXPECT_EQ(mm(29'500'000, 40'250'000), "29.5 x 40.25 mm");
  EXPECT_EQ(recorded_size_text("circle", Length::nm(29'491'081), Length::nm(29'491'081), Unit::inch),
            "about 1-5/32 in");
  EXPECT_EQ(recorded_size_text("rectangle", Length::inch_fraction(19, 8), Length::nm(25'654'000), Unit::inch),
            "2-3/8 x 1.01 in");
}

TEST(SizesShown, APolygonOfTwoLikeFiguresHasOne) {
  EXPECT_EQ(shaped_size_text("hexagon", Length::inch_fraction(3, 1), Length::inch_fraction(3, 1), Unit::inch),
            "3 in");
  EXPECT_EQ(
      shaped_size_text("hexagon", Length::inch_fraction(3, 1), Length::inch_fraction(21, 8), Unit::inch),
      "3 x 2-5/8 in");
  EXPECT_EQ(shaped_size_text("oval", Length::inch_fraction(3, 1), Length::inch_fraction(3, 1), Unit::inch),
            "3 x 3 in");
}

}  // namespace
}  // namespace insetbook
