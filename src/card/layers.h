// SPDX-License-Identifier: GPL-3.0-or-later
//
// A stack of mats and panels with an even border each: from the largest inwards, or from the smallest
// outwards. The border is what shows on each side, so each step is twice that.
#pragma once

#include <vector>

#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

struct LayerSize {
  Length width, height;
  Length border;  // what it shows of itself around the next smaller one; zero for the smallest
  bool operator==(const LayerSize&) const = default;
};

// Largest first, the given one among them: `count` layers on it (inwards) or around it (outwards). The
// borders are taken in turn from the outside in, the last one for all that follow. A Problem where nothing is
// left.
Result<std::vector<LayerSize>> layers_inwards(Length width, Length height, const std::vector<Length>& borders,
                                              int count, Unit unit);
Result<std::vector<LayerSize>> layers_outwards(Length width, Length height,
                                               const std::vector<Length>& borders, int count);

}  // namespace insetbook
