// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dies that the book does not have yet, panels tried twice, and what is told of a field that is a
// measurement.
#include "answers/measure.h"

#include <gtest/gtest.h>

#include "answers/edit_records.h"
#include "book/invented.h"

namespace insetbook {
namespace {

struct NewDieCase {
  const char* said;
  const char* made;  // "set | die | line", or the complaint
};

TEST(MeasureNew, ReadsSetDieAndLine) {
  const NewDieCase cases[] = {
      {"biscuit ovals 1, cut", "biscuit ovals | 1 | cut"},
      {"biscuit ovals 1 cut", "biscuit ovals | 1 | cut"},
      {"biscuit ovals 1", "biscuit ovals | 1 | cut"},
      {"biscuit ovals 2 stitched line", "biscuit ovals | 2 | stitched"},
      {"biscuit ovals 2 window 3", "biscuit ovals | 2 | window 3"},
      {"biscuit ovals large", "biscuit ovals | large | cut"},
      {"second largest biscuit ovals, stitched", "biscuit ovals | 2 | stitched"},
      {"Harbour Tags small pierced", "Harbour Tags | small | pierced"},
      {"Harbour Tags cut", "Harbour Tags | cut | cut"},
      {"biscuit ovals 1, stiched", "\"stiched\" is no line of a die (stitched)"},
      {"biscuit ovals 1 stiched", "\"stiched\" is no line of a die (stitched)"},
      {"biscuit ovals 1, dotted", "\"dotted\" is no line of a die"},
      {"biscuit", "\"biscuit\" does not say which set and which die"},
  };
  for (const NewDieCase& one : cases) {
    TestBook test;
    test.change("known set", [](Change& change) {
      EXPECT_TRUE(put_line(change, line_row("Harbour Tags", "large", "cut", "rectangle")));
    });
    MeasureAsked asked;
    asked.opening = one.said;
    asked.size = "2 x 3 in";
    asked.make_new = true;
    asked.shape = "oval";
    const Result<MeasureAnswer> answer = measure(test.book, asked);
    if (!answer) {
      std::string text = answer.error().what;
      if (!answer.error().candidates.empty()) text += " (" + answer.error().candidates.front() + ")";
      EXPECT_EQ(text, one.made) << one.said;
      continue;
    }
    const OpeningRecord& made = answer->lines.at(0).opening;
    EXPECT_EQ(made.set + " | " + made.die + " | " + made.line, one.made) << one.said;
  }
}

TEST(Tried, TwiceOnOneDayWithTwoResultsKeepsBoth) {
  TestBook test;
  test.change("set", [](Change& change) {
    LineRow row = line_row("Harbour Tags", "1", "cut", "rectangle");
    row.rank = 1;
    EXPECT_TRUE(put_line(change, row));
  });
  TriedAsked asked{
      .opening = "harbour tags 1", .size = "2 x 3 in", .shape = {}, .result = {}, .date = {}, .note = {}};
  for (const char* result : {"fits", "too-tight", "fits"}) {
    asked.result = result;
    const Result<TriedAnswer> answer = record_tried(test.book, asked);
    ASSERT_TRUE(answer) << answer.error().what;
  }
  const std::vector<TriedPanel> tried = tried_in(test.book, 1);
  ASSERT_EQ(tried.size(), 2u);
  EXPECT_EQ(tried[0].result, "too tight");
  EXPECT_EQ(tried[1].result, "fits");
}

TEST(ChangeRecord, ASizeOfADieIsMeasured) {
  TestBook test;
  test.change("set", [](Change& change) {
    EXPECT_TRUE(put_line(change, line_row("Harbour Tags", "large", "cut", "rectangle")));
  });
  for (const char* text :
       {"harbour tags size=3 x 4 in", "harbour tags large size=3 in", "harbour tags large, cut width=3 in"}) {
    const Result<EditAnswer> answer = change_record(test.book, text);
    ASSERT_FALSE(answer) << text;
    EXPECT_EQ(answer.error().expected,
              "a figure is measured, not changed: insetbook measure NAME --size SIZE")
        << text << ": " << answer.error().what;
  }
}

}  // namespace
}  // namespace insetbook
