// SPDX-License-Identifier: GPL-3.0-or-later
//
// How units and lengths that may be missing stand in the tables: 'in', 'mm' or '' and whole nanometres or
// null.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "measure/size.h"

namespace insetbook {

inline std::string_view unit_word(Unit unit) {
  return unit == Unit::mm ? "mm" : "in";
}
inline Unit unit_of(std::string_view word) {
  return word == "mm" ? Unit::mm : Unit::inch;
}

inline std::optional<std::int64_t> nm_of(std::optional<Length> length) {
  return length ? std::optional<std::int64_t>(length->nm()) : std::nullopt;
}
inline std::optional<Length> maybe_length(std::optional<std::int64_t> nm) {
  return nm ? std::optional<Length>(Length::nm(*nm)) : std::nullopt;
}

}  // namespace insetbook
