// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dates written with figures only.
#include "language/date_reader.h"

namespace insetbook {

using std::chrono::day;
using std::chrono::years;

std::optional<FoundDates> DateReader::figures(std::size_t at) const {
  if (auto said = hyphened(at)) return said;
  if (const auto first = two_years(word(at)))
    return found(at + 1, {whole_year(*first).from, whole_year(*first + years(1)).to});
  return slashed(at);
}

// "2023-05-12", "2023-05" and "12-05-2023" are words parted at their hyphens.
std::optional<FoundDates> DateReader::hyphened(std::size_t at) const {
  const auto figures_at = [&](std::size_t i, std::size_t least) {
    return word(i).size() <= 2 && word(i).size() >= least && all_figures(word(i));
  };
  if (const auto y = year_named(word(at))) {
    if (!hyphen(at + 1) || !figures_at(at + 1, 2)) return std::nullopt;
    const month m(static_cast<unsigned>(value_of_figures(word(at + 1))));
    if (!hyphen(at + 2) || !figures_at(at + 2, 2))
      return m.ok() ? std::optional(found(at + 2, whole_months(*y / m, 1))) : std::nullopt;
    const day d(static_cast<unsigned>(value_of_figures(word(at + 2))));
    return day_found(at + 3, year_month_day(*y, m, d));
  }
  if (!figures_at(at, 1) || !figures_at(at + 1, 1) || !hyphen(at + 1) || !hyphen(at + 2)) return std::nullopt;
  const auto y = year_named(word(at + 2));
  if (!y) return std::nullopt;
  return either_order(at + 3, value_of_figures(word(at)), value_of_figures(word(at + 1)), *y);
}

// "3/4/2024", "3.4.2024", "2024/04/03", "04/2024"
std::optional<FoundDates> DateReader::slashed(std::size_t at) const {
  const std::string_view text = word(at);
  const std::size_t first = text.find_first_of("/.");
  if (first == std::string_view::npos) return std::nullopt;
  const std::size_t second = text.find(text[first], first + 1);
  const std::string_view a = text.substr(0, first), b = text.substr(first + 1, second - first - 1);
  if (!all_figures(a) || !all_figures(b)) return std::nullopt;
  if (second == std::string_view::npos) {
    const auto y = text[first] == '/' && a.size() <= 2 ? year_named(b) : std::nullopt;
    const month m(static_cast<unsigned>(y ? value_of_figures(a) : 0));
    if (!m.ok()) return std::nullopt;
    return found(at + 1, whole_months(*y / m, 1));
  }
  const std::string_view c = text.substr(second + 1);
  if (!all_figures(c) || a.size() > 4 || b.size() > 2 || c.size() > 4) return std::nullopt;
  const auto unsigned_of = [](std::string_view figures) {
    return static_cast<unsigned>(value_of_figures(figures));
  };
  if (const auto y = year_named(a))
    return day_found(at + 1, year_month_day(*y, month(unsigned_of(b)), day(unsigned_of(c))));
  const auto y = year_named(c);
  if (!y) return std::nullopt;
  return either_order(at + 1, value_of_figures(a), value_of_figures(b), *y);
}

// Month first or day first, as the book has it; the other reading is offered where it is a date too.
FoundDates DateReader::either_order(std::size_t words, int first, int second, year of) const {
  const auto date = [&](int m, int d) {
    return day_found(words,
                     year_month_day(of, month(static_cast<unsigned>(m)), day(static_cast<unsigned>(d))));
  };
  const auto month_first = date(first, second), day_first = date(second, first);
  if (month_first.no_such_day || day_first.no_such_day)
    return month_first.no_such_day ? day_first : month_first;
  Found taken = how_.month_first ? month_first : day_first;
  const Found& other = how_.month_first ? day_first : month_first;
  if (!(other.period == taken.period)) taken.other = other.period;
  return taken;
}

// "2022/23": the first of the two years.
std::optional<std::chrono::year> DateReader::two_years(std::string_view text) {
  if (text.size() != 7 || text[4] != '/' || !all_figures(text.substr(5))) return std::nullopt;
  const auto y = year_named(text.substr(0, 4));
  if (!y || (static_cast<int>(*y) + 1) % 100 != value_of_figures(text.substr(5))) return std::nullopt;
  return y;
}

}  // namespace insetbook
