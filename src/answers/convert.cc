// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/convert.h"

#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
Result<Converted> convert(std::string_view text, Unit no_unit) {
  const Result<Measurement> read = read_measurement(text, no_unit);
  if (!read) return failure(read.error());
  Converted converted{.text = std::string(text),
                      .kind = "length",
                      .shape = {},
                      .lengths = {},
                      .in_inches = write(*read, Unit::inch),
                      .in_mm = write(*read, Unit::mm)};
  if (const auto* length = std::get_if<ReadLength>(&*read)) {
    converted.lengths = {length->length};
  } else if (const auto* size = std::get_if<Size>(&*read)) {
    converted.kind = "size";
    converted.shape = size->shape;
    converted.lengths = {size->width};
    if (!size->one_figure) converted.lengths.push_back(size->height);
  } else {
    const Range& range = std::get<Range>(*read);
    converted.kind = "range";
    converted.lengths = {range.low, range.high};
  }
  return converted;
}

}  // namespace insetbook
