// SPDX-License-Identifier: GPL-3.0-or-later
//
// Worked cards with every figure written by hand beforehand: each problem in three folds where it can arise,
// each beside its mended twin. The cards are our own; that they work or fail so is common practice, no
// source.
#include "card/check.h"

#include <gtest/gtest.h>

#include "cards.h"
#include "language/read_record.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using cards::folded;
using cards::inches;

struct Line {
  const char *name, *size, *target, *at, *glue;
  LiesHow how = LiesHow::on;
  int with = -1;
};

GlueSaid glue_of(const char* words) {
  const auto read = read_glue(words, Unit::inch);
  using Where = GlueSaid::Where;
  if (read->where == Glue::Where::whole) return {Where::whole, {}};
  if (read->where == Glue::Where::none) return {Where::none, {}};
  if (read->where == Glue::Where::not_said) return {};
  const EdgeSide side = read->edge == "left"    ? left_edge
                        : read->edge == "right" ? right_edge
                        : read->edge == "top"   ? top_edge
                                                : bottom_edge;
  return {Where::strips, {{side, *read->length}}};
}

CardPiece piece_of(const Line& line) {
  CardPiece piece;
  piece.name = line.name;
  if (*line.size != '\0') {
    const auto size = read_size(line.size, Unit::inch);
    piece.width = size->width;
    piece.height = size->height;
  }
  piece.target = line.target;
  piece.at = line.at;
  piece.glue = glue_of(line.glue);
  piece.how = line.how;
  piece.with = line.with;
  return piece;
}

std::vector<CardPiece> pieces_of(const std::vector<Line>& lines) {
  std::vector<CardPiece> pieces;
  for (const Line& line : lines) pieces.push_back(piece_of(line));
  return pieces;
}

std::string codes(const CheckedCard& checked) {
  std::string said;
  for (const CardProblem& problem : checked.problems) said += (said.empty() ? "" : ", ") + problem.code;
  return said;
}

struct Worked {
  const char *fold, *base, *scores;
  std::vector<Line> pieces;
  const char* problems;
};

void expect(const std::vector<Worked>& cards) {
  for (const Worked& card : cards) {
    const FoldedBase base = folded(card.fold, card.base, card.scores);
    ASSERT_FALSE(base.sections.empty()) << card.fold;
    const CheckedCard checked = check_card(base, pieces_of(card.pieces), false, Unit::inch);
    EXPECT_EQ(codes(checked), card.problems)
        << card.fold << ": " << card.pieces.back().name << ", " << card.pieces.back().size << ", glue "
        << card.pieces.back().glue;
    EXPECT_TRUE(checked.not_checked.empty()) << checked.not_checked.front();
  }
}

constexpr const char* half_letter = "8-1/2 x 5-1/2 in";

TEST(CardCheck, GluedShutExactlyWhenGluePassesTheCreaseOfTheFoldedBackSection) {
  expect({
      // the narrow front section of a Z is 2-1/8 in wide
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"belt", "4-1/4 x 2 in", "section 1", "flush left", "left 2 in"}},
       ""},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"belt", "4-1/4 x 2 in", "section 1", "flush left", "left 2-1/8 in"}},
       ""},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"belt", "4-1/4 x 2 in", "section 1", "flush left", "left 2-1/4 in"}},
       "glued-shut"},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"belt", "4-1/4 x 2 in", "section 1", "flush left", "whole"}},
       "glued-shut"},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"belt", "4-1/4 x 2 in", "section 1", "flush left", "none"}},
       ""},
      {"z fold", half_letter, "2-1/8; 4-1/4", {{"belt", "2 x 2 in", "section 1", "flush left", ""}}, ""},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"belt", "4-1/4 x 2 in", "section 1", "flush left", ""}},
       "unknown-glue"},
      // an easel whose creases run level: the folded-back section is the upper quarter
      {"easel",
       "5-1/2 x 8-1/2 in",
       "2-1/8; 4-1/4",
       {{"front", "5-1/2 x 4-1/4 in", "section 1", "", "top 2 in"}},
       ""},
      {"easel",
       "5-1/2 x 8-1/2 in",
       "2-1/8; 4-1/4",
       {{"front", "5-1/2 x 4-1/4 in", "section 1", "", "top 2-1/4 in"}},
       "glued-shut"},
      {"easel",
       "5-1/2 x 8-1/2 in",
       "2-1/8; 4-1/4",
       {{"front", "5-1/2 x 4-1/4 in", "section 1", "", "whole"}},
       "glued-shut"},
      // a latch over both doors of a gate, glued to both
      {"gate",
       half_letter,
       "2-1/8; 6-3/8",
       {{"latch", "2 x 2 in", "section 1", "centred on the opening", "left 1 in"}},
       ""},
      {"gate",
       half_letter,
       "2-1/8; 6-3/8",
       {{"latch", "2 x 2 in", "section 1", "centred on the opening", "whole"}},
       "glued-shut"},
      {"gate",
       half_letter,
       "2-1/8; 6-3/8",
       {{"latch", "2 x 2 in", "section 1", "centred on the opening", ""}},
       "unknown-glue"},
  });
}

TEST(CardCheck, OverACreaseThatFoldsOntoThePiece) {
  expect({
      {"side fold", half_letter, "4-1/4", {{"panel", "4 x 5 in", "inside right", "", ""}}, ""},
      {"side fold",
       half_letter,
       "4-1/4",
       {{"panel", "4 x 5 in", "inside right", "hanging off the left edge by 1/4 in", ""}},
       "over-a-crease"},
      {"gate", half_letter, "2-1/8; 6-3/8", {{"panel", "4 x 5-1/4 in", "section 2", "", "whole"}}, ""},
      {"tent", "5-1/2 x 8-1/2 in", "4-1/4", {{"panel", "5 x 4 in", "inside bottom", "flush top", ""}}, ""},
      {"tent",
       "5-1/2 x 8-1/2 in",
       "4-1/4",
       {{"panel", "5 x 4 in", "inside bottom", "hanging off the top edge by 1/8 in", ""}},
       "over-a-crease"},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"panel", "4 x 5 in", "inside right", "1/8 in from the left", ""}},
       ""},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"panel", "4 x 5 in", "inside right", "hanging off the left edge by 1/8 in", ""}},
       "over-a-crease"},
  });
}

TEST(CardCheck, OffTheClosedCard) {
  expect({
      {"side fold", half_letter, "4-1/4", {{"strip", "4-1/4 x 1 in", "front", "", ""}}, ""},
      {"side fold",
       half_letter,
       "4-1/4",
       {{"strip", "4-1/4 x 1 in", "front", "hanging off the right edge by 1/4 in", "left 2 in"}},
       "off-the-card"},
      // a strip may pass the edge of a layer, but not that of the card
      {"side fold",
       half_letter,
       "4-1/4",
       {{"mat", "4 x 5-1/4 in", "front", "", ""},
        {"strip", "2 x 1 in", "", "hanging off the right edge by 1/8 in", "", LiesHow::on, 0}},
       ""},
      {"side fold",
       half_letter,
       "4-1/4",
       {{"mat", "4 x 5-1/4 in", "front", "", ""},
        {"strip", "2 x 1 in", "", "hanging off the right edge by 1/4 in", "left 1 in", LiesHow::on, 0}},
       "off-the-card"},
      {"top fold", "4-1/4 x 11 in", "5-1/2", {{"panel", "4 x 5 in", "front", "flush bottom", ""}}, ""},
      {"top fold",
       "4-1/4 x 11 in",
       "5-1/2",
       {{"panel", "4 x 5 in", "front", "hanging off the bottom by 1/8 in", "top 1 in"}},
       "off-the-card"},
      {"gate", half_letter, "2-1/8; 6-3/8", {{"tag", "1 x 1 in", "section 3", "flush right", ""}}, ""},
      // over the free edge of the other door, still in the card; with no glue there all is well
      {"gate",
       half_letter,
       "2-1/8; 6-3/8",
       {{"tag", "2 x 1 in", "section 3", "hanging off the left edge by 1 in", "right 1 in"}},
       ""},
      {"flat", "4 x 6 in", "", {{"panel", "4 x 6 in", "front", "", ""}}, ""},
      {"flat", "4 x 6 in", "", {{"panel", "4-1/8 x 6 in", "front", "", ""}}, "off-the-card, off-the-card"},
      // what goes around is not held
      {"side fold", half_letter, "4-1/4", {{"ribbon", "12 x 1/2 in", "front", "", "", LiesHow::around}}, ""},
  });
}

TEST(CardCheck, PlacesThatCannotBe) {
  expect({
      {"side fold",
       half_letter,
       "4-1/4",
       {{"strip", "3 x 1 in", "front", "1 in from the left, 1 in from the right", ""}},
       "place-impossible"},
      {"side fold",
       half_letter,
       "4-1/4",
       {{"strip", "2-1/4 x 1 in", "front", "1 in from the left, 1 in from the right", ""}},
       ""},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"dot", "1 x 1 in", "section 1", "3 in from the left", ""}},
       "place-impossible"},
      {"z fold",
       half_letter,
       "2-1/8; 4-1/4",
       {{"dot", "1 x 1 in", "section 1", "1 in from the left", ""}},
       ""},
      {"tent",
       "5-1/2 x 8-1/2 in",
       "4-1/4",
       {{"dot", "1 x 1 in", "front", "5 in from the top", ""}},
       "place-impossible"},
      {"tent", "5-1/2 x 8-1/2 in", "4-1/4", {{"dot", "1 x 1 in", "front", "3 in from the top", ""}}, ""},
  });
}

TEST(CardCheck, SaysYesToACardOfScrapsAndBows) {
  const FoldedBase base = folded("side fold", half_letter, "4-1/4");
  std::vector<Line> lines{
      {"mat", "4 x 5-1/4 in", "front", "", ""},
      {"hedge", "4 x 1-5/8 in", "", "flush bottom", "", LiesHow::on, 0},
      {"bow", "", "", "left of centre", "", LiesHow::on, 1},
      {"scraps", "", "front", "", ""},
      {"banner", "2 x 5/8 in", "", "hanging off the left edge by 1/8 in", "", LiesHow::on, 0}};
  const CheckedCard checked = check_card(base, pieces_of(lines), false, Unit::inch);
  EXPECT_EQ(codes(checked), "");
  EXPECT_TRUE(checked.not_checked.empty());
  ASSERT_TRUE(checked.seats[1]);
  EXPECT_EQ(checked.seats[1]->on_face, (Rect{inches(0, 1, 8), inches(3, 3, 4), inches(4), inches(1, 5, 8)}));
}

TEST(CardCheck, UnknownSizesDoesNotFitAndMeant) {
  const FoldedBase base = folded("side fold", half_letter, "4-1/4");
  std::vector<CardPiece> pieces =
      pieces_of({{"mat", "", "front", "", ""}, {"round", "2 x 2 in", "", "", "", LiesHow::in, 0}});
  pieces[0].needs_size = true;
  pieces[1].too_large = "2 in is larger than the opening of 1-7/8 in";
  CheckedCard checked = check_card(base, pieces, false, Unit::inch);
  EXPECT_EQ(codes(checked), "unknown-size, does-not-fit");
  pieces[1].meant = {"does-not-fit"};
  checked = check_card(base, pieces, false, Unit::inch);
  EXPECT_EQ(codes(checked), "unknown-size");
  ASSERT_EQ(checked.meant.size(), 1u);
  EXPECT_EQ(checked.meant[0].code, "does-not-fit");
}

TEST(CardCheck, AnEaselNeedsARaisedStopInside) {
  const FoldedBase base = folded("easel", half_letter, "2-1/8; 4-1/4");
  std::vector<CardPiece> pieces =
      pieces_of({{"front panel", "4-1/4 x 5-1/2 in", "section 1", "", "left 2 in"},
                 {"stop", "1-1/2 x 5/8 in", "inside right", "1 in from the bottom", ""}});
  EXPECT_EQ(codes(check_card(base, pieces, true, Unit::inch)), "no-stop");
  pieces[1].raised = true;
  EXPECT_EQ(codes(check_card(base, pieces, true, Unit::inch)), "");
  pieces[1].target = "front";  // raised, but not inside
  EXPECT_EQ(codes(check_card(base, pieces, true, Unit::inch)), "no-stop");
}

TEST(CardCheck, WhatLiesNowhereIsSaid) {
  const FoldedBase base = folded("side fold", half_letter, "4-1/4");
  const CheckedCard checked = check_card(
      base,
      pieces_of({{"flap", "1 x 1 in", "section 3", "", ""}, {"dot", "1 x 1 in", "front", "somewhere", ""}}),
      false, Unit::inch);
  ASSERT_EQ(checked.not_checked.size(), 2u);
  EXPECT_EQ(checked.not_checked[0], "\"flap\": where it lies (\"section 3\") is no part of this card");
  EXPECT_EQ(checked.not_checked[1],
            "\"dot\": the place \"somewhere\" is not understood; it is taken as centred");
}

TEST(CardCheck, SaysTheFiguresAndWhatWouldMend) {
  const FoldedBase z = folded("z fold", half_letter, "2-1/8; 4-1/4");
  const CheckedCard shut = check_card(
      z, pieces_of({{"belt", "4-1/4 x 2 in", "section 1", "flush left", "whole"}}), false, Unit::inch);
  ASSERT_EQ(shut.problems.size(), 1u);
  EXPECT_EQ(
      shut.problems[0].why,
      "it reaches 2-1/8 in past the fold on the right of its section and is glued there: the card would be "
      "shut for good");
  EXPECT_EQ(shut.problems[0].mend, "glue it only where it lies on its section: \"left 2-1/8 in\"");
  const FoldedBase side = folded("side fold", half_letter, "4-1/4");
  const CheckedCard off = check_card(
      side, pieces_of({{"strip", "4-1/2 x 1 in", "front", "flush left", "left 2 in"}}), false, Unit::inch);
  ASSERT_EQ(off.problems.size(), 1u);
  EXPECT_EQ(off.problems[0].why, "it reaches 1/4 in past the right edge of the closed card");
  EXPECT_EQ(off.problems[0].mend, "make it 1/4 in smaller, or move it so far to the left");
}

TEST(Thickest, IsWhereMostLies) {
  const FoldedBase base = folded("z fold", half_letter, "2-1/8; 4-1/4");
  const std::vector<CardPiece> pieces = pieces_of({{"mat", "2 x 5 in", "section 1", "", ""},
                                                   {"round", "1 x 1 in", "", "", "", LiesHow::on, 0},
                                                   {"panel", "4 x 5 in", "inside right", "", ""}});
  const CheckedCard checked = check_card(base, pieces, false, Unit::inch);
  const Length sheet = Length::nm(300'000);
  // three sections, the mat, the round on foam, the panel inside
  EXPECT_EQ(thickest(base, sheet, checked.seats, {sheet, Length::mm(2), sheet}),
            Length::nm(5 * 300'000 + 2'000'000));
  EXPECT_EQ(thickest(base, sheet, {}, {}), 3 * sheet);
}

}  // namespace
}  // namespace insetbook
