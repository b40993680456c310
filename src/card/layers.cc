// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/layers.h"

#include <algorithm>

#include "measure/write.h"

namespace insetbook {
namespace {

Length border_number(const std::vector<Length>& borders, std::size_t i) {
  return borders[std::min(i, borders.size() - 1)];
}

}  // namespace

Result<std::vector<LayerSize>> layers_inwards(Length width, Length height, const std::vector<Length>& borders,
                                              int count, Unit unit) {
  std::vector<LayerSize> layers;
  for (int i = 0; i < count; ++i) {
    const Length border = border_number(borders, static_cast<std::size_t>(i));
    layers.push_back({width, height, border});
    width -= border * 2;
    height -= border * 2;
    if (width > Length() && height > Length()) continue;
    return failure(Problem{.what = "nothing is left of " +
                                   write_size(layers.front().width, layers.front().height, unit) + " after " +
                                   std::to_string(i + 1) + (i == 0 ? " layer" : " layers"),
                           .where = {},
                           .expected = "fewer layers or a narrower border",
                           .candidates = {}});
  }
  layers.push_back({width, height, Length()});
  return layers;
}

Result<std::vector<LayerSize>> layers_outwards(Length width, Length height,
                                               const std::vector<Length>& borders, int count) {
  std::vector<LayerSize> layers{{width, height, Length()}};
  for (int i = count; i-- > 0;) {
    const Length border = border_number(borders, static_cast<std::size_t>(i));
    width += border * 2;
    height += border * 2;
    layers.insert(layers.begin(), {width, height, border});
  }
  if (width > longest_length || height > longest_length) {
    return failure(Problem{.what = "the outermost would be longer than 1 km",
                           .where = {},
                           .expected = "fewer layers or a narrower border",
                           .candidates = {}});
  }
  return layers;
}

}  // namespace insetbook
