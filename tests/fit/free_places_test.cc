// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>

#include "fit/free_circle.h"
#include "fit/free_outline.h"
#include "fit/free_rectangle.h"
#include "fit/outlines.h"

namespace insetbook {
namespace {

using namespace testing_outlines;

constexpr std::int64_t mm = 1'000'000;

Chain squares(std::int64_t step, std::int64_t count) {
  return {count, [step](std::int64_t n) { return Sides{n * step, n * step}; }};
}

std::string written(const FoundPlace& found) {
  std::string text = "none";
  if (found.placed) {
    text = std::to_string(found.placed->sides.width / mm) + " x " +
           std::to_string(found.placed->sides.height / mm);
  }
  return found.undecided ? text + (found.ended ? ", ended" : ", undecided") : text;
}

std::string largest(const Outline& outline, std::int64_t border) {
  return written(largest_rectangle(EdgeTree(outline), border, mm));
}
std::string square(const Outline& outline, std::int64_t border) {
  return written(last_rectangle(EdgeTree(outline), border, squares(mm, 1000)));
}
std::string circle(const Outline& outline, std::int64_t border) {
  return written(last_circle(EdgeTree(outline), border, squares(mm, 1000)));
}

TEST(FreePlaces, TouchingOnAllSides) {
  const Outline box = one(box_ring(0, 0, 60 * mm, 40 * mm));
  EXPECT_EQ(largest(box, 0), "60 x 40");
  EXPECT_EQ(largest(box, 2 * mm), "56 x 36");
  EXPECT_EQ(square(box, 0), "40 x 40");
  EXPECT_EQ(circle(box, 0), "40 x 40");
  EXPECT_EQ(circle(box, 2 * mm), "36 x 36");
}

// A horseshoe as wide as high, open below: a bay of half its width up to a quarter of its height.
EdgeTree horseshoe_of(std::int64_t size) {
  const std::int64_t part = size / 4;
  return EdgeTree(one(ring({{0, 0},
                            {4 * part, 0},
                            {4 * part, 4 * part},
                            {3 * part, 4 * part},
                            {3 * part, part},
                            {part, part},
                            {part, 4 * part},
                            {0, 4 * part}})));
}

EdgeTree horseshoe(std::int64_t n) {
  return horseshoe_of(n * mm);
}

// A pillar 23 mm wide stands in a room of 60 mm, 15 mm from its top. With 1 mm round it a horseshoe straddles
// it where its bay takes the pillar, n / 2 >= 25, and its top goes over it, n / 4 <= 13; else it is beside
// the pillar, n <= 16.5, or over it, n <= 13. So n = 50, 51, 52 and up to 16 fit, and those between do not.
TEST(FreePlaces, ASmallerOneOfAShapeMayNotFit) {
  const EdgeTree room(one(ring({{0, 0},
                                {60 * mm, 0},
                                {60 * mm, 60 * mm},
                                {41'500'000, 60 * mm},
                                {41'500'000, 15 * mm},
                                {18'500'000, 15 * mm},
                                {18'500'000, 60 * mm},
                                {0, 60 * mm}})));
  for (const bool scaled : {false, true}) {
    const auto last_of = [&](std::int64_t count) {
      return written(last_outline(room, mm, {squares(mm, count), horseshoe, scaled}));
    };
    EXPECT_EQ(last_of(100), "52 x 52");
    EXPECT_EQ(last_of(51), "51 x 51");
    EXPECT_EQ(last_of(49), "16 x 16");
  }
  // Of finer steps few panels are looked at where those that are excluded take others with them.
  const auto made = [&](bool scaled) {
    int count = 0;
    const auto tenth = [&](std::int64_t n) {
      ++count;
      return horseshoe_of(n * mm / 10);
    };
    const FoundPlace found = last_outline(room, mm, {squares(mm / 10, 499), tenth, scaled});
    EXPECT_GE(found.placed->sides.width, 16'400'000);  // 16.5 mm touches on both sides
    EXPECT_LE(found.placed->sides.width, 16'500'000);
    return count;
  };
  EXPECT_LT(made(true), 100);
  EXPECT_GT(made(false), 300);
}

TEST(FreePlaces, OneNanometreLess) {
  EXPECT_EQ(largest(one(box_ring(0, 0, 60 * mm - 1, 40 * mm)), 0), "59 x 40");
  EXPECT_EQ(largest(one(box_ring(0, 0, 60 * mm, 40 * mm - 1)), 0), "60 x 39");
  EXPECT_EQ(square(one(box_ring(0, 0, 60 * mm, 40 * mm - 1)), 0), "39 x 39");
  EXPECT_EQ(circle(one(box_ring(0, 0, 60 * mm, 40 * mm - 1)), 0), "39 x 39");
}

// Along a whole line of middles half a nanometre is missing: too many places to exclude one by one.
TEST(FreePlaces, UndecidedAlongALine) {
  const Outline with_nib = one(ring({{0, 0},
                                     {60 * mm, 0},
                                     {60 * mm, 41 * mm},
                                     {59 * mm, 41 * mm},
                                     {59 * mm, 40 * mm - 1},
                                     {0, 40 * mm - 1}}));
  EXPECT_EQ(circle(with_nib, 0), "39 x 39, ended");
}

// Round an arc of a circle the answer hangs on where between two true outlines the edge runs: that is too
// close to tell, and no search that was ended.
TEST(FreePlaces, TooCloseIsNotEnded) {
  Outline round = ellipse(40 * mm, 40 * mm, 720);
  round.error = 400'000;
  const FoundPlace found = last_circle(EdgeTree(round), 0, squares(mm, 1000));
  ASSERT_TRUE(found.undecided);
  EXPECT_EQ(found.undecided->width, 40 * mm);
  EXPECT_FALSE(found.ended);
}

// A triangle 60 mm wide and 60 high with its point up takes a like one of 20 deepest where it is alike from
// all three sides: about the centre of the circle in both, whose radii are 18.541 and 6.180 mm.
TEST(FreePlaces, DeepestPlaceOfADrawnPanel) {
  const auto triangle = [](std::int64_t size) {
    return EdgeTree(one(ring({{0, size}, {size / 2, 0}, {size, size}})));
  };
  const EdgeTree opening = triangle(60 * mm), panel = triangle(20 * mm);
  const double most = (60 - 20) / 60.0 * 1800 / (30 + 30 * std::sqrt(5.0)) * 1e6;
  for (const Middle start : {Middle{0, 0}, centre_of(opening), Middle{40 * mm * ticks_in_nm, 0}}) {
    const DeepPlace deep = deepest_place(opening, panel, start, 10'000);
    EXPECT_LE(deep.depth, most + 1);
    EXPECT_GE(deep.depth, most - 10'000);
    const double x = static_cast<double>(deep.middle.x) / ticks_in_nm;
    EXPECT_NEAR(x, 30e6, 40'000);
    EXPECT_EQ(
        outline_lies_at(opening, panel, deep.middle, static_cast<std::int64_t>(deep.depth - 1) * ticks_in_nm),
        Where::inside);
  }
}

TEST(FreePlaces, BesideAWindow) {
  const Outline frame{{box_ring(0, 0, 60 * mm, 40 * mm), box_ring(10 * mm, 10 * mm, 30 * mm, 30 * mm)}, 0};
  EXPECT_EQ(largest(frame, 0), "30 x 40");
  EXPECT_EQ(largest(frame, mm), "28 x 38");
  EXPECT_EQ(square(frame, 0), "30 x 30");
  EXPECT_EQ(circle(frame, 0), "30 x 30");
}

TEST(FreePlaces, WindowsOneByOne) {
  const Outline windows{{box_ring(0, 0, 20 * mm, 20 * mm), box_ring(21 * mm, 0, 60 * mm, 10 * mm)}, 0};
  EXPECT_EQ(largest(windows, 0), "20 x 20");
  EXPECT_EQ(largest(windows, 2 * mm), "16 x 16");
}

TEST(FreePlaces, InALetterL) {
  const Outline letter = one(
      ring({{0, 0}, {20 * mm, 0}, {20 * mm, 30 * mm}, {50 * mm, 30 * mm}, {50 * mm, 45 * mm}, {0, 45 * mm}}));
  EXPECT_EQ(largest(letter, 0), "20 x 45");
  EXPECT_EQ(largest(letter, mm), "18 x 43");
  EXPECT_EQ(square(letter, 0), "20 x 20");
}

TEST(FreePlaces, TooSmallForAStep) {
  EXPECT_EQ(largest(one(box_ring(0, 0, mm - 1, 40 * mm)), 0), "none");
  EXPECT_EQ(square(one(box_ring(0, 0, 5 * mm, 40 * mm)), 3 * mm), "none");
  EXPECT_EQ(circle(one(box_ring(0, 0, mm - 1, 40 * mm)), 0), "none");
}

// A needle of no width from the edge to the middle.
TEST(FreePlaces, BesideANeedle) {
  const Outline needle = one(ring({{0, 0},
                                   {30 * mm, 0},
                                   {30 * mm, 20 * mm},
                                   {30 * mm + 1, 0},
                                   {60 * mm, 0},
                                   {60 * mm, 40 * mm},
                                   {0, 40 * mm}}));
  EXPECT_EQ(largest(needle, 0), "30 x 40");  // 60 x 20 is as large and as far from 60 x 40, but wider
  EXPECT_EQ(square(needle, 0), "30 x 30");
}

}  // namespace
}  // namespace insetbook
