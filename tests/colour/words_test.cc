// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>

namespace insetbook {
namespace {

std::string words_of(std::uint32_t srgb) {
  std::string all;
  for (const BasicColour colour : basic_colours_of(srgb)) {
    if (!all.empty()) all += ' ';
    all += basic_colour_word(colour);
  }
  return all;
}

struct Case {
  std::uint32_t srgb;
  const char* words;
};

class Words : public ::testing::TestWithParam<Case> {};

TEST_P(Words, AreThoseOfTheValue) {
  EXPECT_EQ(words_of(GetParam().srgb), GetParam().words);
}

INSTANTIATE_TEST_SUITE_P(Plain, Words,
                         ::testing::Values(Case{0x000000, "black"}, Case{0xffffff, "white"},
                                           Case{0x808080, "grey"}, Case{0xff0000, "red"},
                                           Case{0xff8000, "orange"}, Case{0xffff00, "yellow"},
                                           Case{0x00ff00, "green"}, Case{0x008080, "teal"},
                                           Case{0x0000ff, "blue"}, Case{0x800080, "purple"},
                                           Case{0xffc0cb, "pink"}, Case{0x5c3a1e, "brown"},
                                           Case{0xd2b48c, "beige"}, Case{0xfffdd0, "cream"}));

// Where people do not agree a value has both words.
INSTANTIATE_TEST_SUITE_P(Between, Words,
                         ::testing::Values(Case{0x66cdaa, "green teal"}, Case{0x800000, "red brown"},
                                           Case{0xa5502f, "red brown"}, Case{0x00ced1, "teal blue"},
                                           Case{0xff00ff, "purple pink"}));

TEST(BasicColours, AreNamedByTheirWordOnly) {
  for (std::size_t i = 0; i < basic_colour_count; ++i) {
    const auto colour = static_cast<BasicColour>(i);
    EXPECT_EQ(basic_colour_named(basic_colour_word(colour)), colour);
  }
  EXPECT_EQ(basic_colour_named("gray"), std::nullopt);
  EXPECT_EQ(basic_colour_named(""), std::nullopt);
}

// Every eighth value of each channel, and 255.
TEST(BasicColours, GiveEveryValueAtLeastOneWordAndAtMostThree) {
  std::array<int, 5> counts{};
  int values = 0;
  for (std::uint32_t r = 0; r <= 256; r += 8) {
    for (std::uint32_t g = 0; g <= 256; g += 8) {
      for (std::uint32_t b = 0; b <= 256; b += 8) {
        const std::uint32_t srgb = std::min(r, 255U) << 16 | std::min(g, 255U) << 8 | std::min(b, 255U);
        const auto colours = basic_colours_of(srgb);
        ASSERT_GE(colours.size(), 1U) << srgb;
        ASSERT_LE(colours.size(), 3U) << srgb << " " << words_of(srgb);
        ++counts[colours.size()];
        ++values;
        for (std::size_t i = 0; i < basic_colour_count; ++i) {
          const auto colour = static_cast<BasicColour>(i);
          const bool listed = std::find(colours.begin(), colours.end(), colour) != colours.end();
          ASSERT_EQ(has_basic_colour(srgb, colour), listed);
        }
      }
    }
  }
  EXPECT_GT(counts[1], values / 2);
  EXPECT_LT(counts[3], values / 50);
}

}  // namespace
}  // namespace insetbook
