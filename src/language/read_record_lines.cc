// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record_lines.h"

#include <algorithm>

#include "language/pieces.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

std::size_t past_space(std::string_view line, std::size_t at) {
  while (at < line.size() && is_space(character_at(line, at).code)) at = character_at(line, at).end;
  return at;
}

// Past a bullet and a box to tick.
std::size_t past_bullet(std::string_view line) {
  static constexpr std::string_view bullets[] = {"-", "*", "•", "–", "—", "·", "▪", "◦", "‣",
                                                 "●", "○", "■", "□", "☐", "☑", "✓", "+"};
  std::size_t at = 0;
  for (const std::string_view bullet : bullets)
    if (line.starts_with(bullet) && line.size() > bullet.size() &&
        is_space(character_at(line, bullet.size()).code)) {
      at = bullet.size();
      break;
    }
  while (at < line.size() && (line[at] == ' ' || line[at] == '\t')) ++at;
  for (const std::string_view box :
       {std::string_view("[ ]"), std::string_view("[x]"), std::string_view("[X]")})
    if (line.substr(at).starts_with(box)) at += box.size();
  return at;
}

// The place of the first character of a line that stands for a byte which is no UTF-8: U+FFFD of one byte.
std::optional<std::size_t> first_bad_character(std::string_view line) {
  std::size_t count = 0;
  for (const Character& c : characters(line)) {
    if (c.code == 0xFFFD && c.end == c.begin + 1) return count;
    ++count;
  }
  return std::nullopt;
}

Problem bad_byte_in(std::string_view line, int row) {
  constexpr std::size_t longest_shown = 400;
  std::string shown;
  for (const Character& c : characters(line)) {
    if (c.code >= 0x20)
      append_utf8(shown, c.code);
    else
      shown += ' ';
  }
  Problem problem;
  problem.what = "line " + std::to_string(row) + " has a byte that is no UTF-8";
  if (shown.size() <= longest_shown) {
    problem.where.text = shown;
    problem.where.at = first_bad_character(line).value_or(0);
    problem.where.length = 1;
  }
  problem.where.row = row;
  problem.expected = "a text saved as UTF-8";
  return problem;
}

}  // namespace

LineLead lead_of(std::string_view line) {
  LineLead lead;
  lead.bytes = past_bullet(line);
  std::string_view rest = line.substr(lead.bytes);
  const bool bracket = rest.starts_with('(');
  if (bracket) rest.remove_prefix(1);
  std::size_t digits = 0;
  while (digits < rest.size() && digits < 3 && rest[digits] >= '0' && rest[digits] <= '9') ++digits;
  const bool closes =
      digits > 0 && digits < rest.size() && (rest[digits] == ')' || (rest[digits] == '.' && !bracket));
  if (closes && digits + 1 < rest.size() && is_space(character_at(rest, digits + 1).code)) {
    lead.bytes += digits + 1 + (bracket ? 1 : 0);
    lead.numbered = true;
  }
  lead.bytes = past_space(line, lead.bytes);
  return lead;
}

std::string_view nth_word(std::string_view folded, std::size_t n) {
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t space = folded.find(' ');
    if (space == std::string_view::npos) return {};
    folded.remove_prefix(space + 1);
  }
  return folded.substr(0, folded.find(' '));
}

std::string_view behind_words(std::string_view line, std::size_t count) {
  std::size_t at = 0;
  for (; count > 0; --count) {
    at = std::min(line.find_first_of(" \t", at), line.size());
    at = std::min(line.find_first_not_of(" \t", at), line.size());
  }
  return line.substr(at);
}

std::string without_quotes(std::string_view value) {
  value = trim(value);
  const std::vector<Character> all = characters(value);
  if (all.size() > 2 && is_quote(all.front().code) && is_quote(all.back().code))
    value = value.substr(all.front().end, all.back().begin - all.front().end);
  return std::string(trim(value));
}

std::vector<std::string> parts_of_list(std::string_view value) {
  std::vector<std::string> list;
  while (!value.empty()) {
    std::size_t end = std::min(value.find(';'), value.size());
    const std::size_t comma = value.find(", ");
    end = std::min(end, comma);
    const std::string_view one = trim(value.substr(0, end));
    if (!one.empty()) list.emplace_back(one);
    value.remove_prefix(std::min(end + 1, value.size()));
  }
  return list;
}

std::optional<Problem> bad_bytes(std::string_view text) {
  if (valid_utf8(text)) return std::nullopt;
  int row = 1;
  for (std::size_t begin = 0; begin <= text.size(); ++row) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view line = text.substr(begin, end - begin);
    if (!valid_utf8(line)) return bad_byte_in(line, row);
    begin = end + 1;
  }
  return std::nullopt;
}

}  // namespace insetbook
