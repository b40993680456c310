// SPDX-License-Identifier: GPL-3.0-or-later
//
// Periods that are reckoned from today.
#include "language/date_reader.h"
#include "language/feasts.h"
#include "language/orders.h"
#include "language/seasons.h"

namespace insetbook {

using std::chrono::months;
using std::chrono::sys_days;
using std::chrono::weekday;
using std::chrono::years;

std::optional<DateReader::DayUnit> DateReader::unit_named(std::string_view word) {
  if (word == "day" || word == "days") return DayUnit::day;
  if (word == "week" || word == "weeks") return DayUnit::week;
  if (word == "fortnight" || word == "fortnights") return DayUnit::fortnight;
  if (word == "month" || word == "months") return DayUnit::month;
  if (word == "year" || word == "years") return DayUnit::year;
  return std::nullopt;
}

std::optional<FoundDates> DateReader::relative(std::size_t at) const {
  if (!today_) return std::nullopt;
  if (auto day = one_of_these_days(at)) return day;
  const bool the = word(at) == "the";
  if (the && word(at + 2) == "before" && word(at + 3) == "last")
    if (const auto unit = unit_named(word(at + 1))) return relative_found(at + 4, calendar(*unit, 2));
  const std::size_t place = at + (the ? 1u : 0u);
  const std::string_view said = word(place);
  const bool last = said == "last" || said == "past" || said == "previous";
  const bool current = said == "this" && !the;
  if (!last && !current) return std::nullopt;
  if (last) {
    if (auto so_many = last_so_many(place)) return so_many;
    const auto unit = unit_named(word(place + 1));
    const bool rolling = the || said == "past" || unit == DayUnit::fortnight;
    if (rolling && unit && said != "previous")
      return relative_found(place + 2, {back(*unit, 1), iso_date(*today_)});
  }
  return unit_said(place, last);
}

// "today", "yesterday", "the day before yesterday", "recently"
std::optional<FoundDates> DateReader::one_of_these_days(std::size_t at) const {
  const auto day_back = [&](std::size_t last, int days) {
    const std::string day = back(DayUnit::day, days);
    return relative_found(last, {day, day});
  };
  const std::string_view said = word(at);
  if (said == "today" || said == "todays") return day_back(at + 1, 0);
  if (said == "yesterday" || said == "yesterdays") return day_back(at + 1, 1);
  if (const std::size_t last = past(at, "the day before yesterday"); last > at) return day_back(last, 2);
  if (said == "recent" || said == "recently")
    return relative_found(at + 1, {back(DayUnit::month, 3), iso_date(*today_)});
  return std::nullopt;
}

// "last two years", "the past 6 months": back from today.
std::optional<FoundDates> DateReader::last_so_many(std::size_t at) const {
  std::size_t unit = at + 1;
  const auto count = counted(unit);
  if (!count || unit == at + 1) return std::nullopt;
  const auto what = unit_named(word(unit));
  if (!what) return std::nullopt;
  return relative_found(unit + 1, {back(*what, *count), iso_date(*today_)});
}

// "two", "a few", "a couple of", "half a", "a"; where it ends.
std::optional<int> DateReader::counted(std::size_t& at) const {
  std::size_t next = at;
  if (word(next) == "a" || word(next) == "an") {
    if (unit_named(word(next + 1))) {
      at = next + 1;
      return 1;
    }
    ++next;
  }
  std::optional<int> count = small_number(word(next));
  if (word(next) == "few") count = 3;
  if (!count) return std::nullopt;
  const bool couple = word(next) == "couple";
  ++next;
  if (couple && word(next) == "of") ++next;
  at = next;
  return count;
}

// The day so long before today.
std::string DateReader::back(DayUnit unit, int count) const {
  if (unit == DayUnit::day) return day_after(iso_date(*today_), -count);
  if (unit == DayUnit::week) return day_after(iso_date(*today_), -7 * count);
  if (unit == DayUnit::fortnight) return day_after(iso_date(*today_), -14 * count);
  const year_month_day date = *today_ - months(unit == DayUnit::month ? count : 12 * count);
  return iso_date(date.ok() ? date : last_day_of(month_of(date)));
}

// The calendar's day, week, month or year so many before the one that is.
Period DateReader::calendar(DayUnit unit, int ago) const {
  switch (unit) {
    case DayUnit::day: {
      const std::string that = back(DayUnit::day, ago);
      return {that, that};
    }
    case DayUnit::week: {
      const int since_monday = static_cast<int>(weekday(sys_days(*today_)).iso_encoding()) - 1;
      const std::string monday = back(DayUnit::day, since_monday + 7 * ago);
      return {monday, day_after(monday, 6)};
    }
    case DayUnit::fortnight:
      return calendar(DayUnit::week, 2 * ago);
    case DayUnit::month:
      return whole_months(month_of(*today_) - months(ago), 1);
    case DayUnit::year:
      return whole_year(today_->year() - years(ago));
  }
  return {};
}

// "two years ago", "more than a year old", "older than six months", "within two years"
std::optional<FoundDates> DateReader::age(std::size_t at) const {
  enum class Age { just, more, at_least, less };
  struct AgeWords {
    std::string_view words;
    Age age;
  };
  static constexpr AgeWords ages[] = {
      {"more than", Age::more},     {"over", Age::more},      {"older than", Age::more},
      {"at least", Age::at_least},  {"less than", Age::less}, {"under", Age::less},
      {"newer than", Age::less},    {"within", Age::less},    {"at most", Age::less},
      {"no more than", Age::less},  {"up to", Age::less},     {"younger than", Age::less},
      {"no older than", Age::less},
  };
  if (!today_) return std::nullopt;
  std::size_t next = at;
  const AgeWords* said = longest(ages, next);
  const bool compares = said && (word(at) == "older" || word(at) == "newer" || word(at) == "younger" ||
                                 word(at + 1) == "older");
  if (word(next) == "the" && (word(next + 1) == "last" || word(next + 1) == "past")) return std::nullopt;
  const auto count = counted(next);
  const auto unit = count ? unit_named(word(next)) : std::nullopt;
  if (!unit) return std::nullopt;
  ++next;
  const bool ends = word(next) == "ago" || word(next) == "old" || word(next) == "back";
  if (ends)
    ++next;
  else if (!compares)
    return std::nullopt;
  const std::string day = back(*unit, *count);
  switch (said ? said->age : Age::just) {
    case Age::just:
      return relative_found(next, calendar(*unit, *count));
    case Age::more:
      return relative_found(next, {"", day_after(day, -1)});
    case Age::at_least:
      return relative_found(next, {"", day});
    case Age::less:
      return relative_found(next, {day, ""});
  }
  return std::nullopt;
}

// "last year", "this week", "last spring", "this May", "last Monday", "last weekend", "last Christmas"
std::optional<FoundDates> DateReader::unit_said(std::size_t at, bool last) const {
  std::string_view what = word(at + 1);  // "last year's", folded, is "last years"
  if (const auto unit = unit_named(what); unit && *unit != DayUnit::day)
    return relative_found(at + 2, calendar(*unit, last ? 1 : 0));
  if (what == "weekend" && last) return relative_found(at + 2, last_weekend());
  if (const auto day = weekday_named(what)) return weekday_found(at + 2, *day, last);
  // The feast itself stays to be read as the occasion.
  if (feast_day(what, today_->year())) return relative_found(at + 1, up_to_feast(what, last));
  if (what.ends_with("s") && !season_begins(what, false) && !month_named(what)) what.remove_suffix(1);
  const auto m = month_named(what);
  const auto season = season_begins(what, how_.southern);
  if (!m && !season) return std::nullopt;
  const int count = m ? 1 : 3;
  Found found = relative_found(at + 2, whole_months(last_or_this(m ? *m : *season, count, last), count));
  found.season = season.has_value();
  return found;
}

std::chrono::year_month DateReader::last_or_this(month first, int count, bool last) const {
  const year_month now = month_of(*today_);
  const auto over = [&](year_month begins) { return begins + months(count - 1) < now; };
  year_month begins = today_->year() / first;
  if (begins > now) begins -= years(1);
  if (last) {
    // "last spring" is over: one that still lasts does not count.
    if (!over(begins)) begins -= years(1);
    return begins;
  }
  // In January "this winter" began the year before.
  if (!over(begins) && begins <= now) return begins;
  return today_->year() / first;
}

FoundDates DateReader::weekday_found(std::size_t words, int day, bool last) const {
  const int now = static_cast<int>(weekday(sys_days(*today_)).iso_encoding()) - 1;
  int ago = (now - day + 7) % 7;
  if (last && ago == 0) ago = 7;
  const std::string that = back(DayUnit::day, ago);
  return relative_found(words, {that, that});
}

// The last Saturday and Sunday that are over.
Period DateReader::last_weekend() const {
  const int encoded = static_cast<int>(weekday(sys_days(*today_)).iso_encoding());
  const std::string saturday = back(DayUnit::day, encoded + 1);
  return {saturday, day_after(saturday, 1)};
}

// The year up to the last such day, or up to the next.
Period DateReader::up_to_feast(std::string_view feast, bool last) const {
  year_month_day day = *feast_day(feast, today_->year());
  if (last && day >= *today_) day = *feast_day(feast, today_->year() - years(1));
  if (!last && day < *today_) day = *feast_day(feast, today_->year() + years(1));
  const year_month_day before = *feast_day(feast, day.year() - years(1));
  return {day_after(iso_date(before), 1), iso_date(day)};
}

}  // namespace insetbook
