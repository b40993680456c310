// SPDX-License-Identifier: GPL-3.0-or-later
//
// Path data in no known unit: read with one that brings it well within reach, then scaled to its box.
#include <algorithm>
#include <cstdlib>

#include "shape/path_data.h"

namespace insetbook {
namespace {

constexpr std::int64_t wanted_reach = std::int64_t{1} << 28;

std::int64_t reach_of(Point point) {
  return std::max(std::abs(point.x), std::abs(point.y));
}

std::int64_t reach_of(const Curve& curve) {
  if (const auto* line = std::get_if<LineTo>(&curve)) return reach_of(line->to);
  if (const auto* cubic = std::get_if<CubicTo>(&curve))
    return std::max({reach_of(cubic->first), reach_of(cubic->second), reach_of(cubic->to)});
  const auto& arc = std::get<ArcTo>(curve);
  return std::max({arc.radius_x, arc.radius_y, reach_of(arc.to)});
}

std::int64_t reach_of(const CurvedOutline& outline) {
  std::int64_t reach = 0;
  for (const Contour& contour : outline.contours) {
    reach = std::max(reach, reach_of(contour.start));
    for (const Curve& curve : contour.curves) reach = std::max(reach, reach_of(curve));
  }
  return reach;
}

}  // namespace

Result<CurvedOutline> path_data_scaled_to(std::string_view text, FillRule rule, std::int64_t width,
                                          std::int64_t height) {
  Result<CurvedOutline> read = failure({});
  for (const double unit : {1e9, 1e6, 1e3, 1.0, 1e-3}) {
    read = read_path_data(text, unit, rule);
    if (!read) continue;
    const std::int64_t reach = reach_of(*read);
    if (reach == 0) break;
    const double better = unit * static_cast<double>(wanted_reach) / static_cast<double>(reach);
    if (auto again = read_path_data(text, better, rule)) read = std::move(again);
    break;
  }
  if (!read) return read;
  return scaled_to(*read, width, height);
}

}  // namespace insetbook
