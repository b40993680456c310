// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

constexpr std::int64_t limit = std::int64_t{1} << 30;

Verdict verdict(const Shape& opening, const Shape& panel, Length border = Length()) {
  const auto result = verdict_of({opening, Length()}, panel, border);
  EXPECT_TRUE(result.has_value());
  return result.value_or(Verdict::undecided);
}

TEST(Verdict, TouchingCountsAndANanometreMoreDoesNot) {
  const Length side = Length::nm(100'000'001), less = Length::nm(100'000'000), one = Length::nm(1);
  EXPECT_EQ(verdict(square(side), square(side)), Verdict::fits);
  EXPECT_EQ(verdict(square(less), square(side)), Verdict::too_big);
  EXPECT_EQ(verdict(circle(side), circle(side)), Verdict::fits);
  EXPECT_EQ(verdict(circle(less), circle(side)), Verdict::too_big);
  EXPECT_EQ(verdict(oval(side, less), oval(side, less)), Verdict::fits);
  EXPECT_EQ(verdict(oval(side, less), oval(side, side)), Verdict::too_big);
  EXPECT_EQ(verdict(rounded(side, side, one), rounded(side, side, one)), Verdict::fits);
  EXPECT_EQ(verdict(rounded(side, side, one), square(side)), Verdict::too_big);
  for (int sides = 3; sides <= 12; ++sides) {
    EXPECT_EQ(verdict(polygon(sides, side, less, true), polygon(sides, side, less, true)), Verdict::fits)
        << sides;
    EXPECT_EQ(verdict(polygon(sides, side, less, true), polygon(sides, side, side, true)), Verdict::too_big)
        << sides;
  }
}

TEST(Verdict, ACircleTouchesAllSidesOfARegularPolygon) {
  const Length side = Length::nm(100'000'000);
  for (const int sides : {4, 8, 12, 16, 20}) {
    EXPECT_EQ(verdict(polygon(sides, side, side, true), circle(side)), Verdict::fits) << sides;
    EXPECT_EQ(verdict(polygon(sides, side, side, true), circle(side + Length::nm(1))), Verdict::too_big)
        << sides;
    EXPECT_EQ(verdict(polygon(sides, side, side, true), circle(side - Length::nm(20)), Length::nm(10)),
              Verdict::fits);
    EXPECT_EQ(verdict(polygon(sides, side, side, true), circle(side - Length::nm(20)), Length::nm(11)),
              Verdict::too_big);
  }
}

TEST(Verdict, AtTheLimits) {
  const Length most = Length::nm(limit), one = Length::nm(1);
  EXPECT_EQ(verdict(circle(most), circle(most)), Verdict::fits);
  EXPECT_EQ(verdict(circle(most), circle(most), one), Verdict::too_big);
  EXPECT_EQ(verdict(circle(most), circle(one), Length::nm(limit / 2 - 1)), Verdict::fits);
  EXPECT_EQ(verdict(circle(most), circle(one), Length::nm(limit / 2)), Verdict::too_big);
  EXPECT_EQ(verdict(oval(most, most - one), rectangle(one, one), Length::nm(limit / 2 - 2)), Verdict::fits);
  EXPECT_EQ(verdict(oval(most, most - one), rectangle(one, one), Length::nm(limit / 2)), Verdict::too_big);
  EXPECT_EQ(verdict(oval(most, one), oval(most, one)), Verdict::fits);
  EXPECT_EQ(verdict(oval(most, one), oval(most, one), one), Verdict::too_big);
  EXPECT_EQ(verdict(polygon(11, most, most, false), circle(Length::nm(limit / 10 * 9))), Verdict::fits);
  EXPECT_EQ(verdict(polygon(360, most, one, true), rectangle(one, one)), Verdict::fits);
  EXPECT_EQ(verdict(polygon(360, most, one, false), rectangle(one, one)), Verdict::too_big);
  EXPECT_EQ(verdict(square(most), rectangle(Length::mm(2'000), one)), Verdict::too_big);
  EXPECT_EQ(verdict(square(most), square(one), Length::mm(1'000'000)), Verdict::too_big);
}

// The border may be wider than the edge of an oval is curved: its inner curve has corners there.
TEST(Verdict, NearTheEndsOfASlimOval) {
  // Half axes 50 and 10 mm: at the ends the edge is curved with 2 mm. On the long axis a border of 5 mm holds
  // up to √((50² - 10²)(1 - 5²/10²)) = 42.43 mm from the middle, not up to 50 - 5 mm.
  const Shape slim = oval(Length::mm(100), Length::mm(20));
  const auto flat = [](std::int64_t half_nm) { return rectangle(Length::nm(2 * half_nm), Length::nm(2)); };
  // (The panel is 2 nm high, which takes less than 3 nm off.)
  EXPECT_EQ(verdict(slim, flat(42'426'403), Length::mm(5)), Verdict::fits);
  EXPECT_EQ(verdict(slim, flat(42'426'407), Length::mm(5)), Verdict::too_big);
  EXPECT_EQ(verdict(slim, flat(44'000'000), Length::mm(5)), Verdict::too_big);
  EXPECT_EQ(verdict(slim, flat(48'900'000), Length::mm(1)), Verdict::fits);
}

TEST(Verdict, APolygonHasItsOwnWayUp) {
  const Shape flat = polygon(6, in64(400), in64(346), true);
  EXPECT_EQ(verdict(flat, polygon(6, in64(300), in64(259), true)), Verdict::fits);
  EXPECT_EQ(verdict(flat, polygon(6, in64(300), in64(259), false)), Verdict::fits);
  EXPECT_EQ(verdict(flat, polygon(6, in64(346), in64(346), true)), Verdict::fits);
  EXPECT_EQ(verdict(flat, polygon(6, in64(346), in64(346), false)), Verdict::too_big);
  // A triangle on its base in one on its point: half as large fits, more does not.
  const Shape base_down = polygon(3, in64(200), in64(180), false);
  EXPECT_EQ(verdict(base_down, polygon(3, in64(100), in64(90), true)), Verdict::fits);
  EXPECT_EQ(verdict(base_down, polygon(3, in64(100) + Length::nm(1), in64(90), true)), Verdict::too_big);
}

TEST(Verdict, TheSmallestOpeningMayBeNone) {
  const auto snug = verdict_of({square(in64(2)), in64(2)}, square(in64(1)), Length());
  ASSERT_TRUE(snug);
  EXPECT_EQ(*snug, Verdict::snug);
}

TEST(Verdict, Words) {
  EXPECT_EQ(verdict_word(Verdict::fits), "fits");
  EXPECT_EQ(verdict_word(Verdict::snug), "snug");
  EXPECT_EQ(verdict_word(Verdict::too_big), "too big");
  EXPECT_EQ(verdict_word(Verdict::undecided), "undecided");
  EXPECT_EQ(panel_kind_word(PanelKind::even_border), "even-border");
  EXPECT_EQ(panel_kind_word(PanelKind::given_side), "given-side");
}

}  // namespace
}  // namespace insetbook
