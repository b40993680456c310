// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/dates.h"

#include <algorithm>
#include <array>

#include "language/date_reader.h"
#include "language/feasts.h"
#include "language/seasons.h"

namespace insetbook {

using std::chrono::years;

namespace {

constexpr std::string_view leads[] = {"made",       "from", "dated",    "date",     "in",      "during",
                                      "on",         "of",   "at",       "over",     "within",  "back",
                                      "throughout", "did",  "sometime", "finished", "created", "dating"};

// Words that dates begin with, besides those with figures in them, months and feasts.
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
       "about",     "around",      "circa",      "roughly",    "till",       "by",         "through",
       "up",        "between",     "less",       "under"});
  std::ranges::sort(sorted);
  return sorted;
}();

bool may_begin(std::string_view word) {
  if (word.empty()) return false;
  if (word.front() >= '0' && word.front() <= '9') return true;
  return std::ranges::binary_search(beginnings, word) || month_named(word) ||
         feast_day(word, std::chrono::year(2000));
}

}  // namespace

std::optional<FoundDates> dates_at(std::span<const DateWord> words, const DateReading& how) {
  if (words.empty() || (!how.outright && !may_begin(words.front().text))) return std::nullopt;
  return DateReader(words, how).read();
}

std::optional<FoundDates> DateReader::read() const {
  const std::size_t lead = past_leads();
  // "over" and "within" lead up to a date, and say how old something is.
  for (std::size_t at = 0; at <= lead; ++at)
    if (auto old = age(at)) return old;
  std::size_t begins = lead;
  const Bound bound = bound_at(begins);
  if (auto both = two_ends(begins, bound)) return both;
  if (bound == Bound::between) return std::nullopt;
  if (bound != Bound::whole) {
    // "by Easter" and "through Easter" say something else as often.
    const bool surely = word(begins - 1) != "by" && word(begins - 1) != "through";
    if (const auto feast = feast_said(begins, !surely)) return bounded(bound, *feast);
  }
  auto one = about_a_year(begins);
  if (!one) one = period(begins, begins == 0 && !how_.outright);
  if (!one && how_.outright) one = feast_said(begins, false);
  if (!one) one = any_year(begins, lead, bound);
  if (!one) return std::nullopt;
  if (bound != Bound::whole) return bounded(bound, *one);
  const Bound behind = bound_behind(*one, lead > 0 && word(lead - 1) == "from");
  return bounded(behind, *one);
}

FoundDates DateReader::day_found(std::size_t words, year_month_day day) {
  if (day.ok()) return found(words, one_day(day));
  return {.words = words, .no_such_day = true};
}

std::size_t DateReader::past(std::size_t at, std::string_view run) const {
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

std::size_t DateReader::past_leads() const {
  std::size_t at = 0;
  while (at < 3 && std::ranges::find(leads, word(at)) != std::end(leads)) ++at;
  return at;
}

Period DateReader::bounded(Bound bound, const Period& period) {
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

FoundDates DateReader::bounded(Bound bound, Found found) {
  if (found.other) found.other = bounded(bound, *found.other);
  found.period = bounded(bound, found.period);
  return found;
}

DateReader::Bound DateReader::bound_at(std::size_t& at) const {
  struct BoundWords {
    std::string_view words;
    Bound bound;
  };
  static constexpr BoundWords bounds[] = {
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
  const BoundWords* said = longest(bounds, at);
  return said ? said->bound : Bound::whole;
}

// Behind a period: "2023 or later".
DateReader::Bound DateReader::bound_behind(Found& found, bool after_from) const {
  struct BoundWords {
    std::string_view words;
    Bound bound;
  };
  static constexpr BoundWords bounds[] = {
      {"or later", Bound::since},    {"or newer", Bound::since},  {"and later", Bound::since},
      {"or after", Bound::since},    {"and after", Bound::since}, {"and newer", Bound::since},
      {"onward", Bound::since},      {"onwards", Bound::since},   {"or earlier", Bound::until},
      {"or older", Bound::until},    {"or before", Bound::until}, {"and before", Bound::until},
      {"and earlier", Bound::until}, {"and older", Bound::until},
  };
  if (const BoundWords* said = longest(bounds, found.words)) return said->bound;
  // "from 2023 on" at the end of what is said
  if (after_from && word(found.words) == "on" &&
      (word(found.words + 1).empty() || word(found.words + 1) == ",")) {
    ++found.words;
    return Bound::since;
  }
  return Bound::whole;
}

// What begins at `at`; `alone`: nothing before it says that a date follows, so that "may" and "march" need a
// year.
std::optional<FoundDates> DateReader::period(std::size_t at, bool alone) const {
  if (auto part = part_of(at, alone)) return part;
  if (auto said = figures(at)) return said;
  if (auto said = relative(at)) return said;
  if (auto said = decade(at, alone)) return said;
  if (auto said = dated_month(at)) return said;
  if (const auto no_year = without_year(at)) {
    // "in spring" is more often the occasion, "made in spring" never is; a month alone needs a word that says
    // a date follows.
    const bool season_only =
        no_year->season && !how_.outright && (!says_made(at) || season_follows(at + no_year->words));
    if (season_only || (alone && !no_year->ordinal) || !today_) return std::nullopt;
    const Period last = resolved(*no_year, *today_);
    if (last.from.empty()) return Found{.words = at + no_year->words, .no_such_day = true};
    Found said = relative_found(at + no_year->words, last);
    said.season = no_year->season;
    return said;
  }
  if (const auto day = weekday_named(word(at)); day && !alone && today_)
    return weekday_found(at + 1, *day, false);
  if (const auto y = year_named(word(at))) return found(at + 1, whole_year(*y));
  return std::nullopt;
}

// "about 2023", "circa 2020": that year and those beside it.
std::optional<FoundDates> DateReader::about_a_year(std::size_t at) const {
  static constexpr std::string_view about[] = {"about", "around", "circa", "roughly"};
  if (std::ranges::find(about, word(at)) == std::end(about)) return std::nullopt;
  const auto y = year_named(word(at + 1));
  if (!y) return std::nullopt;
  return found(at + 2, {whole_year(*y - years(1)).from, whole_year(*y + years(1)).to});
}

// "spring or summer 2024": the year of the next one is meant.
bool DateReader::season_follows(std::size_t at) const {
  return (word(at) == "or" || word(at) == ",") && season_begins(word(at + 1), how_.southern).has_value();
}

// Whether the words before can only be of a date.
bool DateReader::says_made(std::size_t lead) const {
  static constexpr std::string_view made[] = {"made", "dated", "date", "created", "finished", "dating"};
  return std::ranges::any_of(words_.first(lead), [&](const DateWord& said) {
    return std::ranges::find(made, said.text) != std::end(made);
  });
}

// "made in 1823": four figures that are no year of a card are one where the words before them can only be of
// a date.
std::optional<FoundDates> DateReader::any_year(std::size_t at, std::size_t lead, Bound bound) const {
  static constexpr std::string_view units[] = {"in", "inch", "inches", "mm", "cm", "x", "by", "ft", "m"};
  const bool surely = how_.outright || says_made(lead) || bound == Bound::since || bound == Bound::before ||
                      bound == Bound::after;
  const std::string_view said = word(at);
  if (!surely || said.size() != 4 || !all_figures(said) || said.front() == '0' ||
      std::ranges::find(units, word(at + 1)) != std::end(units))
    return std::nullopt;
  return found(at + 1, whole_year(year(value_of_figures(said))));
}

// Past what stands between two ends; `at` where nothing does.
std::size_t DateReader::past_between(std::size_t at, Bound bound) const {
  if (bound == Bound::between && word(at) == "and") return at + 1;
  for (const std::string_view between : {"to", "until", "through", "till"})
    if (word(at) == between) return at + 1;
  return at;
}

// "2020 to 2022", "between May and July 2023", "2020-2022", "Christmas 2023 to Easter 2024"
std::optional<FoundDates> DateReader::two_ends(std::size_t at, Bound bound) const {
  if (bound != Bound::whole && bound != Bound::between) return std::nullopt;
  const auto no_year = without_year(at);
  auto first = period(at, at == 0 && !no_year);
  const auto feast = first ? std::nullopt : feast_said(at, false);
  if (feast) first = feast;
  if ((!first && !no_year) || (first && first->no_such_day)) return std::nullopt;
  const std::size_t undated_last = no_year ? at + no_year->words : at;
  const std::size_t last = std::max(first ? first->words : at, undated_last);
  const std::size_t next = past_between(last, bound);
  if (next == last && !hyphen(last)) return std::nullopt;
  auto second = period(next, false);
  const bool to_feast = !second;
  if (!second) second = feast_said(next, bound == Bound::whole);
  if (!second || second->period.from.empty()) return std::nullopt;
  // "May to July 2023", "Christmas to Easter 2024": the last such time before the second end.
  const bool undated = no_year && last == undated_last && (!first || first->relative);
  const bool undated_feast = feast && feast->relative && feast_day(word(at), year(2000));
  if (undated_feast && bound == Bound::whole && !to_feast) return std::nullopt;
  Found both = *second;
  both.other.reset();
  both.season = second->season || (undated ? no_year->season : first->season);
  both.relative = second->relative || (!undated && !undated_feast && first->relative);
  const year_month_day limit = *day_of_iso(second->period.from);
  if (undated) {
    both.period.from = resolved(*no_year, limit).from;
    if (both.period.from.empty()) return std::nullopt;
  } else if (undated_feast) {
    both.period.from = iso_date(feast_before(word(at), limit));
  } else {
    both.period = {std::min(first->period.from, second->period.from),
                   std::max(first->period.to, second->period.to)};
  }
  return both;
}

}  // namespace insetbook
