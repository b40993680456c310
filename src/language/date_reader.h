// SPDX-License-Identifier: GPL-3.0-or-later
//
// The reader behind dates_at (dates.h). Each way of saying a period has a file of its own:
//   dates.cc             what leads up to it and bounds it: "made in", "since", "between … and", "or later"
//   dates_in_months.cc   months, seasons and days of a month: "March 14, 2026", "spring of 2023"
//   dates_in_figures.cc  "2023-05-12", "3/4/2024", "2022/23"
//   dates_in_parts.cc    "early 2023", "first half of May 2023", "q2 2023", "the nineties"
//   dates_from_today.cc  "last spring", "in the last two years", "more than a year ago"
#pragma once

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "language/dates.h"

namespace insetbook {

class DateReader {
 public:
  DateReader(std::span<const DateWord> words, const DateReading& how)
      : words_(words), today_(day_of_iso(how.today)), how_(how) {}

  std::optional<FoundDates> read() const;

 private:
  using year = std::chrono::year;
  using month = std::chrono::month;
  using year_month = std::chrono::year_month;
  using year_month_day = std::chrono::year_month_day;

  enum class Bound { whole, since, after, before, until, between };
  enum class DayUnit { day, week, fortnight, month, year };

  // A month, a season or a day of a month whose year is not said.
  struct NoYear {
    std::size_t words = 0;
    month first{};
    int count = 1;  // months
    std::optional<unsigned> day;
    bool ordinal = false;  // "5th May"
    bool season = false;
  };

  // `words` of what is found is counted from the first word of all, not from where the looking began.
  using Found = FoundDates;
  static Found found(std::size_t words, Period period) {
    return {.words = words, .period = std::move(period)};
  }
  static Found relative_found(std::size_t words, Period period) {
    return {.words = words, .period = std::move(period), .relative = true};
  }
  static Found day_found(std::size_t words, year_month_day day);

  std::string_view word(std::size_t i) const {
    return i < words_.size() ? words_[i].text : std::string_view();
  }
  bool hyphen(std::size_t i) const { return i < words_.size() && words_[i].hyphen; }
  // Where a run of words that begins at `at` ends; `at` when it is not there.
  std::size_t past(std::size_t at, std::string_view run) const;
  // The longest entry of a list of words with what they mean.
  template <class List>
  auto longest(const List& list, std::size_t& at) const -> decltype(&list[0]);

  // dates.cc
  static Period bounded(Bound bound, const Period& period);
  static Found bounded(Bound bound, Found found);
  std::size_t past_leads() const;
  Bound bound_at(std::size_t& at) const;
  Bound bound_behind(Found& found, bool after_from) const;
  std::optional<Found> two_ends(std::size_t at, Bound bound) const;
  std::optional<Found> about_a_year(std::size_t at) const;
  bool season_follows(std::size_t at) const;
  bool says_made(std::size_t lead) const;
  std::optional<Found> any_year(std::size_t at, std::size_t lead, Bound bound) const;
  std::size_t past_between(std::size_t at, Bound bound) const;
  std::optional<Found> period(std::size_t at, bool alone) const;

  // dates_in_months.cc
  std::optional<NoYear> without_year(std::size_t at) const;
  std::size_t past_month(std::size_t at) const;
  bool figure_is_day(std::size_t month_at, std::size_t figure_at) const;
  std::optional<unsigned> day_number(std::size_t at) const;
  std::optional<Found> dated_month(std::size_t at) const;
  std::optional<Found> year_of_today(std::size_t at) const;
  static Found in_year(const NoYear& said, year of, std::size_t words);
  static Period resolved(const NoYear& said, year_month_day limit);
  std::optional<Found> feast_said(std::size_t at, bool with_year) const;
  static year_month_day feast_before(std::string_view feast, year_month_day limit);

  // dates_in_figures.cc
  std::optional<Found> figures(std::size_t at) const;
  std::optional<Found> hyphened(std::size_t at) const;
  std::optional<Found> slashed(std::size_t at) const;
  Found either_order(std::size_t words, int first, int second, year of) const;
  static std::optional<year> two_years(std::string_view text);

  // dates_in_parts.cc
  struct Part {
    std::size_t words = 0;
    int nth = 0, of = 0;
  };
  std::optional<Part> part_at(std::size_t at) const;
  std::optional<Found> part_of(std::size_t at, bool alone) const;
  static Period cut(const Period& whole, const Part& part);
  std::optional<Found> decade(std::size_t at, bool alone) const;

  // dates_from_today.cc
  static std::optional<DayUnit> unit_named(std::string_view word);
  std::optional<Found> relative(std::size_t at) const;
  std::optional<Found> one_of_these_days(std::size_t at) const;
  std::optional<Found> last_so_many(std::size_t at) const;
  std::optional<int> counted(std::size_t& at) const;
  std::string back(DayUnit unit, int count) const;
  Period calendar(DayUnit unit, int ago) const;
  std::optional<Found> age(std::size_t at) const;
  std::optional<Found> unit_said(std::size_t at, bool last) const;
  year_month last_or_this(month first, int count, bool last) const;
  Found weekday_found(std::size_t words, int weekday, bool last) const;
  Period last_weekend() const;
  Period up_to_feast(std::string_view word, bool last) const;

  std::span<const DateWord> words_;
  std::optional<year_month_day> today_;
  DateReading how_;
};

template <class List>
auto DateReader::longest(const List& list, std::size_t& at) const -> decltype(&list[0]) {
  decltype(&list[0]) best = nullptr;
  std::size_t end = at;
  for (const auto& each : list)
    if (const std::size_t last = past(at, each.words); last > end) {
      end = last;
      best = &each;
    }
  at = end;
  return best;
}

}  // namespace insetbook
