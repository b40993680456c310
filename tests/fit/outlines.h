// SPDX-License-Identifier: GPL-3.0-or-later
//
// Outlines for tests, made by hand, in nanometres.
#pragma once

#include <cmath>
#include <initializer_list>
#include <numbers>
#include <vector>

#include "fit/edge_tree.h"
#include "fit/sides.h"

namespace insetbook::testing_outlines {

inline Ring ring(std::initializer_list<Point> points) {
  return Ring{points};
}
inline Ring box_ring(std::int64_t left, std::int64_t top, std::int64_t right, std::int64_t bottom) {
  return ring({{left, top}, {right, top}, {right, bottom}, {left, bottom}});
}
inline Outline one(Ring points) {
  return Outline{{std::move(points)}, 0};
}

// Straight edges between points on an ellipse; none is farther than the error from it.
inline Outline ellipse(std::int64_t width, std::int64_t height, int edges) {
  Ring points;
  for (int i = 0; i < edges; ++i) {
    const double angle = 2 * std::numbers::pi * i / edges;
    const auto at = [&](std::int64_t size, double part) {
      return std::llround(static_cast<double>(size) / 2 * (1 + part));
    };
    points.points.push_back({at(width, std::cos(angle)), at(height, std::sin(angle))});
  }
  const double most = static_cast<double>(std::max(width, height)) / 2;
  const double sagitta = most * (1 - std::cos(std::numbers::pi / edges));
  return Outline{{points}, static_cast<std::int64_t>(sagitta) + 2};
}

inline Outline changed(const Outline& outline, const auto& change) {
  Outline result = outline;
  for (Ring& points : result.rings) {
    for (Point& point : points.points) point = change(point);
  }
  return result;
}

}  // namespace insetbook::testing_outlines
