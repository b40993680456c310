// SPDX-License-Identifier: GPL-3.0-or-later
//
// The smallest things in a written measurement: digits, fraction characters, words, units, the marks between
// figures. Private to this folder. Each function looks at one byte position of a text and says what begins
// there and where it ends; none skips space unless its name says so, and none looks further than a few
// characters past what it finds.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "measure/size.h"
#include "text/utf8.h"

namespace insetbook::measuring {

// The character at `at`, or code 0 past the end.
Character peek(std::string_view text, std::size_t at);
std::size_t skip_space(std::string_view text, std::size_t at);

// 0..9 for ASCII and full-width digits, else -1.
int digit_value(char32_t code);
// A run of digits. `value` stops growing at `most_counted`; the run is read to its end all the same.
inline constexpr std::int64_t most_counted = 10'000'000'000'000;
struct Digits {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::size_t count = 0;
  std::int64_t value = 0;
};
std::optional<Digits> digits_at(std::string_view text, std::size_t at);
// The same for superscript or subscript digits, of one kind.
std::optional<Digits> small_digits_at(std::string_view text, std::size_t at);

struct Fraction {
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
};
// The value of a fraction character: ½, ⅜ …
std::optional<Fraction> vulgar_fraction(char32_t code);
bool is_slash(char32_t code);

// A word of ASCII letters in lower case. `clean` is false when it is longer than any word read here, or goes
// on with something that is a letter too: then it is no word of a measurement.
struct Word {
  char letters[16];
  std::size_t length = 0;
  std::size_t end = 0;
  bool clean = false;
  std::string_view view() const { return clean ? std::string_view(letters, length) : std::string_view(); }
};
Word word_at(std::string_view text, std::size_t at);

enum class UnitName { inch, foot, mm, cm, m };
std::int64_t nanometres(UnitName name);
Unit shown_as(UnitName name);

struct WrittenUnit {
  UnitName name;
  bool mark = false;  // a prime or a quotation mark
  bool full = false;  // written out: "inch", "mm", never "in" or a mark
  std::size_t end = 0;
};
std::optional<WrittenUnit> unit_word_at(std::string_view text, std::size_t at);
std::optional<WrittenUnit> unit_mark_at(std::string_view text, std::size_t at);

// x, ×, *, "by" between the two figures of a size: where it ends.
std::optional<std::size_t> times_at(std::string_view text, std::size_t at);
// "..", "..." or "…": where it ends.
std::optional<std::size_t> dots_at(std::string_view text, std::size_t at);

enum class Side { width, height, across };
struct Label {
  Side side;
  bool loose = false;  // wide, tall, high: may also say which way the whole size stands
  std::size_t end = 0;
};
// A label before its figure ("W", "width:", "⌀", "diam."), with the space and mark after it.
std::optional<Label> label_before_at(std::string_view text, std::size_t at);
// A label after its figure ("W", "(H)", "wide", "in diameter", "across").
std::optional<Label> label_after_at(std::string_view text, std::size_t at);

// A word for a shape ("circle", "rounded rectangles"), in the singular.
struct ShapeWord {
  std::string_view name;
  std::size_t end = 0;
};
std::optional<ShapeWord> shape_at(std::string_view text, std::size_t at);

}  // namespace insetbook::measuring
