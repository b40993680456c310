// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "fit/free_circle.h"
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
  return found.undecided ? text + ", undecided" : text;
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
  EXPECT_EQ(circle(with_nib, 0), "39 x 39, undecided");
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
