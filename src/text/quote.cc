// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/quote.h"

#include <cstdio>

#include "text/utf8.h"

namespace insetbook {

namespace {

bool is_control(char32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

bool is_line_space(char32_t code) {
  return code == '\t' || code == '\n' || code == '\r';
}

}  // namespace

std::string cut_short(std::string_view text) {
  text = trim(text);
  std::string out;
  std::size_t at = 0;
  for (std::size_t count = 0; at < text.size() && count < most_quoted; ++count) {
    const Character c = character_at(text, at);
    append_utf8(out, is_line_space(c.code) ? U' ' : is_control(c.code) ? U'\uFFFD' : c.code);
    at = c.end;
  }
  if (at < text.size()) out += "…";
  return out;
}

std::string in_quotes(std::string_view text) {
  return '"' + cut_short(text) + '"';
}

std::optional<ControlCharacter> control_character(std::string_view text, Lines lines) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    // Bytes from 0x80 to 0x9F begin no character: those of C1 come after 0xC2.
    const auto byte = static_cast<unsigned char>(text[at]);
    const bool c1 = byte == 0xC2 && at + 1 < text.size() && static_cast<unsigned char>(text[at + 1]) < 0xA0;
    if (byte >= 0x20 && byte != 0x7F && !c1) continue;
    if (lines == Lines::several && is_line_space(byte)) continue;
    return ControlCharacter{character_at(text, at).code, characters_before(text, at)};
  }
  return std::nullopt;
}

std::string name_of(const ControlCharacter& found) {
  char code[16];
  std::snprintf(code, sizeof code, "U+%04X", static_cast<unsigned>(found.code));
  return std::string("the character ") + code + ", which nothing shows";
}

}  // namespace insetbook
