// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/pairs.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "answers/find.h"
#include "answers/sample_book.h"
#include "book/settings.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

using testing::HasSubstr;

// "Moonrise Circles 1 > Moonrise Circles 2: 6350000" (nm); "~" where it is not even.
std::string text_of(const DiePair& pair) {
  return fmt::format("{} {} > {} {}: {}{}", pair.outer.set, pair.outer.die, pair.inner.set, pair.inner.die,
                     pair.least.nm(), pair.even ? "" : fmt::format(" ~ {}", pair.greatest.nm()));
}

std::vector<std::string> texts(const std::vector<DiePair>& pairs) {
  std::vector<std::string> all;
  for (const DiePair& pair : pairs) all.push_back(text_of(pair));
  return all;
}

PairsAnswer pairs(const std::string& opening, std::optional<std::string> border = {}) {
  const Result<PairsAnswer> answer = pairs_of(sample_book(), {opening, std::move(border)});
  EXPECT_TRUE(answer) << answer.error().what;
  return answer ? *answer : PairsAnswer{};
}

// By hand, from the sizes in sample-data/dies.csv: the cut edges of Tidepool Rectangles are 4 x 5-1/4 (1),
// 3-5/8 x 4-7/8 (2), 3-1/4 x 4-1/2 (3), 2-7/8 x 4-1/8 (4); the stitched line of the second is 3-3/8 x 4-5/8.
TEST(Pairs, RoundItAndIntoIt) {
  const PairsAnswer answer = pairs("tidepool rectangles 2");
  EXPECT_EQ(answer.opening->line, "stitched");
  ASSERT_GE(answer.around.size(), 2u);
  EXPECT_EQ(text_of(answer.around[0]), "Tidepool Rectangles 1 > Tidepool Rectangles 2: 4762500");  // 3/16 in
  EXPECT_EQ(text_of(answer.around[1]), "Puddleshine Plate plate > Tidepool Rectangles 2: 4762500");
  ASSERT_GE(answer.in.size(), 2u);
  EXPECT_EQ(text_of(answer.in[0]), "Tidepool Rectangles 2 > Tidepool Rectangles 3: 1587500");  // 1/16 in
  EXPECT_EQ(text_of(answer.in[1]), "Tidepool Rectangles 2 > Tidepool Rectangles 4: 6350000");  // 1/4 in
  // Both are known to 1/32 in, off the whole width and height.
  EXPECT_EQ(answer.in[0].give_or_take, Length::inch_fraction(1, 32));
}

// Moonrise Circles leave 1/4 in twice: 3-3/8 in 3-7/8 in and 2-7/8 in 3-3/8 in (sample-data/dies.csv).
TEST(Pairs, OfOneSet) {
  const Result<FindAnswer> found =
      find(sample_book(), {.question = "which two moonrise circles make a ring 1/4 in wide"});
  ASSERT_TRUE(found) << found.error().what;
  const auto* answer = std::get_if<PairsAnswer>(&found->answer);
  ASSERT_TRUE(answer);
  ASSERT_FALSE(answer->any.empty());
  for (const DiePair& pair : answer->any) {
    EXPECT_EQ(pair.outer.set, "Moonrise Circles");
    EXPECT_EQ(pair.inner.set, "Moonrise Circles");
  }
  const PairsAnswer all = pairs("", "1/4 in");
  EXPECT_GT(all.any.size(), answer->any.size());
  EXPECT_FALSE(pairs_of(sample_book(), {"", "1/4 in", "no such set of dies"}));
}

TEST(Pairs, ALineThatIsNamedCountsBothWays) {
  const PairsAnswer answer = pairs("tidepool rectangles 2, stitched");
  ASSERT_FALSE(answer.around.empty());
  EXPECT_EQ(answer.around.front().inner.line, "stitched");
}

TEST(Pairs, OfASizeThatIsNoDie) {
  const PairsAnswer answer = pairs("3 in circle");
  ASSERT_FALSE(answer.in.empty());
  EXPECT_EQ(answer.in.front().inner.set, "Moonrise Circles");
  EXPECT_EQ(answer.in.front().least, Length::inch_fraction(1, 16));  // 2-7/8 in a 3 in circle
  EXPECT_FALSE(answer.cut_edge);
  EXPECT_EQ(pairs("tidepool rectangles 2").cut_edge->line, "cut");
  EXPECT_FALSE(pairs("tidepool rectangles 2, stitched").cut_edge);
}

TEST(Pairs, OfABorderTheClosest) {
  EXPECT_EQ(texts(pairs("tidepool rectangles 2", "1/4 in").in),
            (std::vector<std::string>{"Tidepool Rectangles 2 > Tidepool Rectangles 4: 6350000"}));
  EXPECT_TRUE(pairs("tidepool rectangles 2", "1/64 in").in.empty());
  // Within half the cutting step, which is 1/16 in: 7/32 in is.
  EXPECT_EQ(pairs("tidepool rectangles 2", "7/32 in").in.size(), 1u);
  EXPECT_TRUE(pairs("tidepool rectangles 2", "5/16 in").in.empty());
}

// Every two cut edges of the book, one by one, against the few that are looked at.
TEST(Pairs, AnyTwoAgreeWithLookingAtAll) {
  const Book& book = sample_book();
  const Length step = settings(book).cutting_step;
  for (const std::string border : {"1/16 in", "1/8 in", "3/16 in", "1/4 in", "3/8 in", "5 mm", "1 in"}) {
    const PairsAnswer answer = pairs("", border);
    std::vector<std::string> slow;
    const std::vector<OpeningRecord> lines = measured_openings(book, std::nullopt);
    for (const OpeningRecord& outer : lines)
      for (const OpeningRecord& inner : lines) {
        if (outer.line_kind != "cut" || inner.line_kind != "cut" || outer.die_id == inner.die_id) continue;
        const Result<Shape> large = shape_of(outer), small = shape_of(inner);
        if (!large || !small || !has_outline(*large) || !has_outline(*small)) continue;
        if (large->kind != small->kind && std::max(large->kind, small->kind) > ShapeKind::polygon) continue;
        const auto framed = framing({*large, outer.give_or_take}, *small, Length(), step, true);
        if (!framed || !*framed) continue;
        DiePair pair{.outer = outer, .inner = inner, .least = (*framed)->greatest_border};
        pair.even = (*framed)->even_strip;
        pair.greatest =
            pair.even ? pair.least
                      : std::max({(*framed)->left, (*framed)->right, (*framed)->top, (*framed)->bottom});
        if (!pair.even && large->kind != small->kind) continue;
        const auto off = [&](Length width) {
          return width < *answer.border ? *answer.border - width : width - *answer.border;
        };
        if (!pair.even && pair.greatest - pair.least > Length::inch_fraction(1, 4)) continue;
        if (std::max(off(pair.least), off(pair.greatest)) * 2 <= step) slow.push_back(text_of(pair));
      }
    EXPECT_THAT(texts(answer.any), testing::UnorderedElementsAreArray(slow)) << border;
    if (border == "1/4 in") {
      EXPECT_GT(slow.size(), 5u);
    }
  }
}

TEST(Pairs, QuestionsForThem) {
  const Result<FindAnswer> any =
      find(sample_book(), {.question = "which two dies make a frame a quarter inch wide"});
  ASSERT_TRUE(any);
  EXPECT_EQ(texts(std::get<PairsAnswer>(any->answer).any), texts(pairs("", "1/4 in").any));
  const Result<FindAnswer> one =
      find(sample_book(), {.question = "which dies make an even border round tidepool rectangles 2"});
  ASSERT_TRUE(one);
  EXPECT_EQ(texts(std::get<PairsAnswer>(one->answer).around), texts(pairs("tidepool rectangles 2").around));
}

TEST(Pairs, WhatCannotBeAnsweredIsSaid) {
  const auto nothing = pairs_of(sample_book(), {});
  ASSERT_FALSE(nothing);
  EXPECT_EQ(nothing.error().what, "neither a die nor the width of the frame is said");
  const auto unknown = pairs_of(sample_book(), {"wild goose", {}});
  ASSERT_FALSE(unknown);
  EXPECT_EQ(unknown.error().kind, ProblemKind::unknown_name);
  const auto bad = pairs_of(sample_book(), {"tidepool rectangles 2", "wide"});
  ASSERT_FALSE(bad);
  EXPECT_THAT(bad.error().what, HasSubstr("border"));
}

}  // namespace
}  // namespace insetbook
