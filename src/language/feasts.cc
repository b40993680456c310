// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/feasts.h"

namespace insetbook {

using std::chrono::year_month_day;

// The method of Meeus, Jones and Butcher (from memory; tests/outside/easter_test.cc compares it with a
// library and with published dates).
year_month_day easter(std::chrono::year year) {
  const int y = static_cast<int>(year);
  const int golden = y % 19;
  const int century = y / 100;
  const int of_century = y % 100;
  const int moved = (century - (century + 8) / 25 + 1) / 3;
  const int moon = (19 * golden + century - century / 4 - moved + 15) % 30;
  const int weekday = (32 + 2 * (century % 4) + 2 * (of_century / 4) - moon - of_century % 4) % 7;
  const int mended = (golden + 11 * moon + 22 * weekday) / 451;
  const int days = moon + weekday - 7 * mended + 114;
  return {year, std::chrono::month(static_cast<unsigned>(days / 31)),
          std::chrono::day(static_cast<unsigned>(days % 31 + 1))};
}

std::optional<year_month_day> feast_day(std::string_view word, std::chrono::year year) {
  if (word == "christmas" || word == "xmas") return year / 12 / 25;
  if (word == "halloween") return year / 10 / 31;
  if (word == "valentine" || word == "valentines") return year / 2 / 14;
  if (word == "easter") return easter(year);
  return std::nullopt;
}

}  // namespace insetbook
