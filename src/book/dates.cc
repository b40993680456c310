// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/dates.h"

#include <chrono>

namespace insetbook {

namespace {

// -1 where a character is no figure.
int number(std::string_view digits) {
  int value = 0;
  for (const char c : digits) {
    if (c < '0' || c > '9') return -1;
    value = value * 10 + (c - '0');
  }
  return value;
}

}  // namespace

bool is_iso_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const int year = number(text.substr(0, 4)), month = number(text.substr(5, 2)),
            day = number(text.substr(8, 2));
  if (year < 1 || month < 1 || day < 1) return false;
  return std::chrono::year_month_day(std::chrono::year(year),
                                     std::chrono::month(static_cast<unsigned>(month)),
                                     std::chrono::day(static_cast<unsigned>(day)))
      .ok();
}

}  // namespace insetbook
