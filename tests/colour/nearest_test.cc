// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/nearest.h"

#include <gtest/gtest.h>

#include <vector>

#include "colour/difference.h"
#include "colour/lab.h"

namespace insetbook {
namespace {

const std::vector<std::uint32_t> drawer = {0xff0000, 0x00ff00, 0x0000ff, 0xfe0000, 0xff0000};

TEST(NearestColours, ComeNearestFirstAndEqualOnesInTheirOrder) {
  const auto near = nearest_colours(0xff0000, drawer, 3);
  ASSERT_EQ(near.size(), 3U);
  EXPECT_EQ(near[0].place, 0U);
  EXPECT_EQ(near[0].delta_e, 0.0);
  EXPECT_EQ(near[1].place, 4U);
  EXPECT_EQ(near[2].place, 3U);
  EXPECT_GT(near[2].delta_e, 0.0);
  EXPECT_EQ(nearest_colours(0xff0000, drawer, 99).size(), drawer.size());
  EXPECT_TRUE(nearest_colours(0xff0000, {}, 3).empty());
  EXPECT_TRUE(nearest_colours(0xff0000, drawer, 0).empty());
}

TEST(ColoursWithin, TakeTheLimitIn) {
  const double limit = colour_difference(0xff0000U, 0xfe0000U);
  EXPECT_EQ(colours_within(0xff0000, drawer, limit).size(), 3U);
  EXPECT_EQ(colours_within(0xff0000, drawer, limit * 0.999).size(), 2U);
  EXPECT_EQ(colours_within(0xff0000, drawer, 0).size(), 2U);
}

TEST(Lch, HasNoHueWithoutChroma) {
  EXPECT_EQ(to_lch(Lab{50, 0, 0}).hue, 0.0);
  EXPECT_DOUBLE_EQ(to_lch(Lab{50, 0, -10}).hue, 270.0);
  EXPECT_LT(to_lch(Lab{50, 10, -1e-300}).hue, 360.0);
}

}  // namespace
}  // namespace insetbook
