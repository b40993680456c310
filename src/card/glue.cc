// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/glue.h"

#include <algorithm>

namespace insetbook {
std::vector<Rect> glued_parts(const GlueSaid& said, Length width, Length height) {
  switch (said.where) {
    case GlueSaid::Where::none:
      return {};
    case GlueSaid::Where::strips:
      break;
    default:
      return {{Length(), Length(), width, height}};
  }
  std::vector<Rect> parts;
  for (const GlueStrip& strip : said.strips) {
    const Length across = std::min(strip.width, width), down = std::min(strip.width, height);
    switch (strip.side) {
      case left_edge:
        parts.push_back({Length(), Length(), across, height});
        break;
      case right_edge:
        parts.push_back({width - across, Length(), across, height});
        break;
      case top_edge:
        parts.push_back({Length(), Length(), width, down});
        break;
      case bottom_edge:
        parts.push_back({Length(), height - down, width, down});
        break;
    }
  }
  return parts;
}

}  // namespace insetbook
