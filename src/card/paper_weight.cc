// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/paper_weight.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "schema/label_key.h"
#include "shape/wide.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// A pound in hundredths of a milligram, exactly.
constexpr Int128 pound = 45'359'237;

// Not negative, divided and rounded to the nearest.
std::int64_t nearest(Int128 dividend, Int128 divisor) {
  return static_cast<std::int64_t>((dividend + divisor / 2) / divisor);
}

// The sheets that weigh the pounds, in square nanometres.
Int128 weighed_area(const PaperGrade& grade) {
  return Int128(grade.width.nm()) * grade.height.nm() * grade.sheets;
}

constexpr Int128 square_metre = Int128(1'000'000'000) * 1'000'000'000;  // in square nanometres

// Thousandths of the number that begins the text, and what follows it.
struct Number {
  std::int64_t thousandths;
  std::string_view rest;
};
std::optional<Number> leading_number(std::string_view text) {
  std::int64_t value = 0;
  std::size_t i = 0, digits = 0, decimals = 0;
  bool point = false;
  for (; i < text.size(); ++i) {
    const char c = text[i];
    if ((c == '.' || c == ',') && !point && digits > 0) {
      point = true;
    } else if (c >= '0' && c <= '9') {
      if (point && ++decimals > 3) return std::nullopt;
      if (++digits > 8) return std::nullopt;
      value = value * 10 + (c - '0');
    } else {
      break;
    }
  }
  if (digits == 0) return std::nullopt;
  for (; decimals < 3; ++decimals) value *= 10;
  return Number{value, text.substr(i)};
}

bool has_word(const std::string& folded, std::string_view word) {
  return (' ' + folded + ' ').find(' ' + std::string(word) + ' ') != std::string::npos;
}

}  // namespace

std::span<const PaperGrade> paper_grades() {
  return paper_tables().grades;
}

const PaperGrade* paper_grade_named(std::string_view text) {
  const std::string key = label_key(fold(text));
  for (const PaperGrade& grade : paper_grades()) {
    const auto is = [&](std::string_view word) { return label_key(fold(word)) == key; };
    if (is(grade.name) || std::ranges::any_of(grade.others, is)) return &grade;
  }
  return nullptr;
}

// Thousandths of a pound are hundredths of a milligram times `pound` / 1000, and milligrams a hundredth of
// these: 100 000 in all.
std::int64_t mg_m2_from_pounds(std::int64_t thousandths, const PaperGrade& grade) {
  return nearest(Int128(thousandths) * pound * (square_metre / 100'000), weighed_area(grade));
}

std::int64_t pounds_from_mg_m2(std::int64_t mg_m2, const PaperGrade& grade) {
  return nearest(Int128(mg_m2) * weighed_area(grade), pound * (square_metre / 100'000));
}

std::optional<std::int64_t> read_paper_weight(std::string_view text) {
  const auto number = leading_number(trim(text));
  if (!number || number->thousandths == 0) return std::nullopt;
  std::string unit = fold(number->rest);
  for (char& c : unit)
    if (c == '.' || c == ',' || c == '/' || c == '#' || c == '(' || c == ')') c = c == '#' ? '#' : ' ';
  unit = fold(unit);
  if (unit == "g m2" || unit == "gsm" || unit == "g" || unit == "g m 2" || unit == "g sq m" ||
      unit == "g qm" || unit.empty())
    return number->thousandths;
  const bool pounds = has_word(unit, "lb") || has_word(unit, "lbs") || has_word(unit, "pound") ||
                      has_word(unit, "pounds") || unit.starts_with('#');
  if (!pounds) return std::nullopt;
  for (const PaperGrade& grade : paper_grades()) {
    const auto says = [&](std::string_view word) {
      std::string joined(word);
      std::erase(joined, ' ');
      return has_word(unit, word) || has_word(unit, joined);
    };
    if (says(grade.name) || std::ranges::any_of(grade.others, says))
      return mg_m2_from_pounds(number->thousandths, grade);
  }
  return std::nullopt;
}

std::int64_t sheet_mass_mg(Length width, Length height, std::int64_t mg_m2) {
  return nearest(Int128(width.nm()) * height.nm() * mg_m2, square_metre);
}

std::int64_t piece_mass_mg(double area_mm2, std::int64_t mg_m2) {
  return std::llround(area_mm2 * static_cast<double>(mg_m2) / 1e6);
}

std::optional<TypicalCaliper> typical_caliper(std::int64_t mg_m2) {
  const auto entries = paper_tables().calipers;
  const auto above = std::ranges::lower_bound(entries, mg_m2, {}, &CaliperEntry::mg_m2);
  if (above == entries.end() || (above == entries.begin() && above->mg_m2 != mg_m2)) return std::nullopt;
  if (above->mg_m2 == mg_m2) return TypicalCaliper{above->thickness, "typical: " + write_source(above->from)};
  const CaliperEntry& below = *(above - 1);
  const std::int64_t step = Length::mm(1).nm() / 1000;
  const Int128 rise = Int128((above->thickness - below.thickness).nm()) * (mg_m2 - below.mg_m2);
  const Int128 at = Int128(below.thickness.nm()) * (above->mg_m2 - below.mg_m2) + rise;
  TypicalCaliper typical{Length::nm(nearest(at, Int128(above->mg_m2 - below.mg_m2) * step) * step),
                         "typical: " + write_source(below.from)};
  if (!(above->from == below.from)) typical.source += "; " + write_source(above->from);
  return typical;
}

}  // namespace insetbook
