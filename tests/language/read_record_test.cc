// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(ReadGoes, Cells) {
  struct Case {
    const char* cell;
    GoesHow how;
    const char* target;
    const char* side;
  };
  const Case cases[] = {
      {"on front", GoesHow::on, "front", "front"},
      {"in frame", GoesHow::in, "frame", ""},
      {"in the frame", GoesHow::in, "frame", ""},
      {"behind label", GoesHow::behind, "label", ""},
      {"under the Big Label", GoesHow::behind, "Big Label", ""},
      {"around front", GoesHow::around, "front", "front"},
      {"wrapped around the mat", GoesHow::around, "mat", ""},
      {"Round the mat", GoesHow::around, "mat", ""},
      {"through slot", GoesHow::through, "slot", ""},
      {"on section 2", GoesHow::on, "section 2", ""},
      {"grey panel", GoesHow::on, "grey panel", ""},
      {"onion panel", GoesHow::on, "onion panel", ""},
      {"inside left", GoesHow::on, "inside left", "inside"},
      {"on the inside", GoesHow::on, "inside", "inside"},
      {"", GoesHow::on, "", ""},
      {"  ", GoesHow::on, "", ""},
      {"on", GoesHow::on, "", ""},
  };
  for (const Case& c : cases) {
    const Goes goes = read_goes(c.cell);
    EXPECT_EQ(goes.how, c.how) << c.cell;
    EXPECT_EQ(goes.target, c.target) << c.cell;
    EXPECT_EQ(goes.side, c.side) << c.cell;
  }
  EXPECT_EQ(read_goes("on section 2").section, 2);
  EXPECT_EQ(read_goes("section two").section, 2);
  EXPECT_EQ(read_goes("on front").section, std::nullopt);
}

TEST(ReadGoes, WordsOfTheBook) {
  EXPECT_EQ(goes_word(GoesHow::on), "on");
  EXPECT_EQ(goes_word(GoesHow::in), "in");
  EXPECT_EQ(goes_word(GoesHow::behind), "behind");
  EXPECT_EQ(goes_word(GoesHow::around), "around");
  EXPECT_EQ(goes_word(GoesHow::through), "through");
}

TEST(ReadGlue, Cells) {
  const auto whole = read_glue("whole", Unit::inch);
  ASSERT_TRUE(whole);
  EXPECT_EQ(whole->where, Glue::Where::whole);
  EXPECT_EQ(whole->with, "");

  const auto left = read_glue("foam, left 2 in", Unit::inch);
  ASSERT_TRUE(left);
  EXPECT_EQ(left->where, Glue::Where::part);
  EXPECT_EQ(left->edge, "left");
  EXPECT_EQ(left->length, Length::inches(2));
  EXPECT_EQ(left->with, "foam");

  const auto metric = read_glue("top 12", Unit::mm);
  ASSERT_TRUE(metric);
  EXPECT_EQ(metric->length, Length::mm(12));

  EXPECT_EQ(read_glue("none", Unit::inch)->where, Glue::Where::none);
  EXPECT_EQ(read_glue("", Unit::inch)->where, Glue::Where::not_said);
  EXPECT_EQ(read_glue("double-sided tape", Unit::inch)->with, "double-sided tape");
  EXPECT_EQ(read_glue("centre", Unit::inch)->edge, "middle");
}

TEST(ReadGlue, ALengthThatCannotBe) {
  EXPECT_FALSE(read_glue("left 2-9/8 in", Unit::inch));
}

TEST(ReadDieCell, OrdersAndLabels) {
  EXPECT_EQ(read_die_cell("2").rank, 2);
  EXPECT_EQ(read_die_cell("2").label, "2");
  EXPECT_EQ(read_die_cell("second largest").rank, 2);
  EXPECT_EQ(read_die_cell("second largest").label, "2");
  EXPECT_EQ(read_die_cell("Smallest").rank_from_smallest, 1);
  EXPECT_EQ(read_die_cell("Smallest").label, "");
  EXPECT_EQ(read_die_cell(" Large Tag ").label, "Large Tag");
  EXPECT_EQ(read_die_cell("Large Tag").rank, std::nullopt);
}

TEST(ReadLineCell, KindsAndNames) {
  EXPECT_EQ(read_line_cell("")->kind, "cut");
  EXPECT_EQ(read_line_cell("Stitched")->name, "stitched");
  EXPECT_EQ(read_line_cell("sewn line")->name, "stitched");
  EXPECT_EQ(read_line_cell("Window 2")->kind, "window");
  EXPECT_EQ(read_line_cell("Window 2")->name, "window 2");
  const auto wrong = read_line_cell("wavy");
  ASSERT_FALSE(wrong);
  EXPECT_EQ(wrong.error().what, "\"wavy\" is no line of a die");
  EXPECT_EQ(wrong.error().expected,
            "cut, stitched, pierced, scored, embossed or window, with a number where there are several");
}

TEST(SideWord, Words) {
  EXPECT_EQ(side_word("front"), "front");
  EXPECT_EQ(side_word("on the inside"), "inside");
  EXPECT_EQ(side_word("reverse"), "back");
  EXPECT_EQ(side_word("outside"), "front");
  EXPECT_EQ(side_word("flap"), "");
}

TEST(ReadCount, Cells) {
  EXPECT_EQ(read_count("3"), 3);
  EXPECT_EQ(read_count("x3"), 3);
  EXPECT_EQ(read_count("3 x"), 3);
  EXPECT_EQ(read_count("three"), 3);
  EXPECT_EQ(read_count("a pair"), 2);
  EXPECT_EQ(read_count(""), 1);
  const auto wrong = read_count("some");
  ASSERT_FALSE(wrong);
  EXPECT_EQ(wrong.error().what, "\"some\" is no count");
  EXPECT_FALSE(read_count("0"));
  EXPECT_FALSE(read_count("2.5"));
}

}  // namespace
}  // namespace insetbook
