// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/weights.h"

#include <array>
#include <string>

#include "text/utf8.h"

namespace insetbook {

namespace {

struct Grade {
  std::string_view word;
  std::int64_t quarter_square_inches;  // four times the area of the grade's basic sheet
};
// Basic sizes: bond 17 x 22, text 25 x 38, cover 20 x 26, bristol 22-1/2 x 28-1/2, index 25-1/2 x 30-1/2, tag
// 24 x 36 in.
constexpr std::array<Grade, 10> grades{{{"cover", 2080},
                                        {"card stock", 2080},
                                        {"cardstock", 2080},
                                        {"text", 3800},
                                        {"book", 3800},
                                        {"offset", 3800},
                                        {"bond", 1496},
                                        {"bristol", 2565},
                                        {"index", 3111},
                                        {"tag", 3456}}};

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

// 500 sheets of the grade's size weigh one pound of 453.59237 g; an inch is 25.4 mm.
std::int64_t from_pounds(std::int64_t thousandths, std::int64_t quarter_square_inches) {
  const double square_metres = 500.0 * static_cast<double>(quarter_square_inches) / 4 * 0.00064516;
  const double mg = static_cast<double>(thousandths) * 453.59237 / square_metres;
  return static_cast<std::int64_t>(mg + 0.5);
}

bool has_word(const std::string& folded, std::string_view word) {
  return (' ' + folded + ' ').find(' ' + std::string(word) + ' ') != std::string::npos;
}

}  // namespace

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
  for (const Grade& grade : grades)
    if (has_word(unit, grade.word)) return from_pounds(number->thousandths, grade.quarter_square_inches);
  return std::nullopt;
}

}  // namespace insetbook
