// SPDX-License-Identifier: GPL-3.0-or-later
//
// Which colours of a list are near another, by CIEDE2000 (difference.h). The answers name places in the list,
// nearest first; equally near ones stay in the order of the list.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace insetbook {

struct NearColour {
  std::size_t place;  // in `among`
  double delta_e;
};

// The `limit` nearest.
std::vector<NearColour> nearest_colours(std::uint32_t srgb, std::span<const std::uint32_t> among,
                                        std::size_t limit);

// All that are at most `delta_e` away.
std::vector<NearColour> colours_within(std::uint32_t srgb, std::span<const std::uint32_t> among,
                                       double delta_e);

}  // namespace insetbook
