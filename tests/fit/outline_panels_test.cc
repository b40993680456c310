// SPDX-License-Identifier: GPL-3.0-or-later
//
// What fits in openings that are outlines, through the same questions as for plain shapes.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;
using testing::ElementsAre;

Length mm(std::int64_t n) {
  return Length::mm(n);
}

Shape drawn(const char* path, Length width, Length height) {
  Shape shape = plain(ShapeKind::outline, width, height);
  shape.outline = path;
  return shape;
}

const Shape letter = drawn("M0 0 H20 V30 H50 V45 H0 Z", mm(50), mm(45));

FitQuestion asking(std::vector<ShapeKind> shapes, Length border = {}) {
  FitQuestion question;
  question.border = border;
  question.step = mm(1);
  question.shapes = std::move(shapes);
  return question;
}

// "largest rectangle 20 x 45 mm at 0, 0, in the middle, fits, 0 round it"
std::string said(const Panel& panel) {
  const auto nm = [](Length length) {
    const std::int64_t whole = length.nm() / 1'000'000, rest = length.nm() % 1'000'000;
    return (std::to_string(whole) + "." + std::to_string(1'000'000 + rest).substr(1)).substr(0, 6);
  };
  return std::string(panel_kind_word(panel.kind)) + " " + std::string(shape_word(panel.shape.kind)) + " " +
         std::to_string(panel.shape.width.nm() / 1'000'000) + " x " +
         std::to_string(panel.shape.height.nm() / 1'000'000) + " mm at " + nm(panel.left) + ", " +
         nm(panel.top) + (panel.centred ? ", in the middle, " : ", ") +
         std::string(verdict_word(panel.verdict)) + ", " + nm(panel.border) + " round it" +
         (panel.note.empty() ? "" : "; " + panel.note);
}

std::vector<std::string> all(const Opening& opening, const FitQuestion& question) {
  const auto panels = panels_inside(opening, question);
  if (!panels) return {"problem: " + panels.error().what};
  std::vector<std::string> result;
  for (const Panel& panel : *panels) result.push_back(said(panel));
  return result;
}

// The circle touches both outer sides and the inner corner: r² - 70 r + 625 = 0, so that it is 21.01 across.
TEST(OutlinePanels, LetterWithItsPlaces) {
  EXPECT_THAT(all({letter, {}}, asking({ShapeKind::rectangle, ShapeKind::square, ShapeKind::circle})),
              ElementsAre("largest rectangle 20 x 45 mm at 0.0000, 0.0000, fits, 0.0000 round it",
                          "proportional rectangle 20 x 18 mm at 0.0000, 13.500, fits, 0.0000 round it",
                          "largest square 20 x 20 mm at 0.0000, 12.500, fits, 0.0000 round it",
                          testing::StartsWith("largest circle 21 x 21 mm at ")));
}

// The arch is a half circle of 30 on upright sides. With a border of 2 a rectangle w wide reaches √(28² -
// w²/4) above the middle of the circle and 48 below it; the circle of 56 touches all along the top.
TEST(OutlinePanels, Arch) {
  const Shape arch = plain(ShapeKind::arch, mm(60), mm(80));
  std::vector<std::string> panels = all({arch, {}}, asking({}, mm(2)));
  ASSERT_EQ(panels.size(), 6U) << testing::PrintToString(panels);
  // Round a half circle of 28 about the same middle the border is 2 all along.
  EXPECT_EQ(panels[0], "largest arch 56 x 76 mm at 2.0000, 2.0000, in the middle, fits, 2.0000 round it");
  double best = 0;
  int wide = 0, high = 0;
  for (int w = 1; w <= 56; ++w) {
    const int h = static_cast<int>(48 + std::sqrt(28 * 28 - w * w / 4.0));
    if (w * h > best) best = wide = w, high = h, best = w * h;
  }
  EXPECT_EQ(panels[2].substr(0, 28),
            "largest rectangle " + std::to_string(wide) + " x " + std::to_string(high) + " mm");
  EXPECT_EQ(panels[5], "largest circle 56 x 56 mm at 2.0000, 12.000, in the middle, fits, 2.0000 round it");
}

TEST(OutlinePanels, HeartInAHeart) {
  const Shape heart = plain(ShapeKind::heart, mm(80), mm(70));
  const auto panels = panels_inside({heart, {}}, asking({ShapeKind::heart}, mm(2)));
  ASSERT_TRUE(panels && !panels->empty());
  for (const Panel& panel : *panels) {
    EXPECT_EQ(panel.shape.kind, ShapeKind::heart);
    EXPECT_GE(panel.border, mm(2));
    EXPECT_LE(panel.shape.width, mm(76));
    EXPECT_LE(panel.shape.height, mm(66));
    EXPECT_GE(panel.shape.width, mm(72));
    EXPECT_GE(panel.shape.height, mm(62));
    EXPECT_EQ(verdict_of({heart, {}}, panel.shape, mm(2)), Verdict::fits);
    EXPECT_EQ(verdict_of({heart, mm(1)}, panel.shape, mm(2)), Verdict::fits);
    EXPECT_EQ(verdict_of({heart, mm(8)}, panel.shape, mm(2)), Verdict::snug);
  }
}

// The same shape with a border lies across its own bay never, since the bay is made smaller too: so the last
// panel of a horseshoe is one that lies in its bow or in a leg, and with no border the horseshoe itself.
TEST(OutlinePanels, HorseshoeInItself) {
  const Shape horseshoe = drawn("M0 0H64V60H44V20H20V60H0Z", mm(64), mm(60));
  const auto panels = panels_inside({horseshoe, {}}, asking({ShapeKind::outline}));
  ASSERT_TRUE(panels && !panels->empty());
  EXPECT_EQ(panels->front().shape.width, mm(64));
  EXPECT_EQ(panels->front().shape.height, mm(60));
  // In the bow, 20 mm high, 18 mm of height are left: 20 x 60 / 64 = 18.75; a border is even with up to 5 mm
  // more of width than of height.
  EXPECT_THAT(all({horseshoe, {}}, asking({ShapeKind::outline}, mm(1))),
              ElementsAre(testing::StartsWith("largest outline 23 x 18 mm at "),
                          testing::StartsWith("proportional outline 20 x 18 mm at ")));
  for (const std::string& panel : all({horseshoe, {}}, asking({ShapeKind::outline}, mm(1))))
    EXPECT_EQ(panel.find(';'), std::string::npos) << panel;  // nothing is left open
}

// A plain opening and a panel that is not. The least circle round the heart of 51, by going through its
// middle's heights, is 55.887 across; round one of 52 it is 52/51 of that.
TEST(OutlinePanels, HeartInACircle) {
  const std::vector<std::string> panels =
      all({circle(mm(60)), {}}, asking({ShapeKind::circle, ShapeKind::heart}, mm(2)));
  ASSERT_EQ(panels.size(), 2U);
  EXPECT_EQ(panels[0], "largest circle 56 x 56 mm at 2.0000, 2.0000, in the middle, fits, 2.0000 round it");
  EXPECT_EQ(panels[1].substr(0, 23), "largest heart 51 x 51 m");
}

TEST(OutlinePanels, Verdicts) {
  const Shape arch = plain(ShapeKind::arch, mm(60), mm(80));
  EXPECT_EQ(verdict_of({arch, {}}, circle(mm(56)), mm(2)), Verdict::fits);
  EXPECT_EQ(verdict_of({arch, {}}, circle(mm(56) + Length::nm(100)), mm(2)), Verdict::too_big);
  EXPECT_EQ(verdict_of({arch, mm(3)}, circle(mm(57)), Length()), Verdict::fits);
  EXPECT_EQ(verdict_of({arch, mm(3) + Length::nm(1)}, circle(mm(57)), Length()), Verdict::snug);
  EXPECT_EQ(verdict_of({arch, {}}, circle(mm(61)), Length()), Verdict::too_big);
  EXPECT_EQ(verdict_of({letter, {}}, rectangle(mm(20), mm(45)), Length()), Verdict::fits);
  EXPECT_EQ(verdict_of({letter, {}}, rectangle(mm(20), mm(45)), Length::nm(1)), Verdict::too_big);
  EXPECT_EQ(verdict_of({circle(mm(60)), {}}, plain(ShapeKind::arch, mm(30), mm(40)), mm(2)), Verdict::fits);
  EXPECT_EQ(verdict_of({circle(mm(60)), {}}, plain(ShapeKind::arch, mm(50), mm(50)), mm(2)),
            Verdict::too_big);
}

// Scaled to a smaller box, an opening would have a smaller window too, and a wider leg beside its bay: what
// is `fits` keeps half of the give or take from the line as measured as well.
TEST(OutlinePanels, AGiveOrTakeLeavesHolesAndBaysAsTheyAre) {
  // The ring round the window is 10 mm wide; scaled to 58 of 60 mm it were 9.67.
  const Shape ring = drawn("M0 0H60V60H0ZM10 10V50H50V10Z", mm(60), mm(60));
  const auto verdict = [&](const Shape& opening, Length high, Length give_or_take) {
    return verdict_of({opening, give_or_take}, rectangle(mm(8), high), Length());
  };
  const Length tenth = Length::nm(100'000);
  EXPECT_EQ(verdict_of({ring, mm(2)}, rectangle(mm(8), mm(30)), Length()), Verdict::fits);
  EXPECT_EQ(verdict_of({ring, mm(2)}, rectangle(mm(8) + tenth, mm(30)), Length()), Verdict::snug);
  EXPECT_EQ(verdict_of({ring, mm(2)}, rectangle(mm(10), mm(30)), Length()), Verdict::snug);
  // In a slot that takes 8 mm as measured and none of its scaling, which is wider beside the bay.
  const Shape bay = drawn("M0 0H60V60H40V50H50V10H10V50H20V60H0Z", mm(60), mm(60));
  EXPECT_EQ(verdict(bay, mm(40), Length()), Verdict::fits);
  EXPECT_EQ(verdict(bay, mm(40), mm(2)), Verdict::fits);
  EXPECT_EQ(verdict(bay, mm(40), mm(2) + Length::nm(10)), Verdict::snug);
  const auto framed = framing({ring, mm(2)}, rectangle(mm(9), mm(30)), Length(), mm(1), false);
  ASSERT_TRUE(framed && *framed);
  EXPECT_EQ((*framed)->verdict, Verdict::snug);
  // Of a heart some point sees all, and it lies in itself when it is smaller: there the scaled one counts.
  const Shape heart = plain(ShapeKind::heart, mm(60), mm(60));
  EXPECT_EQ(verdict_of({heart, mm(2)}, plain(ShapeKind::heart, mm(57), mm(57)), Length()), Verdict::fits);
}

TEST(OutlinePanels, Framings) {
  const Shape arch = plain(ShapeKind::arch, mm(60), mm(80));
  const auto centred = framing({arch, {}}, circle(mm(50)), Length(), mm(1), true);
  ASSERT_TRUE(centred && *centred);
  EXPECT_EQ((*centred)->greatest_border, mm(5));
  EXPECT_EQ((*centred)->left, mm(5));
  EXPECT_EQ((*centred)->right, mm(5));
  EXPECT_EQ((*centred)->top, mm(15));
  EXPECT_EQ((*centred)->bottom, mm(15));
  EXPECT_FALSE((*centred)->even);
  EXPECT_FALSE((*centred)->turned);

  const auto turned = framing({arch, {}}, rectangle(mm(50), mm(40)), Length(), mm(1), true);
  ASSERT_TRUE(turned && *turned);
  EXPECT_TRUE((*turned)->turned);

  // Only beside the middle.
  const auto beside = framing({letter, {}}, rectangle(mm(18), mm(43)), Length(), mm(1), false);
  ASSERT_TRUE(beside && *beside);
  EXPECT_EQ((*beside)->left, mm(1));
  EXPECT_EQ((*beside)->right, mm(1));
  EXPECT_EQ((*beside)->greatest_border, mm(1));
  EXPECT_TRUE((*beside)->even);
  EXPECT_FALSE(*framing({letter, {}}, rectangle(mm(21), mm(40)), Length(), mm(1), false));
}

// A heart does not reach its box in the middle of its top: the way to the line is taken from its two highest
// places, and so on each side.
TEST(OutlinePanels, FramingsOfAPanelThatIsDrawn) {
  const Shape heart = plain(ShapeKind::heart, mm(40), mm(40));
  const auto in_rectangle = framing({rectangle(mm(50), mm(60)), {}}, heart, Length(), mm(1), false);
  ASSERT_TRUE(in_rectangle && *in_rectangle);
  EXPECT_EQ((*in_rectangle)->left, mm(5));
  EXPECT_EQ((*in_rectangle)->right, mm(5));
  EXPECT_EQ((*in_rectangle)->top, mm(10));
  EXPECT_EQ((*in_rectangle)->bottom, mm(10));
  const auto in_heart = framing({plain(ShapeKind::heart, mm(50), mm(50)), {}}, heart, Length(), mm(1), false);
  ASSERT_TRUE(in_heart && *in_heart);
  // The most border is not quite in the middle: as far to the left as to the right, and lower.
  EXPECT_LT((*in_heart)->left - (*in_heart)->right, Length::nm(3000));
  EXPECT_LT((*in_heart)->right - (*in_heart)->left, Length::nm(3000));
  const auto centred =
      border_in_the_middle({plain(ShapeKind::heart, mm(50), mm(50)), {}}, heart, Length(), false);
  ASSERT_TRUE(centred);
  EXPECT_GE((*in_heart)->greatest_border, *centred);
}

// The most border is not always in the middle: in a triangle 60 mm wide and 60 high with its point up a
// circle lies deepest at the centre of the circle in it, whose radius is area / (girth / 2) = 1800 / (30 + 30
// sqrt 5) = 18.541 mm.
TEST(OutlinePanels, TheGreatestBorderIsThatOfTheBestPlace) {
  Shape triangle = plain(ShapeKind::outline, mm(60), mm(60));
  triangle.outline = "M0 60L30 0L60 60Z";
  for (const int across : {10, 16, 20, 30}) {
    const auto framed = framing({triangle, {}}, circle(mm(across)), Length(), mm(1), false);
    ASSERT_TRUE(framed && *framed) << across;
    const double most = (1800 / (30 + 30 * std::sqrt(5.0)) - across / 2.0) * 1e6;
    EXPECT_LE(static_cast<double>((*framed)->greatest_border.nm()), most) << across;
    EXPECT_GE(static_cast<double>((*framed)->greatest_border.nm()), most - 20'000) << across;
  }
}

// A heart as large as a drawn square touches all its sides on curves, which is left undecided: that nothing
// fits would be too much said.
TEST(OutlinePanels, NothingFoundIsNotNothingFits) {
  const Shape square = drawn("M0 0H10V10H0Z", mm(10), mm(10));
  FitQuestion question = asking({ShapeKind::heart});
  question.step = mm(10);
  EXPECT_THAT(
      all({square, {}}, question),
      ElementsAre("problem: nothing was found to fit: one step more is too close to tell, and was not "
                  "taken"));
  EXPECT_THAT(all({square, {}}, asking({ShapeKind::heart}, mm(5))), testing::IsEmpty());
}

TEST(OutlinePanels, WhatIsNotKnownIsSaid) {
  EXPECT_THAT(
      all({plain(ShapeKind::tag, mm(40), mm(60)), {}}, asking({})),
      ElementsAre("problem: " + missing_figure(plain(ShapeKind::tag, mm(40), mm(60))) + " is missing"));
  EXPECT_THAT(all({plain(ShapeKind::other, mm(40), mm(60)), {}}, asking({})),
              ElementsAre("problem: what fits the shape \"other\" is not computed yet"));
  EXPECT_THAT(all({letter, {}}, asking({ShapeKind::polygon})),
              ElementsAre("problem: how many sides the polygon should have is not said"));
}

}  // namespace
}  // namespace insetbook
