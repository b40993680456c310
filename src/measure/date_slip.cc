// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dates that a spreadsheet made of fractions: 3/8 becomes 8-Mar, 1/32 becomes Jan-32, 2-3/8 becomes
// 03/02/2008.
#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "measure/marks.h"
#include "measure/read.h"

namespace insetbook {
namespace {

using measuring::digits_at;
using measuring::peek;
using measuring::skip_space;
using measuring::word_at;

struct Month {
  std::string_view beginning;
  int number;
};
// English, with the German and French months that begin otherwise; the longest word with the beginning is the
// month.
constexpr std::array<Month, 22> months{
    {{"jan", 1}, {"feb", 2},  {"mar", 3},  {"apr", 4},  {"may", 5},  {"jun", 6}, {"jul", 7},  {"aug", 8},
     {"sep", 9}, {"oct", 10}, {"nov", 11}, {"dec", 12}, {"mrz", 3},  {"mai", 5}, {"okt", 10}, {"dez", 12},
     {"avr", 4}, {"juin", 6}, {"juil", 7}, {"aout", 8}, {"janv", 1}, {"fevr", 2}}};
constexpr std::array<std::string_view, 15> month_endings{
    "", "uary", "ruary", "ch", "il", "e", "y", "ust", "t", "tember", "ober", "ember", "s", "embre", "let"};

int month_of(std::string_view word) {
  // The longer beginnings stand last and win: "juin" before "jun" never meet, "juil" neither.
  for (auto month = months.rbegin(); month != months.rend(); ++month) {
    if (!word.starts_with(month->beginning)) continue;
    const std::string_view ending = word.substr(month->beginning.size());
    if (std::ranges::find(month_endings, ending) != month_endings.end()) return month->number;
  }
  return 0;
}

// A date in pieces: up to three numbers, or a month by name among them.
struct Piece {
  std::int64_t value = 0;
  std::size_t digits = 0;   // 0: the month by its name
  std::size_t between = 0;  // bytes of what stands behind it, before the next one
};

// "2 /1/16" is a mixed number with a slash too many: a date in figures has the same between all of them.
bool evenly_set(const std::vector<Piece>& p) {
  const bool figures = p.size() == 3 && p[0].digits > 0 && p[1].digits > 0 && p[2].digits > 0;
  return !figures || p[0].between == p[1].between;
}

bool is_separator(char32_t code) {
  return code == U'/' || code == U'-' || code == U'.' || code == 0x2010 || code == 0x2011 || code == 0x2013;
}

// The pieces of a date, without a time of day behind it; empty when the text is something else.
std::vector<Piece> pieces_of(std::string_view text) {
  std::vector<Piece> pieces;
  std::size_t at = 0;
  bool separated = false;
  while (at < text.size()) {
    if (pieces.size() == 3) {
      // "2026-03-08 00:00:00", "2026-03-08T00:00:00"
      const bool time = separated && (peek(text, at).code == U'T' || digits_at(text, at));
      return time && text.find(':', at) != std::string_view::npos ? pieces : std::vector<Piece>{};
    }
    if (const auto digits = digits_at(text, at)) {
      pieces.push_back({digits->value, digits->count, 0});
      at = digits->end;
    } else {
      const auto word = word_at(text, at);
      const int month = word.clean ? month_of(word.view()) : 0;
      if (month == 0) return {};
      pieces.push_back({month, 0, 0});
      at = word.end;
    }
    separated = false;
    const std::size_t behind = at;
    for (auto c = peek(text, at); at < text.size(); c = peek(text, at)) {
      if (!is_separator(c.code) && !is_space(c.code) && !(c.code == U'T' && pieces.size() == 3)) break;
      separated = true;
      if (c.code == U'T') break;
      at = c.end;
    }
    if (at < text.size() && !separated) return {};
    pieces.back().between = at - behind;
  }
  return pieces;
}

struct Date {
  std::int64_t first = 0;  // month and day, in the order in which they stand
  std::int64_t second = 0;
  std::int64_t year = -1;  // -1: none
  bool named = false;      // the month by its name: `first` is the month
};

bool may_be_day(const Piece& p) {
  return p.digits >= 1 && p.digits <= 2 && p.value >= 1 && p.value <= 31;
}
bool may_be_month(const Piece& p) {
  return p.digits <= 2 && p.value >= 1 && p.value <= 12;
}
bool may_be_year(const Piece& p) {
  return p.digits == 2 || p.digits == 4;
}

std::optional<Date> dated(const Piece& a, const Piece& b, std::int64_t year, bool year_first) {
  if (a.digits == 0 && may_be_day(b)) return Date{a.value, b.value, year, true};
  if (b.digits == 0 && may_be_day(a)) return Date{b.value, a.value, year, true};
  const bool plausible = may_be_day(a) && may_be_day(b) && (may_be_month(a) || may_be_month(b));
  if (!plausible || (year_first && !may_be_month(a))) return std::nullopt;
  return Date{a.value, b.value, year, false};
}

std::optional<Date> date_of(const std::vector<Piece>& p) {
  if (p.size() == 2) {
    if (p[0].digits > 0 && p[1].digits > 0) return std::nullopt;  // 3/8 itself
    if (p[0].digits == 0 && p[1].digits == 0) return std::nullopt;
    const Piece& month = p[0].digits == 0 ? p[0] : p[1];
    const Piece& other = p[0].digits == 0 ? p[1] : p[0];
    // "Jan-32", "Mar-2064": the month and a year.
    if (!may_be_day(other) && may_be_year(other)) return Date{month.value, 1, other.value, true};
    return dated(p[0], p[1], -1, false);
  }
  if (p.size() != 3) return std::nullopt;
  if (p[0].digits == 4) return dated(p[1], p[2], p[0].value, true);
  if (!may_be_year(p[2])) return std::nullopt;
  return dated(p[0], p[1], p[2].value, false);
}

bool on_a_ruler(std::int64_t numerator, std::int64_t denominator) {
  const bool mark = denominator == 2 || denominator == 4 || denominator == 8 || denominator == 16 ||
                    denominator == 32 || denominator == 64;
  return mark && numerator > 0 && numerator < denominator && numerator % 2 == 1;
}

std::string slashed(std::int64_t numerator, std::int64_t denominator) {
  return std::to_string(numerator) + "/" + std::to_string(denominator);
}

}  // namespace

std::optional<std::string> fraction_made_a_date(std::string_view text) {
  text = trim(text);
  if (text.empty() || text.size() > 40) return std::nullopt;
  const std::vector<Piece> pieces = pieces_of(text);
  const auto date = evenly_set(pieces) ? date_of(pieces) : std::nullopt;
  if (!date) return std::nullopt;
  const std::int64_t a = date->first, b = date->second, year = date->year % 100;
  if (date->year >= 0) {
    // Month and denominator (1/32), or the whole number, the numerator and the denominator as a day (2-3/8).
    if (b == 1 && year > 31 && on_a_ruler(a, year)) return slashed(a, year);
    if (a == 1 && !date->named && year > 31 && on_a_ruler(b, year)) return slashed(b, year);
    if (on_a_ruler(b, year) && year <= 16) return std::to_string(a) + "-" + slashed(b, year);
  }
  if (on_a_ruler(b, a) && !on_a_ruler(a, b)) return slashed(b, a);
  return slashed(a, b);
}

}  // namespace insetbook
