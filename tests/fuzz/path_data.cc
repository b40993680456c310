// SPDX-License-Identifier: GPL-3.0-or-later
//
// Any text as path data: what is read, written and read again is the same.
#include "shape/path_data.h"

#include <cstdlib>

#include "shape/write_path_data.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace insetbook;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto read = read_path_data(text, 1e6, FillRule::even_odd);
  if (!read) {
    if (!read.error().where.at || *read.error().where.at > size) std::abort();
    return 0;
  }
  const std::string written = write_path_data(*read);
  if (const auto again = read_path_data(written, 1e6, FillRule::even_odd))
    if (write_path_data(*again) != written) std::abort();
  return 0;
}
