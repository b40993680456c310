// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of reading dates: whatever the words are, what is found is of the calendar; a day reads to itself in
// every form; seasons and months are those that a walk through the calendar finds.
#include "language/dates.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

#include "language/pieces.h"

namespace insetbook {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::months;
using std::chrono::sys_days;
using std::chrono::year;
using std::chrono::year_month;
using std::chrono::year_month_day;

constexpr const char* said[] = {
    "over",    "2",        "in",         "from",      "since", "march",   "a",      "made",    "2023",
    "the",     "last",     "this",       "year",      "years", "month",   "week",   "weekend", "days",
    "before",  "after",    "between",    "and",       "to",    "until",   "easter", "spring",  "winter",
    "of",      "early",    "late",       "first",     "half",  "quarter", "q2",     "31",      "30",
    "29",      "1",        "999",        "february",  "feb",   ".",       ",",      "2023/24", "2/3/2024",
    "02/2024", "31/31/24", "31/31/2024", "christmas", "2100",  "1900",    "90s",    "1990s",   "nineties",
    "monday",  "ago",      "old",        "older",     "than",  "two",     "end",    "about",   "or",
    "later",   "9999",     "0",          "may",       "3rd",   "31st",    "past",   "recent",  "today"};

constexpr const char* month_words[] = {"January", "February", "March",     "April",   "May",      "June",
                                       "July",    "August",   "September", "October", "November", "December"};

year_month_day any_day() {
  const auto since = *rc::gen::inRange(0, 73413);  // 1900 to 2100
  return year_month_day(sys_days(year(1900) / 1 / 1) + std::chrono::days(since));
}

std::optional<FoundDates> found_in(const std::string& text, const DateReading& how) {
  const auto pieces = split(text, {0, text.size()});
  RC_ASSERT(pieces.has_value());
  std::vector<DateWord> words;
  for (const Piece& piece : *pieces) words.push_back({piece.folded, piece.hyphen});
  const auto found = dates_at(words, how);
  if (found) RC_ASSERT(found->words == words.size());
  return found;
}

RC_GTEST_PROP(Dates, WhateverIsFoundIsOfTheCalendar, ()) {
  const auto count = *rc::gen::inRange<std::size_t>(1, 10);
  std::vector<DateWord> words;
  for (std::size_t i = 0; i < count; ++i) {
    words.push_back({said[*rc::gen::inRange<std::size_t>(0, std::size(said))]});
    words.back().hyphen = *rc::gen::inRange(0, 4) == 0;
  }
  const std::string today = iso_date(any_day());
  const auto found = dates_at(words, {.today = *rc::gen::arbitrary<bool>() ? today : std::string_view(),
                                      .southern = *rc::gen::arbitrary<bool>(),
                                      .month_first = *rc::gen::arbitrary<bool>(),
                                      .outright = *rc::gen::arbitrary<bool>()});
  if (!found) return;
  RC_ASSERT(found->words > 0);
  RC_ASSERT(found->words <= words.size());
  const auto& [from, to] = found->period;
  if (found->no_such_day) {
    RC_ASSERT(from.empty() && to.empty());
    return;
  }
  RC_ASSERT(!from.empty() || !to.empty());
  RC_ASSERT(from.empty() || is_iso_day(from));
  RC_ASSERT(to.empty() || is_iso_day(to));
  RC_ASSERT(from.empty() || to.empty() || from <= to);
}

RC_GTEST_PROP(Dates, ADayIsTheSameInEveryForm, ()) {
  const year_month_day date = any_day();
  const std::string y = std::to_string(static_cast<int>(date.year()));
  const std::string m = std::to_string(static_cast<unsigned>(date.month()));
  const std::string d = std::to_string(static_cast<unsigned>(date.day()));
  const std::string name = month_words[static_cast<unsigned>(date.month()) - 1];
  const Period expected{iso_date(date), iso_date(date)};
  for (const std::string& text :
       {name + " " + d + ", " + y, name + " " + d + " " + y, d + " " + name + " " + y,
        d + " of " + name + " " + y, name.substr(0, 3) + ". " + d + ", " + y, iso_date(date),
        y + "/" + m + "/" + d, m + "/" + d + "/" + y, m + "." + d + "." + y, m + "-" + d + "-" + y}) {
    const auto found = found_in(text, {});
    RC_ASSERT(found.has_value());
    RC_ASSERT(found->period == expected);
  }
  for (const std::string& text : {d + "/" + m + "/" + y, d + "." + m + "." + y, d + "-" + m + "-" + y}) {
    const auto found = found_in(text, {.month_first = false});
    RC_ASSERT(found.has_value());
    RC_ASSERT(found->period == expected);
  }
}

// Which season a month is of, by the table in language/seasons.h: 0 = spring.
int season_of(month m, bool southern) {
  const int north = (static_cast<int>(static_cast<unsigned>(m)) + 9) % 12 / 3;
  return southern ? (north + 2) % 4 : north;
}

// Back from the month before this one, to the first that ends the season.
RC_GTEST_PROP(Dates, TheLastSeasonIsTheOneThatAWalkBackFinds, ()) {
  constexpr const char* names[] = {"spring", "summer", "autumn", "winter"};
  const year_month_day today = any_day();
  const auto season = *rc::gen::inRange(0, 4);
  const auto southern = *rc::gen::arbitrary<bool>();
  year_month last = today.year() / today.month() - months(1);
  while (season_of(last.month(), southern) != season ||
         season_of((last + months(1)).month(), southern) == season)
    last -= months(1);
  const std::string iso = iso_date(today);
  const auto found = found_in(std::string("last ") + names[season], {.today = iso, .southern = southern});
  RC_ASSERT(found.has_value());
  RC_ASSERT(found->season);
  RC_ASSERT(found->period.from == iso_date((last - months(2)) / 1));
  RC_ASSERT(found->period.to == iso_date(last_day_of(last)));
}

// "5 May", "May" without a year: back from today, day by day.
RC_GTEST_PROP(Dates, ADayWithoutAYearIsTheLastOneThatHasBegun, ()) {
  const year_month_day today = any_day(), wanted = any_day();
  sys_days at = sys_days(today);
  const auto same = [&] {
    const year_month_day date(at);
    return date.month() == wanted.month() && date.day() == wanted.day();
  };
  while (!same()) at -= std::chrono::days(1);
  const std::string iso = iso_date(today);
  const std::string text = "on " + std::to_string(static_cast<unsigned>(wanted.day())) + " " +
                           month_words[static_cast<unsigned>(wanted.month()) - 1];
  const auto found = found_in(text, {.today = iso});
  RC_ASSERT(found.has_value());
  RC_ASSERT(found->period == (Period{iso_date(at), iso_date(at)}));
  RC_ASSERT(found->relative);
}

RC_GTEST_PROP(Dates, DayAfterStepsOneDayAtATime, ()) {
  const std::string from = iso_date(any_day());
  const auto days = *rc::gen::inRange(0, 800);
  std::string at = from;
  for (int i = 0; i < days; ++i) at = day_after(at, 1);
  RC_ASSERT(day_after(from, days) == at);
  RC_ASSERT(day_after(at, -days) == from);
}

}  // namespace
}  // namespace insetbook
