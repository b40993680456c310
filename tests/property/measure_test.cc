// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of reading and writing measurements; exact rationals (GMP) as the slow twin of the arithmetic.
#include <gmpxx.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::int64_t longest = 1'000'000'000'000;

// Ruler marks, thirds and the like, their neighbours one nanometre away, and lengths of every magnitude.
Length any_length() {
  const int way = *rc::gen::inRange(0, 5);
  std::int64_t nm = 0;
  if (way <= 1) {
    const auto denominator = *rc::gen::inRange<std::int64_t>(1, 65);
    nm = Length::inch_fraction(*rc::gen::inRange<std::int64_t>(0, 12 * denominator), denominator).nm();
    nm += *rc::gen::element<std::int64_t>(0, 0, -1, 1);
  } else {
    std::int64_t most = 10;
    for (int digits = *rc::gen::inRange(0, 12); digits > 0; --digits) most *= 10;
    nm = *rc::gen::inRange<std::int64_t>(0, std::min(most, longest + 1));
  }
  return Length::nm(std::clamp<std::int64_t>(nm, 0, longest));
}

Unit any_unit() {
  return *rc::gen::element(Unit::inch, Unit::mm);
}

RC_GTEST_PROP(Measure, ALengthReadsBackAsItWasWritten, ()) {
  const Length length = any_length();
  const Unit unit = any_unit(), other = any_unit();
  const auto read = read_length(write(length, unit), other);
  RC_ASSERT(read.has_value());
  RC_ASSERT(*read == (ReadLength{length, unit}));
  const auto figure = read_length(write_figure(length, unit), unit);
  RC_ASSERT(figure.has_value());
  RC_ASSERT(figure->length == length);
}

RC_GTEST_PROP(Measure, ARangeReadsBackAsItWasWritten, ()) {
  const Length a = any_length(), b = any_length();
  const Range range{std::min(a, b), std::max(a, b), any_unit()};
  const auto read = read_measurement(write(range), any_unit());
  RC_ASSERT(read.has_value());
  RC_ASSERT(*read == Measurement(range));
}

RC_GTEST_PROP(Measure, ASizeReadsBackAsItWasWritten, ()) {
  const Length a = std::max(any_length(), Length::nm(1)), b = std::max(any_length(), Length::nm(1));
  const Unit unit = any_unit();
  Size size{a,
            b,
            unit,
            false,
            *rc::gen::element(Orientation::either, Orientation::said),
            *rc::gen::element<std::string>("", "oval", "rounded rectangle", "heart")};
  switch (*rc::gen::inRange(0, 4)) {
    case 0:
      size = {a, a, unit, true, Orientation::either, *rc::gen::element<std::string>("", "circle")};
      break;
    case 1:
      size = {a, a, unit, false, Orientation::either, "square"};
      break;
    default:
      break;
  }
  const auto read = read_size(write_said(size), any_unit());
  RC_ASSERT(read.has_value());
  RC_ASSERT(*read == size);
  const auto figures = read_size(write(size), any_unit());
  RC_ASSERT(figures.has_value());
  RC_ASSERT(figures->width == size.width && figures->height == size.height);
}

RC_GTEST_PROP(Measure, AtMostIsAMarkAndTheNextIsAbove, ()) {
  const Length length = any_length(), mark = *rc::gen::element(Length::inch_fraction(1, 16), Length::mm(1));
  const Unit unit = mark == Length::mm(1) ? Unit::mm : Unit::inch;
  const auto read = read_length(write_at_most(length, mark, unit), unit);
  RC_ASSERT(read.has_value());
  RC_ASSERT(read->length <= length && read->length + mark > length && read->length.nm() % mark.nm() == 0);
}

// --- against exact rationals ---

std::int64_t nearest(const mpq_class& nm) {
  const mpq_class shifted = nm + mpq_class(1, 2);
  const mpz_class floor = shifted.get_num() / shifted.get_den();
  return floor.get_si();
}

std::string digits(int least, int most) {
  std::string out;
  for (int n = *rc::gen::inRange(least, most + 1); n > 0; --n) out += *rc::gen::inRange<char>('0', '9' + 1);
  return out;
}

struct NamedUnit {
  const char* name;
  long nm;
};
NamedUnit any_named_unit() {
  return *rc::gen::element(NamedUnit{"in", 25'400'000}, NamedUnit{"ft", 304'800'000},
                           NamedUnit{"mm", 1'000'000}, NamedUnit{"cm", 10'000'000},
                           NamedUnit{"m", 1'000'000'000});
}

RC_GTEST_PROP(Measure, DecimalsAreRoundedAsRationalsAre, ()) {
  std::string whole = digits(1, 3), part = digits(1, 40);
  const NamedUnit unit = any_named_unit();
  // Often so near to half a nanometre that only the last digit decides.
  if (*rc::gen::inRange(0, 2) == 0 && unit.nm == 1'000'000) {
    part.resize(6, '0');
    part += *rc::gen::element<std::string>("5", "49999999999999999999999999", "50000000000000000000000001");
  }
  mpz_class scale;
  mpz_ui_pow_ui(scale.get_mpz_t(), 10, part.size());
  mpq_class value(mpz_class(whole + part, 10), scale);
  value.canonicalize();
  const std::string text = whole + "." + part + " " + unit.name;
  const auto read = read_length(text, Unit::inch);
  const mpq_class nm = value * unit.nm;
  if (nm > longest) {
    RC_ASSERT(!read.has_value() || nearest(nm) <= longest);
    return;
  }
  RC_ASSERT(read.has_value());
  RC_ASSERT(read->length.nm() == nearest(nm));
}

RC_GTEST_PROP(Measure, MixedFractionsAreRoundedAsRationalsAre, ()) {
  const NamedUnit unit = any_named_unit();
  const long whole = *rc::gen::inRange(0L, 900L),
             denominator =
                 *rc::gen::element(1L, 2L, 3L, 4L, 5L, 6L, 7L, 8L, 9L, 10L, 11L, 12L, 13L, 15L, 16L, 18L, 20L,
                                   25L, 32L, 50L, 64L, 81L, 96L, 100L, 125L, 126L, 128L, 1000L);
  const long numerator = *rc::gen::inRange(0L, denominator);
  const std::string join = *rc::gen::element<std::string>("-", " ", " - ", " and ", "\u2013");
  const std::string text = std::to_string(whole) + join + std::to_string(numerator) + "/" +
                           std::to_string(denominator) + " " + unit.name;
  const auto read = read_length(text, Unit::inch);
  RC_ASSERT(read.has_value());
  mpq_class value(numerator, denominator);
  value.canonicalize();
  RC_ASSERT(read->length.nm() == nearest((value + whole) * unit.nm));
}

// --- sentences ---

std::string any_sentence() {
  static const std::vector<std::string> pieces{
      "2",      "3/8",      "2-3/8",  "½",       " ",     " ",     " ",       "in",      "mm",     "x",
      "by",     "to",       "..",     "-",       "wide",  "tall",  "W",       "H",       "circle", "square",
      "a",      "an",       "inch",   "half",    "and",   "three", "eighths", "quarter", "of",     "between",
      "from",   "\"",       "'",      "ft",      ",",     ".",     "0",       "12,5",    "2,500",  "sage",
      "across", "diameter", "thirty", "seconds", "third", "⅜",     "×",       "hundred", "\xFF",   "\u2033",
      "\u2013", "²",        "⅟",      "1e3",     "2nd",   "8-Mar", ":",       "(",       ")",      "&"};
  std::string out;
  for (int n = *rc::gen::inRange(1, 14); n > 0; --n) {
    out += *rc::gen::elementOf(pieces);
    if (*rc::gen::inRange(0, 3) > 0) out += ' ';
  }
  return out;
}

RC_GTEST_PROP(Measure, WhatAScanFindsReadsAloneAsTheSame, ()) {
  const std::string text = any_sentence();
  const Unit unit = any_unit();
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto scanned = scan_measurement(text, at, unit);
    if (!scanned || !*scanned) continue;
    const FoundMeasurement& found = (*scanned)->found;
    RC_ASSERT(found.begin == at && found.end > at && found.end <= text.size());
    std::string alone = text.substr(at, found.end - at);
    // The count of "12x 2 x 3" is found with its x.
    if ((*scanned)->bare && !alone.ends_with(' ') && std::holds_alternative<ReadLength>(found.value))
      while (alone.ends_with('x') || alone.ends_with("×") || alone.ends_with("by"))
        alone.resize(alone.size() - (alone.ends_with('x') ? 1 : 2));
    const auto read = read_measurement(alone, unit);
    RC_ASSERT(read.has_value());
    RC_ASSERT(*read == found.value);
  }
}

RC_GTEST_PROP(Measure, AProblemSaysWhereInTheText, ()) {
  const std::string text = any_sentence();
  for (const Unit unit : {Unit::inch, Unit::mm}) {
    const auto read = read_measurement(text, unit);
    if (read) continue;
    const Problem& problem = read.error();
    RC_ASSERT(problem.where.at.has_value());
    RC_ASSERT(*problem.where.at + problem.where.length <= characters(text).size());
    RC_ASSERT(problem.where.text == text);
    RC_ASSERT(!problem.what.empty() && !problem.expected.empty());
    RC_ASSERT(!problem.what.ends_with('.'));
  }
}

RC_GTEST_PROP(Measure, AnyBytesAreReadOrRefused, (const std::string& bytes)) {
  const auto measurement = read_measurement(bytes, Unit::inch);
  const auto length = read_length(bytes, Unit::inch);
  const auto size = read_size(bytes, Unit::inch);
  if (length) RC_ASSERT(measurement == Measurement(*length));
  if (!measurement) RC_ASSERT(!length && !size);
}

}  // namespace
}  // namespace insetbook
