// SPDX-License-Identifier: GPL-3.0-or-later
//
// Days and periods: text → the span that is offered as one, and the days it means. Today is Wednesday, 25
// November 2026. The rules stand in language/dates.h.
#include "language/dates.h"

#include <gtest/gtest.h>

#include "language/feasts.h"
#include "language/offers.h"
#include "language/read_question.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

bool is_date(const Seen& seen) {
  return says_any<MadeIn>(seen);
}

void compare(const Offers& offers, std::initializer_list<Case> cases) {
  for (const Case& each : cases) EXPECT_EQ(offers.on(each.text, is_date), each.offered) << each.text;
}

TEST(Dates, OfTheIssue) {
  compare(Offers(), {
                        {"made in 2023", "0-12 made=2023"},
                        {"last spring", "0-11 made=2026-03-01..2026-05-31"},
                        {"since March", "0-11 made=2026-03-01.."},
                        {"before 2021", "0-11 made=..2020-12-31"},
                        {"in the last two years", "0-21 made=2024-11-25..2026-11-25"},
                    });
}

// The same day in every order in which it is written.
TEST(Dates, OneDay) {
  for (const char* text : {"March 14, 2026", "March 14 2026", "March 14th, 2026",
                           "Mar 14, 2026",   "Mar. 14, 2026", "the 14th of March, 2026",
                           "14 March 2026",  "14 Mar 2026",   "14th March 2026",
                           "2026-03-14",     "2026/03/14",    "2026/3/14",
                           "3/14/2026",      "03/14/2026",    "14.3.2026",
                           "14.03.2026",     "14/03/2026",    "14-03-2026",
                           "03-14-2026",     "3-14-2026",     "made on March 14, 2026"})
    EXPECT_NE(Offers().on(text, is_date).find("made=2026-03-14"), std::string::npos)
        << text << ": " << Offers().on(text, is_date);
}

TEST(Dates, DaysOfAMonth) {
  compare(Offers(), {
                        {"5 May", ""},
                        {"on 5 May", "0-8 made=2026-05-05"},
                        {"on May 5", "0-8 made=2026-05-05"},
                        {"since May 5", "0-11 made=2026-05-05.."},
                        {"before Dec. 24", "0-14 made=..2025-12-23"},
                        {"between May 5 and June 3", "0-24 made=2026-05-05..2026-06-03"},
                        {"from May 5 to June 3", "0-20 made=2026-05-05..2026-06-03"},
                        {"in May 5", "0-6 made=2026-05-01..2026-05-31"},
                        {"since May 5 in", "0-9 made=2026-05-01.."},
                        {"5th May", "0-7 made=2026-05-05"},
                        {"5th of December", "0-15 made=2025-12-05"},
                        {"25th of November", "0-16 made=2026-11-25"},
                        {"26th of November", "0-16 made=2025-11-26"},
                        {"May 5th", "0-7 made=2026-05-05"},
                        {"the third of May", "0-16 made=2026-05-03"},

                        {"29 February 2024", "0-16 made=2024-02-29"},

                        {"1899", ""},
                        {"2101", ""},
                        {"1900", "0-4 made=1900"},
                        {"2100", "0-4 made=2100"},
                    });
}

// A day that the calendar has not falls away, and is told.
TEST(Dates, NoSuchDay) {
  struct Row {
    const char *text, *tree, *problem;
  };
  for (const Row& row : std::vector<Row>{
           {"circle 31 June 2024", "all(piece(shape=circle))",
            "7: \"31 June 2024\" is no day of the calendar"},
           {"29 February 2023", "all()", "0: \"29 February 2023\" is no day of the calendar"},
           {"made on Feb 30", "all()", "0: \"made on Feb 30\" is no day of the calendar"},
           {"2023-02-29", "all()", "0: \"2023-02-29\" is no day of the calendar"},
           {"since 2023-13-01 easel", "all(fold=easel)", "0: \"since 2023-13-01\" is no day of the calendar"},
           {"32/13/2024", "all()", "0: \"32/13/2024\" is no day of the calendar"},
           {"made:2023-02-29", "all()", "5: \"2023-02-29\" is no date"},
           {"29 February 2024", "all(made=2024-02-29)", ""},
           {"on 29 February", "all(made=2024-02-29)", ""},
       }) {
    const Offers offers;
    const auto question = read_question(row.text, offers.context());
    ASSERT_TRUE(question) << row.text;
    EXPECT_EQ(print(*question), row.tree) << row.text;
    std::string problem;
    if (!question->problems.empty())
      problem = std::to_string(question->problems.front().where.at.value_or(99)) + ": " +
                question->problems.front().what;
    EXPECT_EQ(problem, row.problem) << row.text;
  }
}

TEST(Dates, MonthsSeasonsAndYears) {
  compare(Offers(), {
                        {"may", ""},
                        {"march", ""},
                        {"spring", ""},
                        {"in spring", ""},
                        {"in may", "0-6 made=2026-05-01..2026-05-31"},
                        {"in December", "0-11 made=2025-12-01..2025-12-31"},
                        {"May 2023", "0-8 made=2023-05-01..2023-05-31"},
                        {"May, 2023", "0-9 made=2023-05-01..2023-05-31"},
                        {"May of 2023", "0-11 made=2023-05-01..2023-05-31"},
                        {"Sept. 2023", "0-10 made=2023-09-01..2023-09-30"},
                        {"2023-05", "0-7 made=2023-05-01..2023-05-31"},
                        {"05/2023", "0-7 made=2023-05-01..2023-05-31"},
                        {"13/2023", ""},
                        {"March last year", "0-15 made=2025-03-01..2025-03-31"},
                        {"in March of last year", "0-21 made=2025-03-01..2025-03-31"},
                        {"March this year", "0-15 made=2026-03-01..2026-03-31"},
                        {"spring last year", "0-16 made=2025-03-01..2025-05-31"},
                        {"in the spring of 2023", "0-21 made=2023-03-01..2023-05-31"},
                        {"spring 2023", "0-11 made=2023-03-01..2023-05-31"},
                        {"summer of 2023", "0-14 made=2023-06-01..2023-08-31"},
                        {"autumn 2023", "0-11 made=2023-09-01..2023-11-30"},
                        {"fall 2023", "0-9 made=2023-09-01..2023-11-30"},
                        {"winter 2023", "0-11 made=2023-12-01..2024-02-29"},
                        {"winter 2022/23", "0-14 made=2022-12-01..2023-02-28"},
                        {"2022/23", "0-7 made=2022-01-01..2023-12-31"},
                        {"2022/24", ""},
                        {"2023", "0-4 made=2023"},
                        {"dated 2023", "0-10 made=2023"},
                        {"during 2023", "0-11 made=2023"},
                        {"the 1990s", "0-9 made=1990-01-01..1999-12-31"},
                        {"the 90s", "0-7 made=1990-01-01..1999-12-31"},
                        {"90s", ""},
                        {"in the nineties", "0-15 made=1990-01-01..1999-12-31"},
                        {"the twenties", "0-12 made=2020-01-01..2029-12-31"},
                        {"the thirties", "0-12 made=1930-01-01..1939-12-31"},
                    });
}

TEST(Dates, AboutAYear) {
  compare(Offers(), {
                        {"about 2023", "0-10 made=2022-01-01..2024-12-31"},
                        {"made around 2020", "0-16 made=2019-01-01..2021-12-31"},
                        {"circa 2020", "0-10 made=2019-01-01..2021-12-31"},
                        {"about 2023 in", "0-10 made=2022-01-01..2024-12-31"},
                        {"about 3", ""},
                    });
}

// A field says that its value is a date.
TEST(Dates, InAField) {
  compare(Offers(), {
                        {"made:may", "0-8 made=2026-05-01..2026-05-31"},
                        {"made:December", "0-13 made=2025-12-01..2025-12-31"},
                        {"made:spring", "0-11 made=2026-03-01..2026-05-31"},
                        {"made:\"5 May\"", "0-12 made=2026-05-05"},
                        {"made:yesterday", "0-14 made=2026-11-24"},
                        {"made:Monday", "0-11 made=2026-11-23"},
                        {"made:Christmas", "0-14 made=2025-12-25"},
                        {"made:\"since Easter\"", "0-19 made=2026-04-05.."},
                        {"made:\"March 14, 2026\"", "0-21 made=2026-03-14"},
                        {"made:3/14/2026", "0-14 made=2026-03-14"},
                    });
}

TEST(Dates, SeasonsOfTheSouth) {
  compare(Offers(Unit::inch, true), {
                                        {"last spring", "0-11 made=2025-09-01..2025-11-30"},
                                        {"this spring", "0-11 made=2026-09-01..2026-11-30"},
                                        {"last summer", "0-11 made=2025-12-01..2026-02-28"},
                                        {"last autumn", "0-11 made=2026-03-01..2026-05-31"},
                                        {"last winter", "0-11 made=2026-06-01..2026-08-31"},
                                        {"summer 2023", "0-11 made=2023-12-01..2024-02-29"},
                                        {"since spring 2023", "0-17 made=2023-09-01.."},
                                        {"last March", "0-10 made=2026-03-01..2026-03-31"},
                                    });
}

TEST(Dates, PartsOfAPeriod) {
  compare(Offers(), {
                        {"early 2023", "0-10 made=2023-01-01..2023-04-30"},
                        {"mid 2023", "0-8 made=2023-05-01..2023-08-31"},
                        {"mid-2023", "0-8 made=2023-05-01..2023-08-31"},
                        {"late 2023", "0-9 made=2023-09-01..2023-12-31"},
                        {"late last year", "0-14 made=2025-09-01..2025-12-31"},
                        {"early May 2023", "0-14 made=2023-05-01..2023-05-10"},
                        {"the middle of May 2023", "0-22 made=2023-05-11..2023-05-20"},
                        {"late May 2023", "0-13 made=2023-05-21..2023-05-31"},
                        {"the beginning of 2023", "0-21 made=2023-01-01..2023-03-31"},
                        {"end of 2023", "0-11 made=2023-10-01..2023-12-31"},
                        {"the end of May 2023", "0-19 made=2023-05-21..2023-05-31"},
                        {"first half of 2023", "0-18 made=2023-01-01..2023-06-30"},
                        {"second half of May 2023", "0-23 made=2023-05-16..2023-05-31"},
                        {"second quarter of 2023", "0-22 made=2023-04-01..2023-06-30"},
                        {"Q3 2023", "0-7 made=2023-07-01..2023-09-30"},
                        {"early summer 2023", "0-17 made=2023-06-01..2023-06-30"},
                        {"early 2020s", "0-11 made=2020-01-01..2023-04-30"},
                        {"third half of 2023", "11-18 made=2023"},
                        {"early last week", "6-15 made=2026-11-16..2026-11-22"},
                    });
}

TEST(Dates, FromToday) {
  compare(Offers(), {
                        {"today", "0-5 made=2026-11-25"},
                        {"yesterday", "0-9 made=2026-11-24"},
                        {"the day before yesterday", "0-24 made=2026-11-23"},
                        {"recently", "0-8 made=2026-08-25..2026-11-25"},
                        {"this week", "0-9 made=2026-11-23..2026-11-29"},
                        {"last week", "0-9 made=2026-11-16..2026-11-22"},
                        {"the week before last", "0-20 made=2026-11-09..2026-11-15"},
                        {"last weekend", "0-12 made=2026-11-21..2026-11-22"},
                        {"this month", "0-10 made=2026-11-01..2026-11-30"},
                        {"last month", "0-10 made=2026-10-01..2026-10-31"},
                        {"this year", "0-9 made=2026"},
                        {"last year", "0-9 made=2025"},
                        {"the last year", "0-13 made=2025-11-25..2026-11-25"},
                        {"the past year", "0-13 made=2025-11-25..2026-11-25"},
                        {"last Monday", "0-11 made=2026-11-23"},
                        {"last Wednesday", "0-14 made=2026-11-18"},
                        {"on Monday", "0-9 made=2026-11-23"},
                        {"Monday", ""},
                        {"since Monday", "0-12 made=2026-11-23.."},
                        {"last May", "0-8 made=2026-05-01..2026-05-31"},
                        {"last November", "0-13 made=2025-11-01..2025-11-30"},
                        {"this November", "0-13 made=2026-11-01..2026-11-30"},
                        {"last spring", "0-11 made=2026-03-01..2026-05-31"},
                        {"this spring", "0-11 made=2026-03-01..2026-05-31"},
                        {"last autumn", "0-11 made=2025-09-01..2025-11-30"},
                        {"this autumn", "0-11 made=2026-09-01..2026-11-30"},
                        {"last winter", "0-11 made=2025-12-01..2026-02-28"},
                        {"last 6 months", "0-13 made=2026-05-25..2026-11-25"},
                        {"over the past 18 months", "0-23 made=2025-05-25..2026-11-25"},
                        {"in the last fortnight", "0-21 made=2026-11-11..2026-11-25"},
                        {"in the past few weeks", "0-21 made=2026-11-04..2026-11-25"},
                        {"last couple of years", "0-20 made=2024-11-25..2026-11-25"},
                        {"two years ago", "0-13 made=2024"},
                        {"six months ago", "0-14 made=2026-05-01..2026-05-31"},
                        {"a week ago", "0-10 made=2026-11-16..2026-11-22"},
                        {"a fortnight ago", "0-15 made=2026-11-09..2026-11-15"},
                        {"three days ago", "0-14 made=2026-11-22"},
                        {"more than two years ago", "0-23 made=..2024-11-24"},
                        {"over a year old", "0-15 made=..2025-11-24"},
                        {"older than six months", "0-21 made=..2026-05-24"},
                        {"at least two years old", "0-22 made=..2024-11-25"},
                        {"less than a month old", "0-21 made=2026-10-25.."},
                        {"newer than a year", "0-17 made=2025-11-25.."},
                    });
}

// From the end of a month, and into a leap year.
TEST(Dates, MonthsOfUnequalLength) {
  struct Row {
    const char *today, *from;
    std::vector<DateWord> words;
  };
  for (const Row& row : std::vector<Row>{
           {"2026-03-31", "2026-02-28", {{"last"}, {"1"}, {"month"}}},
           {"2024-03-31", "2024-02-29", {{"last"}, {"1"}, {"month"}}},
           {"2024-02-29", "2023-02-28", {{"last"}, {"1"}, {"year"}}},
           {"2026-01-15", "2025-12-15", {{"last"}, {"1"}, {"month"}}},
       }) {
    const auto found = dates_at(row.words, {.today = row.today});
    ASSERT_TRUE(found) << row.today;
    EXPECT_EQ(found->period, (Period{row.from, row.today})) << row.today;
    EXPECT_EQ(found->words, 3u);
    EXPECT_TRUE(found->relative);
  }
}

TEST(Dates, Bounds) {
  compare(Offers(), {
                        {"since 2020-05-01", "0-16 made=2020-05-01.."},
                        {"since May", "0-9 made=2026-05-01.."},
                        {"after 2023", "0-10 made=2024-01-01.."},
                        {"after 3/4/2026", "0-14 made=2026-03-05.."},
                        {"until May 2023", "0-14 made=..2023-05-31"},
                        {"by 2023", "0-7 made=..2023-12-31"},
                        {"no later than 2023", "0-18 made=..2023-12-31"},
                        {"not before 2023", "0-15 made=2023-01-01.."},
                        {"older than 2020", "0-15 made=..2019-12-31"},
                        {"newer than 2024", "0-15 made=2025-01-01.."},
                        {"prior to 2020", "0-13 made=..2019-12-31"},
                        {"2023 or later", "0-13 made=2023-01-01.."},
                        {"2023 and earlier", "0-16 made=..2023-12-31"},
                        {"from 2023 on", "0-12 made=2023-01-01.."},
                        {"2023 onwards", "0-12 made=2023-01-01.."},
                        {"2020-2022", "0-9 made=2020-01-01..2022-12-31"},
                        {"2020 to 2022", "0-12 made=2020-01-01..2022-12-31"},
                        {"between 2020 and 2022", "0-21 made=2020-01-01..2022-12-31"},
                        {"between May and July 2023", "0-25 made=2023-05-01..2023-07-31"},
                        {"May to July 2023", "0-16 made=2023-05-01..2023-07-31"},
                        {"November to February 2023", "0-25 made=2022-11-01..2023-02-28"},
                        {"summer 2022 to spring 2023", "0-26 made=2022-06-01..2023-05-31"},
                        {"5 May to 3 June 2023", "0-20 made=2023-05-05..2023-06-03"},
                        {"20 May to 3 May 2023", "0-20 made=2022-05-20..2023-05-03"},
                        {"between March and June", "0-22 made=2026-03-01..2026-06-30"},
                        {"between 2020", "8-12 made=2020"},
                    });
}

// Behind "since" and its like a feast is a day; "last Christmas" is the year of the cards for it.
TEST(Dates, Feasts) {
  compare(Offers(), {
                        {"Christmas", ""},
                        {"Christmas 2023", "10-14 made=2023"},
                        {"last Christmas", "0-4 made=2024-12-26..2025-12-25"},
                        {"this Christmas", "0-4 made=2025-12-26..2026-12-25"},
                        {"last Easter", "0-4 made=2025-04-21..2026-04-05"},
                        {"since Easter", "0-12 made=2026-04-05.."},
                        {"since last Easter", "0-17 made=2026-04-05.."},
                        {"since last Christmas", "0-20 made=2025-12-25.."},
                        {"before Christmas 2023", "0-21 made=..2023-12-24"},
                        {"after Halloween", "0-15 made=2026-11-01.."},
                        {"until Easter 2024", "0-17 made=..2024-03-31"},
                        {"since Valentine's Day", "0-21 made=2026-02-14.."},
                        {"by Christmas", ""},
                        {"by Christmas 2023", "0-17 made=..2023-12-25"},
                        {"between Christmas 2023 and Easter 2024", "0-38 made=2023-12-25..2024-03-31"},
                        {"between Christmas and Easter", "0-28 made=2025-12-25..2026-04-05"},
                        {"between Easter and Christmas", "0-28 made=2025-04-20..2025-12-25"},
                        {"Christmas to Easter 2024", "0-24 made=2023-12-25..2024-03-31"},
                        {"Christmas to Easter", ""},
                    });
}

// What the figures could mean besides is offered; a metric book takes the day first.
TEST(Dates, MonthFirstOrDayFirst) {
  struct Row {
    const char* text;
    Unit unit;
    const char *offered, *other;
  };
  for (const Row& row : std::vector<Row>{
           {"3/4/2024", Unit::inch, "0-8 made=2024-03-04", "made:2024-04-03"},
           {"3/4/2024", Unit::mm, "0-8 made=2024-04-03", "made:2024-03-04"},
           {"3.4.2024", Unit::mm, "0-8 made=2024-04-03", "made:2024-03-04"},
           {"03-04-2024", Unit::inch, "0-10 made=2024-03-04", "made:2024-04-03"},
           {"4/4/2024", Unit::inch, "0-8 made=2024-04-04", ""},
           {"13/4/2024", Unit::inch, "0-9 made=2024-04-13", ""},
           {"since 3/4/2024", Unit::inch, "0-14 made=2024-03-04..", "made:2024-04-03.."},
       }) {
    const Offers offers(row.unit);
    EXPECT_EQ(offers.on(row.text, is_date), row.offered) << row.text;
    const auto question = read_question(row.text, offers.context());
    ASSERT_TRUE(question) << row.text;
    EXPECT_EQ(question->other_readings.empty() ? "" : question->other_readings.front().other, row.other)
        << row.text;
  }
}

TEST(Dates, AreToldInTheAnswer) {
  struct Row {
    const char* text;
    bool southern;
    std::vector<std::string> notes;
  };
  for (const Row& row : std::vector<Row>{
           {"last spring",
            false,
            {"today is 2026-11-25", "seasons are northern (insetbook settings hemisphere)"}},
           {"last spring",
            true,
            {"today is 2026-11-25", "seasons are southern (insetbook settings hemisphere)"}},
           {"spring 2023", false, {"seasons are northern (insetbook settings hemisphere)"}},
           {"summer 2022 to May 2023", true, {"seasons are southern (insetbook settings hemisphere)"}},
           {"since March", false, {"today is 2026-11-25"}},
           {"made in 2023", false, {}},
       }) {
    const Offers offers(Unit::inch, row.southern);
    const auto question = read_question(row.text, offers.context());
    ASSERT_TRUE(question) << row.text;
    EXPECT_EQ(question->notes, row.notes) << row.text;
  }
}

// Without a day that is today nothing relative is read.
TEST(Dates, WithoutToday) {
  for (const char* said : {"yesterday", "may", "spring"}) {
    const std::vector<DateWord> words = {{"since"}, {said}};
    EXPECT_FALSE(dates_at(words, {})) << said;
  }
  const std::vector<DateWord> words = {{"since"}, {"may"}, {"2023"}};
  ASSERT_TRUE(dates_at(words, {}));
  EXPECT_EQ(dates_at(words, {})->period, (Period{"2023-05-01", ""}));
}

TEST(ReadPeriod, ValuesOfAField) {
  struct Row {
    const char *text, *from, *to;
  };
  for (const Row& row : std::vector<Row>{{"2023", "2023-01-01", "2023-12-31"},
                                         {"2023-05", "2023-05-01", "2023-05-31"},
                                         {"2024-02", "2024-02-01", "2024-02-29"},
                                         {"2023-05-12", "2023-05-12", "2023-05-12"},
                                         {"2023..", "2023-01-01", ""},
                                         {"..2023-05", "", "2023-05-31"},
                                         {"2022-05-12..2023", "2022-05-12", "2023-12-31"}}) {
    const auto period = read_period(row.text);
    ASSERT_TRUE(period) << row.text;
    EXPECT_EQ(*period, (Period{row.from, row.to})) << row.text;
  }
  for (const char* text : {"", "..", "2023-13", "2023-02-30", "23", "May 2023", "2023...", "2023..x"})
    EXPECT_FALSE(read_period(text)) << text;
}

TEST(DayAfter, StepsThroughTheCalendar) {
  EXPECT_EQ(day_after("2024-02-28", 1), "2024-02-29");
  EXPECT_EQ(day_after("2023-02-28", 1), "2023-03-01");
  EXPECT_EQ(day_after("2023-12-31", 1), "2024-01-01");
  EXPECT_EQ(day_after("2024-03-01", -1), "2024-02-29");
  EXPECT_EQ(day_after("no day", 1), "no day");
}

}  // namespace
}  // namespace insetbook
