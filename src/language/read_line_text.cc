// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line_text.h"

#include "text/utf8.h"

namespace insetbook {

std::size_t byte_at(std::string_view text, std::size_t character) {
  const std::vector<Character> all = characters(text);
  return character < all.size() ? all[character].begin : text.size();
}

void blank(std::string& text, Span span, char first) {
  for (std::size_t i = span.begin; i < span.end; ++i) text[i] = ' ';
  if (span.begin < span.end) text[span.begin] = first;
}

std::string single_spaced(std::string_view text) {
  std::string out;
  for (const Character& c : characters(trim(text))) {
    if (!is_space(c.code))
      append_utf8(out, c.code);
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return out;
}

}  // namespace insetbook
