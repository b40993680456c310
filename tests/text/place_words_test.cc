// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/place_words.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

std::string words(std::string_view written) {
  std::string out;
  for (const std::string& word : place_words(written)) out += (out.empty() ? "" : " ") + word;
  return out;
}

TEST(PlaceWords, TheSamePlaceInOtherWords) {
  EXPECT_EQ(words("high of centre"), "high centre");
  EXPECT_EQ(words("High of the Center"), "high centre");
  EXPECT_EQ(words("above centre"), "high centre");
  EXPECT_EQ(words("in the bottom right corner"), "bottom right");
  EXPECT_EQ(words("at the lower right"), "bottom right");
  EXPECT_EQ(words("right bottom"), "bottom right");
  EXPECT_EQ(words("centered on the fold"), "centred fold");
  EXPECT_EQ(words("flush with the left edge"), "flush left");
  EXPECT_EQ(words(""), "");
}

TEST(PlaceWords, AreHeldAgainstWhatWasWritten) {
  EXPECT_TRUE(says_place("centred on the fold", {"centred"}));
  EXPECT_TRUE(says_place("hanging off the left edge by 1/4 in", {"hanging", "off", "left"}));
  EXPECT_TRUE(says_place("left 2 in, high of centre", {"high", "centre"}));
  EXPECT_FALSE(says_place("centre, high", {"high", "centre"}));
  EXPECT_FALSE(says_place("low of centre", {"high", "centre"}));
  EXPECT_FALSE(says_place("uncentred", {"centred"}));
  EXPECT_FALSE(says_place("", {"centred"}));
  EXPECT_FALSE(says_place("centred", {}));
}

}  // namespace
}  // namespace insetbook
