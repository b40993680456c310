// SPDX-License-Identifier: GPL-3.0-or-later
//
// The seasons as three whole months each (common practice, no source): spring is March to May in the north
// and September to November in the south. A winter of the north, or a summer of the south, belongs to the
// year it begins in.
#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace insetbook {

// The first month of a season: "spring", "summer", "autumn", "fall", "winter".
inline std::optional<std::chrono::month> season_begins(std::string_view word, bool southern) {
  const auto begins = [&](unsigned north, unsigned south) {
    return std::chrono::month(southern ? south : north);
  };
  if (word == "spring") return begins(3, 9);
  if (word == "summer") return begins(6, 12);
  if (word == "autumn" || word == "fall") return begins(9, 3);
  if (word == "winter") return begins(12, 6);
  return std::nullopt;
}

}  // namespace insetbook
