// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/evidence.h"

#include <gtest/gtest.h>

#include "book/invented.h"

namespace insetbook {
namespace {

const Length sixteenth = Length::inch_fraction(1, 16);

TEST(Evidence, GiveOrTakeIsHalfTheMark) {
  struct Row {
    std::string method;
    std::optional<Length> mark;
    Length u;
  };
  const std::vector<Row> rows{
      {"ruler", std::nullopt, Length::inch_fraction(1, 32)},
      {"ruler", sixteenth, Length::inch_fraction(1, 32)},
      {"ruler", Length::inch_fraction(1, 32), Length::inch_fraction(1, 64)},
      {"ruler", Length::nm(500'000), Length::nm(250'000)},
      {"drawing", std::nullopt, Length()},
      {"maker's figure", std::nullopt, Length()},
      {"drawing", Length::mm(1), Length::nm(500'000)},
      {"callipers", Length::nm(100'000), Length::nm(50'000)},
      {"by eye", std::nullopt, Length::inch_fraction(1, 32)},
  };
  for (const Row& row : rows) EXPECT_EQ(give_or_take(row.method, row.mark, Unit::inch), row.u) << row.method;
}

TEST(Evidence, MethodsByAnyWord) {
  EXPECT_EQ(measuring_method("Ruler"), "ruler");
  EXPECT_EQ(measuring_method("caliper"), "callipers");
  EXPECT_EQ(measuring_method("Maker’s figure"), "maker's figure");
  EXPECT_EQ(measuring_method("scanned"), "scan");
  EXPECT_EQ(measuring_method("horoscope"), "");
}

// One line of one die, measured 2 x 3 in by ruler (u = 1/32 in).
struct Line {
  Line() {
    test.change("made", [&](Change& change) {
      LineRow row = line_row("Tidepool Rectangles", "2", "cut", "rectangle");
      row.measured = measured(Length::inches(2), Length::inches(3));
      row.measured->date = "2026-03-01";
      id = put_line(change, row)->line_id;
    });
  }
  MeasureOutcome record(Measured one, bool accept = false) {
    MeasureOutcome outcome;
    one.line_id = id;
    test.change("measured", [&](Change& change) { outcome = *record_measurement(change, one, accept); });
    return outcome;
  }
  std::vector<std::string> standings() {
    std::vector<std::string> all;
    for (const Measured& one : measurements_of(test.book, id)) all.push_back(one.standing);
    return all;
  }
  TestBook test;
  std::int64_t id = 0;
};

TEST(Evidence, TheSumOfBothGiveOrTakesIsTheLimitAndCounts) {
  struct Row {
    Length more;  // how much wider than 2 in
    std::string method;
    MeasureResult result;
  };
  const std::vector<Row> rows{
      // Two rulers: 1/32 + 1/32.
      {sixteenth, "ruler", MeasureResult::confirmed},
      {sixteenth + Length::nm(1), "ruler", MeasureResult::conflict},
      {-sixteenth, "ruler", MeasureResult::confirmed},
      {-sixteenth - Length::nm(1), "ruler", MeasureResult::conflict},
      // A maker's figure adds nothing.
      {Length::inch_fraction(1, 32), "maker's figure", MeasureResult::confirmed},
      {Length::inch_fraction(1, 32) + Length::nm(1), "maker's figure", MeasureResult::conflict},
  };
  for (const Row& row : rows) {
    Line line;
    EXPECT_EQ(line.record(measured(Length::inches(2) + row.more, Length::inches(3), row.method)).result,
              row.result)
        << row.more.nm();
    EXPECT_EQ(line.record(measured(Length::inches(2), Length::inches(3) + row.more, row.method)).result,
              row.result)
        << row.more.nm() << " higher";
  }
}

TEST(Evidence, ADieMayLieEitherWayRound) {
  Line line;
  EXPECT_EQ(line.record(measured(Length::inches(3), Length::inches(2))).result, MeasureResult::confirmed);
}

TEST(Evidence, TheSameAgainAddsNothing) {
  Line line;
  Measured again = measured(Length::inches(2), Length::inches(3));
  again.date = "2026-03-01";
  EXPECT_EQ(line.record(again).result, MeasureResult::same);
  EXPECT_EQ(line.standings(), std::vector<std::string>{"current"});
  again.date = "2026-03-02";
  EXPECT_EQ(line.record(again).result, MeasureResult::confirmed);
  again.mark = sixteenth;
  EXPECT_EQ(line.record(again).result, MeasureResult::confirmed);
  EXPECT_EQ(line.standings(), (std::vector<std::string>{"current", "confirmation", "confirmation"}));
}

TEST(Evidence, AConflictIsKeptAndNamesWhoUsedTheOldFigure) {
  Line line;
  line.test.change("samples", [&](Change& change) {
    ElementRow piece;
    piece.name = "panel";
    piece.sample_id = put_titled(change, "Moonrise birthday");
    piece.in_line_id = line.id;
    EXPECT_TRUE(put_element(change, piece));
    piece.sample_id = put_titled(change, "Thank you, kelp");
    piece.in_line_id.reset();
    piece.line_id = line.id;
    EXPECT_TRUE(put_element(change, piece));
    put_titled(change, "Not of this line");
  });
  const MeasureOutcome outcome = line.record(measured(Length::inches(3), Length::inches(4)));
  EXPECT_EQ(outcome.result, MeasureResult::conflict);
  EXPECT_EQ(outcome.used_by, (std::vector<std::string>{"Moonrise birthday", "Thank you, kelp"}));
  ASSERT_EQ(outcome.known.size(), 2u);
  EXPECT_EQ(outcome.known[0].standing, "current");
  EXPECT_EQ(outcome.known[0].width, Length::inches(2));
  EXPECT_EQ(outcome.known[1].standing, "conflict");
}

TEST(Evidence, AcceptingSettlesIt) {
  Line line;
  EXPECT_EQ(line.record(measured(Length::inches(3), Length::inches(4))).result, MeasureResult::conflict);
  EXPECT_EQ(line.record(measured(Length::inches(3), Length::inches(4)), true).result, MeasureResult::added);
  const auto known = measurements_of(line.test.book, line.id);
  ASSERT_EQ(known.size(), 2u);
  EXPECT_EQ(known[0].width, Length::inches(3));
  EXPECT_EQ(known[0].standing, "current");
  EXPECT_EQ(known[1].standing, "earlier");
}

TEST(Evidence, AcceptingTheOldFigureSettlesItToo) {
  Line line;
  line.record(measured(Length::inches(3), Length::inches(4)));
  Measured old = measured(Length::inches(2), Length::inches(3));
  old.date = "2026-03-01";
  EXPECT_EQ(line.record(old, true).result, MeasureResult::same);
  EXPECT_EQ(line.standings(), (std::vector<std::string>{"current", "earlier"}));
}

TEST(Evidence, WhatWasSettledStaysSettledWhenTheTableComesAgain) {
  Line line;
  line.record(measured(Length::inches(3), Length::inches(4)));
  line.record(measured(Length::inches(3), Length::inches(4)), true);
  LineRow row = line_row("Tidepool Rectangles", "2", "cut", "rectangle");
  row.measured = measured(Length::inches(2), Length::inches(3));
  row.measured->date = "2026-03-01";
  line.test.change("import",
                   [&](Change& change) { EXPECT_EQ(put_line(change, row)->result, PutResult::same); });
  EXPECT_EQ(measurements_of(line.test.book, line.id)[0].width, Length::inches(3));
}

}  // namespace
}  // namespace insetbook
