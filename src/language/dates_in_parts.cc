// SPDX-License-Identifier: GPL-3.0-or-later
//
// Parts of a year, of a season or of a month, and tens of years.
#include <string>

#include "language/date_reader.h"
#include "language/orders.h"

namespace insetbook {

using std::chrono::day;
using std::chrono::months;
using std::chrono::years;

// "early", "the end of", "first half of", "third quarter of", "q2"
std::optional<DateReader::Part> DateReader::part_at(std::size_t at) const {
  const std::size_t begins = at + (word(at) == "the" ? 1u : 0u);
  const std::string_view said = word(begins), behind = word(begins + 1);
  const auto one_word = [&](int nth, int of) { return Part{begins + 1, nth, of}; };
  const auto two_words = [&](int nth, int of) { return Part{begins + 2, nth, of}; };
  if (said == "early") return one_word(1, 3);
  if (said == "mid" || (said == "middle" && behind == "of")) return one_word(2, 3);
  if (said == "late") return one_word(3, 3);
  if ((said == "beginning" || said == "start") && behind == "of") return one_word(1, 4);
  if (said == "end" && behind == "of") return one_word(4, 4);
  if (said.size() == 2 && said[0] == 'q' && said[1] >= '1' && said[1] <= '4')
    return one_word(said[1] - '0', 4);
  const bool half = behind == "half", quarter = behind == "quarter";
  if (!half && !quarter) return std::nullopt;
  const int nth = said == "latter" ? 2 : ordinal(said).value_or(0);
  const int of = half ? 2 : 4;
  if (nth < 1 || nth > of) return std::nullopt;
  return two_words(nth, of);
}

std::optional<FoundDates> DateReader::part_of(std::size_t at, bool alone) const {
  const auto part = part_at(at);
  if (!part) return std::nullopt;
  std::size_t next = part->words;
  if (word(next) == "of" || word(next) == "in") ++next;
  if (word(next) == "the") return std::nullopt;
  const auto whole = period(next, alone);
  if (!whole || whole->period.from == whole->period.to) return std::nullopt;
  // Of "last week" there is no early part.
  const year_month_day to = *day_of_iso(whole->period.to);
  if (!whole->period.from.ends_with("-01") || to != last_day_of(month_of(to))) return std::nullopt;
  Found found = *whole;
  found.period = cut(whole->period, *part);
  return found;
}

// The part of a year, of three months or of one.
Period DateReader::cut(const Period& whole, const Part& part) {
  const year_month first = month_of(*day_of_iso(whole.from));
  const int count = static_cast<int>((month_of(*day_of_iso(whole.to)) - first).count()) + 1;
  if (count == 3 && part.of == 4) return whole_months(first + months(part.nth == 1 ? 0 : 2), 1);
  if (count % part.of == 0)
    return whole_months(first + months(count / part.of * (part.nth - 1)), count / part.of);
  const auto on = [&](int d) { return iso_date(first / day(static_cast<unsigned>(d))); };
  if (part.of == 2) return part.nth == 1 ? Period{on(1), on(15)} : Period{on(16), whole.to};
  const int third = part.of == 4 ? (part.nth == 1 ? 1 : 3) : part.nth;
  return {on(10 * (third - 1) + 1), third == 3 ? whole.to : on(10 * third)};
}

// "1990s", "the 90s", "the nineties"
std::optional<FoundDates> DateReader::decade(std::size_t at, bool alone) const {
  const bool the = word(at) == "the";
  const std::size_t place = at + (the ? 1u : 0u);
  const std::string_view said = word(place);
  const auto ten_years = [&](year first) {
    return found(place + 1, {whole_year(first).from, whole_year(first + years(9)).to});
  };
  if (said.size() == 5 && said.ends_with("0s"))
    if (const auto y = year_named(said.substr(0, 4))) return ten_years(*y);
  if (!today_ || (alone && !the)) return std::nullopt;
  std::optional<int> tens = decade_named(said);
  if (said.size() == 3 && said.ends_with("0s") && all_figures(said.substr(0, 1))) tens = said[0] - '0';
  if (!tens) return std::nullopt;
  const int now = static_cast<int>(today_->year());
  int first = now / 100 * 100 + 10 * *tens;
  if (first > now) first -= 100;
  Found found = ten_years(year(first));
  found.relative = true;
  return found;
}

}  // namespace insetbook
