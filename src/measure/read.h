// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads lengths, sizes and ranges every way people write them: `2-3/8`, `2 3/8`, `2⅜"`, `2.375 in`, `60mm`,
// `6,5 cm`, `1 ft 2 in`, "two and three eighths", "a quarter inch", "an inch and a half", `2-7/8 x 4-1/8 in`,
// `3 by 4`, `W 2 H 3`, `2 in wide 3 in tall`, `6 in square`, `2-3/8 in circle`, `2 in across`, `2..3 in`,
// `2 to 3 in`, "between 2 and 3 in", `5-6 in`. A shared unit may stand at the end. No unit: the unit given;
// but where that is metric, a fraction in figures other than a half (`2-3/8`) is of an inch: no metric
// ruler has eighths. The unit of what is read says so; a size with one such side and one that may be metric
// is refused, naming both. Refused too, with the place and what would be accepted: negative lengths, an
// improper fraction after a whole number (`2-9/8`), a fraction in parts that nobody measures in (`2-3/88`:
// what was probably meant is named), mixed units in one length (`2 in 3 cm`; feet and inches go together),
// exponents, hexadecimal, `2,500 mm` (both readings are named), lengths over 1 km, sizes of zero, words that
// are no number. Places are counted in characters from 0. Reading never throws and takes time linear in the
// text.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

// The whole text is one length, size or range (spaces around it aside).
// A shape word may stand behind it: a circle and a square have one figure, an oval and a rectangle two.
// read_size takes one length alone too ("2-3/8 in"): one_figure is set. A size labelled "6 x 4 in tall" is
// refused, naming both readings. The ends of a range are put in order. A zero length is a length; a size of
// zero is refused.
Result<Measurement> read_measurement(std::string_view text, Unit no_unit);
Result<ReadLength> read_length(std::string_view text, Unit no_unit);
Result<Size> read_size(std::string_view text, Unit no_unit);

// A measurement inside a longer text: where it begins and ends, in bytes, half-open.
struct FoundMeasurement {
  std::size_t begin = 0;
  std::size_t end = 0;
  Measurement value;
};

// The longest measurement that begins exactly at byte `begin` of `text` (no space is skipped, and `begin` is
// taken to be the beginning of a word). Nothing begins there: an empty optional. Something begins there that
// is surely meant as a length and is none (`2-9/8`, `2 in 3 cm`, `2,500 mm`): the Problem. What is left for
// the caller:
//   - words before, and a shape word behind ("2-3/8 in circle" gives 2-3/8 in; read_size takes it whole);
//   - a minus sign before, "about", "±", a lone "wide" or "tall" ("2 in wide strip" gives 2 in);
//   - "6 x 4 in tall", where tall may be said of the 4 or of the card: the size is found without the word;
//   - dates, ranks, words with a number in them ("2026-11-25", "8-Mar", "2nd", "3D", "1e3"): nothing there.
// "a quarter inch" and "half an inch" are found from their first word; "a circle", "half fold", "third
// largest" are not. "two quarter inch strips" are two strips, "three quarter inch" is 3/4 in: only a fraction
// in lowest terms is one. A bare number without a unit ("2023", "two", "2019 to 2021") is found too; whether
// it is a length is for the caller to say, by `bare`. "12x 2-7/8 x 4-1/8 in" and "2x circle": the count is
// found bare, with its x.
struct ScannedMeasurement {
  FoundMeasurement found;
  bool bare = false;  // whole numbers without unit, `x` or label: may be a count, a year or a rank
};
std::optional<Result<ScannedMeasurement>> scan_measurement(std::string_view text, std::size_t begin,
                                                           Unit no_unit);

// A spreadsheet's date that was probably typed as a fraction ("8-Mar", "03/08/2026", "2026-03-08"): the
// fraction it probably was ("3/8"), or empty when the text is no date. 4-tables: importers refuse the cell
// and name this.
std::optional<std::string> fraction_made_a_date(std::string_view text);

}  // namespace insetbook
