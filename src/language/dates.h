// SPDX-License-Identifier: GPL-3.0-or-later
//
// Days and periods as people say them: "2023", "March", "March 2023", "last spring", "2023-05-12", "since
// March", "between May and July 2023", "more than two years ago". Relative ones are reckoned from a day that
// is given, never from the clock. How what is vague is taken (common practice, no source):
//   - seasons are whole months, spring March to May in the north and September to November in the south; a
//     winter or a southern summer belongs to the year it begins in;
//   - a month, or a day of one, without a year is the last one that has begun; beside a dated one ("May to
//     July 2023") the last before that;
//   - "last spring" is over; "last year" is the calendar year, "the last year" and "the past year" are twelve
//     months up to today; "two years ago" is that calendar year;
//   - early, mid and late are thirds, the beginning and the end are quarters of a year, else thirds;
//   - "last Christmas" says when a card for it was made: in the year up to that day;
//   - "recently" is the last three months; "the nineties" are the last ones that have begun;
//   - 3/4/2024 is month first or day first as `month_first` says, and the other reading is offered.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace insetbook {

// From one day to another, both included, as ISO dates; empty = open.
struct Period {
  std::string from, to;
  bool operator==(const Period&) const = default;
};

struct DateReading {
  std::string_view today;   // ISO date; empty: what is relative is not read
  bool southern = false;    // seasons of the southern hemisphere
  bool month_first = true;  // "3/4/2024" is the fourth of March
};

// A word, folded, or "," for a comma.
struct DateWord {
  std::string_view text;
  bool hyphen = false;  // only a hyphen stands between it and the word before
};

struct FoundDates {
  std::size_t words = 0;  // how many words it takes
  Period period;
  bool relative = false;        // reckoned from today
  std::optional<Period> other;  // what else the figures could mean
};

// How far ahead a reader has to look.
inline constexpr std::size_t longest_dates = 14;

// The days that begin at words[0], with what leads up to them ("made in", "since").
std::optional<FoundDates> dates_at(std::span<const DateWord> words, const DateReading& how);

struct FoundPeriod {
  std::size_t words = 0;  // how many words it takes
  Period period;
  bool relative = false;    // reckoned from today
  bool plain_year = false;  // only four figures
};

// The period that begins at words[0]. `alone`: nothing before it says that a date follows, so that "may" and
// "march" need a year. `today` empty: relative periods are not read.
std::optional<FoundPeriod> period_at(std::span<const std::string> words, std::string_view today, bool alone);

// "2023", "2023-05", "2023-05-12", and with `..` between or at an end of them: as a field's value.
std::optional<Period> read_period(std::string_view text);

// The day `days` later (or earlier) than an ISO date.
std::string day_after(std::string_view iso, int days);
bool is_iso_day(std::string_view text);

}  // namespace insetbook
