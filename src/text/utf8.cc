// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/utf8.h"

#include <utf8proc.h>

#include <algorithm>
#include <array>

namespace insetbook {
namespace {

constexpr char32_t replacement = 0xFFFD;

bool is_ascii(char c) {
  return static_cast<unsigned char>(c) < 0x80;
}

// Decodes the character at `at`: false when the byte there begins none.
bool decode(std::string_view text, std::size_t at, char32_t& code, std::size_t& length) {
  const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data() + at);
  const std::size_t left = std::min<std::size_t>(text.size() - at, 4);
  utf8proc_int32_t decoded = -1;
  const utf8proc_ssize_t used = utf8proc_iterate(bytes, static_cast<utf8proc_ssize_t>(left), &decoded);
  if (used <= 0 || decoded < 0) return false;
  code = static_cast<char32_t>(decoded);
  length = static_cast<std::size_t>(used);
  return true;
}

utf8proc_category_t category(char32_t code) {
  return utf8proc_category(static_cast<utf8proc_int32_t>(code));
}

// What folding makes of one character that is decomposed and case folded already.
enum class Folded { keep, space, drop };

Folded folded(char32_t code) {
  if (is_space(code) || is_hyphen(code) || code == U'_') return Folded::space;
  if (is_quote(code)) return Folded::drop;
  switch (category(code)) {
    case UTF8PROC_CATEGORY_CF:
      return Folded::drop;
    case UTF8PROC_CATEGORY_CC:
      return Folded::space;
    default:
      return Folded::keep;
  }
}

// Collects folded characters: a space is written only between two characters.
class FoldedText {
 public:
  explicit FoldedText(std::size_t expected) { out_.reserve(expected); }

  void space() { pending_ = !out_.empty(); }
  void keep_ascii(char c) {
    write_pending();
    out_.push_back(c);
  }
  void add(char32_t code) {
    switch (folded(code)) {
      case Folded::drop:
        return;
      case Folded::space:
        return space();
      case Folded::keep:
        write_pending();
        append_utf8(out_, code);
    }
  }
  std::string take() { return std::move(out_); }

 private:
  void write_pending() {
    if (pending_) out_.push_back(' ');
    pending_ = false;
  }
  std::string out_;
  bool pending_ = false;
};

void fold_ascii(char c, FoldedText& out) {
  if (c >= 'A' && c <= 'Z') return out.keep_ascii(static_cast<char>(c - 'A' + 'a'));
  if (c <= ' ' || c == '-' || c == '_' || c == '\x7f') return out.space();
  if (c == '\'' || c == '"' || c == '`') return;
  out.keep_ascii(c);
}

void fold_other(char32_t code, FoldedText& out) {
  // Asked before decomposition, which makes a space of an acute accent used as an apostrophe.
  if (folded(code) != Folded::keep) return out.add(code);
  std::array<utf8proc_int32_t, 64> parts;
  int boundary = 0;
  const auto options = static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT |
                                                      UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK);
  const utf8proc_ssize_t count = utf8proc_decompose_char(static_cast<utf8proc_int32_t>(code), parts.data(),
                                                         parts.size(), options, &boundary);
  if (count < 0 || static_cast<std::size_t>(count) > parts.size()) return out.add(code);
  for (std::size_t i = 0; i < static_cast<std::size_t>(count); ++i) out.add(static_cast<char32_t>(parts[i]));
}

std::u32string codes(std::string_view text) {
  std::u32string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    out.push_back(c.code);
    at = c.end;
  }
  return out;
}

}  // namespace

Character character_at(std::string_view text, std::size_t at) {
  if (is_ascii(text[at])) return {static_cast<char32_t>(text[at]), at, at + 1};
  char32_t code = 0;
  std::size_t length = 0;
  if (!decode(text, at, code, length)) return {replacement, at, at + 1};
  return {code, at, at + length};
}

std::vector<Character> characters(std::string_view text) {
  std::vector<Character> out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size(); at = out.back().end) out.push_back(character_at(text, at));
  return out;
}

bool valid_utf8(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    if (is_ascii(text[at])) {
      ++at;
      continue;
    }
    char32_t code = 0;
    std::size_t length = 0;
    if (!decode(text, at, code, length)) return false;
    at += length;
  }
  return true;
}

std::size_t characters_before(std::string_view text, std::size_t offset) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < std::min(offset, text.size()); ++count) at = character_at(text, at).end;
  return count;
}

void append_utf8(std::string& out, char32_t code) {
  if (code < 0x80) {
    out.push_back(static_cast<char>(code));
    return;
  }
  std::array<utf8proc_uint8_t, 4> bytes;
  if (code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) code = replacement;
  const utf8proc_ssize_t length = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code), bytes.data());
  for (std::size_t i = 0; i < static_cast<std::size_t>(length); ++i)
    out.push_back(static_cast<char>(bytes[i]));
}

bool is_space(char32_t code) {
  if (code < 0x80) return code == U' ' || (code >= U'\t' && code <= U'\r');
  if (code == 0x85 || code == 0xFEFF || code == 0x200B) return true;
  const utf8proc_category_t c = category(code);
  return c == UTF8PROC_CATEGORY_ZS || c == UTF8PROC_CATEGORY_ZL || c == UTF8PROC_CATEGORY_ZP;
}

bool is_hyphen(char32_t code) {
  if (code < 0x80) return code == U'-';
  // The minus sign, its superscript and subscript, and the hyphen bullet are no dashes to Unicode.
  if (code == 0x2212 || code == 0x207B || code == 0x208B || code == 0x2043) return true;
  return category(code) == UTF8PROC_CATEGORY_PD;
}

bool is_quote(char32_t code) {
  if (code < 0x80) return code == U'\'' || code == U'"' || code == U'`';
  switch (code) {
    case 0x00AB:
    case 0x00BB:
    case 0x2039:
    case 0x203A:  // angled quotation marks
    case 0x00B4:
    case 0x02B9:
    case 0x02BA:
    case 0x02BB:
    case 0x02BC:
    case 0x02BD:
    case 0x02CA:
    case 0x02CB:
    case 0x02DD:
    case 0x02EE:
    case 0x3003:
    case 0xFF02:
    case 0xFF07:
    case 0xFF40:
      return true;
    default:
      return (code >= 0x2018 && code <= 0x201F) || (code >= 0x2032 && code <= 0x2037) || code == 0x2057 ||
             (code >= 0x301D && code <= 0x301F);
  }
}

bool is_letter(char32_t code) {
  if (code < 0x80) return (code >= U'a' && code <= U'z') || (code >= U'A' && code <= U'Z');
  const utf8proc_category_t c = category(code);
  return c >= UTF8PROC_CATEGORY_LU && c <= UTF8PROC_CATEGORY_LO;
}

std::string fold(std::string_view text) {
  FoldedText out(text.size());
  for (std::size_t at = 0; at < text.size();) {
    if (is_ascii(text[at])) {
      fold_ascii(text[at++], out);
      continue;
    }
    const Character c = character_at(text, at);
    fold_other(c.code, out);
    at = c.end;
  }
  return out.take();
}

std::string_view trim(std::string_view text) {
  std::size_t begin = 0;
  while (begin < text.size()) {
    const Character c = character_at(text, begin);
    if (!is_space(c.code)) break;
    begin = c.end;
  }
  std::size_t end = text.size();
  while (end > begin) {
    std::size_t start = end - 1;
    while (start > begin && end - start < 4 && (static_cast<unsigned char>(text[start]) & 0xC0) == 0x80)
      --start;
    const Character c = character_at(text, start);
    if (c.end != end || !is_space(c.code)) break;
    end = start;
  }
  return text.substr(begin, end - begin);
}

std::size_t edit_distance(std::string_view first, std::string_view second, std::size_t limit) {
  std::u32string a = codes(first), b = codes(second);
  if (a.size() > b.size()) a.swap(b);
  limit = std::min(limit, b.size());
  if (b.size() - a.size() > limit) return limit + 1;
  const std::size_t give_up = limit + 1, width = a.size() + 1;
  // Three rows of the table: before[..] is two characters of b back, last[..] one, row[..] the present one.
  // Only the cells within `limit` of the diagonal can matter; all others hold give_up.
  std::vector<std::size_t> before(width, give_up), last(width, give_up), row(width, give_up);
  for (std::size_t i = 0; i < width && i <= limit; ++i) last[i] = i;
  std::size_t least_of_last = 0;
  for (std::size_t j = 1; j <= b.size(); ++j) {
    const std::size_t from = j > limit ? j - limit : 0, to = std::min(a.size(), j + limit);
    if (from > 0) row[from - 1] = give_up;
    std::size_t least = give_up;
    for (std::size_t i = from; i <= to; ++i) {
      std::size_t cost = i == 0 ? j : std::min(row[i - 1] + 1, last[i - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
      cost = std::min(cost, last[i] + 1);
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        cost = std::min(cost, before[i - 2] + 1);
      row[i] = std::min(cost, give_up);
      least = std::min(least, row[i]);
    }
    if (to < a.size()) row[to + 1] = give_up;
    if (least == give_up && least_of_last == give_up) return give_up;
    least_of_last = least;
    before.swap(last);
    last.swap(row);
  }
  return last[a.size()];
}

}  // namespace insetbook
