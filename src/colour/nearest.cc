// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/nearest.h"

#include <algorithm>
#include <limits>

#include "colour/difference.h"

namespace insetbook {

std::vector<NearColour> colours_within(std::uint32_t srgb, std::span<const std::uint32_t> among,
                                       double delta_e) {
  const Lab wanted = to_lab(srgb);
  std::vector<NearColour> near;
  for (std::size_t i = 0; i < among.size(); ++i) {
    const double away = colour_difference(wanted, to_lab(among[i]));
    if (away <= delta_e) near.push_back({i, away});
  }
  std::sort(near.begin(), near.end(), [](const NearColour& a, const NearColour& b) {
    return a.delta_e != b.delta_e ? a.delta_e < b.delta_e : a.place < b.place;
  });
  return near;
}

std::vector<NearColour> nearest_colours(std::uint32_t srgb, std::span<const std::uint32_t> among,
                                        std::size_t limit) {
  std::vector<NearColour> near = colours_within(srgb, among, std::numeric_limits<double>::infinity());
  if (near.size() > limit) near.resize(limit);
  return near;
}

}  // namespace insetbook
