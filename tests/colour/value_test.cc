// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/value.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(ColourValue, IsReadInEveryFormThatIsAllowed) {
  EXPECT_EQ(read_colour_value("#3a7d44"), 0x3a7d44U);
  EXPECT_EQ(read_colour_value("#3A7D44"), 0x3a7d44U);
  EXPECT_EQ(read_colour_value(" #3a7d44 "), 0x3a7d44U);
  EXPECT_EQ(read_colour_value("\u00a0#000000"), 0U);
  EXPECT_EQ(read_colour_value("#fff"), 0xffffffU);
  EXPECT_EQ(read_colour_value("#37c"), 0x3377ccU);
}

struct Bad {
  const char* text;
  std::size_t at;
};

class BadColourValue : public ::testing::TestWithParam<Bad> {};

TEST_P(BadColourValue, IsRefusedWithItsPlace) {
  const auto read = read_colour_value(GetParam().text);
  ASSERT_FALSE(read.has_value());
  EXPECT_EQ(read.error().what, "\"" + std::string(GetParam().text) + "\" is no colour value");
  EXPECT_EQ(read.error().where.text, GetParam().text);
  EXPECT_EQ(read.error().where.at, GetParam().at);
  EXPECT_EQ(read.error().expected, "a # and six hexadecimal digits, such as #3a7d44");
}

INSTANTIATE_TEST_SUITE_P(All, BadColourValue,
                         ::testing::Values(Bad{"", 0}, Bad{"  ", 0}, Bad{"3a7d44", 0}, Bad{"#", 1},
                                           Bad{"#12", 3}, Bad{"#12345", 6}, Bad{"#1234567", 7},
                                           Bad{"#12345g", 6}, Bad{" #12 456", 4}, Bad{"sage", 0},
                                           Bad{"#é23", 1}, Bad{"é#123", 0}, Bad{"#１２３", 1}, Bad{"#-12", 1},
                                           Bad{"#1234", 5}));

TEST(ColourValue, IsWrittenWithSixDigits) {
  EXPECT_EQ(write_colour_value(0), "#000000");
  EXPECT_EQ(write_colour_value(0x0a0b0c), "#0a0b0c");
  EXPECT_EQ(write_colour_value(0xffffff), "#ffffff");
}

}  // namespace
}  // namespace insetbook
