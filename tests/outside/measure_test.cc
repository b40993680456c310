// SPDX-License-Identifier: GPL-3.0-or-later
//
// Lengths against published figures. Sources stand beside each test.
#include <gtest/gtest.h>
#include <unicode/uchar.h>

#include <array>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "measure/read.h"
#include "measure/write.h"
#include "outside/data_rows.h"
#include "outside/outside_data.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

std::int64_t nm(const std::string& text) {
  const auto read = read_length(text, Unit::inch);
  EXPECT_TRUE(read) << text;
  return read ? read->length.nm() : -1;
}

// Source: the international inch of 25.4 mm, International yard and pound agreement of 1 July 1959; UCUM
// [in_i].
TEST(MeasureOutside, TheInchIs25Point4Millimetres) {
  EXPECT_EQ(nm("1 in"), 25'400'000);
  EXPECT_EQ(nm("1 in"), nm("25.4 mm"));
  EXPECT_EQ(nm("1 in"), nm("2.54 cm"));
  EXPECT_EQ(nm("3 ft"), nm("0.9144 m"));
}

// Source: unit_definitions.csv (UCUM ucum-essence 2.2; the agreement of 1959).
TEST(MeasureOutside, UnitDefinitions) {
  const auto path = outside_data("unit_definitions.csv");
  if (!path) GTEST_SKIP() << "unit_definitions.csv is not here";
  const std::map<std::string, std::string> here{
      {"1 inch", "1 inch"}, {"1 yard", "3 ft"}, {"1 mil", "0.001 in"}};
  int checked = 0;
  for (const auto& row : data_rows(*path)) {
    const auto found = here.find(row[0]);
    if (found == here.end()) continue;
    EXPECT_EQ(nm(found->second), nm(row[1] + " " + row[2])) << row[0];
    ++checked;
  }
  EXPECT_EQ(checked, 4);
}

// Source: inch_fractions_64ths.csv, two published tables of fraction, decimal and millimetre equivalents.
TEST(MeasureOutside, SixtyFourthsOfAnInch) {
  const auto path = outside_data("inch_fractions_64ths.csv");
  if (!path) GTEST_SKIP() << "inch_fractions_64ths.csv is not here";
  int checked = 0;
  for (const auto& row : data_rows(*path)) {
    const std::string reduced = row[1] == "1/1" ? "1" : row[1];
    EXPECT_EQ(nm(row[0] + " in"), nm(row[3] + " mm")) << row[0];
    EXPECT_EQ(nm(row[2] + " in"), nm(row[3] + " mm")) << row[0];
    EXPECT_EQ(write(Length::nm(nm(row[0] + " in")), Unit::inch), reduced + " in");
    const double mm = number(row[3]);
    EXPECT_EQ(number(write_figure(Length::nm(nm(row[0] + " in")), Unit::mm)), mm);
    ++checked;
  }
  EXPECT_EQ(checked, 64);
}

// Source: unicode_vulgar_fractions.csv (UnicodeData.txt).
TEST(MeasureOutside, FractionCharactersOfUnicodeData) {
  const auto path = outside_data("unicode_vulgar_fractions.csv");
  if (!path) GTEST_SKIP() << "unicode_vulgar_fractions.csv is not here";
  int checked = 0;
  for (const auto& row : data_rows(*path)) {
    // The numerator one, U+215F, takes its denominator behind it.
    const std::string text = row[0] == "U+215F" ? row[1] + "1" : row[1];
    EXPECT_EQ(nm(text + " in"), nm((row[4] == "1" ? "1/1" : row[4]) + " in")) << row[2];
    ++checked;
  }
  EXPECT_EQ(checked, 20);
}

// Source: ICU, u_getNumericValue: every character that Unicode gives a value that is not whole and that is
// named a vulgar fraction.
TEST(MeasureOutside, FractionCharactersOfIcu) {
  int checked = 0;
  for (UChar32 code = 0x80; code <= 0xFFFF; ++code) {
    std::array<char, 100> name{};
    UErrorCode status = U_ZERO_ERROR;
    u_charName(code, U_UNICODE_CHAR_NAME, name.data(), name.size(), &status);
    if (!std::string(name.data()).starts_with("VULGAR FRACTION")) continue;
    std::string text;
    append_utf8(text, static_cast<char32_t>(code));
    const double value = u_getNumericValue(code);
    EXPECT_EQ(nm(text + " in"), std::llround(value * 25'400'000)) << name.data();
    EXPECT_EQ(nm("7" + text + " in"), 7 * std::int64_t{25'400'000} + std::llround(value * 25'400'000))
        << name.data();
    ++checked;
  }
  EXPECT_EQ(checked, 19);
}

// Source: paper_envelope_sizes.csv (ISO 216, ISO 269, ASME Y14.1, PWG 5101.1), read the ways it is written.
TEST(MeasureOutside, PaperSizes) {
  const auto path = outside_data("paper_envelope_sizes.csv");
  if (!path) GTEST_SKIP() << "paper_envelope_sizes.csv is not here";
  int checked = 0;
  for (const auto& row : data_rows(*path)) {
    const Unit unit = row[4] == "in" ? Unit::inch : Unit::mm;
    const double one = unit == Unit::inch ? 25'400'000 : 1'000'000;
    const Length width = Length::nm(std::llround(number(row[2]) * one));
    const Length height = Length::nm(std::llround(number(row[3]) * one));
    for (const std::string& text :
         {row[2] + " x " + row[3] + " " + row[4], row[2] + row[4] + "×" + row[3] + row[4],
          write_size(width, height, Unit::inch), write_size(width, height, Unit::mm)}) {
      const auto size = read_size(text, Unit::mm);
      ASSERT_TRUE(size) << text;
      EXPECT_EQ(size->width, width) << row[0];
      EXPECT_EQ(size->height, height) << row[0];
    }
    ++checked;
  }
  EXPECT_EQ(checked, 67);
}

// Source: ISO 216: A0 is 841 x 1189 mm, each next size is the one before cut in half across its long side,
// fractions of a millimetre dropped. DIN 678 for C.
TEST(MeasureOutside, EachSizeOfASeriesIsHalfTheOneBefore) {
  const auto path = outside_data("paper_envelope_sizes.csv");
  if (!path) GTEST_SKIP() << "paper_envelope_sizes.csv is not here";
  std::map<std::string, Size> sizes;
  for (const auto& row : data_rows(*path))
    if (const auto size = read_size(row[2] + " x " + row[3] + row[4], Unit::mm)) sizes[row[0]] = *size;
  int checked = 0;
  for (const std::string series : {"A", "B", "C"}) {
    for (int n = 0; n < 10; ++n) {
      const Size& larger = sizes.at("ISO " + series + std::to_string(n));
      const Size& smaller = sizes.at("ISO " + series + std::to_string(n + 1));
      EXPECT_EQ(smaller.height, larger.width) << series << n;
      EXPECT_EQ(smaller.width, round_down(larger.height / 2, Length::mm(1))) << series << n;
      ++checked;
    }
  }
  EXPECT_EQ(checked, 30);
}

}  // namespace
}  // namespace insetbook
