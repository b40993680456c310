// SPDX-License-Identifier: GPL-3.0-or-later
//
// Path data on any bytes, made straight: rings that are well formed and cross nothing, within ±2^30, or a
// Problem. The first byte says the fill rule, how fine, and whether it is scaled to a box first.
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "shape/curves.h"
#include "shape/edges.h"
#include "shape/path_data.h"

using namespace insetbook;

namespace {

constexpr std::size_t most_edges = 3000;  // for what takes the square of them

void require(bool holds) {
  if (!holds) std::abort();
}

void check_rings(const Outline& outline) {
  std::vector<RingEdge> edges;
  require(!outline.rings.empty() && outline.error >= 0);
  for (const Ring& ring : outline.rings) {
    require(ring.points.size() >= 3);
    for (std::size_t i = 0; i < ring.points.size(); ++i) {
      const RingEdge edge{ring.points[i], ring.points[(i + 1) % ring.points.size()]};
      require(edge.from != edge.to);
      require(std::max(std::abs(edge.from.x), std::abs(edge.from.y)) <= std::int64_t{1} << 30);
      edges.push_back(edge);
    }
  }
  if (edges.size() > most_edges) return;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    for (std::size_t j = i + 1; j < edges.size(); ++j) require(!meeting_of(edges[i], edges[j]).crossing);
  }
}

void check(const CurvedOutline& curves, std::int64_t error) {
  const auto flat = flatten(curves, error);
  if (!flat) {
    require(!flat.error().what.empty() && !flat.error().expected.empty());
    return;
  }
  check_rings(flat->outline);
  const auto again = flatten(curves, error);
  require(again && again->outline == flat->outline && again->mended == flat->mended);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  const FillRule rule = (data[0] & 1) == 0 ? FillRule::even_odd : FillRule::non_zero;
  const std::int64_t error = (data[0] & 2) == 0 ? 1000 : (data[0] & 4) == 0 && size < 80 ? 1 : 100'000;
  const auto read = (data[0] & 8) == 0 ? read_path_data(text, 1e6, rule)
                                       : path_data_scaled_to(text, rule, 60'000'000, 90'000'000);
  if (read) check(*read, error);
  return 0;
}
