// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

constexpr Length step = Length::inch_fraction(1, 16);

std::optional<Framing> framed(const Shape& opening, const Shape& panel, Length border = Length(),
                              bool may_turn = false, Length give_or_take = Length()) {
  const auto result = framing({opening, give_or_take}, panel, border, step, may_turn);
  EXPECT_TRUE(result.has_value());
  return result ? *result : std::nullopt;
}

// "left 8 right 8 top 4 bottom 4 greatest 4 even strip turned fits", in 64ths; "strip": as wide everywhere.
std::string said(const std::optional<Framing>& framing) {
  if (!framing) return "no";
  const auto marks = [](Length length) { return std::to_string(length / in64(1)); };
  return "left " + marks(framing->left) + " right " + marks(framing->right) + " top " + marks(framing->top) +
         " bottom " + marks(framing->bottom) + " greatest " + marks(framing->greatest_border) +
         (framing->even ? " even" : "") + (framing->even_strip ? " strip" : "") +
         (framing->turned ? " turned" : "") + " " + std::string(verdict_word(framing->verdict));
}

struct Row {
  Shape opening, panel;
  std::string says;
};

TEST(Framing, SaysHowAPanelLies) {
  const std::vector<Row> rows = {
      {rectangle(in64(200), in64(264)), rectangle(in64(192), in64(256)),
       "left 4 right 4 top 4 bottom 4 greatest 4 even strip fits"},
      {rectangle(in64(200), in64(264)), rectangle(in64(192), in64(252)),
       "left 4 right 4 top 6 bottom 6 greatest 4 even strip fits"},  // 2/64 apart: half a step
      {rectangle(in64(200), in64(264)), rectangle(in64(192), in64(251)),
       "left 4 right 4 top 6 bottom 6 greatest 4 fits"},
      {rectangle(in64(200), in64(264)), rectangle(in64(200), in64(264)),
       "left 0 right 0 top 0 bottom 0 greatest 0 even strip fits"},
      {rectangle(in64(200), in64(264)), rectangle(in64(201), in64(264)), "no"},
      {circle(in64(160)), circle(in64(152)), "left 4 right 4 top 4 bottom 4 greatest 4 even strip fits"},
      {circle(in64(160)), square(in64(104)), "left 28 right 28 top 28 bottom 28 greatest 6 even fits"},
      {square(in64(160)), circle(in64(152)), "left 4 right 4 top 4 bottom 4 greatest 4 even fits"},
      {oval(in64(160), in64(200)), oval(in64(152), in64(192)),
       "left 4 right 4 top 4 bottom 4 greatest 3 even strip fits"},
      {rounded(in64(200), in64(264), in64(16)), rounded(in64(192), in64(256), in64(12)),
       "left 4 right 4 top 4 bottom 4 greatest 4 even strip fits"},
      {rounded(in64(200), in64(264), in64(16)), rectangle(in64(192), in64(256)),
       "no"},  // its corners, 12 √2 from the middle of the round ones, are outside them
      {rounded(in64(200), in64(264), in64(16)), rectangle(in64(192), in64(248)),
       "left 4 right 4 top 8 bottom 8 greatest 1 fits"},
      {rounded(in64(200), in64(264), in64(16)), rounded(in64(192), in64(256), in64(60)),
       "left 4 right 4 top 4 bottom 4 greatest 4 even fits"},  // too round: the strip widens at the corners
      {polygon(6, in64(400), in64(346), true), polygon(6, in64(300), in64(260), true),
       "left 50 right 50 top 43 bottom 43 greatest 43 strip fits"},
      {polygon(8, in64(400), in64(400), true), polygon(8, in64(300), in64(300), true),
       "left 50 right 50 top 50 bottom 50 greatest 50 even strip fits"},
      {polygon(6, in64(400), in64(346), true), circle(in64(300)),
       "left 50 right 50 top 23 bottom 23 greatest 23 fits"},
  };
  for (const Row& row : rows) {
    EXPECT_EQ(said(framed(row.opening, row.panel)), row.says)
        << describe(row.opening, Unit::inch) << " / " << describe(row.panel, Unit::inch);
  }
}

TEST(Framing, PutsAPanelInATriangleWhereItsBorderIsGreatest) {
  // Base 6, height 4: the inscribed circle is 3 wide and touches the base.
  const auto framing = framed(polygon(3, in64(384), in64(256), false), circle(in64(64)));
  ASSERT_TRUE(framing);
  EXPECT_EQ(framing->greatest_border, in64(64));
  EXPECT_EQ(framing->bottom, in64(64));
  EXPECT_EQ(framing->top, in64(128));
  EXPECT_NEAR(static_cast<double>(framing->left.nm()), static_cast<double>(in64(88).nm()), 2.0);
  EXPECT_EQ(framing->left, framing->right);
  EXPECT_FALSE(framing->even);
  const auto same = framed(polygon(3, in64(384), in64(256), false), polygon(3, in64(192), in64(128), false));
  ASSERT_TRUE(same);
  EXPECT_EQ(same->greatest_border, in64(48));
  EXPECT_TRUE(same->even_strip);
  EXPECT_FALSE(same->even);
}

TEST(Framing, TurnsAnUnplacedPanelWhereThatLeavesMore) {
  const Shape opening = rectangle(in64(200), in64(264)), panel = rectangle(in64(256), in64(192));
  EXPECT_EQ(said(framed(opening, panel)), "no");
  EXPECT_EQ(said(framed(opening, panel, Length(), true)),
            "left 4 right 4 top 4 bottom 4 greatest 4 even strip turned fits");
  EXPECT_EQ(said(framed(opening, rectangle(in64(192), in64(180)), Length(), true)),
            "left 10 right 10 top 36 bottom 36 greatest 10 turned fits");
  EXPECT_EQ(said(framed(opening, rectangle(in64(180), in64(192)), Length(), true)),
            "left 10 right 10 top 36 bottom 36 greatest 10 fits");
  // As much either way: as written.
  EXPECT_EQ(said(framed(circle(in64(200)), rectangle(in64(100), in64(120)), Length(), true)),
            said(framed(circle(in64(200)), rectangle(in64(100), in64(120)))));
  // A hexagon turned by a quarter has a point where it was flat.
  EXPECT_EQ(said(framed(polygon(6, in64(346), in64(400), false), polygon(6, in64(400), in64(346), true),
                        Length(), true)),
            "left 0 right 0 top 0 bottom 0 greatest 0 even strip turned fits");
}

TEST(Framing, AsksForTheBorder) {
  const Shape opening = rectangle(in64(200), in64(264)), panel = rectangle(in64(192), in64(256));
  EXPECT_TRUE(framed(opening, panel, in64(4)));
  EXPECT_FALSE(framed(opening, panel, in64(4) + Length::nm(1)));
}

TEST(Framing, IsSnugWhenTheOpeningMayBeTooSmall) {
  const Shape opening = rectangle(in64(200), in64(264)), panel = rectangle(in64(198), in64(262));
  EXPECT_EQ(framed(opening, panel, Length(), false, in64(2))->verdict, Verdict::fits);
  EXPECT_EQ(framed(opening, panel, Length(), false, in64(2) + Length::nm(1))->verdict, Verdict::snug);
}

TEST(Framing, NothingLargerThanTheOpening) {
  EXPECT_FALSE(framed(circle(in64(200)), rectangle(Length::mm(5000), Length::mm(3))));
  EXPECT_FALSE(framed(circle(Length::nm(1)), rectangle(Length::nm(1), Length::nm(1))));
  EXPECT_TRUE(framed(square(Length::nm(1)), circle(Length::nm(1))));
}

TEST(Framing, SaysWhatIsNotComputed) {
  const auto other =
      framing({circle(in64(100)), {}}, plain(ShapeKind::other, in64(10), in64(10)), {}, step, true);
  ASSERT_FALSE(other);
  EXPECT_EQ(other.error().what, "what fits the shape \"other\" is not computed yet");
  const auto sides =
      framing({plain(ShapeKind::polygon, in64(100), in64(100)), {}}, circle(in64(10)), {}, step, true);
  ASSERT_FALSE(sides);
  EXPECT_EQ(sides.error().what, "the number of sides is missing");
}

}  // namespace
}  // namespace insetbook
