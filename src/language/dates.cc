// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/dates.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <iterator>

#include "language/orders.h"

namespace insetbook {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::months;
using std::chrono::sys_days;
using std::chrono::year;
using std::chrono::year_month;
using std::chrono::year_month_day;
using std::chrono::years;

bool all_figures(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

int number(std::string_view figures) {
  int value = 0;
  for (const char c : figures) value = value * 10 + (c - '0');
  return value;
}

std::optional<year> year_of(std::string_view word) {
  if (word.size() != 4 || !all_figures(word)) return std::nullopt;
  const int value = number(word);
  if (value < 1900 || value > 2100) return std::nullopt;
  return year(value);
}

std::string padded(unsigned value, std::size_t width) {
  std::string text = std::to_string(value);
  return std::string(width > text.size() ? width - text.size() : 0, '0') + text;
}

std::string iso(year_month_day date) {
  return padded(static_cast<unsigned>(static_cast<int>(date.year())), 4) + "-" +
         padded(static_cast<unsigned>(date.month()), 2) + "-" + padded(static_cast<unsigned>(date.day()), 2);
}

std::optional<year_month_day> parse(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  if (!all_figures(text.substr(0, 4)) || !all_figures(text.substr(5, 2)) || !all_figures(text.substr(8, 2)))
    return std::nullopt;
  const year_month_day date{year(number(text.substr(0, 4))),
                            month(static_cast<unsigned>(number(text.substr(5, 2)))),
                            day(static_cast<unsigned>(number(text.substr(8, 2))))};
  if (!date.ok()) return std::nullopt;
  return date;
}

Period whole_year(year y) {
  return {iso(y / 1 / 1), iso(y / 12 / 31)};
}

// From the first day of `first` to the last of the month `count - 1` months later.
Period whole_months(year_month first, int count) {
  const year_month last = first + months(count - 1);
  return {iso(first / 1), iso(year_month_day(last / std::chrono::last))};
}

constexpr std::string_view month_names[] = {"january",   "february", "march",    "april",
                                            "may",       "june",     "july",     "august",
                                            "september", "october",  "november", "december"};

std::optional<month> month_named(std::string_view word) {
  for (unsigned i = 0; i < 12; ++i)
    if (word == month_names[i] || (word.size() >= 3 && word == month_names[i].substr(0, 3)) ||
        (word == "sept" && i == 8))
      return month(i + 1);
  return std::nullopt;
}

// The first month of a season.
std::optional<month> season_named(std::string_view word) {
  if (word == "spring") return month(3);
  if (word == "summer") return month(6);
  if (word == "autumn" || word == "fall") return month(9);
  if (word == "winter") return month(12);
  return std::nullopt;
}

class Reader {
 public:
  Reader(std::span<const std::string> words, std::string_view today, bool alone)
      : words_(words), today_(parse(today)), alone_(alone) {}

  std::optional<FoundPeriod> read() const {
    if (word(0) == "the" || word(0) == "past") {
      if (auto found = relative(word(0) == "the" ? 1 : 0)) return found;
      return std::nullopt;
    }
    if (auto found = day_said()) return found;
    if (auto found = relative(0)) return found;
    if (auto found = named_months()) return found;
    if (const auto y = year_of(word(0)))
      return FoundPeriod{.words = 1, .period = whole_year(*y), .plain_year = true};
    return std::nullopt;
  }

 private:
  std::string_view word(std::size_t i) const {
    return i < words_.size() ? std::string_view(words_[i]) : std::string_view();
  }

  // "2023-05-12" and "2023-05" are words parted at their hyphens; "12 May 2023", "May 12 2023".
  std::optional<FoundPeriod> day_said() const {
    const auto y = year_of(word(0));
    const auto two = [&](std::size_t i) { return word(i).size() == 2 && all_figures(word(i)); };
    if (y && two(1)) {
      const month m(static_cast<unsigned>(number(word(1))));
      if (!m.ok()) return std::nullopt;
      if (two(2)) return one_day(3, year_month_day(*y, m, day(static_cast<unsigned>(number(word(2))))));
      return FoundPeriod{.words = 2, .period = whole_months(*y / m, 1)};
    }
    const auto day_number = [&](std::size_t i) {
      return ordinal(word(i)) ? ordinal(word(i)) : plain_number(word(i));
    };
    for (const bool day_first : {true, false}) {
      const auto m = month_named(word(day_first ? 1 : 0));
      const auto d = day_number(day_first ? 0 : 1);
      const auto of_year = year_of(word(2));
      if (m && d && of_year && *d <= 31)
        return one_day(3, year_month_day(*of_year, *m, day(static_cast<unsigned>(*d))));
    }
    return std::nullopt;
  }

  static std::optional<FoundPeriod> one_day(std::size_t count, year_month_day date) {
    if (!date.ok()) return std::nullopt;
    return FoundPeriod{.words = count, .period = {iso(date), iso(date)}};
  }

  std::optional<FoundPeriod> named_months() const {
    const auto m = month_named(word(0));
    const auto season = season_named(word(0));
    if (!m && !season) return std::nullopt;
    const month first = m ? *m : *season;
    const int count = m ? 1 : 3;
    const std::size_t of = word(1) == "of" ? 1u : 0u;
    if (const auto y = year_of(word(1 + of)))
      return FoundPeriod{.words = 2 + of, .period = whole_months(*y / first, count)};
    // "in spring" is more often the occasion; a month alone needs a word that says a date follows.
    if (alone_ || season || !today_) return std::nullopt;
    return FoundPeriod{.words = 1, .period = whole_months(last_begun(first), count), .relative = true};
  }

  // The last such month that has begun by today.
  year_month last_begun(month m) const {
    const year_month now = today_->year() / today_->month();
    const year_month this_year = today_->year() / m;
    return this_year <= now ? this_year : this_year - years(1);
  }

  FoundPeriod relative_found(std::size_t count, Period period) const {
    return {.words = count, .period = std::move(period), .relative = true};
  }

  std::optional<FoundPeriod> relative(std::size_t at) const {
    if (!today_) return std::nullopt;
    if (at == 0 && (word(0) == "today" || word(0) == "todays"))
      return relative_found(1, {iso(*today_), iso(*today_)});
    if (at == 0 && (word(0) == "yesterday" || word(0) == "yesterdays")) {
      const std::string day_before = day_after(iso(*today_), -1);
      return relative_found(1, {day_before, day_before});
    }
    const bool last = word(at) == "last" || word(at) == "past" || word(at) == "previous";
    const bool current = word(at) == "this";
    if (!last && !current) return std::nullopt;
    if (last)
      if (auto found = last_so_many(at)) return found;
    return unit_said(at, last);
  }

  // "last two years", "the past 6 months": back from today.
  std::optional<FoundPeriod> last_so_many(std::size_t at) const {
    std::optional<int> count = small_number(word(at + 1));
    std::size_t unit = at + 2;
    if (word(at + 1) == "few") count = 3;
    if (word(at + 1) == "couple" && word(unit) == "of") ++unit;
    if (!count) return std::nullopt;
    const std::string_view what = word(unit);
    const year_month_day today = *today_;
    std::string from;
    if (what == "days" || what == "day")
      from = day_after(iso(today), -*count);
    else if (what == "weeks" || what == "week")
      from = day_after(iso(today), -7 * *count);
    else if (what == "months" || what == "month")
      from = back(months(*count));
    else if (what == "years" || what == "year")
      from = back(months(12 * *count));
    else
      return std::nullopt;
    return relative_found(unit + 1, {from, iso(today)});
  }

  std::string back(months count) const {
    year_month_day date = *today_ - count;
    if (!date.ok()) date = year_month_day(date.year() / date.month() / std::chrono::last);
    return iso(date);
  }

  std::optional<FoundPeriod> unit_said(std::size_t at, bool last) const {
    const std::string_view what = word(at + 1);  // "last year's", folded, is "last years"
    const year_month now = today_->year() / today_->month();
    if (what == "year" || what == "years")
      return relative_found(at + 2, whole_year(last ? today_->year() - years(1) : today_->year()));
    if (what == "month" || what == "months")
      return relative_found(at + 2, whole_months(last ? now - months(1) : now, 1));
    if (what == "week" || what == "weeks") {
      const sys_days monday =
          sys_days(*today_) -
          std::chrono::days((std::chrono::weekday(sys_days(*today_)).iso_encoding() - 1) + (last ? 7 : 0));
      return relative_found(at + 2, {iso(monday), iso(year_month_day(monday + std::chrono::days(6)))});
    }
    const auto m = month_named(what);
    const auto season = season_named(what);
    if (!m && !season) return std::nullopt;
    const month first = m ? *m : *season;
    const int count = m ? 1 : 3;
    year_month begins = last_begun(first);
    if (last) {
      // "last spring" is over: one that still lasts does not count.
      if (begins + months(count - 1) >= now) begins -= years(1);
    } else {
      begins = today_->year() / first;
      // In January and February "this winter" began the year before.
      if (season && first == month(12) && today_->month() < month(3)) begins -= years(1);
    }
    return relative_found(at + 2, whole_months(begins, count));
  }

  std::span<const std::string> words_;
  std::optional<year_month_day> today_;
  bool alone_;
};

std::optional<Period> one_period(std::string_view text) {
  if (const auto y = year_of(text)) return whole_year(*y);
  if (const auto date = parse(text)) return Period{iso(*date), iso(*date)};
  if (text.size() == 7 && text[4] == '-' && all_figures(text.substr(5))) {
    const auto y = year_of(text.substr(0, 4));
    const month m(static_cast<unsigned>(number(text.substr(5))));
    if (y && m.ok()) return whole_months(*y / m, 1);
  }
  return std::nullopt;
}

}  // namespace

std::optional<FoundPeriod> period_at(std::span<const std::string> words, std::string_view today, bool alone) {
  return Reader(words, today, alone).read();
}

std::optional<Period> read_period(std::string_view text) {
  const std::size_t dots = text.find("..");
  if (dots == std::string_view::npos) return one_period(text);
  Period period;
  const std::string_view from = text.substr(0, dots);
  const std::string_view to = text.substr(dots + 2);
  if (from.empty() && to.empty()) return std::nullopt;
  if (!from.empty()) {
    const auto begins = one_period(from);
    if (!begins) return std::nullopt;
    period.from = begins->from;
  }
  if (!to.empty()) {
    const auto ends = one_period(to);
    if (!ends) return std::nullopt;
    period.to = ends->to;
  }
  return period;
}

std::string day_after(std::string_view date, int days) {
  const auto parsed = parse(date);
  if (!parsed) return std::string(date);
  return iso(year_month_day(sys_days(*parsed) + std::chrono::days(days)));
}

bool is_iso_day(std::string_view text) {
  return parse(text).has_value();
}

}  // namespace insetbook
