// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr Length step = Length::inch_fraction(1, 16);

std::vector<std::string> panels(const Shape& shape, Length border, std::vector<ShapeKind> shapes = {},
                                Length give_or_take = Length::inch_fraction(1, 32)) {
  FitQuestion question;
  question.border = border;
  question.step = step;
  question.shapes = std::move(shapes);
  return lines(panels_inside({shape, give_or_take}, question));
}

TEST(PanelsInside, ARectangle) {
  EXPECT_THAT(panels(rectangle(in64(208), in64(272)), in64(4)),
              ElementsAre("largest rectangle 200 x 264, fits", "largest square 200 x 200, fits",
                          "largest circle 200 x 200, fits"));
}

TEST(PanelsInside, TouchingTheLineIsSnug) {
  EXPECT_THAT(panels(rectangle(in64(208), in64(272)), Length()),
              ElementsAre("largest rectangle 208 x 272, snug", "largest square 208 x 208, snug",
                          "largest circle 208 x 208, snug"));
  EXPECT_THAT(panels(rectangle(in64(208), in64(272)), Length(), {ShapeKind::rectangle}, Length()),
              ElementsAre("largest rectangle 208 x 272, fits"));
}

TEST(PanelsInside, GiveOrTakeIsOfTheWholeWidth) {
  // 4/64 in show on each side, 8/64 in all: an opening 8/64 smaller still holds it, one 8/64 and 1 nm smaller
  // does not.
  const Shape opening = rectangle(in64(208), in64(272));
  EXPECT_THAT(panels(opening, in64(4), {ShapeKind::rectangle}, in64(8)),
              ElementsAre("largest rectangle 200 x 264, fits"));
  EXPECT_THAT(panels(opening, in64(4), {ShapeKind::rectangle}, in64(8) + Length::nm(1)),
              ElementsAre("largest rectangle 200 x 264, snug"));
}

TEST(PanelsInside, ACircle) {
  EXPECT_THAT(panels(circle(in64(160)), in64(4)),
              ElementsAre("largest circle 152 x 152, fits", "largest rectangle 104 x 108, fits",
                          "proportional rectangle 104 x 104, fits"));
}

TEST(PanelsInside, ASquareIsNotListedTwice) {
  EXPECT_THAT(panels(square(in64(128)), in64(8)),
              ElementsAre("largest square 112 x 112, fits", "largest circle 112 x 112, fits"));
}

TEST(PanelsInside, ARoundedRectangleKeepsItsStripRoundTheCorners) {
  FitQuestion question;
  question.border = in64(4);
  question.step = step;
  const auto answer = panels_inside({rounded(in64(208), in64(272), in64(32)), Length()}, question);
  ASSERT_TRUE(answer);
  ASSERT_FALSE(answer->empty());
  EXPECT_EQ(answer->front().shape, rounded(in64(200), in64(264), in64(28)));
  EXPECT_EQ(answer->front().border, in64(4));
}

TEST(PanelsInside, AnOvalPulledInIsNoOval) {
  // 3 x 4 in less 1/8 in on each side would be 2-3/4 x 3-3/4 in; that oval comes too near the line at its
  // shoulders.
  EXPECT_EQ(*verdict_of({oval(in64(192), in64(256)), {}}, oval(in64(176), in64(240)), in64(8)),
            Verdict::too_big);
  EXPECT_THAT(panels(oval(in64(192), in64(256)), in64(8), {ShapeKind::oval}),
              ElementsAre("largest oval 176 x 236, fits"));
}

TEST(PanelsInside, AGivenSide) {
  FitQuestion question;
  question.border = in64(4);
  question.step = step;
  question.width = in64(97);  // need not lie on a step
  EXPECT_THAT(lines(panels_inside({circle(in64(160)), Length()}, question)),
              ElementsAre("given-side circle 97 x 97, fits", "given-side rectangle 97 x 116, fits",
                          "given-side square 97 x 97, fits"));
  question.height = in64(120);
  EXPECT_THAT(lines(panels_inside({circle(in64(160)), Length()}, question)), IsEmpty());
  question.width = std::nullopt;
  question.shapes = {ShapeKind::rectangle};
  EXPECT_THAT(lines(panels_inside({circle(in64(160)), Length()}, question)),
              ElementsAre("given-side rectangle 92 x 120, fits"));
  question.width = in64(92);
  EXPECT_THAT(lines(panels_inside({circle(in64(160)), Length()}, question)),
              ElementsAre("given-side rectangle 92 x 120, fits"));
}

TEST(PanelsInside, NothingFits) {
  EXPECT_THAT(panels(circle(in64(160)), in64(80)), IsEmpty());
  EXPECT_THAT(panels(circle(in64(160)), in64(400)), IsEmpty());
  EXPECT_THAT(panels(rectangle(in64(3), in64(272)), Length()), IsEmpty());
  EXPECT_THAT(panels(rectangle(Length::nm(1), Length::nm(1)), Length()), IsEmpty());
}

TEST(PanelsInside, AnOpeningOfOneStep) {
  EXPECT_THAT(panels(square(in64(4)), Length(), {ShapeKind::square}, Length()),
              ElementsAre("largest square 4 x 4, fits"));
}

TEST(PanelsInside, EqualAreasAreNearestTheProportions) {
  // 3 steps by 4 and 4 by 3 both fit a circle of 5 steps; the upright one is taken.
  EXPECT_THAT(panels(circle(in64(20)), Length(), {ShapeKind::rectangle}, Length()),
              ElementsAre("largest rectangle 12 x 16, fits", "proportional rectangle 12 x 12, fits"));
}

TEST(PanelsInside, SaysWhatIsMissing) {
  Shape corners = plain(ShapeKind::rounded_rectangle, in64(100), in64(100));
  EXPECT_THAT(
      panels(corners, Length()),
      ElementsAre("problem: the corner radius is missing; expected: the corner radius in the figures of the "
                  "rounded rectangle, which are written \"radius 1/4 in\""));
  EXPECT_THAT(
      panels(plain(ShapeKind::other, in64(100), in64(100)), Length()),
      ElementsAre("problem: what fits the shape \"other\" is not computed yet; expected: a shape with an "
                  "outline: from its figures, or path data"));
  EXPECT_THAT(
      panels(circle(in64(100)), Length(), {ShapeKind::tag}),
      ElementsAre(
          "problem: the cut of the top corners is missing; expected: the cut of the top corners in the "
          "figures of the tag, which are written \"corner 1/2 in\", \"radius 1/4 in\", \"hole 1/4 in\", "
          "\"hole down "
          "1/8 in\""));
  EXPECT_THAT(
      panels(circle(in64(100)), Length(), {ShapeKind::polygon}),
      ElementsAre(
          "problem: how many sides the polygon should have is not said; expected: an opening that is a "
          "polygon, or another shape"));
  EXPECT_THAT(
      panels(circle(Length::nm((std::int64_t{1} << 30) + 1)), Length()),
      ElementsAre("problem: a figure is too large to compute with; expected: at most 1073 mm (42 in)"));
}

}  // namespace
}  // namespace insetbook
