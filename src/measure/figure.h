// SPDX-License-Identifier: GPL-3.0-or-later
//
// One figure without its unit: `2`, `2.375`, `6,5`, `2-3/8`, `2 ⅜`, "two and three eighths", "a quarter",
// "an" (inch). Private to this folder. A figure is held exactly: a whole number, a fraction beside it, or the
// digits behind a decimal point as they stand in the text; only `figure_nm` rounds, once, to the nearest
// nanometre.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "measure/marks.h"

namespace insetbook::measuring {

// What is wrong with a written measurement, and which bytes are meant. read_problems.h words it.
enum class Fault {
  missing,           // there is no text
  no_number,         // a word that is no number
  below_zero,        // a minus sign
  signed_figure,     // a plus sign
  improper,          // 2-9/8
  zero_denominator,  // 3/0
  odd_fraction,      // 3/88: a part that nobody measures in
  long_fraction,     // a fraction with too many digits
  after_decimal,     // 2.5-1/2
  two_readings,      // 2,500
  exponent,          // 1e3
  hexadecimal,       // 0x10
  looks_like_date,   // 3/8/2026
  three_numbers,     // 2/1/8
  unknown_unit,      // 2 furlongs
  mixed_units,       // 2 in 3 cm
  mixed_sides,       // 2 in x 3 cm
  unit_unsaid,       // 1 ft x 6
  shared_metric,     // 2-3/8 x 60 mm
  dash,              // 2-3/8-3
  unfinished,        // 2 x
  three_figures,     // 2 x 3 x 4
  one_side,          // 2 in wide
  same_side,         // W 2 W 3
  tall_or_height,    // 6 x 4 in tall
  range_of_sides,    // 2 to 3 x 4
  zero_side,         // 0 x 3
  too_long,          // over 1 km
  left_over,         // 2 in rubbish
  size_for_length,   // a size where one length is wanted
  range_for_length,
  range_for_size,
  two_for_circle,  // 2 x 3 in circle
  two_for_square,  // 2 x 3 in square
  one_for_two,     // 2 in rectangle
};
struct Trouble {
  Fault fault;
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string instead;  // what would be right, where it can be worked out
};

struct Figure {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::int64_t whole = 0;  // most_counted: too large to be a length
  Fraction fraction;
  bool has_fraction = false;
  std::size_t tail_begin = 0;  // the digits behind the decimal mark, bytes of the text
  std::size_t tail_end = 0;
  bool in_words = false;
  bool needs_unit = false;    // "a quarter", "half": a length only with its unit, in a longer text
  bool unit_decides = false;  // "an" of "an inch", "third": without a unit no length at all
  bool has_tail() const { return tail_end > tail_begin; }
  bool plain() const { return !has_fraction && !has_tail(); }
};

class FigureReader {
 public:
  explicit FigureReader(std::string_view text) : text_(text) {}

  // The longest figure at `at`. None: nothing begins there, or `trouble` says what is wrong with it.
  // join_and: "2 and 3/8" is one figure (not where the "and" may belong to "between … and").
  std::optional<Figure> read(std::size_t at, bool join_and);
  // " and a half" at `at`, with the space before it: added to `whole`. Keeps `figure` as it is where there is
  // none.
  bool add_and_fraction(Figure& figure, std::size_t at);

  std::optional<Trouble> trouble;

 private:
  struct Part {
    Fraction fraction;
    std::size_t end = 0;
    bool needs_unit = false;
    bool rank = false;  // "third": nothing but a rank when no unit follows
  };
  std::optional<Figure> in_digits(std::size_t at, bool join_and);
  std::optional<Figure> in_words(std::size_t at, bool join_and);
  bool read_decimals(Figure& figure, const Digits& first);
  bool read_point(Figure& figure, const Digits& first);
  bool read_comma(Figure& figure, const Digits& first);
  void read_spoken_decimals(Figure& figure);
  bool mix(Figure& figure, bool join_and);
  bool add(Figure& figure, const Part& part);
  bool read_parts(Figure& figure);
  std::optional<Part> fraction_at(std::size_t at);
  std::optional<Part> slashed(const Digits& numerator);
  std::optional<Part> spoken_fraction(std::size_t at);
  std::optional<Part> beside(std::size_t at);
  std::optional<std::size_t> and_at(std::size_t at) const;
  std::nullopt_t refuse_three(const Digits& first, const Digits& second, const Digits& third);
  std::nullopt_t fail(Fault fault, std::size_t begin, std::size_t end, std::string instead = {});

  std::string_view text_;
};

// Whether a figure may begin at `at`, without reading it.
bool figure_begins(std::string_view text, std::size_t at);

// The figure times `unit` nanometres, rounded to the nearest (half away from zero); none above 1 km.
std::optional<std::int64_t> figure_nm(std::string_view text, const Figure& figure, std::int64_t unit);

// A number word or several ("two", "twenty-one", "a hundred and five"), and where they end.
struct Cardinal {
  std::int64_t value = 0;
  std::size_t end = 0;
};
std::optional<Cardinal> cardinal_at(std::string_view text, std::size_t at);

}  // namespace insetbook::measuring
