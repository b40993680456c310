// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/value.h"

#include <cstddef>

#include "text/utf8.h"

namespace insetbook {
namespace {

int hexadecimal(char32_t code) {
  if (code >= U'0' && code <= U'9') return static_cast<int>(code - U'0');
  if (code >= U'a' && code <= U'f') return static_cast<int>(code - U'a') + 10;
  if (code >= U'A' && code <= U'F') return static_cast<int>(code - U'A') + 10;
  return -1;
}

Problem no_colour_value(std::string_view text, std::size_t at) {
  Problem problem;
  problem.what = "\"" + std::string(text) + "\" is no colour value";
  problem.where.text = text;
  problem.where.at = at;
  problem.expected = "a # and six hexadecimal digits, such as #3a7d44";
  return problem;
}

}  // namespace

Result<std::uint32_t> read_colour_value(std::string_view text) {
  const std::string_view trimmed = trim(text);
  const auto start = static_cast<std::size_t>(trimmed.data() - text.data());
  const std::size_t before = trimmed.empty() ? 0 : characters_before(text, start);
  const auto letters = characters(trimmed);
  if (letters.empty() || letters.front().code != U'#') return failure(no_colour_value(text, before));
  std::uint32_t value = 0;
  const bool is_short = letters.size() == 4;
  for (std::size_t i = 1; i < letters.size(); ++i) {
    const int digit = hexadecimal(letters[i].code);
    if (digit < 0 || i > 6) return failure(no_colour_value(text, before + i));
    value = value * 16 + static_cast<std::uint32_t>(digit);
    if (is_short) value = value * 16 + static_cast<std::uint32_t>(digit);
  }
  if (!is_short && letters.size() != 7) return failure(no_colour_value(text, before + letters.size()));
  return value;
}

std::string write_colour_value(std::uint32_t srgb) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text = "#";
  for (int shift = 20; shift >= 0; shift -= 4) text += digits[(srgb >> shift) & 15];
  return text;
}

}  // namespace insetbook
