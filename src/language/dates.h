// SPDX-License-Identifier: GPL-3.0-or-later
//
// Days and periods as people say them: "2023", "March", "March 2023", "last spring", "2023-05-12", "the last
// two years". Relative ones are reckoned from a day that is given, never from the clock. Seasons are the
// northern ones, by whole months: spring is March to May (the meteorological seasons). A month without a year
// is the last one that has begun.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace insetbook {

// From one day to another, both included, as ISO dates.
struct Period {
  std::string from, to;
  bool operator==(const Period&) const = default;
};

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
