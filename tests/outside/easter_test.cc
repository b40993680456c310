// SPDX-License-Identifier: GPL-3.0-or-later
//
// Easter Sunday against dates that were not reckoned by the program.
#include <gtest/gtest.h>

#include <sstream>
#include <string>

#include "language/calendar.h"
#include "language/feasts.h"

namespace insetbook {
namespace {

std::string easter_of(int year) {
  return iso_date(easter(std::chrono::year(year)));
}

struct TenYears {
  int first;
  const char* days;  // of the years from `first` on, month and day
};

// Source: python-dateutil 2.9.0, dateutil.easter.easter(year, EASTER_WESTERN), run once for the years 1900 to
// 2100. It goes another way (golden number, epact and the days to the Sunday) than the program.
constexpr TenYears from_dateutil[] = {
    {1900, "04-15 04-07 03-30 04-12 04-03 04-23 04-15 03-31 04-19 04-11"},
    {1910, "03-27 04-16 04-07 03-23 04-12 04-04 04-23 04-08 03-31 04-20"},
    {1920, "04-04 03-27 04-16 04-01 04-20 04-12 04-04 04-17 04-08 03-31"},
    {1930, "04-20 04-05 03-27 04-16 04-01 04-21 04-12 03-28 04-17 04-09"},
    {1940, "03-24 04-13 04-05 04-25 04-09 04-01 04-21 04-06 03-28 04-17"},
    {1950, "04-09 03-25 04-13 04-05 04-18 04-10 04-01 04-21 04-06 03-29"},
    {1960, "04-17 04-02 04-22 04-14 03-29 04-18 04-10 03-26 04-14 04-06"},
    {1970, "03-29 04-11 04-02 04-22 04-14 03-30 04-18 04-10 03-26 04-15"},
    {1980, "04-06 04-19 04-11 04-03 04-22 04-07 03-30 04-19 04-03 03-26"},
    {1990, "04-15 03-31 04-19 04-11 04-03 04-16 04-07 03-30 04-12 04-04"},
    {2000, "04-23 04-15 03-31 04-20 04-11 03-27 04-16 04-08 03-23 04-12"},
    {2010, "04-04 04-24 04-08 03-31 04-20 04-05 03-27 04-16 04-01 04-21"},
    {2020, "04-12 04-04 04-17 04-09 03-31 04-20 04-05 03-28 04-16 04-01"},
    {2030, "04-21 04-13 03-28 04-17 04-09 03-25 04-13 04-05 04-25 04-10"},
    {2040, "04-01 04-21 04-06 03-29 04-17 04-09 03-25 04-14 04-05 04-18"},
    {2050, "04-10 04-02 04-21 04-06 03-29 04-18 04-02 04-22 04-14 03-30"},
    {2060, "04-18 04-10 03-26 04-15 04-06 03-29 04-11 04-03 04-22 04-14"},
    {2070, "03-30 04-19 04-10 03-26 04-15 04-07 04-19 04-11 04-03 04-23"},
    {2080, "04-07 03-30 04-19 04-04 03-26 04-15 03-31 04-20 04-11 04-03"},
    {2090, "04-16 04-08 03-30 04-12 04-04 04-24 04-15 03-31 04-20 04-12"},
    {2100, "03-28"},
};

TEST(Easter, AsALibraryReckonsIt) {
  int years = 0;
  for (const TenYears& ten : from_dateutil) {
    std::istringstream days(ten.days);
    int year = ten.first;
    for (std::string day; days >> day; ++year, ++years)
      EXPECT_EQ(easter_of(year), std::to_string(year) + "-" + day);
  }
  EXPECT_EQ(years, 201);
}

// Source: tables of Easter dates as almanacs and prayer books print them (from memory): the earliest and the
// latest that can be, and years of which many remember the day.
TEST(Easter, AsItWasKept) {
  for (const char* day :
       {"1818-03-22", "1913-03-23", "1916-04-23", "1943-04-25", "2000-04-23", "2008-03-23", "2011-04-24",
        "2016-03-27", "2018-04-01", "2019-04-21", "2020-04-12", "2021-04-04", "2022-04-17", "2023-04-09",
        "2024-03-31", "2025-04-20", "2026-04-05", "2027-03-28", "2038-04-25", "2285-03-22"})
    EXPECT_EQ(easter_of(std::stoi(std::string(day).substr(0, 4))), day);
}

// The rule itself (council of Nicaea as the Gregorian calendar of 1582 has it, from memory): always a Sunday
// from 22 March to 25 April.
TEST(Easter, IsASundayWithinItsFiveWeeks) {
  for (int year = 1583; year <= 4099; ++year) {
    const std::chrono::year_month_day day = easter(std::chrono::year(year));
    ASSERT_TRUE(day.ok()) << year;
    EXPECT_EQ(std::chrono::weekday(std::chrono::sys_days(day)), std::chrono::Sunday) << year;
    EXPECT_GE(day, day.year() / 3 / 22);
    EXPECT_LE(day, day.year() / 4 / 25);
  }
}

}  // namespace
}  // namespace insetbook
