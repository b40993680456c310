// SPDX-License-Identifier: GPL-3.0-or-later
//
// Bases folded flat, every stack and face written by hand beforehand.
#include "card/folded.h"

#include <gtest/gtest.h>

#include "card/face.h"
#include "cards.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using cards::folded;
using cards::inches;
using cards::written;

// "1 outer, 2 inside": sections from the front, each with the face that looks to the front.
std::string stack_of(const FoldedBase& card) {
  std::string said;
  for (const int place : card.front_to_back) {
    const BaseSection& one = card.sections[static_cast<std::size_t>(place)];
    said += (said.empty() ? "" : ", ") + std::to_string(one.number) +
            (one.inside_to_front() ? " inside" : " outer");
  }
  return said;
}

TEST(FoldedBase, StacksAsTheFoldSays) {
  const struct {
    const char *fold, *base, *scores, *closed, *stack;
  } cases[] = {
      // common practice, no source: the half-letter folds
      {"side fold", "8-1/2 x 5-1/2 in", "4-1/4", "4-1/4 x 5-1/2 in", "1 outer, 2 inside"},
      {"side fold", "5-1/2 x 8-1/2 in", "4-1/4", "4-1/4 x 5-1/2 in", "1 outer, 2 inside"},
      {"top fold", "4-1/4 x 11 in", "5-1/2", "4-1/4 x 5-1/2 in", "1 outer, 2 inside"},
      {"tent", "5-1/2 x 8-1/2 in", "4-1/4", "5-1/2 x 4-1/4 in", "1 outer, 2 inside"},
      // the first section is folded back and its inside face is the front
      {"z fold", "8-1/2 x 5-1/2 in", "2-1/8; 4-1/4", "4-1/4 x 5-1/2 in", "1 inside, 2 outer, 3 inside"},
      {"z fold", "8-1/2 x 5-1/2 in", "4-1/4; 2-1/8", "4-1/4 x 5-1/2 in", "1 inside, 2 outer, 3 inside"},
      {"easel", "5-1/2 x 8-1/2 in", "2-1/8; 4-1/4", "5-1/2 x 4-1/4 in", "1 inside, 2 outer, 3 inside"},
      {"gate", "8-1/2 x 5-1/2 in", "2-1/8; 6-3/8", "4-1/4 x 5-1/2 in", "3 outer, 1 outer, 2 inside"},
      // the tucked flap lies under the front
      {"letter tri fold", "9 x 4 in", "3; 6", "3 x 4 in", "1 outer, 3 outer, 2 inside"},
      {"accordion", "12 x 4 in", "3; 6; 9", "3 x 4 in", "1 outer, 2 inside, 3 outer, 4 inside"},
      {"accordion", "15 x 4 in", "3; 6; 9; 12", "3 x 4 in", "1 outer, 2 inside, 3 outer, 4 inside, 5 outer"},
      {"flat", "4 x 6 in", "", "4 x 6 in", "1 inside"},
      {"", "8 x 5 in", "4", "4 x 5 in", "1 outer, 2 inside"},
      {"", "8 x 5 in", "4 mountain", "4 x 5 in", "1 inside, 2 outer"},
      // a sequence written out
      {"", "9 x 4 in", "3 valley; 6 valley", "3 x 4 in", "3 outer, 1 outer, 2 inside"},
      {"", "9 x 4 in", "6 valley; 3 valley", "3 x 4 in", "1 outer, 3 outer, 2 inside"},
      // a single sheet folded twice, the print of one side outside
      {"french fold", "8-1/2 x 11 in", "short side at 4-1/4; long side at 5-1/2", "4-1/4 x 5-1/2 in",
       "1 inside, 3 outer, 4 inside, 2 outer"},
  };
  for (const auto& c : cases) {
    const FoldedBase card = folded(c.fold, c.base, c.scores);
    EXPECT_EQ(write_size(card.width, card.height, Unit::inch), c.closed) << c.fold << ", " << c.scores;
    EXPECT_EQ(stack_of(card), c.stack) << c.fold << ", " << c.scores;
  }
}

TEST(FoldedBase, PutsTheFoldedBackSectionAtTheSpine) {
  const FoldedBase card = folded("z fold", "8-1/2 x 5-1/2 in", "2-1/8; 4-1/4");
  ASSERT_EQ(card.sections.size(), 3u);
  EXPECT_EQ(card.sections[0].closed_left, Length());
  EXPECT_EQ(card.sections[0].closed_right(), inches(2, 1, 8));
  EXPECT_FALSE(card.sections[0].mirrored_across);  // its free edge lies at the spine
  EXPECT_TRUE(card.sections[1].mirrored_across);
}

TEST(FoldedBase, DoorsThatOverlapLieAsTheyWereFolded) {
  const FoldedBase card = folded("gate", "8-1/2 x 5-1/2 in", "2-1/2; 6-3/8");
  EXPECT_EQ(stack_of(card), "3 outer, 1 outer, 2 inside");
}

TEST(FoldedBase, KeepsASpineOutOfTheStack) {
  const FoldedBase card = folded("side fold", "8-3/4 x 5-1/2 in", "4-1/4; 4-1/2");
  EXPECT_EQ(card.width, inches(4, 1, 4));
  EXPECT_EQ(card.spine, inches(0, 1, 4));
  EXPECT_EQ(stack_of(card), "1 outer, 3 inside");
  // Too far apart for a spine: two ordinary scores, and which way they fold is not known.
  const auto wide = lay_base(written("side fold", "9-1/4 x 5-1/2 in", "4-1/4; 5"));
  ASSERT_FALSE(wide);
  EXPECT_EQ(wide.error().why, BaseNotLaid::Why::not_checked);
}

TEST(FoldedBase, ReadsTheOtherSideWhereOnlyThatSuitsTheFinishedSize) {
  const auto laid = lay_base(written("side fold", "5-1/2 x 8-1/2 in", "2-3/4", "2-3/4 x 8-1/2 in"));
  ASSERT_TRUE(laid);
  EXPECT_TRUE(laid->other_side);
  EXPECT_EQ(laid->creases, (std::vector<SheetCrease>{{true, inches(2, 3, 4), false}}));
  const auto usual = lay_base(written("side fold", "5-1/2 x 8-1/2 in", "4-1/4", "4-1/4 x 5-1/2 in"));
  ASSERT_TRUE(usual);
  EXPECT_FALSE(usual->other_side);
  EXPECT_TRUE(usual->turned);
}

std::string why_not(const BaseAsWritten& as_written) {
  const auto laid = lay_base(as_written);
  if (!laid) return laid.error().what;
  const auto flat = fold_flat(*laid, as_written.unit);
  return flat ? "" : flat.error().what;
}

TEST(FoldedBase, SaysWhyItIsNotWorkedOut) {
  EXPECT_EQ(why_not(written("", "9 x 4 in", "2 valley; 6 valley")), "");
  EXPECT_EQ(why_not(written("", "12 x 4 in", "6 valley; 4 valley")),
            "it cannot be folded flat: the part between 6 in and 12 in is folded first and lies across the "
            "score at 4 in");
  EXPECT_EQ(why_not(written("", "9 x 4 in", "3; 6")), "which way each score folds is not known");
  EXPECT_EQ(why_not(written("side fold", "8-1/2 x 5-1/2 in", "9")),
            "the score at 9 in is not on the sheet of 8-1/2 x 5-1/2 in");
  EXPECT_EQ(why_not(written("side fold", "8-1/2 x 5-1/2 in", "")),
            "where the base is scored is not recorded");
  EXPECT_EQ(why_not(written("side fold", "8-1/2 x 5-1/2 in", "slit from 1 in to 3 in")),
            "the scores \"slit from 1 in to 3 in\" are not understood");
  EXPECT_EQ(why_not(written("shutter", "11 x 5-1/2 in", "2-1/8; 4-1/4; 6-3/4")),
            "a shutter does not simply lie flat: its folding is not worked out");
  EXPECT_EQ(why_not(written("flat", "4 x 6 in", "3")), "a flat card has no scores, and this one has \"3\"");
  EXPECT_EQ(why_not(written("side fold", "", "")), "neither the base nor the finished size has figures");
  EXPECT_EQ(why_not(written("", "8 x 5 in", "4 valley; 4 mountain")), "the score at 4 in is there twice");
}

TEST(BaseThatClosesTo, IsTheSheetWithItsScores) {
  const struct {
    const char *fold, *finished;
    BaseFigures figures;
    const char *sheet, *scores;
  } cases[] = {
      // common practice, no source
      {"side fold", "4-1/4 x 5-1/2 in", {}, "8-1/2 x 5-1/2 in", "4-1/4 in"},
      {"top fold", "4-1/4 x 5-1/2 in", {}, "4-1/4 x 11 in", "5-1/2 in"},
      {"easel", "6 x 6 in", {}, "6 x 12 in", "3 in, 6 in"},
      {"z fold", "4-1/4 x 5-1/2 in", {}, "8-1/2 x 5-1/2 in", "2-1/8 in, 4-1/4 in"},
      {"gate", "4-1/4 x 5-1/2 in", {}, "8-1/2 x 5-1/2 in", "2-1/8 in, 6-3/8 in"},
      {"gate", "4-1/4 x 5-1/2 in", {{}, inches(0, 1, 8), 4}, "8-3/8 x 5-1/2 in", "2-1/16 in, 6-5/16 in"},
      {"letter tri fold", "3 x 4 in", {inches(0, 1, 16), {}, 4}, "8-15/16 x 4 in", "6 in, 3 in"},
      {"accordion", "3 x 4 in", {{}, {}, 5}, "15 x 4 in", "3 in, 6 in, 9 in, 12 in"},
      {"flat", "4 x 6 in", {}, "4 x 6 in", ""},
  };
  for (const auto& c : cases) {
    const auto size = read_size(c.finished, Unit::inch);
    const auto base = base_that_closes_to(written(c.fold, "", ""), size->width, size->height, c.figures);
    ASSERT_TRUE(base) << c.fold;
    EXPECT_EQ(write_size(base->width, base->height, Unit::inch), c.sheet) << c.fold;
    std::string scores;
    for (const SheetCrease& crease : base->creases)
      scores += (scores.empty() ? "" : ", ") + write(crease.at, Unit::inch);
    EXPECT_EQ(scores, c.scores) << c.fold;
    const auto flat = fold_flat(*base, Unit::inch);
    ASSERT_TRUE(flat) << c.fold;
    EXPECT_EQ(flat->width, size->width) << c.fold;
    EXPECT_EQ(flat->height, size->height) << c.fold;
  }
  const auto bridge = base_that_closes_to(written("bridge", "", ""), inches(4), inches(5), {});
  ASSERT_FALSE(bridge);
  EXPECT_EQ(bridge.error().why, BaseNotLaid::Why::not_checked);
}

TEST(Face, LooksAsThePersonSeesIt) {
  const FoldedBase side = folded("side fold", "8-1/2 x 5-1/2 in", "4-1/4");
  const auto front = named_face(side, "front", std::nullopt);
  ASSERT_TRUE(front);
  EXPECT_EQ(front->edges[left_edge], EdgeKind::mountain);  // the fold, from outside
  EXPECT_EQ(front->edges[right_edge], EdgeKind::free);
  const auto right = named_face(side, "inside right", std::nullopt);
  ASSERT_TRUE(right);
  EXPECT_EQ(right->edges[left_edge], EdgeKind::valley);
  EXPECT_EQ(side.sections[static_cast<std::size_t>(right->section)].number, 2);
  const auto back = named_face(side, "back", std::nullopt);
  ASSERT_TRUE(back);
  EXPECT_EQ(back->edges[right_edge], EdgeKind::mountain);  // the card turned like a page
  EXPECT_FALSE(back->faces_front);

  const FoldedBase z = folded("z fold", "8-1/2 x 5-1/2 in", "2-1/8; 4-1/4");
  const auto folded_back = named_face(z, "section 1", std::nullopt);
  ASSERT_TRUE(folded_back);
  EXPECT_EQ(folded_back->edges[right_edge], EdgeKind::mountain);
  EXPECT_EQ(folded_back->edges[left_edge], EdgeKind::free);
  const auto inside = named_face(z, "", CardSide::inside);
  ASSERT_TRUE(inside);
  EXPECT_EQ(z.sections[static_cast<std::size_t>(inside->section)].number, 3);

  EXPECT_FALSE(named_face(z, "section 4", std::nullopt));
  EXPECT_FALSE(named_face(z, "lid", std::nullopt));
  const Rect spot{inches(1), inches(1), inches(1), inches(2)};
  EXPECT_EQ(in_closed_card(*back, spot), (Rect{inches(2, 1, 4), inches(1), inches(1), inches(2)}));
}

}  // namespace
}  // namespace insetbook
