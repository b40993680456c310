// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/read.h"

#include <gtest/gtest.h>

#include <string>

#include "measure/write.h"

namespace insetbook {
namespace {

// "2-3/8 in", "size W 2 x H 3 in", "one 2 in circle", "range 2 to 3 in", or what was wrong.
std::string shown(const Measurement& value) {
  if (const auto* size = std::get_if<Size>(&value))
    return (size->one_figure ? "one " : "size ") + write_said(*size);
  if (std::holds_alternative<Range>(value)) return "range " + write(value);
  return write(value);
}

std::string shown(const Result<Measurement>& read) {
  return read ? shown(*read) : "refused: " + read.error().what;
}

struct Row {
  std::string text;
  std::string meaning;
};

void check(std::initializer_list<Row> rows, Unit no_unit = Unit::inch) {
  for (const Row& row : rows) {
    EXPECT_EQ(shown(read_measurement(row.text, no_unit)), row.meaning) << row.text;
    EXPECT_EQ(shown(read_measurement(" \t" + row.text + "\u00A0\n", no_unit)), row.meaning) << row.text;
  }
}

TEST(ReadLength, MixedFractions) {
  check({{"2-3/8", "2-3/8 in"},
         {"2 3/8", "2-3/8 in"},
         {"2⅜", "2-3/8 in"},
         {"2 ⅜\"", "2-3/8 in"},
         {"2-⅜ in", "2-3/8 in"},
         {"2 - 3/8", "2-3/8 in"},
         {"2 3/8 inches", "2-3/8 in"},
         {"2 3 / 8 in", "2-3/8 in"},
         {"2 3⁄8 in", "2-3/8 in"},
         {"2 3∕8 in", "2-3/8 in"},
         {"2³⁄₈ in", "2-3/8 in"},
         {"2 ³/₈ in", "2-3/8 in"},
         {"⅟₁₆", "1/16 in"},
         {"⅟16 in", "1/16 in"},
         {"2 & 3/8 in", "2-3/8 in"},
         {"2 and 3/8", "2-3/8 in"},
         {"½", "1/2 in"},
         {"1/2", "1/2 in"},
         {"9/8 in", "1-1/8 in"},
         {"4/8 in", "1/2 in"},
         {"0/8", "0 in"},
         {"3/8ths of an inch", "3/8 in"},
         {"1/16th inch", "1/16 in"},
         {"5 16ths", "5/16 in"},
         {"3/4 of an inch", "3/4 in"},
         {"1/3 in", "1/3 in"},
         {"2-5/7 in", "2-5/7 in"},
         {"２－３／８ in", "2-3/8 in"}});
}

TEST(ReadLength, AnyHyphenJoinsAFraction) {
  for (const char* hyphen : {"-", "\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2015", "\u2212",
                             "\uFE58", "\uFE63", "\uFF0D", " - ", " \u2013 "})
    check({{std::string("2") + hyphen + "3/8 in", "2-3/8 in"},
           {std::string("2") + hyphen + "3 in", "range 2 to 3 in"}});
}

TEST(ReadLength, Decimals) {
  check({{"2.375 in", "2-3/8 in"},
         {"0.5", "1/2 in"},
         {".5 in", "1/2 in"},
         {"6,5 cm", "65 mm"},
         {"0,125 in", "1/8 in"},
         {"0,500 mm", "0.5 mm"},
         {"12,5 mm", "12.5 mm"},
         {"1,2345 mm", "1.2345 mm"},
         {"1,234.5 mm", "1234.5 mm"},
         {"1.234,5 mm", "1234.5 mm"},
         {"1,000,000 mm", "1000000 mm"},
         {"2.000000 in", "2 in"},
         {"0.0000001 mm", "0 mm"},
         // To the nearest nanometre, however many digits: 0.5 nm rounds up, anything below it down.
         {"0.0000005 mm", "0.000001 mm"},
         {"0.000000499999999999999999999999999999999999999999 mm", "0 mm"},
         {"000000000000000000000000002.5 mm", "2.5 mm"}});
}

TEST(ReadLength, Units) {
  for (const char* inch :
       {"in", "in.", "IN", "ins", "inch", "inches", "\"", "″", "”", "“", "''", "’’", "′′", "˝", "ʺ"})
    check({{std::string("2") + inch, "2 in"}});
  for (const char* foot : {"ft", "ft.", "foot", "feet", "'", "′", "’", "ʹ"})
    check({{std::string("2") + foot, "24 in"}});
  for (const char* mm : {"mm", "mm.", "MM", "millimetre", "millimetres", "millimeter", "millimeters", "㎜"})
    check({{std::string("2 ") + mm, "2 mm"}});
  for (const char* cm : {"cm", "cms", "centimetre", "centimeters", "㎝"})
    check({{std::string("2 ") + cm, "20 mm"}});
  for (const char* m : {"m", "metre", "metres", "meter", "meters"})
    check({{std::string("2 ") + m, "2000 mm"}});
  check({{"60mm", "60 mm"}, {"2-inch", "2 in"}, {"2-3/8-in", "2-3/8 in"}, {"0 in", "0 in"}});
}

TEST(ReadLength, ABareFigureIsInTheUnitGiven) {
  check({{"60", "60 mm"}, {"2 1/2", "2.5 mm"}, {"60 in", "60 in"}, {"two", "2 mm"}}, Unit::mm);
  // No metric ruler has eighths.
  check({{"2-3/8", "2-3/8 in"},
         {"3/8", "3/8 in"},
         {"2⅜", "2-3/8 in"},
         {"2-1/2", "2.5 mm"},
         {"2-3/8 mm", "2.375 mm"}},
        Unit::mm);
  check({{"60", "60 in"}, {"60 mm", "60 mm"}}, Unit::inch);
}

TEST(ReadLength, FeetAndInchesGoTogether) {
  check({{"1 ft 2 in", "14 in"},
         {"1' 2\"", "14 in"},
         {"1’2”", "14 in"},
         {"1′ 2½″", "14-1/2 in"},
         {"5' 6", "66 in"},
         {"1 foot and 2 inches", "14 in"},
         {"1 ft, 2-3/8 in", "14-3/8 in"},
         {"a foot and a half", "18 in"},
         {"1.5 ft", "18 in"}});
}

TEST(ReadLength, SpelledOut) {
  check({{"two and three eighths", "2-3/8 in"},
         {"Two and Three-Eighths Inches", "2-3/8 in"},
         {"two-and-three-eighths inches", "2-3/8 in"},
         {"two and 3/8", "2-3/8 in"},
         {"a quarter inch", "1/4 in"},
         {"a quarter", "1/4 in"},
         {"a quarter of an inch", "1/4 in"},
         {"quarter inch", "1/4 in"},
         {"an eighth of an inch", "1/8 in"},
         {"half an inch", "1/2 in"},
         {"half-inch", "1/2 in"},
         {"an inch", "1 in"},
         {"an inch and a half", "1-1/2 in"},
         {"an inch and 3/8", "1-3/8 in"},
         {"two inches and a quarter", "2-1/4 in"},
         {"one and a half inches", "1-1/2 in"},
         {"2 and a half in", "2-1/2 in"},
         {"three quarters of an inch", "3/4 in"},
         {"three-quarter inch", "3/4 in"},
         {"three halves", "1-1/2 in"},
         {"three sixteenths", "3/16 in"},
         {"three thirty-seconds of an inch", "3/32 in"},
         {"one thirty-second inch", "1/32 in"},
         {"five sixty-fourths", "5/64 in"},
         {"sixty-fourth of an inch", "1/64 in"},
         {"twenty-one mm", "21 mm"},
         {"one hundred and five mm", "105 mm"},
         {"a hundred mm", "100 mm"},
         {"two thousand and five mm", "2005 mm"},
         {"two point five cm", "25 mm"},
         {"one", "1 in"},
         {"a third of an inch", "1/3 in"},
         {"a metre and a half", "1500 mm"}});
}

TEST(ReadSize, TwoFigures) {
  check({{"2-7/8 x 4-1/8 in", "size 2-7/8 x 4-1/8 in"},
         {"2 7/8×4 1/8\"", "size 2-7/8 x 4-1/8 in"},
         {"3 by 4", "size 3 x 4 in"},
         {"3X4in", "size 3 x 4 in"},
         {"2in x 3in", "size 2 x 3 in"},
         {"2inx3in", "size 2 x 3 in"},
         {"60mmx40mm", "size 60 x 40 mm"},
         {"2\"x3\"", "size 2 x 3 in"},
         {"2'x3'", "size 24 x 36 in"},
         {"2*3 in", "size 2 x 3 in"},
         {"½ x ¼ in", "size 1/2 x 1/4 in"},
         {"2 in x 3", "size 2 x 3 in"},
         {"2 x 3 ft", "size 24 x 36 in"},
         {"1 ft x 6 in", "size 12 x 6 in"},
         {"10 cm x 50 mm", "size 100 x 50 mm"},
         {"8-1/2 × 5-1/2 in", "size 8-1/2 x 5-1/2 in"},
         {"two by three inches", "size 2 x 3 in"},
         {"6,5 x 10,5 cm", "size 65 x 105 mm"},
         {"2-1/2 mm x 60 mm", "size 2.5 x 60 mm"},
         {"two and a half by 6 cm", "size 25 x 60 mm"},
         {"2 x 3 in rect", "size 2 x 3 in rectangle"}});
}

TEST(ReadSize, LabelsGiveWidthFirst) {
  check({{"W 2 H 3", "size W 2 x H 3 in"},
         {"H 3 W 2", "size W 2 x H 3 in"},
         {"W: 2, H: 3 in", "size W 2 x H 3 in"},
         {"w=2 h=3", "size W 2 x H 3 in"},
         {"W2xH3", "size W 2 x H 3 in"},
         {"width 2 in, height 3 in", "size W 2 x H 3 in"},
         {"2\"W x 3\"H", "size W 2 x H 3 in"},
         {"3\"H x 2\"W", "size W 2 x H 3 in"},
         {"60mmW x 40mmH", "size W 60 x H 40 mm"},
         {"2 in (W) x 3 in (H)", "size W 2 x H 3 in"},
         {"2 in wide 3 in tall", "size W 2 x H 3 in"},
         {"2 in wide x 3 in high", "size W 2 x H 3 in"},
         {"3 in tall by 2 in wide", "size W 2 x H 3 in"},
         {"3 in tall and 2 in wide", "size W 2 x H 3 in"},
         {"3 in in height, 2 in in width", "size W 2 x H 3 in"},
         {"2 wide x 3", "size W 2 x H 3 in"},
         {"2 x 3 H", "size W 2 x H 3 in"},
         {"3 x 2 W", "size W 2 x H 3 in"},
         {"4 x 6 in tall", "size W 4 x H 6 in"},
         {"4 x 6 in wide", "size W 6 x H 4 in"}});
}

TEST(ReadSize, OneFigureAcross) {
  for (const char* text : {"2 in across", "2 in diameter", "2 in in diameter", "2 in diam.", "2\" dia",
                           "diam. 2 in", "diameter: 2 in", "⌀2 in", "Ø 2 in"})
    check({{text, "one 2 in"}});
}

TEST(ReadSize, AShapeMayStandBehind) {
  check({{"6 in square", "size 6 in square"},
         {"2-3/8 in circle", "one 2-3/8 in circle"},
         {"2-3/8-inch circles", "one 2-3/8 in circle"},
         {"2 in across circle", "one 2 in circle"},
         {"2 in round", "one 2 in circle"},
         {"2 x 2 in circle", "one 2 in circle"},
         {"2 x 3 in oval", "size 2 x 3 in oval"},
         {"2 x 3 in rounded rectangle", "size 2 x 3 in rounded rectangle"},
         {"2 in hexagon", "one 2 in hexagon"}});
  const auto square = read_size("6 in square", Unit::inch);
  ASSERT_TRUE(square);
  EXPECT_EQ(*square,
            (Size{Length::inches(6), Length::inches(6), Unit::inch, false, Orientation::either, "square"}));
  const auto circle = read_size("2-3/8 in circle", Unit::mm);
  ASSERT_TRUE(circle);
  EXPECT_EQ(*circle, (Size{Length::nm(60'325'000), Length::nm(60'325'000), Unit::inch, true,
                           Orientation::either, "circle"}));
}

TEST(ReadSize, OneLengthIsASizeOfOneFigure) {
  const auto size = read_size("60 mm", Unit::inch);
  ASSERT_TRUE(size);
  EXPECT_EQ(*size, (Size{Length::mm(60), Length::mm(60), Unit::mm, true, Orientation::either, ""}));
}

TEST(ReadRange, EveryWay) {
  check({{"2..3 in", "range 2 to 3 in"},
         {"2 .. 3", "range 2 to 3 in"},
         {"2...3", "range 2 to 3 in"},
         {"2…3", "range 2 to 3 in"},
         {"2 to 3 in", "range 2 to 3 in"},
         {"2 in to 3", "range 2 to 3 in"},
         {"3 to 2 in", "range 2 to 3 in"},
         {"from 2 to 3 in", "range 2 to 3 in"},
         {"between 2 and 3 in", "range 2 to 3 in"},
         {"between an inch and a half and two inches", "range 1-1/2 to 2 in"},
         {"between 2 in and a quarter inch", "range 1/4 to 2 in"},
         {"between 2-3/8 and 2-5/8 in", "range 2-3/8 to 2-5/8 in"},
         {"5-6 in", "range 5 to 6 in"},
         {"0.5-1 in", "range 1/2 to 1 in"},
         {"2 in - 3 in", "range 2 to 3 in"},
         {"2-3/8 to 3 in", "range 2-3/8 to 3 in"},
         {"½ to 1 in", "range 1/2 to 1 in"},
         {"two to three inches", "range 2 to 3 in"},
         {"50–60 mm", "range 50 to 60 mm"}});
}

struct Refused {
  std::string text;
  std::string what;
  std::size_t at;
  std::size_t length;
  std::string expected;
};

void check_refused(std::initializer_list<Refused> rows) {
  for (const Refused& row : rows) {
    const auto read = read_measurement(row.text, Unit::inch);
    ASSERT_FALSE(read) << row.text << " is read as " << shown(*read);
    const Problem& problem = read.error();
    EXPECT_EQ(problem.kind, ProblemKind::bad_input);
    EXPECT_EQ(problem.what, row.what);
    EXPECT_EQ(problem.expected, row.expected) << row.text;
    EXPECT_EQ(problem.where.text, row.text);
    ASSERT_TRUE(problem.where.at) << row.text;
    EXPECT_EQ(*problem.where.at, row.at) << row.text;
    EXPECT_EQ(problem.where.length, row.length) << row.text;
  }
}

constexpr const char* a_length = "a length such as 2-3/8 in, 2.375 in, 60 mm or 6.5 cm";
constexpr const char* a_size = "a size such as 2-7/8 x 4-1/8 in or 2-3/8 in circle";
constexpr const char* one_measurement = "one length, one size or one range";
constexpr const char* a_dash =
    "\"to\" between the ends of a range, such as 2-3/8 to 3 in; a dash in a mixed number, such as 2-3/8";
constexpr const char* one_unit = "one unit; only feet and inches go together, as in 1 ft 2 in";
constexpr const char* a_unit = "in, ft, mm, cm, m, or the marks ' and \"";

TEST(ReadRefuses, WhatIsNoFigure) {
  check_refused({
      {"", "there is no length in an empty text", 0, 0, a_length},
      {"banana", "\"banana\" is no length", 0, 6, a_length},
      {"  banana split", "\"banana split\" is no length", 2, 12, a_length},
      {"a circle", "\"a circle\" is no length", 0, 8, a_length},
      {"third", "\"third\" is no length", 0, 5, a_length},
      {"circle 2 in", "\"circle 2 in\" is no length", 0, 11, a_length},
      {"-2 in", "\"-2 in\" is below zero", 0, 1, "a length of zero or more"},
      {"−2-3/8", "\"−2-3/8\" is below zero", 0, 1, "a length of zero or more"},
      {"+2", "\"+2\" has a plus sign", 0, 1, "the length without the sign"},
      {"3-17/16", "\"3-17/16\" has a whole number and a fraction that is not below one", 0, 7,
       "4-1/16, or a fraction below one"},
      {"2-9/8", "\"2-9/8\" has a whole number and a fraction that is not below one", 0, 5,
       "3-1/8, or a fraction below one"},
      {"2 8/8", "\"2 8/8\" has a whole number and a fraction that is not below one", 0, 5,
       "3, or a fraction below one"},
      {"½ in, 2-3/0", "\", 2-3/0\" is left over in \"½ in, 2-3/0\"", 4, 7, one_measurement},
      {"2-3/0", "\"2-3/0\" has a fraction over zero", 2, 3, "a fraction such as 3/8"},
      {"3/0 in", "\"3/0 in\" has a fraction over zero", 0, 3, "a fraction such as 3/8"},
      {"2-3/88", "\"2-3/88\" has a fraction that no ruler has", 0, 6, "2-3/8, if that is what it was"},
      {"2 3/166 in", "\"2 3/166\" has a fraction that no ruler has", 0, 7, "2-3/16, if that is what it was"},
      {"3/88 in", "\"3/88\" has a fraction that no ruler has", 0, 4, "3/8, if that is what it was"},
      {"5/17 in", "\"5/17\" has a fraction that no ruler has", 0, 4,
       "a fraction such as 3/8 or 5/16, or a decimal figure"},
      {"3 x 2-3/88 in", "\"2-3/88\" has a fraction that no ruler has", 4, 6, "2-3/8, if that is what it was"},
      {"1/99999999999 in", "\"1/99999999999 in\" has a fraction with too many digits", 0, 13,
       "a fraction such as 3/8"},
      {"2.5-1/2", "\"2.5-1/2\" has a fraction after a decimal figure", 3, 4,
       "either a decimal figure or a fraction"},
      {"1e3", "\"1e3\" is written with an exponent", 1, 2,
       "the figure written out, such as 0.125 in or 120 mm"},
      {"2.5E-3 mm", "\"2.5E-3 mm\" is written with an exponent", 3, 6,
       "the figure written out, such as 0.125 in or 120 mm"},
      {"0x1F in", "\"0x1F in\" is hexadecimal", 0, 2,
       "a decimal figure; for a size, space around the x: 2 x 3 in"},
      {"2,500 mm", "\"2,500 mm\" can be read as 2.5 mm or as 2500 mm", 0, 8,
       "2.5 mm or 2500 mm, without the comma"},
      {"12,125", "\"12,125\" can be read as 12.125 or as 12125", 0, 6, "12.125 or 12125, without the comma"},
      {"8-Mar", "\"8-Mar\" looks like a date", 0, 5, "3/8 in, if that is what it was"},
      {"2026-03-08", "\"2026-03-08\" looks like a date", 0, 10, "3/8 in, if that is what it was"},
      {"3/8/2026", "\"3/8/2026\" looks like a date", 0, 8, "3/8 in, if that is what it was"},
      {"2/1/16", "\"2/1/16\" looks like a date", 0, 6, "2-1/16 in, if that is what it was"},
      {"2 /1/16", "\"2 /1/16\" has a slash too many", 0, 7, "2-1/16 in, if that is what it was"},
      {"2 /1/8", "\"2 /1/8\" has a slash too many", 0, 6, "2-1/8 in, if that is what it was"},
      {"3 x 2/2/8 in", "\"2/2/8\" has a slash too many", 4, 5, "2-1/4 in, if that is what it was"},
  });
}

TEST(ReadRefuses, UnitsThatDoNotAgree) {
  check_refused({
      {"2 in 3 cm", "\"2 in 3 cm\" mixes units in one length", 5, 4, one_unit},
      {"6 cm 5 mm", "\"6 cm 5 mm\" mixes units in one length", 5, 4, one_unit},
      {"2 in x 3 cm", "\"2 in x 3 cm\" mixes inches and metric", 7, 4, "all figures in one of them"},
      {"2 in to 3 cm", "\"2 in to 3 cm\" mixes inches and metric", 8, 4, "all figures in one of them"},
      {"1 ft x 6", "\"1 ft x 6\" does not say the unit of \"6\"", 7, 1, "a unit after each figure"},
      {"2-3/8 x 60mm",
       "\"2-3/8\" in \"2-3/8 x 60mm\" has no unit of its own: it can be meant in inches or in mm", 0, 5,
       "2-3/8 mm, or every figure in inches"},
      {"60 mm x ⅜", "\"⅜\" in \"60 mm x ⅜\" has no unit of its own: it can be meant in inches or in mm", 8, 1,
       "⅜ mm, or every figure in inches"},
      {"1/2 to 2 cm", "\"1/2\" in \"1/2 to 2 cm\" has no unit of its own: it can be meant in inches or in cm",
       0, 3, "1/2 cm, or every figure in inches"},
      {"2-3/8 in x 60 mm", "\"2-3/8 in x 60 mm\" mixes inches and metric", 11, 5,
       "all figures in one of them"},
      {"2 furlongs", "\"furlongs\" is no unit of length", 2, 8, a_unit},
      {"2 in rubbish", "\"rubbish\" is left over in \"2 in rubbish\"", 5, 7, one_measurement},
      {"⅜ in rubbish", "\"rubbish\" is left over in \"⅜ in rubbish\"", 5, 7, one_measurement},
      {"2000 m", "\"2000 m\" is more than 1 km", 0, 6, "a length of at most 1 km"},
      {"1000.000001 m", "\"1000.000001 m\" is more than 1 km", 0, 13, "a length of at most 1 km"},
      {"99999999999999999999999 mm", "\"99999999999999999999999 mm\" is more than 1 km", 0, 26,
       "a length of at most 1 km"},
  });
}

TEST(ReadRefuses, SizesAndRangesThatDoNotHold) {
  check_refused({
      {"0 x 3 in", "\"0 x 3 in\" has a side of zero", 0, 1, "sides above zero"},
      {"3 x 0 in", "\"3 x 0 in\" has a side of zero", 4, 4, "sides above zero"},
      {"2-3/8-3", "\"2-3/8-3\" has a dash that can be read two ways", 5, 1, a_dash},
      {"1/2-3/4", "\"1/2-3/4\" has a dash that can be read two ways", 3, 1, a_dash},
      {"2-3-4", "\"2-3-4\" has a dash that can be read two ways", 3, 1, a_dash},
      {"2 x", "\"2 x\" stops before its second figure", 2, 1, "a second figure"},
      {"2 to", "\"2 to\" stops before its second figure", 2, 2, "a second figure"},
      {"2 x 3 x 4 in", "\"2 x 3 x 4 in\" has more than two figures", 6, 1, a_size},
      {"2 in wide", "\"2 in wide\" says only one side", 0, 9,
       "the other side too, such as 2 in wide x 3 in tall"},
      {"W 2 W 3", "\"W 2 W 3\" says one side twice", 4, 3, "a width and a height, such as W 2 in, H 3 in"},
      {"6 x 4 in tall", "\"6 x 4 in tall\" can be read as 6 wide and 4 tall or as 4 wide and 6 tall", 8, 5,
       "6 wide and 4 tall or 4 wide and 6 tall"},
      {"2 to 3 x 4 in", "\"2 to 3 x 4 in\" has a range for one side", 0, 6,
       "one size, or a range of lengths such as 2 to 3 in"},
      {"2 x 3 in circle", "\"2 x 3 in circle\" gives a circle two diameters", 9, 6,
       "one, such as 2-3/8 in circle"},
      {"2 x 3 in square", "\"2 x 3 in square\" gives a square unequal sides", 9, 6,
       "one figure, such as 6 in square"},
      {"2 in oval", "\"2 in oval\" gives one figure for a shape that has two", 5, 4,
       "two, such as 2 x 3 in oval"},
  });
}

TEST(ReadRefuses, AnotherKindOfMeasurement) {
  const auto what = [](const auto& read) { return read ? "read" : read.error().what; };
  EXPECT_EQ(what(read_length("2 x 3 in", Unit::inch)), "\"2 x 3 in\" is a size, not one length");
  EXPECT_EQ(what(read_length("2 to 3 in", Unit::inch)), "\"2 to 3 in\" is a range, not one length");
  EXPECT_EQ(what(read_size("2 to 3 in", Unit::inch)), "\"2 to 3 in\" is a range, not a size");
  EXPECT_EQ(what(read_size("0 in", Unit::inch)), "\"0 in\" has a side of zero");
}

TEST(ReadRefuses, LongTextIsQuotedShort) {
  const auto read = read_length(std::string(5000, 'y'), Unit::inch);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().what, "\"" + std::string(60, 'y') + "…\" is no length");
  EXPECT_EQ(read.error().where.text.size(), 5000u);
}

TEST(Read, TakesAnyBytes) {
  for (const std::string& text :
       {std::string("\xFF"), std::string("2\xFF"), std::string("2 in\0", 5), std::string("\xE2\x85"),
        std::string("2 \xE2\x85 in"), std::string(1, '\0')}) {
    EXPECT_FALSE(read_measurement(text, Unit::inch)) << text;
    EXPECT_FALSE(read_size(text, Unit::inch)) << text;
  }
}

TEST(Read, DeepAndLongTextsEnd) {
  for (const char* piece : {"1 ", "2-", "2 x ", "rounded ", "between ", "1,", "111,", "a ", "two ",
                            "hundred ", "W ", "1/", "2'", "and ", "½"}) {
    std::string text = "2 ";
    while (text.size() < 200'000) text += piece;
    EXPECT_FALSE(read_measurement(text, Unit::inch)) << piece;
  }
  EXPECT_TRUE(read_measurement("0." + std::string(200'000, '3') + " in", Unit::inch));
  EXPECT_TRUE(read_measurement("2" + std::string(200'000, ' ') + "in", Unit::inch));
}

}  // namespace
}  // namespace insetbook
