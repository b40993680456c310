// SPDX-License-Identifier: GPL-3.0-or-later
//
// Months, seasons, feasts and days of a month, with and without their year.
#include <algorithm>
#include <iterator>

#include "language/date_reader.h"
#include "language/feasts.h"
#include "language/orders.h"
#include "language/seasons.h"

namespace insetbook {

using std::chrono::day;
using std::chrono::years;

// Past the month at `at`, and past the point of a short one ("mar.", "sept.").
std::size_t DateReader::past_month(std::size_t at) const {
  return at + (word(at).size() <= 4 && word(at + 1) == "." ? 2 : 1);
}

std::optional<unsigned> DateReader::day_number(std::size_t at) const {
  const auto said = ordinal(word(at)) ? ordinal(word(at)) : plain_number(word(at));
  if (!said || *said > 31) return std::nullopt;
  return static_cast<unsigned>(*said);
}

// Whether a plain figure behind a month is its day without a year to say so: "on May 5", "since May 5", but
// not "in May 5 circles" or "since May 5 in circles".
bool DateReader::figure_is_day(std::size_t month_at, std::size_t figure_at) const {
  static constexpr std::string_view before[] = {"on",   "since", "after", "before", "until",
                                                "till", "by",    "from",  "to",     "between"};
  static constexpr std::string_view units[] = {"in", "inch", "inches", "mm", "cm", "x", "by"};
  if (month_at == 0 || std::ranges::find(units, word(figure_at + 1)) != std::end(units)) return false;
  const std::string_view said = word(month_at - 1);
  if (said == "and") return std::ranges::find(words_, "between", &DateWord::text) != words_.end();
  return std::ranges::find(before, said) != std::end(before);
}

// "May", "spring", "3 May", "5th of May", "May 5th", without a year behind it.
std::optional<DateReader::NoYear> DateReader::without_year(std::size_t at) const {
  const std::size_t skipped = word(at) == "the" ? 1 : 0;
  const std::size_t first = at + skipped;
  if (const auto d = day_number(first)) {
    const std::size_t of = word(first + 1) == "of" ? 1 : 0;
    const std::size_t of_month = first + 1 + of;
    if (const auto m = month_named(word(of_month)))
      return NoYear{
          .words = past_month(of_month) - at, .first = *m, .day = *d, .ordinal = !plain_number(word(first))};
  }
  if (const auto season = season_begins(word(first), how_.southern))
    return NoYear{.words = skipped + 1, .first = *season, .count = 3, .season = true};
  const auto m = month_named(word(at));
  if (!m) return std::nullopt;
  const std::size_t behind = past_month(at);
  if (const auto d = day_number(behind); d && (!plain_number(word(behind)) || figure_is_day(at, behind)))
    return NoYear{.words = behind + 1 - at, .first = *m, .day = *d, .ordinal = true};
  // A point behind a month alone ends a sentence.
  return NoYear{.words = 1, .first = *m};
}

// "12 May 2023", "the 3rd of May 2023", "May 12, 2023", "May 2023", "spring of 2023", "winter 2022/23",
// "March last year".
std::optional<FoundDates> DateReader::dated_month(std::size_t at) const {
  if (const auto said = without_year(at)) {
    std::size_t next = at + said->words;
    if (word(next) == "." && said->words == 1) next = past_month(at);
    if (word(next) == "," || word(next) == "of") ++next;
    if (said->season)
      if (const auto y = two_years(word(next))) return in_year(*said, *y, next + 1);
    if (const auto y = year_named(word(next))) return in_year(*said, *y, next + 1);
    if (const auto y = year_of_today(next)) {
      Found in_that = in_year(*said, day_of_iso(y->period.from)->year(), y->words);
      in_that.relative = true;
      return in_that;
    }
  }
  // "May 12 2023": without its year the figure would not be a day.
  const auto m = month_named(word(at));
  const std::size_t of_day = past_month(at);
  const auto d = day_number(of_day);
  if (!m || !d) return std::nullopt;
  const std::size_t next = of_day + 1 + (word(of_day + 1) == "," ? 1u : 0u);
  const auto y = year_named(word(next));
  if (!y) return std::nullopt;
  return day_found(next + 1, year_month_day(*y, *m, day(*d)));
}

// "last year", "this year", behind a month.
std::optional<FoundDates> DateReader::year_of_today(std::size_t at) const {
  const bool last = word(at) == "last";
  if (!today_ || (!last && word(at) != "this") || word(at + 1) != "year") return std::nullopt;
  return relative_found(at + 2, calendar(DayUnit::year, last ? 1 : 0));
}

FoundDates DateReader::in_year(const NoYear& said, year of, std::size_t words) {
  if (said.day) return day_found(words, year_month_day(of, said.first, day(*said.day)));
  Found months = found(words, whole_months(of / said.first, said.count));
  months.season = said.season;
  return months;
}

// The last such months, or such a day, that have begun by the day `limit`. Empty: no year has that day.
Period DateReader::resolved(const NoYear& said, year_month_day limit) {
  if (!said.day) {
    const year_month begins = limit.year() / said.first;
    return whole_months(begins > month_of(limit) ? begins - years(1) : begins, said.count);
  }
  // Nine years hold a leap day, whatever the century.
  for (int back = 0; back <= 9; ++back) {
    const year_month_day date = (limit.year() - years(back)) / said.first / day(*said.day);
    if (date.ok() && date <= limit) return one_day(date);
  }
  return {};
}

// The day of a feast, as an end of a period: "Easter 2024", "last Christmas"; "Easter" alone is the last one.
std::optional<FoundDates> DateReader::feast_said(std::size_t at, bool with_year) const {
  const bool last = word(at) == "last", current = word(at) == "this";
  const std::size_t name = at + (last || current ? 1u : 0u);
  const std::string_view feast = word(name);
  if (!feast_day(feast, year(2000))) return std::nullopt;
  const std::size_t behind = name + (word(name + 1) == "day" ? 2u : 1u);
  if (last || current) {
    if (!today_) return std::nullopt;
    year_month_day day = *feast_day(feast, today_->year());
    if (last && day >= *today_) day = *feast_day(feast, today_->year() - years(1));
    return relative_found(behind, one_day(day));
  }
  if (const auto y = year_named(word(behind))) return day_found(behind + 1, *feast_day(feast, *y));
  if (with_year || !today_) return std::nullopt;
  year_month_day day = *feast_day(feast, today_->year());
  if (day > *today_) day = *feast_day(feast, today_->year() - years(1));
  return relative_found(behind, one_day(day));
}

// The last such feast before a day.
std::chrono::year_month_day DateReader::feast_before(std::string_view feast, year_month_day limit) {
  const year_month_day day = *feast_day(feast, limit.year());
  return day < limit ? day : *feast_day(feast, limit.year() - years(1));
}

}  // namespace insetbook
