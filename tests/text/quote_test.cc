// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/quote.h"

#include <gtest/gtest.h>

#include <string>

namespace insetbook {
namespace {

TEST(InQuotes, IsShortAndOnOneLine) {
  using namespace std::string_literals;
  const std::pair<std::string, std::string> cases[] = {
      {"2-3/8", "\"2-3/8\""},
      {"  2-3/8 ", "\"2-3/8\""},
      {"", "\"\""},
      {"two\nlines\tand more", "\"two lines and more\""},
      {"bell\a", "\"bell\uFFFD\""},
      {std::string(60, 'x'), '"' + std::string(60, 'x') + '"'},
      {std::string(61, 'x'), '"' + std::string(60, 'x') + "…\""},
  };
  for (const auto& [text, expected] : cases) EXPECT_EQ(in_quotes(text), expected) << text;
  std::string halves;
  for (int i = 0; i < 70; ++i) halves += "½";
  EXPECT_EQ(in_quotes(halves).size(), 2 + 60 * 2 + 3) << "counted in characters, not in bytes";
}

TEST(ControlCharacter, IsFoundWithItsPlace) {
  using namespace std::string_literals;
  struct Row {
    std::string text;
    int one, several;  // the place, or -1
  };
  const Row rows[] = {{"kelp", -1, -1},    {"ke\alp", 2, 2},    {"½\x7f", 1, 1},        {"a\nb", 1, -1},
                      {"a\tb\r\n", 1, -1}, {"\xC2\x85"s, 0, 0}, {"\xC2\xA0"s, -1, -1},  {"a\0b"s, 1, 1},
                      {"", -1, -1},        {"café ⅜", -1, -1},  {"line\none\x0B", 4, 8}};
  for (const Row& row : rows) {
    const auto one = control_character(row.text, Lines::one),
               several = control_character(row.text, Lines::several);
    EXPECT_EQ(one ? static_cast<int>(one->at) : -1, row.one) << row.text;
    EXPECT_EQ(several ? static_cast<int>(several->at) : -1, row.several) << row.text;
  }
  EXPECT_EQ(name_of(*control_character("\a", Lines::one)), "the character U+0007, which nothing shows");
  EXPECT_EQ(name_of(*control_character("\xC2\x85", Lines::one)), "the character U+0085, which nothing shows");
}

}  // namespace
}  // namespace insetbook
