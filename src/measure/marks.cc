// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/marks.h"

#include <algorithm>
#include <array>

namespace insetbook::measuring {
namespace {

template <class Value>
struct Named {
  std::string_view word;
  Value value;
};

template <class Value, std::size_t N>
const Value* find_named(const std::array<Named<Value>, N>& table, std::string_view word) {
  for (const auto& row : table)
    if (row.word == word) return &row.value;
  return nullptr;
}

constexpr std::array<Named<UnitName>, 24> unit_words{{
    {"in", UnitName::inch},        {"ins", UnitName::inch},
    {"inch", UnitName::inch},      {"inches", UnitName::inch},
    {"ft", UnitName::foot},        {"foot", UnitName::foot},
    {"feet", UnitName::foot},      {"mm", UnitName::mm},
    {"mms", UnitName::mm},         {"millimetre", UnitName::mm},
    {"millimetres", UnitName::mm}, {"millimeter", UnitName::mm},
    {"millimeters", UnitName::mm}, {"cm", UnitName::cm},
    {"cms", UnitName::cm},         {"centimetre", UnitName::cm},
    {"centimetres", UnitName::cm}, {"centimeter", UnitName::cm},
    {"centimeters", UnitName::cm}, {"m", UnitName::m},
    {"metre", UnitName::m},        {"metres", UnitName::m},
    {"meter", UnitName::m},        {"meters", UnitName::m},
}};

bool is_abbreviation(std::string_view word) {
  return word == "in" || word == "ins" || word == "ft" || word == "mm" || word == "cm" || word == "m";
}

bool is_single_mark(char32_t code) {
  switch (code) {
    case U'\'':
    case U'`':
    case 0x00B4:
    case 0x02B9:
    case 0x02BC:
    case 0x02CA:
    case 0x2018:
    case 0x2019:
    case 0x201B:
    case 0x2032:
    case 0x2035:
    case 0xFF07:
      return true;
    default:
      return false;
  }
}

bool is_double_mark(char32_t code) {
  switch (code) {
    case U'"':
    case 0x02BA:
    case 0x02DD:
    case 0x02EE:
    case 0x201C:
    case 0x201D:
    case 0x201E:
    case 0x201F:
    case 0x2033:
    case 0x2036:
    case 0x3003:
    case 0x301E:
    case 0xFF02:
      return true;
    default:
      return false;
  }
}

constexpr std::array<Named<Label>, 11> label_words{{
    {"w", {Side::width}},
    {"width", {Side::width}},
    {"wide", {Side::width, true}},
    {"h", {Side::height}},
    {"height", {Side::height}},
    {"high", {Side::height, true}},
    {"tall", {Side::height, true}},
    {"diam", {Side::across}},
    {"dia", {Side::across}},
    {"diameter", {Side::across}},
    {"across", {Side::across}},
}};

constexpr std::array<std::string_view, 15> shape_words{
    "circle", "square",   "oval",    "ellipse", "rectangle", "hexagon", "octagon", "pentagon",
    "heart",  "triangle", "diamond", "tag",     "arch",      "banner",  "star"};

bool is_diameter_sign(char32_t code) {
  return code == 0x2300 || code == 0x00D8 || code == 0x00F8;
}

// "high of centre", "across the front" say where, not how large.
bool says_where(std::string_view text, std::size_t at, std::string_view word) {
  const Word next = word_at(text, skip_space(text, at));
  const std::string_view n = next.view();
  if (word == "high") return n == "of" || n == "up" || n == "on";
  if (word == "across") return n == "the" || n == "a" || n == "from" || n == "its";
  return false;
}

std::size_t skip_dot(std::string_view text, std::size_t at) {
  if (at >= text.size() || text[at] != '.') return at;
  const bool goes_on =
      at + 1 < text.size() && (text[at + 1] == '.' || digit_value(peek(text, at + 1).code) >= 0);
  return goes_on ? at : at + 1;
}

std::optional<std::size_t> skip_code(std::string_view text, std::size_t at, char32_t code) {
  const Character c = peek(text, at);
  return c.code == code ? std::optional(c.end) : std::nullopt;
}

int small_digit(char32_t code, bool& superscript) {
  superscript = code < 0x2080;
  if (code == 0xB9) return 1;
  if (code == 0xB2) return 2;
  if (code == 0xB3) return 3;
  if (code == 0x2070 || (code >= 0x2074 && code <= 0x2079)) return static_cast<int>(code - 0x2070);
  if (code >= 0x2080 && code <= 0x2089) return static_cast<int>(code - 0x2080);
  return -1;
}

void count(Digits& run, int digit) {
  ++run.count;
  run.value = std::min(most_counted, run.value * 10 + digit);
}

}  // namespace

Character peek(std::string_view text, std::size_t at) {
  return at < text.size() ? character_at(text, at) : Character{0, text.size(), text.size()};
}

std::size_t skip_space(std::string_view text, std::size_t at) {
  while (at < text.size()) {
    const Character c = character_at(text, at);
    if (!is_space(c.code)) break;
    at = c.end;
  }
  return at;
}

int digit_value(char32_t code) {
  if (code >= U'0' && code <= U'9') return static_cast<int>(code - U'0');
  if (code >= 0xFF10 && code <= 0xFF19) return static_cast<int>(code - 0xFF10);
  return -1;
}

std::optional<Digits> digits_at(std::string_view text, std::size_t at) {
  Digits run{at, at, 0, 0};
  for (;;) {
    const Character c = peek(text, run.end);
    const int digit = digit_value(c.code);
    if (digit < 0) break;
    count(run, digit);
    run.end = c.end;
  }
  return run.count == 0 ? std::nullopt : std::optional(run);
}

std::optional<Digits> small_digits_at(std::string_view text, std::size_t at) {
  Digits run{at, at, 0, 0};
  bool kind = false;
  for (;;) {
    const Character c = peek(text, run.end);
    bool superscript = false;
    const int digit = small_digit(c.code, superscript);
    if (digit < 0 || (run.count > 0 && superscript != kind)) break;
    kind = superscript;
    count(run, digit);
    run.end = c.end;
  }
  return run.count == 0 ? std::nullopt : std::optional(run);
}

std::optional<Fraction> vulgar_fraction(char32_t code) {
  switch (code) {
    case 0x00BC:
      return Fraction{1, 4};
    case 0x00BD:
      return Fraction{1, 2};
    case 0x00BE:
      return Fraction{3, 4};
    case 0x2150:
      return Fraction{1, 7};
    case 0x2151:
      return Fraction{1, 9};
    case 0x2152:
      return Fraction{1, 10};
    case 0x2153:
      return Fraction{1, 3};
    case 0x2154:
      return Fraction{2, 3};
    case 0x2155:
      return Fraction{1, 5};
    case 0x2156:
      return Fraction{2, 5};
    case 0x2157:
      return Fraction{3, 5};
    case 0x2158:
      return Fraction{4, 5};
    case 0x2159:
      return Fraction{1, 6};
    case 0x215A:
      return Fraction{5, 6};
    case 0x215B:
      return Fraction{1, 8};
    case 0x215C:
      return Fraction{3, 8};
    case 0x215D:
      return Fraction{5, 8};
    case 0x215E:
      return Fraction{7, 8};
    case 0x2189:
      return Fraction{0, 3};
    default:
      return std::nullopt;
  }
}

bool is_slash(char32_t code) {
  return code == U'/' || code == 0x2044 || code == 0x2215 || code == 0x29F8 || code == 0xFF0F;
}

Word word_at(std::string_view text, std::size_t at) {
  Word word;
  word.end = at;
  while (word.end < text.size() && is_letter(static_cast<unsigned char>(text[word.end])) &&
         static_cast<unsigned char>(text[word.end]) < 0x80) {
    if (word.length == sizeof word.letters) return word;
    word.letters[word.length++] = static_cast<char>(text[word.end++] | 0x20);
  }
  const char32_t next = peek(text, word.end).code;
  word.clean = word.length > 0 && next != U'_' && (next < 0x80 || !is_letter(next) || is_diameter_sign(next));
  return word;
}

std::int64_t nanometres(UnitName name) {
  switch (name) {
    case UnitName::inch:
      return 25'400'000;
    case UnitName::foot:
      return 304'800'000;
    case UnitName::mm:
      return 1'000'000;
    case UnitName::cm:
      return 10'000'000;
    case UnitName::m:
      return 1'000'000'000;
  }
  return 0;
}

Unit shown_as(UnitName name) {
  return name == UnitName::inch || name == UnitName::foot ? Unit::inch : Unit::mm;
}

std::optional<WrittenUnit> unit_word_at(std::string_view text, std::size_t at) {
  const Character first = peek(text, at);
  if (first.code == 0x339C) return WrittenUnit{UnitName::mm, false, true, first.end};
  if (first.code == 0x339D) return WrittenUnit{UnitName::cm, false, true, first.end};
  const Word word = word_at(text, at);
  if (!word.clean) return std::nullopt;
  if (const UnitName* name = find_named(unit_words, word.view())) {
    const bool abbreviated = is_abbreviation(word.view());
    const bool full = !abbreviated || *name == UnitName::mm || *name == UnitName::cm;
    return WrittenUnit{*name, false, full, abbreviated ? skip_dot(text, word.end) : word.end};
  }
  // "2inx3in", "60mmW x 40mmH": the last letter belongs to what comes next.
  const char last = word.letters[word.length - 1];
  if (word.length < 2 || (last != 'x' && last != 'w' && last != 'h')) return std::nullopt;
  const UnitName* name = find_named(unit_words, std::string_view(word.letters, word.length - 1));
  if (name == nullptr) return std::nullopt;
  return WrittenUnit{*name, false, false, word.end - 1};
}

std::optional<WrittenUnit> unit_mark_at(std::string_view text, std::size_t at) {
  const Character first = peek(text, at);
  if (is_double_mark(first.code)) return WrittenUnit{UnitName::inch, true, false, first.end};
  if (!is_single_mark(first.code)) return std::nullopt;
  const Character second = peek(text, first.end);
  if (is_single_mark(second.code)) return WrittenUnit{UnitName::inch, true, false, second.end};
  return WrittenUnit{UnitName::foot, true, false, first.end};
}

std::optional<std::size_t> times_at(std::string_view text, std::size_t at) {
  const Character first = peek(text, at);
  switch (first.code) {
    case 0x00D7:
    case 0x2715:
    case 0x2716:
    case 0x2A2F:
    case U'*':
    case 0x2217:
    case 0xFF0A:
    case 0x0445:
    case 0x0425:
    case 0xFF58:
      return first.end;
    default:
      break;
  }
  const Word word = word_at(text, at);
  if (word.view() == "x" || word.view() == "by") return word.end;
  // "W2xH3": the label stands right behind.
  if (word.length == 2 && word.clean && word.letters[0] == 'x' && label_before_at(text, at + 1))
    return at + 1;
  return std::nullopt;
}

std::optional<std::size_t> dots_at(std::string_view text, std::size_t at) {
  if (const auto end = skip_code(text, at, 0x2026)) return end;
  std::size_t end = at;
  while (end < text.size() && end - at < 3 && text[end] == '.') ++end;
  return end - at >= 2 ? std::optional(end) : std::nullopt;
}

std::optional<Label> label_before_at(std::string_view text, std::size_t at) {
  const Character first = peek(text, at);
  if (is_diameter_sign(first.code)) return Label{Side::across, false, skip_space(text, first.end)};
  const Word word = word_at(text, at);
  const Label* found = word.clean && word.view() != "across" ? find_named(label_words, word.view()) : nullptr;
  if (found == nullptr) return std::nullopt;
  std::size_t end = word.end;
  if (found->side == Side::across || word.length == 1) end = skip_dot(text, end);
  end = skip_space(text, end);
  if (const char32_t mark = peek(text, end).code; mark == U':' || mark == U'=')
    end = skip_space(text, end + 1);
  return Label{found->side, found->loose, end};
}

std::optional<Label> label_after_at(std::string_view text, std::size_t at) {
  const auto open = skip_code(text, at, U'(');
  std::size_t begin = open ? skip_space(text, *open) : at;
  Word word = word_at(text, begin);
  if (const Character sign = peek(text, begin); is_diameter_sign(sign.code))
    return Label{Side::across, false, sign.end};
  if (word.view() == "in") {  // "in diameter", "in height"
    word = word_at(text, skip_space(text, word.end));
    if (word.length < 4) return std::nullopt;
  }
  const Label* found = word.clean ? find_named(label_words, word.view()) : nullptr;
  if (found == nullptr || says_where(text, word.end, word.view())) return std::nullopt;
  std::size_t end = word.end;
  if (word.view() == "diam" || word.view() == "dia") end = skip_dot(text, end);
  if (open) {
    const auto close = skip_code(text, skip_space(text, end), U')');
    if (!close) return std::nullopt;
    end = *close;
  }
  return Label{found->side, found->loose, end};
}

std::optional<ShapeWord> shape_at(std::string_view text, std::size_t at) {
  const Word word = word_at(text, at);
  if (word.view() == "round") return ShapeWord{"circle", word.end};
  if (word.view() == "rounded" || word.view() == "scalloped") {
    const std::size_t space = peek(text, word.end).code == U'-' ? word.end + 1 : skip_space(text, word.end);
    const Word edge_of = word_at(text, space);
    if (space == word.end || edge_of.view() == "rounded" || edge_of.view() == "scalloped")
      return std::nullopt;
    const auto rest = shape_at(text, space);
    if (!rest) return std::nullopt;
    constexpr std::array<Named<std::string_view>, 4> edged{{{"rectangle", "rounded rectangle"},
                                                            {"square", "rounded square"},
                                                            {"circle", "scalloped circle"},
                                                            {"oval", "scalloped oval"}}};
    const std::string_view* name = find_named(edged, rest->name);
    const bool scalloped = name != nullptr && name->starts_with("scalloped");
    if (name == nullptr || scalloped != (word.view() == "scalloped")) return std::nullopt;
    return ShapeWord{*name, rest->end};
  }
  std::string_view singular = word.view();
  if (singular == "rect" || singular == "rects") return ShapeWord{"rectangle", word.end};
  for (const std::string_view shape : shape_words) {
    const bool plural = singular.size() > shape.size() && singular.starts_with(shape) &&
                        (singular.substr(shape.size()) == "s" || singular.substr(shape.size()) == "es");
    if (singular == shape || plural) return ShapeWord{shape, word.end};
  }
  return std::nullopt;
}

}  // namespace insetbook::measuring
