// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/read.h"

#include <algorithm>

#include "measure/read_problems.h"
#include "measure/reader.h"

namespace insetbook {
namespace {

using measuring::Fault;
using measuring::MeasurementReader;
using measuring::peek;
using measuring::Setting;
using measuring::skip_space;
using measuring::Trouble;
using measuring::word_at;

// A text that is to be one measurement, without the space around it.
struct Whole {
  std::string_view text;
  std::size_t begin = 0;
  std::size_t end = 0;

  tl::unexpected<Problem> refuse(const Trouble& trouble) const {
    return failure(measuring::problem(trouble, text, begin, end));
  }
  tl::unexpected<Problem> refuse(Fault fault, std::string instead = {}) const {
    return refuse(Trouble{fault, begin, end, std::move(instead)});
  }
};

Whole whole_of(std::string_view text) {
  const std::string_view inner = trim(text);
  if (inner.empty()) return {text, 0, 0};
  const auto begin = static_cast<std::size_t>(inner.data() - text.data());
  return {text, begin, begin + inner.size()};
}

// Why nothing could be read at the beginning.
Trouble nothing_read(const Whole& whole) {
  if (whole.begin == whole.end) return {Fault::missing, 0, 0, {}};
  const Character first = peek(whole.text, whole.begin);
  const std::size_t next = skip_space(whole.text, first.end);
  if (is_hyphen(first.code) && measuring::figure_begins(whole.text, next))
    return {Fault::below_zero, first.begin, first.end, {}};
  if (first.code == U'+' && measuring::figure_begins(whole.text, next))
    return {Fault::signed_figure, first.begin, first.end, {}};
  return {Fault::no_number, whole.begin, whole.end, {}};
}

bool is_exponent(std::string_view text, std::size_t at) {
  const Character e = peek(text, at);
  if (e.code != U'e' && e.code != U'E') return false;
  Character next = peek(text, e.end);
  if (is_hyphen(next.code) || next.code == U'+') next = peek(text, next.end);
  return measuring::digit_value(next.code) >= 0;
}

// Why the text does not end where the measurement does.
Trouble not_finished(const Whole& whole, const MeasurementReader::Found& found) {
  const std::size_t at = skip_space(whole.text, found.end);
  const Character c = peek(whole.text, at);
  if (at == found.end && is_exponent(whole.text, at)) return {Fault::exponent, at, whole.end, {}};
  const auto word = word_at(whole.text, at);
  if (found.bare && word.length > 0) return {Fault::unknown_unit, at, std::min(word.end, whole.end), {}};
  const std::size_t next = skip_space(whole.text, c.end);
  if (is_hyphen(c.code) && measuring::figure_begins(whole.text, next)) return {Fault::dash, at, c.end, {}};
  return {Fault::left_over, at, whole.end, {}};
}

// A shape word behind the figures.
std::optional<Trouble> add_shape(const Whole& whole, MeasurementReader::Found& found) {
  std::size_t at = skip_space(whole.text, found.end);
  if (at == found.end && is_hyphen(peek(whole.text, at).code)) at = peek(whole.text, at).end;
  const auto shape = measuring::shape_at(whole.text, at);
  if (!shape || std::holds_alternative<Range>(found.value)) return std::nullopt;
  const auto bad = [&](Fault fault) { return Trouble{fault, at, shape->end, std::string(shape->name)}; };
  Size size;
  if (const auto* length = std::get_if<ReadLength>(&found.value)) {
    size = {length->length, length->length, length->unit, true, Orientation::either, {}};
    if (size.width == Length()) return Trouble{Fault::zero_side, whole.begin, found.end, {}};
  } else {
    size = std::get<Size>(found.value);
  }
  const bool unequal = size.width != size.height;
  if (shape->name == "circle" || shape->name == "scalloped circle") {
    if (unequal) return bad(Fault::two_for_circle);
    size.one_figure = true;
  } else if (shape->name == "square" || shape->name == "rounded square") {
    if (unequal) return bad(Fault::two_for_square);
    size.one_figure = false;
  } else if (size.one_figure &&
             (shape->name == "oval" || shape->name == "ellipse" || shape->name == "rectangle" ||
              shape->name == "rounded rectangle" || shape->name == "scalloped oval")) {
    return bad(Fault::one_for_two);
  }
  size.shape = shape->name;
  found = {size, shape->end, false};
  return std::nullopt;
}

Result<Measurement> read_whole(const Whole& whole, Unit no_unit) {
  // Nothing that is written outside belongs to the measurement.
  const std::string_view text = whole.text.substr(0, whole.end);
  MeasurementReader reader(text, no_unit, Setting::whole);
  auto found = reader.read(whole.begin);
  if (found && !reader.trouble) {
    if (auto trouble = add_shape(whole, *found)) return whole.refuse(*trouble);
    if (skip_space(whole.text, found->end) >= whole.end) return found->value;
  }
  // "3-17/16", "2-3/88": no date is written with two kinds of marks, and the fraction is what is wrong.
  const bool bad_fraction = reader.trouble && (reader.trouble->fault == Fault::improper ||
                                               reader.trouble->fault == Fault::odd_fraction);
  if (const auto fraction = bad_fraction ? std::nullopt : fraction_made_a_date(text.substr(whole.begin)))
    return whole.refuse(Fault::looks_like_date, *fraction);
  if (reader.trouble) return whole.refuse(*reader.trouble);
  return whole.refuse(found ? not_finished(whole, *found) : nothing_read(whole));
}

}  // namespace

Result<Measurement> read_measurement(std::string_view text, Unit no_unit) {
  return read_whole(whole_of(text), no_unit);
}

Result<ReadLength> read_length(std::string_view text, Unit no_unit) {
  const Whole whole = whole_of(text);
  auto read = read_whole(whole, no_unit);
  if (!read) return failure(std::move(read.error()));
  if (const auto* length = std::get_if<ReadLength>(&*read)) return *length;
  return whole.refuse(std::holds_alternative<Size>(*read) ? Fault::size_for_length : Fault::range_for_length);
}

Result<Size> read_size(std::string_view text, Unit no_unit) {
  const Whole whole = whole_of(text);
  auto read = read_whole(whole, no_unit);
  if (!read) return failure(std::move(read.error()));
  if (const auto* size = std::get_if<Size>(&*read)) return *size;
  if (std::holds_alternative<Range>(*read)) return whole.refuse(Fault::range_for_size);
  const auto& length = std::get<ReadLength>(*read);
  if (length.length == Length()) return whole.refuse(Fault::zero_side);
  return Size{length.length, length.length, length.unit, true, Orientation::either, {}};
}

std::optional<Result<ScannedMeasurement>> scan_measurement(std::string_view text, std::size_t begin,
                                                           Unit no_unit) {
  if (begin >= text.size()) return std::nullopt;
  MeasurementReader reader(text, no_unit, Setting::within);
  auto found = reader.read(begin);
  if (reader.trouble) {
    const Trouble& trouble = *reader.trouble;
    // Words and numbers of other kinds: a date, 1e3, 0x10.
    if (trouble.fault == Fault::looks_like_date || trouble.fault == Fault::hexadecimal) return std::nullopt;
    return failure(measuring::problem(trouble, text, begin, std::max(begin, trouble.end)));
  }
  if (!found) return std::nullopt;
  return ScannedMeasurement{{begin, found->end, std::move(found->value)}, found->bare};
}

}  // namespace insetbook
