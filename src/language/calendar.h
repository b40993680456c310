// SPDX-License-Identifier: GPL-3.0-or-later
//
// Days, months and years: as ISO dates, by their names, and whole periods of them. Years are 1900 to 2100:
// other figures of four are no year of a card, unless a question says so (dates.cc).
#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace insetbook {

// From one day to another, both included, as ISO dates; empty = open.
struct Period {
  std::string from, to;
  bool operator==(const Period&) const = default;
};

bool all_figures(std::string_view text);
int value_of_figures(std::string_view figures);

std::string iso_date(std::chrono::year_month_day day);
std::optional<std::chrono::year_month_day> day_of_iso(std::string_view text);
bool is_iso_day(std::string_view text);
// The day `days` later (or earlier) than an ISO date.
std::string day_after(std::string_view iso, int days);

std::optional<std::chrono::year> year_named(std::string_view word);    // "2023"
std::optional<std::chrono::month> month_named(std::string_view word);  // "march", "mar", "sept"
std::optional<int> weekday_named(std::string_view word);               // 0 = Monday
std::optional<int> decade_named(std::string_view word);                // "nineties" → 9

std::chrono::year_month month_of(std::chrono::year_month_day day);
std::chrono::year_month_day last_day_of(std::chrono::year_month month);
Period one_day(std::chrono::year_month_day day);
Period whole_year(std::chrono::year year);
// From the first day of `first` to the last of the month `count - 1` months later.
Period whole_months(std::chrono::year_month first, int count);

// "2023", "2023-05", "2023-05-12", and with `..` between or at an end of them: as a field's value.
std::optional<Period> read_period(std::string_view text);

}  // namespace insetbook
