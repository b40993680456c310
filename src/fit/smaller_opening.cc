// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/smaller_opening.h"

#include <cmath>
#include <vector>

namespace insetbook {
namespace {

constexpr double by_at_least = 10'000;  // nm: far more than directions of short edges are wrong by

struct Spot {
  double x, y;
};

// What of a convex ring lies on the inner side of an edge: `inner` is that side's normal, of length 1.
std::vector<Spot> cut_off(const std::vector<Spot>& ring, const OutlineEdge& edge, Spot inner) {
  const auto height = [&](Spot spot) {
    return (spot.x - edge.x0) * inner.x + (spot.y - edge.y0) * inner.y - by_at_least;
  };
  std::vector<Spot> left;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Spot here = ring[i], next = ring[(i + 1) % ring.size()];
    const double from = height(here), to = height(next);
    if (from >= 0) left.push_back(here);
    if ((from >= 0) == (to >= 0)) continue;
    const double part = from / (from - to);
    left.push_back({here.x + part * (next.x - here.x), here.y + part * (next.y - here.y)});
  }
  return left;
}

// Twice the area that a ring goes round, positive where it runs clockwise as seen.
double twice_area(const std::vector<OutlineEdge>& edges) {
  double sum = 0;
  for (const OutlineEdge& edge : edges) sum += edge.x0 * edge.y1 - edge.x1 * edge.y0;
  return sum;
}

}  // namespace

bool some_point_sees_all(const EdgeTree& tree) {
  const std::vector<OutlineEdge>& edges = tree.edges();
  if (edges.empty()) return false;
  const Box& box = tree.box();
  const auto left = static_cast<double>(box.least.x), right = static_cast<double>(box.most.x);
  const auto top = static_cast<double>(box.least.y), bottom = static_cast<double>(box.most.y);
  std::vector<Spot> seeing = {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
  const double way = twice_area(edges) > 0 ? 1 : -1;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const OutlineEdge& edge = edges[i];
    if (i > 0 && edge.begins) return false;
    const double dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0, length = std::hypot(dx, dy);
    seeing = cut_off(seeing, edge, {-dy / length * way, dx / length * way});
    if (seeing.empty()) return false;
  }
  return true;
}

SmallerOpening::SmallerOpening(const Opening& opening, const OutlineGround& ground)
    : ground_(ground), give_or_take_(opening.give_or_take) {
  if (give_or_take_ <= Length()) return;
  Result<OutlineGround> less = OutlineGround::of(opening.shape, give_or_take_);
  if (less) smaller_ = std::move(*less);
  sees_all_ = some_point_sees_all(ground.edges());
}

Verdict SmallerOpening::verdict(const OutlineFamily& family, Sides sides) const {
  if (give_or_take_ <= Length()) return Verdict::fits;
  if (!smaller_ || !family.lies_in(*smaller_, sides, Length())) return Verdict::snug;
  const Length each_side = Length::nm((give_or_take_.nm() + 1) / 2);
  return sees_all_ || family.lies_in(ground_, sides, each_side) ? Verdict::fits : Verdict::snug;
}

}  // namespace insetbook
