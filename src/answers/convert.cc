// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/convert.h"

#include "language/paper_names.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr Length sixteenth = Length::inch_fraction(1, 16);

Length nearest_sixteenth(Length length) {
  return round_down(length + sixteenth / 2, sixteenth);
}

// The nearest marks of a ruler; empty where it lies on them, as a measurement in inches mostly does.
std::string on_ruler(const std::vector<Length>& lengths, std::string_view kind) {
  bool on_marks = true;
  for (const Length length : lengths) on_marks &= round_down(length, sixteenth) == length;
  if (on_marks || lengths.empty()) return {};
  const Length first = nearest_sixteenth(lengths.front());
  if (lengths.size() == 1) return write(first, Unit::inch);
  const Length second = nearest_sixteenth(lengths.back());
  return kind == "range" ? write(Range{first, second, Unit::inch}) : write_size(first, second, Unit::inch);
}

void take(const Measurement& read, Converted& converted) {
  converted.kind = "length";
  converted.in_inches = write(read, Unit::inch);
  converted.in_mm = write(read, Unit::mm);
  if (const auto* length = std::get_if<ReadLength>(&read)) {
    converted.lengths = {length->length};
  } else if (const auto* size = std::get_if<Size>(&read)) {
    converted.kind = "size";
    converted.shape = size->shape;
    converted.lengths = {size->width};
    if (!size->one_figure) converted.lengths.push_back(size->height);
  } else {
    const Range& range = std::get<Range>(read);
    converted.kind = "range";
    converted.lengths = {range.low, range.high};
  }
  converted.on_ruler = on_ruler(converted.lengths, converted.kind);
}

}  // namespace

Result<Converted> convert(std::string_view text, Unit no_unit) {
  Converted converted;
  converted.text = std::string(text);
  if (const PaperName* paper = paper_named(fold(text))) {
    take(Size{.width = paper->width, .height = paper->height, .unit = paper->unit}, converted);
    converted.means = std::string(paper->means);
    return converted;
  }
  const Result<Measurement> read = read_measurement(text, no_unit);
  if (!read) return failure(read.error());
  take(*read, converted);
  return converted;
}

std::string in_centimetres(const Converted& converted) {
  const auto cm = [](Length length) { return write_figure(length / 10, Unit::mm); };
  if (converted.lengths.size() == 1) return cm(converted.lengths.front()) + " cm";
  return cm(converted.lengths.front()) + (converted.kind == "range" ? " to " : " x ") +
         cm(converted.lengths.back()) + " cm";
}

}  // namespace insetbook
