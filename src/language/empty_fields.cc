// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/empty_fields.h"

namespace insetbook {

std::string names_of_empty_fields() {
  std::string out;
  const std::size_t count = std::size(empty_fields);
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0) out += i + 1 == count ? " or " : ", ";
    out += empty_fields[i].name;
  }
  return out;
}

}  // namespace insetbook
