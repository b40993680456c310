// SPDX-License-Identifier: GPL-3.0-or-later
//
// Readers of lengths and sizes on any bytes: nothing but an answer or a Problem; what is read is written and
// read back.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

using namespace insetbook;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

void check(std::string_view text, Unit unit) {
  const auto read = read_measurement(text, unit);
  if (!read) {
    require(read.error().where.at.has_value());
    require(*read.error().where.at + read.error().where.length <= characters(text).size());
    return;
  }
  if (const auto* length = std::get_if<ReadLength>(&*read)) {
    require(read_length(write(length->length, length->unit), unit) == *length);
    require(length->length >= Length() && length->length <= longest_length);
  }
  if (const auto* size = std::get_if<Size>(&*read)) {
    const auto again = read_size(write_said(*size), unit);
    require(again && *again == *size);
  }
  if (const auto* range = std::get_if<Range>(&*read))
    require(read_measurement(write(*range), unit) == Measurement(*range));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  for (const Unit unit : {Unit::inch, Unit::mm}) check(text, unit);
  for (std::size_t at = 0; at < text.size();) {
    const auto scanned = scan_measurement(text, at, Unit::inch);
    if (scanned && !*scanned) break;
    if (scanned) require((*scanned)->found.end > at && (*scanned)->found.end <= text.size());
    at = scanned ? (*scanned)->found.end : at + 1;
  }
  (void)fraction_made_a_date(text);
  const std::string folded = fold(text);
  require(valid_utf8(folded) && fold(folded) == folded);
  require(edit_distance(text, folded, 3) <= 4);
  return 0;
}
