// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/units.h"

#include <fmt/format.h>

#include <algorithm>

#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

bool is_letter(char c) {
  return (c | 0x20) >= 'a' && (c | 0x20) <= 'z';
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// A curly quote (U+2018 to U+201F) or a prime (U+2032 to U+2034): feet or inches.
bool begins_with_mark(std::string_view text) {
  if (!text.starts_with("\xE2\x80") || text.size() < 3) return false;
  const auto last = static_cast<unsigned char>(text[2]);
  return (last >= 0x98 && last <= 0x9F) || (last >= 0xB2 && last <= 0xB4);
}

bool counts_sides(std::string_view rest) {
  const std::size_t word = rest.find_first_not_of(" -");
  return word != std::string_view::npos && fold(rest.substr(word)).starts_with("side");
}

}  // namespace

bool says_unit(std::string_view text) {
  constexpr std::string_view units[] = {
      "in",          "inch",       "inches",      "mm",          "cm",         "m",           "ft",
      "foot",        "feet",       "millimetre",  "millimetres", "millimeter", "millimeters", "centimetre",
      "centimetres", "centimeter", "centimeters", "metre",       "metres",     "meter",       "meters"};
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] == '"' || text[i] == '\'' || begins_with_mark(text.substr(i))) return true;
    const std::size_t begin = i;
    while (i < text.size() && is_letter(text[i])) ++i;
    if (std::find(std::begin(units), std::end(units), fold(text.substr(begin, i - begin))) != std::end(units))
      return true;
    if (i == begin) ++i;
  }
  return false;
}

std::string size_with_unit(std::string_view text, std::string_view unit) {
  return text.empty() || says_unit(text) ? std::string(text) : fmt::format("{} {}", text, unit);
}

std::string with_units(std::string_view text, Unit unit, Numbers numbers) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const bool inside_word = i > 0 && (is_letter(text[i - 1]) || is_digit(text[i - 1]));
    const auto found = inside_word || is_letter(text[i]) ? std::nullopt : scan_measurement(text, i, unit);
    if (!found || !*found || (**found).found.end <= i) {
      out += text[i++];
      continue;
    }
    const std::size_t end = (**found).found.end;
    const std::string_view figure = text.substr(i, end - i);
    const bool length = !(**found).bare || numbers == Numbers::are_lengths;
    out += figure;
    if (length && !says_unit(figure) && !counts_sides(text.substr(end)))
      out += unit == Unit::mm ? " mm" : " in";
    i = end;
  }
  return out;
}

}  // namespace insetbook
