// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/write.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <limits>

namespace insetbook {
namespace {

TEST(Write, InchesAsMixedFractions) {
  struct Row {
    Length length;
    const char* text;
  };
  for (const Row& row : {
           Row{Length(), "0 in"},
           Row{Length::inches(2), "2 in"},
           Row{Length::inch_fraction(19, 8), "2-3/8 in"},
           Row{Length::inch_fraction(3, 8), "3/8 in"},
           Row{Length::inch_fraction(1, 64), "1/64 in"},
           Row{Length::inch_fraction(1, 3), "1/3 in"},
           Row{Length::inch_fraction(8, 3), "2-2/3 in"},
           Row{Length::inch_fraction(5, 6), "5/6 in"},
           Row{Length::inch_fraction(6, 7), "6/7 in"},
           Row{Length::inch_fraction(8, 9), "8/9 in"},
           Row{Length::inch_fraction(1, 5), "1/5 in"},
           Row{Length::inch_fraction(1, 10), "1/10 in"},
           Row{Length::inch_fraction(5, 12), "5/12 in"},
           Row{Length::inch_fraction(237, 100), "2.37 in"},
           Row{Length::mm(60), "2.36220472 in"},
           Row{Length::mm(1), "0.03937008 in"},
           Row{Length::nm(1), "0.00000004 in"},
           Row{Length::nm(25'399'999), "0.99999996 in"},
           Row{-Length::inch_fraction(19, 8), "-2-3/8 in"},
       })
    EXPECT_EQ(write(row.length, Unit::inch), row.text);
}

TEST(Write, MetricAsMillimetres) {
  EXPECT_EQ(write(Length::mm(60), Unit::mm), "60 mm");
  EXPECT_EQ(write(Length::nm(60'500'000), Unit::mm), "60.5 mm");
  EXPECT_EQ(write(Length::inch_fraction(19, 8), Unit::mm), "60.325 mm");
  EXPECT_EQ(write(Length::inch_fraction(1, 64), Unit::mm), "0.396875 mm");
  EXPECT_EQ(write(Length::nm(1), Unit::mm), "0.000001 mm");
  EXPECT_EQ(write(-Length::nm(500'000), Unit::mm), "-0.5 mm");
  EXPECT_EQ(write(Length::nm(std::numeric_limits<std::int64_t>::min()), Unit::mm),
            "-9223372036854.775808 mm");
}

TEST(Write, SizesAndRanges) {
  const Size size{
      Length::inch_fraction(23, 8), Length::inch_fraction(33, 8), Unit::inch, false, Orientation::said, ""};
  EXPECT_EQ(write(size), "2-7/8 x 4-1/8 in");
  EXPECT_EQ(write(size, Unit::mm), "73.025 x 104.775 mm");
  EXPECT_EQ(write_said(size), "W 2-7/8 x H 4-1/8 in");
  const Size circle{Length::mm(60), Length::mm(60), Unit::mm, true, Orientation::either, "circle"};
  EXPECT_EQ(write(circle), "60 mm");
  EXPECT_EQ(write_said(circle), "60 mm circle");
  const Range range{Length::inches(2), Length::inches(3), Unit::inch};
  EXPECT_EQ(write(range), "2 to 3 in");
  EXPECT_EQ(write(Measurement(range), Unit::mm), "50.8 to 76.2 mm");
  EXPECT_EQ(write(Measurement(circle)), "60 mm");
  EXPECT_EQ(write(Measurement(ReadLength{Length::mm(5), Unit::mm})), "5 mm");
  EXPECT_EQ(write_figure(Length::inch_fraction(19, 8), Unit::inch), "2-3/8");
  EXPECT_EQ(write_size(Length::mm(60), Length::mm(40), Unit::mm), "60 x 40 mm");
}

TEST(Write, AtMostTakesTheMarkBelow) {
  const Length sixteenth = Length::inch_fraction(1, 16);
  EXPECT_EQ(write_at_most(Length::inch_fraction(69, 32), sixteenth, Unit::inch), "2-1/8 in");
  EXPECT_EQ(write_at_most(Length::inch_fraction(34, 16), sixteenth, Unit::inch), "2-1/8 in");
  EXPECT_EQ(write_at_most(Length::inch_fraction(34, 16) - Length::nm(1), sixteenth, Unit::inch), "2-1/16 in");
  EXPECT_EQ(write_at_most(Length::nm(60'999'999), Length::mm(1), Unit::mm), "60 mm");
  EXPECT_EQ(write_at_most(-Length::nm(1), Length::mm(1), Unit::mm), "-1 mm");
}

}  // namespace
}  // namespace insetbook
