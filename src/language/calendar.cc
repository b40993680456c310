// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/calendar.h"

#include <algorithm>
#include <iterator>

namespace insetbook {
namespace {

using std::chrono::day;
using std::chrono::month;
using std::chrono::months;
using std::chrono::sys_days;
using std::chrono::year;
using std::chrono::year_month;
using std::chrono::year_month_day;

constexpr std::string_view month_names[] = {"january",   "february", "march",    "april",
                                            "may",       "june",     "july",     "august",
                                            "september", "october",  "november", "december"};
constexpr std::string_view weekday_names[] = {"monday", "tuesday",  "wednesday", "thursday",
                                              "friday", "saturday", "sunday"};
constexpr std::string_view decade_names[] = {"noughties", "tens",    "twenties",  "thirties", "forties",
                                             "fifties",   "sixties", "seventies", "eighties", "nineties"};

template <std::size_t N>
std::optional<int> place_in(const std::string_view (&list)[N], std::string_view word) {
  const auto at = std::ranges::find(list, word);
  if (at == std::end(list)) return std::nullopt;
  return static_cast<int>(at - std::begin(list));
}

std::string padded(unsigned value, std::size_t width) {
  std::string text = std::to_string(value);
  return std::string(width > text.size() ? width - text.size() : 0, '0') + text;
}

std::optional<Period> one_period(std::string_view text) {
  if (const auto y = year_named(text)) return whole_year(*y);
  if (const auto date = day_of_iso(text)) return one_day(*date);
  if (text.size() == 7 && text[4] == '-' && all_figures(text.substr(5))) {
    const auto y = year_named(text.substr(0, 4));
    const month m(static_cast<unsigned>(value_of_figures(text.substr(5))));
    if (y && m.ok()) return whole_months(*y / m, 1);
  }
  return std::nullopt;
}

}  // namespace

bool all_figures(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

int value_of_figures(std::string_view figures) {
  int value = 0;
  for (const char c : figures) value = value * 10 + (c - '0');
  return value;
}

std::string iso_date(year_month_day date) {
  return padded(static_cast<unsigned>(static_cast<int>(date.year())), 4) + "-" +
         padded(static_cast<unsigned>(date.month()), 2) + "-" + padded(static_cast<unsigned>(date.day()), 2);
}

std::optional<year_month_day> day_of_iso(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const std::string_view y = text.substr(0, 4), m = text.substr(5, 2), d = text.substr(8, 2);
  if (!all_figures(y) || !all_figures(m) || !all_figures(d)) return std::nullopt;
  const year_month_day date{year(value_of_figures(y)), month(static_cast<unsigned>(value_of_figures(m))),
                            day(static_cast<unsigned>(value_of_figures(d)))};
  if (!date.ok()) return std::nullopt;
  return date;
}

bool is_iso_day(std::string_view text) {
  return day_of_iso(text).has_value();
}

std::string day_after(std::string_view iso, int days) {
  const auto date = day_of_iso(iso);
  if (!date) return std::string(iso);
  return iso_date(year_month_day(sys_days(*date) + std::chrono::days(days)));
}

std::optional<year> year_named(std::string_view word) {
  if (word.size() != 4 || !all_figures(word)) return std::nullopt;
  const int value = value_of_figures(word);
  if (value < 1900 || value > 2100) return std::nullopt;
  return year(value);
}

std::optional<month> month_named(std::string_view word) {
  if (word.size() < 3) return std::nullopt;
  for (unsigned i = 0; i < 12; ++i)
    if (word == month_names[i] || word == month_names[i].substr(0, 3) || (word == "sept" && i == 8))
      return month(i + 1);
  return std::nullopt;
}

std::optional<int> weekday_named(std::string_view word) {
  return place_in(weekday_names, word);
}

std::optional<int> decade_named(std::string_view word) {
  return place_in(decade_names, word);
}

year_month month_of(year_month_day date) {
  return date.year() / date.month();
}

year_month_day last_day_of(year_month of) {
  return year_month_day(of / std::chrono::last);
}

Period one_day(year_month_day date) {
  return {iso_date(date), iso_date(date)};
}

Period whole_year(year y) {
  return {iso_date(y / 1 / 1), iso_date(y / 12 / 31)};
}

Period whole_months(year_month first, int count) {
  return {iso_date(first / 1), iso_date(last_day_of(first + months(count - 1)))};
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

}  // namespace insetbook
