// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/read_problems.h"

#include <string>

#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook::measuring {
namespace {

struct Wording {
  std::string what;
  std::string expected;
};

constexpr std::string_view a_length = "a length such as 2-3/8 in, 2.375 in, 60 mm or 6.5 cm";
constexpr std::string_view a_size = "a size such as 2-7/8 x 4-1/8 in or 2-3/8 in circle";

struct Quotes {
  std::string said;       // all that was written
  std::string part;       // what is wrong in it
  std::string bare_part;  // without quotation marks
  const std::string& instead;
};

std::string first_reading(const std::string& instead) {
  return instead.substr(0, instead.find('\n'));
}
std::string second_reading(const std::string& instead) {
  return instead.substr(instead.find('\n') + 1);
}

Wording figure_wording(Fault fault, const Quotes& q) {
  switch (fault) {
    case Fault::missing:
      return {"there is no length in an empty text", std::string(a_length)};
    case Fault::no_number:
      return {q.part + " is no length", std::string(a_length)};
    case Fault::below_zero:
      return {q.said + " is below zero", "a length of zero or more"};
    case Fault::signed_figure:
      return {q.said + " has a plus sign", "the length without the sign"};
    case Fault::improper:
      return {q.said + " has a whole number and a fraction that is not below one",
              q.instead.empty() ? "a fraction below one" : q.instead + ", or a fraction below one"};
    case Fault::zero_denominator:
      return {q.said + " has a fraction over zero", "a fraction such as 3/8"};
    case Fault::odd_fraction:
      return {q.part + " has a fraction that no ruler has",
              q.instead.empty() ? "a fraction such as 3/8 or 5/16, or a decimal figure"
                                : q.instead + ", if that is what it was"};
    case Fault::long_fraction:
      return {q.said + " has a fraction with too many digits", "a fraction such as 3/8"};
    case Fault::after_decimal:
      return {q.said + " has a fraction after a decimal figure", "either a decimal figure or a fraction"};
    case Fault::two_readings:
      return {q.said + " can be read as " + first_reading(q.instead) + " or as " + second_reading(q.instead),
              first_reading(q.instead) + " or " + second_reading(q.instead) + ", without the comma"};
    case Fault::exponent:
      return {q.said + " is written with an exponent", "the figure written out, such as 0.125 in or 120 mm"};
    case Fault::hexadecimal:
      return {q.said + " is hexadecimal", "a decimal figure; for a size, space around the x: 2 x 3 in"};
    case Fault::looks_like_date:
      return {q.said + " looks like a date",
              q.instead.empty() ? std::string(a_length) : q.instead + " in, if that is what it was"};
    case Fault::three_numbers:
      return {q.part + " has a slash too many", q.instead + " in, if that is what it was"};
    default:
      return {};
  }
}

Wording unit_wording(Fault fault, const Quotes& q) {
  switch (fault) {
    case Fault::unknown_unit:
      return {q.part + " is no unit of length", "in, ft, mm, cm, m, or the marks ' and \""};
    case Fault::mixed_units:
      return {q.said + " mixes units in one length",
              "one unit; only feet and inches go together, as in 1 ft 2 in"};
    case Fault::mixed_sides:
      return {q.said + " mixes inches and metric", "all figures in one of them"};
    case Fault::unit_unsaid:
      return {q.said + " does not say the unit of " + q.part, "a unit after each figure"};
    case Fault::shared_metric:
      return {
          q.part + " in " + q.said + " has no unit of its own: it can be meant in inches or in " + q.instead,
          q.bare_part + " " + q.instead + ", or every figure in inches"};
    case Fault::dash:
      return {q.said + " has a dash that can be read two ways",
              "\"to\" between the ends of a range, such as 2-3/8 to 3 in; a dash in a mixed number, such as "
              "2-3/8"};
    case Fault::too_long:
      return {q.said + " is more than 1 km", "a length of at most 1 km"};
    case Fault::zero_side:
      return {q.said + " has a side of zero", "sides above zero"};
    case Fault::left_over:
      return {q.part + " is left over in " + q.said, "one length, one size or one range"};
    default:
      return {};
  }
}

Wording size_wording(Fault fault, const Quotes& q) {
  switch (fault) {
    case Fault::unfinished:
      return {q.said + " stops before its second figure", "a second figure"};
    case Fault::three_figures:
      return {q.said + " has more than two figures", std::string(a_size)};
    case Fault::one_side:
      return {q.said + " says only one side", "the other side too, such as 2 in wide x 3 in tall"};
    case Fault::same_side:
      return {q.said + " says one side twice", "a width and a height, such as W 2 in, H 3 in"};
    case Fault::tall_or_height:
      return {q.said + " can be read as " + first_reading(q.instead) + " or as " + second_reading(q.instead),
              first_reading(q.instead) + " or " + second_reading(q.instead)};
    case Fault::range_of_sides:
      return {q.said + " has a range for one side", "one size, or a range of lengths such as 2 to 3 in"};
    case Fault::size_for_length:
      return {q.said + " is a size, not one length", std::string(a_length)};
    case Fault::range_for_length:
      return {q.said + " is a range, not one length", std::string(a_length)};
    case Fault::range_for_size:
      return {q.said + " is a range, not a size", std::string(a_size)};
    case Fault::two_for_circle:
      return {q.said + " gives a circle two diameters", "one, such as 2-3/8 in circle"};
    case Fault::two_for_square:
      return {q.said + " gives a square unequal sides", "one figure, such as 6 in square"};
    case Fault::one_for_two:
      return {q.said + " gives one figure for a shape that has two", "two, such as 2 x 3 in " + q.instead};
    default:
      return {};
  }
}

Wording wording(Fault fault, const Quotes& quotes) {
  if (Wording found = figure_wording(fault, quotes); !found.what.empty()) return found;
  if (Wording found = unit_wording(fault, quotes); !found.what.empty()) return found;
  return size_wording(fault, quotes);
}

}  // namespace

Problem problem(const Trouble& trouble, std::string_view text, std::size_t said_begin, std::size_t said_end) {
  const std::string_view part = text.substr(trouble.begin, trouble.end - trouble.begin);
  const Quotes quotes{in_quotes(text.substr(said_begin, said_end - said_begin)), in_quotes(part),
                      std::string(trim(part)), trouble.instead};
  Wording words = wording(trouble.fault, quotes);
  Problem out;
  out.kind = ProblemKind::bad_input;
  out.what = std::move(words.what);
  out.expected = std::move(words.expected);
  out.where.text = std::string(text);
  out.where.at = characters_before(text, trouble.begin);
  out.where.length = characters_before(text.substr(trouble.begin), trouble.end - trouble.begin);
  return out;
}

}  // namespace insetbook::measuring
