// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/settings.h"

#include <gtest/gtest.h>

#include "book/dates.h"
#include "book/invented.h"
#include "book/own_words.h"

namespace insetbook {
namespace {

TEST(Settings, DefaultsOfAnInchBookAndOfAMetricOne) {
  TestBook test;
  Settings all = settings(test.book);
  EXPECT_EQ(all.unit, Unit::inch);
  EXPECT_EQ(all.cutting_step, Length::inch_fraction(1, 16));
  EXPECT_EQ(all.border, Length::inch_fraction(1, 16));
  EXPECT_EQ(all.least_strip, Length::inch_fraction(1, 8));
  EXPECT_EQ(all.scoring_marks, Length::inch_fraction(1, 8));
  EXPECT_EQ(all.envelope_slack, Length::inch_fraction(1, 8));
  ASSERT_TRUE(set_setting(test.book, "unit", "metric"));
  all = settings(test.book);
  EXPECT_EQ(all.unit, Unit::mm);
  EXPECT_EQ(all.cutting_step, Length::mm(1));
  EXPECT_EQ(all.border, Length::mm(2));
  EXPECT_EQ(all.least_strip, Length::mm(3));
  EXPECT_EQ(all.scoring_marks, Length::mm(5));
  EXPECT_EQ(*setting_text(test.book, "envelope slack"), "3 mm");
}

TEST(Settings, EveryRowHasAValue) {
  TestBook test;
  for (const SettingRow& row : setting_rows()) {
    const auto text = setting_text(test.book, row.name);
    ASSERT_TRUE(text) << row.name;
    EXPECT_EQ(*text, row.inch_default);
    EXPECT_NE(row.help, "");
  }
}

TEST(Settings, AreReadAndChecked) {
  TestBook test;
  struct Row {
    const char *name, *value, *kept;
  };
  for (const Row& row : std::vector<Row>{{"Cutting-Step", "1/32", "1/32 in"},
                                         {"border", "2 mm", "2 mm"},
                                         {"unit", "inches", "in"},
                                         {"paper", " A4; 6 x 6 in ", "A4; 6 x 6 in"},
                                         {"hemisphere", "South", "southern"},
                                         {"hemisphere", "northern", "northern"},
                                         {"hemisphere", "southern", "southern"},
                                         {"today", "2026-03-08", "2026-03-08"},
                                         {"today", "", ""}}) {
    ASSERT_TRUE(set_setting(test.book, row.name, row.value)) << row.name;
    EXPECT_EQ(*setting_text(test.book, row.name), row.kept);
  }
  EXPECT_EQ(settings(test.book).border, Length::mm(2));
  EXPECT_TRUE(settings(test.book).southern);
  ASSERT_TRUE(set_setting(test.book, "hemisphere", ""));
  ASSERT_TRUE(set_setting(test.book, "border", "1/4 in"));
  EXPECT_EQ(*setting_text(test.book, "border"), "1/4 in");
  ASSERT_TRUE(set_setting(test.book, "border", ""));
  EXPECT_EQ(*setting_text(test.book, "border"), "1/16 in");
  EXPECT_FALSE(settings(test.book).southern);
}

TEST(Settings, WhatCannotBeIsRefused) {
  TestBook test;
  struct Row {
    const char *name, *value, *what, *expected;
  };
  for (const Row& row : std::vector<Row>{
           {"unit", "cubit", "\"cubit\" is no value for \"unit\"", "in or mm"},
           {"hemisphere", "equator", "\"equator\" is no value for \"hemisphere\"", "northern or southern"},
           {"today", "2026-13-01", "\"2026-13-01\" is no value for \"today\"",
            "a date as in 2026-03-08, or nothing"},
           {"cuting step", "1", "there is no setting \"cuting step\"", "one of the settings"}}) {
    const auto done = set_setting(test.book, row.name, row.value);
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().what, row.what);
    EXPECT_EQ(done.error().expected, row.expected);
  }
  EXPECT_FALSE(set_setting(test.book, "border", "wide"));
  EXPECT_EQ(set_setting(test.book, "cuting step", "1").error().candidates,
            std::vector<std::string>{"cutting step"});
  EXPECT_EQ(setting_text(test.book, "zzzzzzzz").error().candidates.size(), setting_rows().size());
  EXPECT_EQ(test.book.last_change(), 0);
}

TEST(Settings, TodayIsTheDaySet) {
  TestBook test;
  EXPECT_TRUE(is_iso_date(today(test.book)));
  ASSERT_TRUE(set_setting(test.book, "today", "2031-01-02"));
  EXPECT_EQ(today(test.book), "2031-01-02");
}

TEST(Dates, OfTheCalendarOnly) {
  for (const char* good : {"2026-03-08", "2024-02-29", "2000-02-29", "0001-01-01", "9999-12-31"}) {
    EXPECT_TRUE(is_iso_date(good)) << good;
  }
  for (const char* bad : {"", "2026-3-8", "2026-02-29", "1900-02-29", "2026-04-31", "2026-00-10",
                          "0000-01-01", "2026/03/08", "2026-03-08 ", "+026-03-08", "2026-03-0x"}) {
    EXPECT_FALSE(is_iso_date(bad)) << bad;
  }
}

TEST(OwnWords, AddedListedRemoved) {
  TestBook test;
  const auto put = [&](const OwnWord& word) {
    PutResult result = PutResult::same;
    test.change("words", [&](Change& change) { result = *put_own_word(change, word); });
    return result;
  };
  EXPECT_EQ(put({"technique", "Salt Resist", {"salting"}, "", ""}), PutResult::added);
  EXPECT_EQ(put({"technique", "salt-resist", {"Salting", "salt"}, "resist", ""}), PutResult::changed);
  EXPECT_EQ(put({"technique", "Salt Resist", {"salt"}, "", ""}), PutResult::same);
  EXPECT_EQ(put({"fold", "Lighthouse fold", {}, "", "built to stand"}), PutResult::added);
  EXPECT_EQ(own_words(test.book),
            (std::vector<OwnWord>{{"fold", "Lighthouse fold", {}, "", "built to stand"},
                                  {"technique", "Salt Resist", {"salting", "salt"}, "resist", ""}}));

  const auto remove = [&](std::string_view vocabulary, std::string_view term, std::string_view label) {
    return test.book.change("words",
                            [&](Change& change) { return remove_own_word(change, vocabulary, term, label); });
  };
  EXPECT_TRUE(remove("technique", "salt resist", "SALT"));
  EXPECT_EQ(own_words(test.book)[1].labels, std::vector<std::string>{"salting"});
  const auto none = remove("technique", "pepper", "");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().what, "\"pepper\" is none of your own words for a technique");
  EXPECT_EQ(none.error().candidates, std::vector<std::string>{"Salt Resist"});
  EXPECT_TRUE(remove("technique", "Salt Resist", ""));
  EXPECT_EQ(own_words(test.book).size(), 1u);
}

TEST(OwnWords, WhatIsNoWordIsRefused) {
  TestBook test;
  for (const auto& [term, what] :
       std::vector<std::pair<std::string, std::string>>{{"", "a word has no letters"},
                                                        {"a; b", "\"a; b\" has a semicolon in it"},
                                                        {"\xff", "a word is not in UTF-8"}}) {
    const auto done = test.book.change("words", [&, &text = term](Change& change) -> Result<void> {
      const auto put = put_own_word(change, {"technique", text, {}, "", ""});
      if (!put) return failure(put.error());
      return {};
    });
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().what, what);
  }
}

}  // namespace
}  // namespace insetbook
