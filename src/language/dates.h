// SPDX-License-Identifier: GPL-3.0-or-later
//
// Days and periods as people say them: "2023", "March", "March 2023", "last spring", "2023-05-12", "since
// March", "between May and July 2023", "more than two years ago". Relative ones are reckoned from a day that
// is given, never from the clock. How what is vague is taken (common practice, no source):
//   - seasons are three whole months (seasons.h);
//   - a month, or a day of one, without a year is the last one that has begun (29 February: the last there
//     was); beside a dated one ("May to July 2023") the last before that;
//   - "last spring" is over; "last year" is the calendar year, "the last year" and "the past year" are twelve
//     months up to today; "two years ago" is that calendar year;
//   - early, mid and late are thirds, the beginning and the end are quarters of a year, else thirds;
//   - "last Christmas" says when a card for it was made: in the year up to that day; behind "since", "before"
//     and their like Christmas is a day;
//   - "about 2023" is 2022 to 2024;
//   - "recently" is the last three months; "the nineties" are the last ones that have begun;
//   - 3/4/2024 is month first or day first as `month_first` says, and the other reading is offered.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

#include "language/calendar.h"

namespace insetbook {

struct DateReading {
  std::string_view today;   // ISO date; empty: what is relative is not read
  bool southern = false;    // seasons of the southern hemisphere
  bool month_first = true;  // "3/4/2024" is the fourth of March
  bool outright = false;    // it was said that a date follows: "may", "spring" and "christmas" are dates
};

// A word, folded, or a mark: a comma, or the point of a short month ("mar.").
struct DateWord {
  std::string_view text;
  bool hyphen = false;  // only a hyphen stands between it and the word before
};

struct FoundDates {
  std::size_t words = 0;  // how many words it takes
  Period period;
  bool relative = false;        // reckoned from today
  bool season = false;          // by the seasons of one hemisphere
  bool no_such_day = false;     // a day that the calendar has not, as 29 February 2023; no period then
  std::optional<Period> other;  // what else the figures could mean
};

// How far ahead a reader has to look.
inline constexpr std::size_t longest_dates = 14;

// The days that begin at words[0], with what leads up to them ("made in", "since").
std::optional<FoundDates> dates_at(std::span<const DateWord> words, const DateReading& how);

}  // namespace insetbook
