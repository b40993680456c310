// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/dates.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <iterator>
#include <vector>

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
  if (word.size() < 3) return std::nullopt;
  for (unsigned i = 0; i < 12; ++i)
    if (word == month_names[i] || (word.size() >= 3 && word == month_names[i].substr(0, 3)) ||
        (word == "sept" && i == 8))
      return month(i + 1);
  return std::nullopt;
}

// The first month of a season.
std::optional<month> season_named(std::string_view word, bool southern) {
  const auto begins = [&](unsigned north, unsigned south) { return month(southern ? south : north); };
  if (word == "spring") return begins(3, 9);
  if (word == "summer") return begins(6, 12);
  if (word == "autumn" || word == "fall") return begins(9, 3);
  if (word == "winter") return begins(12, 6);
  return std::nullopt;
}

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

// Easter Sunday of the western churches, by the method of Meeus, Jones and Butcher (from memory; the test
// compares with published dates).
year_month_day easter(year of) {
  const int y = static_cast<int>(of);
  const int golden = y % 19;
  const int century = y / 100;
  const int of_century = y % 100;
  const int moved = (century - (century + 8) / 25 + 1) / 3;
  const int moon = (19 * golden + century - century / 4 - moved + 15) % 30;
  const int weekday = (32 + 2 * (century % 4) + 2 * (of_century / 4) - moon - of_century % 4) % 7;
  const int mended = (golden + 11 * moon + 22 * weekday) / 451;
  const int days = moon + weekday - 7 * mended + 114;
  return year_month_day(of, month(static_cast<unsigned>(days / 31)),
                        day(static_cast<unsigned>(days % 31 + 1)));
}

// The day of a feast that the year says alone. The others are different days in different countries.
std::optional<year_month_day> feast(std::string_view word, year of) {
  if (word == "christmas" || word == "xmas") return of / 12 / 25;
  if (word == "halloween") return of / 10 / 31;
  if (word == "valentine" || word == "valentines") return of / 2 / 14;
  if (word == "easter") return easter(of);
  return std::nullopt;
}

enum class Bound { whole, since, after, before, until, between };
struct BoundWords {
  std::string_view words;
  Bound bound;
};
constexpr BoundWords bounds[] = {
    {"since", Bound::since},
    {"as from", Bound::since},
    {"no earlier than", Bound::since},
    {"not earlier than", Bound::since},
    {"no older than", Bound::since},
    {"not before", Bound::since},
    {"after", Bound::after},
    {"later than", Bound::after},
    {"newer than", Bound::after},
    {"younger than", Bound::after},
    {"more recent than", Bound::after},
    {"more recently than", Bound::after},
    {"before", Bound::before},
    {"earlier than", Bound::before},
    {"older than", Bound::before},
    {"prior to", Bound::before},
    {"until", Bound::until},
    {"till", Bound::until},
    {"by", Bound::until},
    {"through", Bound::until},
    {"up to", Bound::until},
    {"no later than", Bound::until},
    {"not later than", Bound::until},
    {"not after", Bound::until},
    {"between", Bound::between},
};

// Behind a period: "2023 or later".
constexpr BoundWords bounds_behind[] = {
    {"or later", Bound::since},    {"or newer", Bound::since},  {"and later", Bound::since},
    {"or after", Bound::since},    {"and after", Bound::since}, {"and newer", Bound::since},
    {"onward", Bound::since},      {"onwards", Bound::since},   {"or earlier", Bound::until},
    {"or older", Bound::until},    {"or before", Bound::until}, {"and before", Bound::until},
    {"and earlier", Bound::until}, {"and older", Bound::until},
};

// What says how old something is: "more than two years ago".
enum class Age { just, more, at_least, less };
struct AgeWords {
  std::string_view words;
  Age age;
};
constexpr AgeWords ages[] = {
    {"more than", Age::more},     {"over", Age::more},      {"older than", Age::more},
    {"at least", Age::at_least},  {"less than", Age::less}, {"under", Age::less},
    {"newer than", Age::less},    {"within", Age::less},    {"at most", Age::less},
    {"no more than", Age::less},  {"up to", Age::less},     {"younger than", Age::less},
    {"no older than", Age::less},
};

Period bounded(Bound bound, const Period& period) {
  switch (bound) {
    case Bound::whole:
    case Bound::between:
      break;
    case Bound::since:
      return {period.from, ""};
    case Bound::after:
      return {day_after(period.to, 1), ""};
    case Bound::before:
      return {"", day_after(period.from, -1)};
    case Bound::until:
      return {"", period.to};
  }
  return period;
}

enum class DayUnit { day, week, month, year };
std::optional<DayUnit> unit_named(std::string_view word) {
  if (word == "day" || word == "days") return DayUnit::day;
  if (word == "week" || word == "weeks") return DayUnit::week;
  if (word == "month" || word == "months") return DayUnit::month;
  if (word == "year" || word == "years") return DayUnit::year;
  return std::nullopt;
}

year_month_day last_day_of(year_month m) {
  return year_month_day(m / std::chrono::last);
}

// A month, a season or a day of a month whose year is not said.
struct NoYear {
  std::size_t words = 0;
  month first{};
  int count = 1;  // months
  std::optional<unsigned> day;
  bool ordinal = false;  // "5th May"
  bool season = false;
};

struct Found {
  std::size_t words = 0;
  Period period;
  bool relative = false;
  bool plain_year = false;
  std::optional<Period> other;
};

// Words that dates begin with, besides those with figures in them, months and what `bounds` and `ages` list.
constexpr auto beginnings = [] {
  auto sorted = std::to_array<std::string_view>(
      {"made",      "from",        "dated",      "date",       "in",         "during",     "on",
       "of",        "at",          "over",       "within",     "back",       "throughout", "did",
       "sometime",  "finished",    "created",    "dating",     "the",        "a",          "an",
       "half",      "one",         "two",        "three",      "four",       "five",       "six",
       "seven",     "eight",       "nine",       "ten",        "eleven",     "twelve",     "few",
       "couple",    "dozen",       "last",       "past",       "previous",   "this",       "today",
       "todays",    "yesterday",   "yesterdays", "recent",     "recently",   "early",      "mid",
       "middle",    "late",        "beginning",  "start",      "end",        "first",      "second",
       "latter",    "third",       "fourth",     "fifth",      "sixth",      "seventh",    "eighth",
       "ninth",     "tenth",       "eleventh",   "twelfth",    "thirteenth", "fourteenth", "fifteenth",
       "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth",  "spring",     "summer",
       "autumn",    "fall",        "winter",     "q1",         "q2",         "q3",         "q4",
       "since",     "as",          "no",         "not",        "after",      "later",      "newer",
       "younger",   "more",        "before",     "earlier",    "older",      "prior",      "until",
       "till",      "by",          "through",    "up",         "between",    "less",       "under"});
  std::ranges::sort(sorted);
  return sorted;
}();

bool may_begin(std::string_view word) {
  if (word.empty()) return false;
  if (word.front() >= '0' && word.front() <= '9') return true;
  return std::ranges::binary_search(beginnings, word) || month_named(word);
}

class Reader {
 public:
  Reader(std::span<const DateWord> words, const DateReading& how)
      : words_(words), today_(parse(how.today)), how_(how) {}

  std::optional<FoundDates> read() const {
    const std::size_t lead = past_leads();
    if (const auto found = age(lead)) return said(*found);
    if (lead > 0)
      if (const auto found = age(0)) return said(*found);
    std::size_t begins = lead;
    const Bound bound = bound_at(begins);
    if (auto both = two_ends(begins, bound)) return said(*both);
    if (bound == Bound::between) return std::nullopt;
    auto found = period(begins, begins == 0);
    if (!found) return std::nullopt;
    Bound taken = bound;
    if (bound == Bound::whole) taken = bound_behind(*found, lead > 0 && word(lead - 1) == "from");
    if (found->other) found->other = bounded(taken, *found->other);
    found->period = bounded(taken, found->period);
    return said(*found);
  }

  // What begins at `at`; `alone`: nothing before it says that a date follows.
  std::optional<Found> period(std::size_t at, bool alone) const {
    if (auto found = part_of(at, alone)) return found;
    if (auto found = figures(at)) return found;
    if (auto found = relative(at)) return found;
    if (auto found = decade(at, alone)) return found;
    if (auto found = dated_month(at)) return found;
    if (const auto no_year = without_year(at)) {
      // "in spring" is more often the occasion; a month alone needs a word that says a date follows.
      if (no_year->season || (alone && !no_year->ordinal) || !today_) return std::nullopt;
      return relative_found(at + no_year->words, resolved(*no_year, today_->year() / today_->month()));
    }
    if (const auto y = year_of(word(at))) return whole_years(at, *y);
    return std::nullopt;
  }

 private:
  std::string_view word(std::size_t i) const {
    return i < words_.size() ? words_[i].text : std::string_view();
  }
  bool hyphen(std::size_t i) const { return i < words_.size() && words_[i].hyphen; }

  // Where a run of words that begins at `at` ends; `at` when it is not there.
  std::size_t past(std::size_t at, std::string_view run) const {
    std::size_t i = at;
    if (word(at).empty() || word(at).front() != run.front()) return at;
    while (!run.empty()) {
      const std::size_t end = std::min(run.find(' '), run.size());
      if (word(i) != run.substr(0, end)) return at;
      run.remove_prefix(std::min(end + 1, run.size()));
      ++i;
    }
    return i;
  }

  std::size_t past_leads() const {
    static constexpr std::string_view leads[] = {
        "made", "from",   "dated", "date",       "in",  "during",   "on",       "of",      "at",
        "over", "within", "back",  "throughout", "did", "sometime", "finished", "created", "dating"};
    std::size_t at = 0;
    while (at < 3 && std::ranges::find(leads, word(at)) != std::end(leads)) ++at;
    return at;
  }

  Bound bound_at(std::size_t& at) const {
    std::size_t best = at;
    Bound bound = Bound::whole;
    for (const BoundWords& each : bounds)
      if (const std::size_t last = past(at, each.words); last > best) {
        best = last;
        bound = each.bound;
      }
    at = best;
    return bound;
  }

  Bound bound_behind(Found& found, bool after_from) const {
    std::size_t at = found.words;
    for (const BoundWords& each : bounds_behind)
      if (const std::size_t last = past(at, each.words); last > at) {
        found.words = last;
        return each.bound;
      }
    // "from 2023 on" at the end of what is said
    if (after_from && word(at) == "on" && (word(at + 1).empty() || word(at + 1) == ",")) {
      ++found.words;
      return Bound::since;
    }
    return Bound::whole;
  }

  static FoundDates said(const Found& found) {
    return {.words = found.words, .period = found.period, .relative = found.relative, .other = found.other};
  }
  static Found relative_found(std::size_t words, Period period) {
    return {.words = words, .period = std::move(period), .relative = true};
  }

  // "2020 to 2022", "between May and July 2023", "2020-2022"
  std::optional<Found> two_ends(std::size_t at, Bound bound) const {
    if (bound != Bound::whole && bound != Bound::between) return std::nullopt;
    const auto no_year = without_year(at);
    std::optional<Found> first = period(at, at == 0 && !no_year);
    std::size_t last = first ? first->words : no_year ? at + no_year->words : at;
    if (last == at || (!first && !no_year)) return std::nullopt;
    if (no_year && (!first || first->words < at + no_year->words)) last = at + no_year->words;
    std::size_t next = last;
    if (bound == Bound::between && word(last) == "and")
      ++next;
    else if (word(last) == "to" || word(last) == "until" || word(last) == "through" || word(last) == "till")
      ++next;
    else if (!hyphen(last))
      return std::nullopt;
    const auto second = period(next, false);
    if (!second || second->period.from.empty()) return std::nullopt;
    const bool undated = no_year && last == at + no_year->words && (!first || first->relative);
    Found both = *second;
    both.other.reset();
    both.relative = second->relative || (first && first->relative && !undated);
    std::string from = undated ? before(*no_year, second->period.from) : first->period.from;
    std::string to = second->period.to;
    if (!undated) {
      from = std::min(first->period.from, second->period.from);
      to = std::max(first->period.to, second->period.to);
    }
    both.period = {std::move(from), std::move(to)};
    return both;
  }

  // The first day of the last such month that has begun by the day.
  std::string before(const NoYear& said, const std::string& iso_day) const {
    const year_month_day of = *parse(iso_day);
    return resolved(said, of.year() / of.month()).from;
  }

  // The last such months, or such a day, that have begun by the month `limit`.
  static Period resolved(const NoYear& said, year_month limit) {
    year_month begins = limit.year() / said.first;
    if (begins > limit) begins -= years(1);
    if (!said.day) return whole_months(begins, said.count);
    year_month_day date = begins / day(*said.day);
    if (!date.ok()) date = last_day_of(begins);
    return {iso(date), iso(date)};
  }

  // "May", "spring", "3 May", "5th of May", "May 5th", without a year behind it.
  std::optional<NoYear> without_year(std::size_t at) const {
    const std::size_t skipped = word(at) == "the" ? 1 : 0;
    const std::size_t first = at + skipped;
    if (const auto d = day_number(first)) {
      const std::size_t of = word(first + 1) == "of" ? 1 : 0;
      if (const auto m = month_named(word(first + 1 + of)))
        return NoYear{
            .words = skipped + 2 + of, .first = *m, .day = *d, .ordinal = !plain_number(word(first))};
    }
    const auto m = month_named(word(at));
    const auto season = season_named(word(at), how_.southern);
    if (m)
      if (const auto d = day_number(at + 1); d && !plain_number(word(at + 1)))
        return NoYear{.words = 2, .first = *m, .day = *d, .ordinal = true};
    if (m) return NoYear{.words = 1, .first = *m};
    if (season) return NoYear{.words = 1, .first = *season, .count = 3, .season = true};
    return std::nullopt;
  }

  std::optional<unsigned> day_number(std::size_t at) const {
    const auto said = ordinal(word(at)) ? ordinal(word(at)) : plain_number(word(at));
    if (!said || *said > 31) return std::nullopt;
    return static_cast<unsigned>(*said);
  }

  // "12 May 2023", "the 3rd of May 2023", "May 12, 2023", "May 2023", "spring of 2023", "winter 2022/23".
  std::optional<Found> dated_month(std::size_t at) const {
    if (const auto said = without_year(at)) {
      std::size_t next = at + said->words;
      if (word(next) == "," || word(next) == "of") ++next;
      if (said->season)
        if (const auto y = two_years(word(next)))
          return Found{.words = next + 1, .period = whole_months(*y / said->first, said->count)};
      if (const auto y = year_of(word(next))) return in_year(*said, *y, next + 1);
    }
    // "May 12 2023": without its year the figure would not be a day.
    const auto m = month_named(word(at));
    const auto d = day_number(at + 1);
    if (!m || !d) return std::nullopt;
    const std::size_t next = at + 2 + (word(at + 2) == "," ? 1u : 0u);
    const auto y = year_of(word(next));
    if (!y) return std::nullopt;
    return one_day(next + 1, year_month_day(*y, *m, day(*d)));
  }

  static std::optional<Found> in_year(const NoYear& said, year y, std::size_t words) {
    if (said.day) return one_day(words, year_month_day(y, said.first, day(*said.day)));
    return Found{.words = words, .period = whole_months(y / said.first, said.count)};
  }

  static std::optional<Found> one_day(std::size_t count, year_month_day date) {
    if (!date.ok()) return std::nullopt;
    return Found{.words = count, .period = {iso(date), iso(date)}};
  }

  // "2022/23": the first of the two years.
  static std::optional<year> two_years(std::string_view text) {
    if (text.size() != 7 || text[4] != '/' || !all_figures(text.substr(5))) return std::nullopt;
    const auto y = year_of(text.substr(0, 4));
    if (!y || (static_cast<int>(*y) + 1) % 100 != number(text.substr(5))) return std::nullopt;
    return y;
  }

  static Found whole_years(std::size_t at, year y) {
    return {.words = at + 1, .period = whole_year(y), .plain_year = true};
  }

  // "2023-05-12" and "2023-05" are words parted at their hyphens; "3/4/2024"; "2022/23".
  std::optional<Found> figures(std::size_t at) const {
    const auto y = year_of(word(at));
    const auto two = [&](std::size_t i) { return hyphen(i) && word(i).size() == 2 && all_figures(word(i)); };
    if (y && two(at + 1)) {
      const month m(static_cast<unsigned>(number(word(at + 1))));
      if (!m.ok()) return std::nullopt;
      if (two(at + 2))
        return one_day(at + 3, year_month_day(*y, m, day(static_cast<unsigned>(number(word(at + 2))))));
      return Found{.words = at + 2, .period = whole_months(*y / m, 1)};
    }
    if (const auto first = two_years(word(at)))
      return Found{.words = at + 1, .period = {iso(*first / 1 / 1), iso((*first + years(1)) / 12 / 31)}};
    return slashed(at);
  }

  std::optional<Found> slashed(std::size_t at) const {
    const std::string_view text = word(at);
    const std::size_t first = text.find_first_of("/.");
    if (first == std::string_view::npos) return std::nullopt;
    const std::size_t second = text.find(text[first], first + 1);
    if (second == std::string_view::npos) return std::nullopt;
    const std::string_view parts[] = {text.substr(0, first), text.substr(first + 1, second - first - 1),
                                      text.substr(second + 1)};
    for (const std::string_view part : parts)
      if (!all_figures(part) || part.size() > 4) return std::nullopt;
    const auto date = [&](year y, int m, int d) {
      return year_month_day(y, month(static_cast<unsigned>(m)), day(static_cast<unsigned>(d)));
    };
    if (const auto y = year_of(parts[0]))
      return one_day(at + 1, date(*y, number(parts[1]), number(parts[2])));
    const auto y = year_of(parts[2]);
    if (!y) return std::nullopt;
    const auto month_first = one_day(at + 1, date(*y, number(parts[0]), number(parts[1])));
    const auto day_first = one_day(at + 1, date(*y, number(parts[1]), number(parts[0])));
    if (!month_first || !day_first) return month_first ? month_first : day_first;
    Found found = how_.month_first ? *month_first : *day_first;
    const Found& other = how_.month_first ? *day_first : *month_first;
    if (!(other.period == found.period)) found.other = other.period;
    return found;
  }

  // "early 2023", "the end of May 2023", "first half of 2023", "q2 2023"
  std::optional<Found> part_of(std::size_t at, bool alone) const {
    std::size_t next = at + (word(at) == "the" ? 1u : 0u);
    const std::string_view said = word(next);
    int part = 0;
    int of = 0;
    const auto take = [&](int nth, int among) {
      part = nth;
      of = among;
    };
    if (said == "early")
      take(1, 3);
    else if (said == "mid" || (said == "middle" && word(next + 1) == "of"))
      take(2, 3);
    else if (said == "late")
      take(3, 3);
    else if ((said == "beginning" || said == "start") && word(next + 1) == "of")
      take(1, 4);
    else if (said == "end" && word(next + 1) == "of")
      take(4, 4);
    else if (word(next + 1) == "half")
      take(said == "first" || said == "1st"                        ? 1
           : said == "second" || said == "2nd" || said == "latter" ? 2
                                                                   : 0,
           2);
    else if (word(next + 1) == "quarter")
      take(ordinal(said).value_or(0), 4);
    else if (said.size() == 2 && said[0] == 'q' && said[1] >= '1' && said[1] <= '4')
      take(said[1] - '0', 4);
    if (part == 0 || part > of) return std::nullopt;
    next += of == 2 || (of == 4 && word(next + 1) == "quarter") ? 2 : 1;
    if (word(next) == "of" || word(next) == "in") ++next;
    if (word(next) == "the" || word(next) == "last" || word(next) == "this") return std::nullopt;
    const auto whole = period(next, alone);
    if (!whole || whole->period.from == whole->period.to) return std::nullopt;
    Found found = *whole;
    found.plain_year = false;
    found.period = cut(whole->period, part, of);
    return found;
  }

  // The part of a year, of three months or of one.
  static Period cut(const Period& whole, int part, int of) {
    const year_month_day from = *parse(whole.from);
    const year_month_day to = *parse(whole.to);
    const year_month first = from.year() / from.month();
    const int count = static_cast<int>((to.year() / to.month() - first).count()) + 1;
    if (count == 3 && of == 4) return whole_months(first + months(part == 1 ? 0 : 2), 1);
    if (count % of == 0) return whole_months(first + months(count / of * (part - 1)), count / of);
    if (of == 2) {
      const auto half = [&](unsigned d) { return iso(first / day(d)); };
      return part == 1 ? Period{half(1), half(15)} : Period{half(16), whole.to};
    }
    const int third = of == 4 ? (part == 1 ? 1 : 3) : part;
    const auto d = [&](int n) { return iso(first / day(static_cast<unsigned>(n))); };
    return {d(10 * (third - 1) + 1), third == 3 ? whole.to : d(10 * third)};
  }

  // "1990s", "the 90s", "the nineties"
  std::optional<Found> decade(std::size_t at, bool alone) const {
    const bool the = word(at) == "the";
    const std::size_t place = at + (the ? 1u : 0u);
    const std::string_view said = word(place);
    const auto ten_years = [&](year first) {
      return Found{.words = place + 1, .period = {iso(first / 1 / 1), iso((first + years(9)) / 12 / 31)}};
    };
    if (said.size() == 5 && said.ends_with("0s"))
      if (const auto y = year_of(said.substr(0, 4))) return ten_years(*y);
    if (!today_ || (alone && !the)) return std::nullopt;
    std::optional<int> tens = place_in(decade_names, said);
    if (said.size() == 3 && said.ends_with("0s") && all_figures(said.substr(0, 1))) tens = said[0] - '0';
    if (!tens) return std::nullopt;
    const int now = static_cast<int>(today_->year());
    int first = now / 100 * 100 + 10 * *tens;
    if (first > now) first -= 100;
    Found found = ten_years(year(first));
    found.relative = true;
    return found;
  }

  std::optional<Found> relative(std::size_t at) const {
    if (!today_) return std::nullopt;
    const std::string_view said = word(at);
    if (said == "today" || said == "todays") return relative_found(at + 1, {iso(*today_), iso(*today_)});
    if (said == "yesterday" || said == "yesterdays") {
      const std::string day_before = day_after(iso(*today_), -1);
      return relative_found(at + 1, {day_before, day_before});
    }
    if (said == "recent" || said == "recently")
      return relative_found(at + 1, {back(DayUnit::month, 3), iso(*today_)});
    if (said == "the" && word(at + 2) == "before" && word(at + 3) == "last")
      if (const auto unit = unit_named(word(at + 1))) return relative_found(at + 4, calendar(*unit, 2));
    const bool the = said == "the";
    const std::size_t place = at + (the ? 1u : 0u);
    const bool last = word(place) == "last" || word(place) == "past" || word(place) == "previous";
    const bool current = word(place) == "this" && !the;
    if (!last && !current) return std::nullopt;
    if (last) {
      if (auto found = last_so_many(place)) return found;
      const auto unit = unit_named(word(place + 1));
      const bool rolling = the || word(place) == "past";
      if (rolling && unit && word(place) != "previous")
        return relative_found(place + 2, {back(*unit, 1), iso(*today_)});
    }
    return unit_said(place, last);
  }

  // "last two years", "the past 6 months": back from today.
  std::optional<Found> last_so_many(std::size_t at) const {
    std::size_t unit = at + 1;
    const auto count = counted(unit);
    if (!count || unit == at + 1) return std::nullopt;
    const auto what = unit_named(word(unit));
    if (!what) return std::nullopt;
    return relative_found(unit + 1, {back(*what, *count), iso(*today_)});
  }

  // "two", "a few", "a couple of", "half a", "a"; where it ends.
  std::optional<int> counted(std::size_t& at) const {
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
  std::string back(DayUnit unit, int count) const {
    if (unit == DayUnit::day) return day_after(iso(*today_), -count);
    if (unit == DayUnit::week) return day_after(iso(*today_), -7 * count);
    year_month_day date = *today_ - months(unit == DayUnit::month ? count : 12 * count);
    if (!date.ok()) date = last_day_of(date.year() / date.month());
    return iso(date);
  }

  // The calendar's day, week, month or year so many before the one that is.
  Period calendar(DayUnit unit, int ago) const {
    const year_month now = today_->year() / today_->month();
    switch (unit) {
      case DayUnit::day: {
        const std::string that = day_after(iso(*today_), -ago);
        return {that, that};
      }
      case DayUnit::week: {
        const int since_monday = static_cast<int>(std::chrono::weekday(sys_days(*today_)).iso_encoding()) - 1;
        const std::string monday = day_after(iso(*today_), -since_monday - 7 * ago);
        return {monday, day_after(monday, 6)};
      }
      case DayUnit::month:
        return whole_months(now - months(ago), 1);
      case DayUnit::year:
        return whole_year(today_->year() - years(ago));
    }
    return {};
  }

  // "two years ago", "more than a year old", "older than six months", "within two years"
  std::optional<Found> age(std::size_t at) const {
    if (!today_) return std::nullopt;
    Age age = Age::just;
    std::size_t next = at;
    for (const AgeWords& each : ages)
      if (const std::size_t last = past(at, each.words); last > next) {
        next = last;
        age = each.age;
      }
    const bool compares = next > at && (word(at) == "older" || word(at) == "newer" || word(at) == "younger" ||
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
    switch (age) {
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

  // "last year", "this week", "last spring", "this May", "last Monday", "last Christmas"
  std::optional<Found> unit_said(std::size_t at, bool last) const {
    std::string_view what = word(at + 1);  // "last year's", folded, is "last years"
    if (const auto unit = unit_named(what); unit && *unit != DayUnit::day)
      return relative_found(at + 2, calendar(*unit, last ? 1 : 0));
    if (const auto weekday = place_in(weekday_names, what)) return weekday_found(at + 2, *weekday, last);
    if (feast(what, today_->year())) return relative_found(at + 1, up_to_feast(what, last));
    if (what.ends_with("s") && !season_named(what, false) && !month_named(what)) what.remove_suffix(1);
    const auto m = month_named(what);
    const auto season = season_named(what, how_.southern);
    if (!m && !season) return std::nullopt;
    return relative_found(at + 2, whole_months(last_or_this(m ? *m : *season, m ? 1 : 3, last), m ? 1 : 3));
  }

  year_month last_or_this(month first, int count, bool last) const {
    const year_month now = today_->year() / today_->month();
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

  Found weekday_found(std::size_t words, int weekday, bool last) const {
    const int now = static_cast<int>(std::chrono::weekday(sys_days(*today_)).iso_encoding()) - 1;
    int ago = (now - weekday + 7) % 7;
    if (last && ago == 0) ago = 7;
    const std::string day = day_after(iso(*today_), -ago);
    return relative_found(words, {day, day});
  }

  // The year up to the last such day, or up to the next.
  Period up_to_feast(std::string_view word, bool last) const {
    year_month_day day = *feast(word, today_->year());
    if (last && sys_days(day) >= sys_days(*today_)) day = *feast(word, today_->year() - years(1));
    if (!last && sys_days(day) < sys_days(*today_)) day = *feast(word, today_->year() + years(1));
    const year_month_day before = *feast(word, day.year() - years(1));
    return {day_after(iso(before), 1), iso(day)};
  }

  std::span<const DateWord> words_;
  std::optional<year_month_day> today_;
  DateReading how_;
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

std::optional<FoundDates> dates_at(std::span<const DateWord> words, const DateReading& how) {
  if (words.empty() || !may_begin(words.front().text)) return std::nullopt;
  return Reader(words, how).read();
}

std::optional<FoundPeriod> period_at(std::span<const std::string> words, std::string_view today, bool alone) {
  std::vector<DateWord> list;
  // Words that were parted at their hyphens are not told from others here.
  for (const std::string& word : words) list.push_back({word, !list.empty() && all_figures(word)});
  const auto found = Reader(list, {.today = today}).period(0, alone);
  if (!found) return std::nullopt;
  return FoundPeriod{found->words, found->period, found->relative, found->plain_year};
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
