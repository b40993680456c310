// SPDX-License-Identifier: GPL-3.0-or-later
//
// Shapes for tests, in nanometres or in 64ths of an inch, and panels as one line of text.
#pragma once

#include <string>
#include <vector>

#include "fit/fit.h"

namespace insetbook::testing_shapes {

inline Length in64(std::int64_t n) {
  return Length::inch_fraction(n, 64);
}

inline Shape plain(ShapeKind kind, Length width, Length height) {
  Shape shape;
  shape.kind = kind;
  shape.width = width;
  shape.height = height;
  return shape;
}
inline Shape circle(Length width) {
  return plain(ShapeKind::circle, width, width);
}
inline Shape square(Length width) {
  return plain(ShapeKind::square, width, width);
}
inline Shape rectangle(Length width, Length height) {
  return plain(ShapeKind::rectangle, width, height);
}
inline Shape oval(Length width, Length height) {
  return plain(ShapeKind::oval, width, height);
}
inline Shape rounded(Length width, Length height, Length radius) {
  Shape shape = plain(ShapeKind::rounded_rectangle, width, height);
  shape.corner_radius = radius;
  return shape;
}
inline Shape polygon(int sides, Length width, Length height, bool flat_on_top) {
  Shape shape = plain(ShapeKind::polygon, width, height);
  shape.sides = sides;
  shape.flat_on_top = flat_on_top;
  return shape;
}

// "largest rectangle 200 x 264, fits": sides in 64ths of an inch.
inline std::string line(const Panel& panel) {
  const std::int64_t mark = in64(1).nm();
  return std::string(panel_kind_word(panel.kind)) + " " + std::string(shape_word(panel.shape.kind)) + " " +
         std::to_string(panel.shape.width.nm() / mark) + " x " +
         std::to_string(panel.shape.height.nm() / mark) + ", " + std::string(verdict_word(panel.verdict));
}

inline std::vector<std::string> lines(const Result<std::vector<Panel>>& panels) {
  if (!panels) return {"problem: " + panels.error().what + "; expected: " + panels.error().expected};
  std::vector<std::string> result;
  for (const Panel& panel : *panels) result.push_back(line(panel));
  return result;
}

}  // namespace insetbook::testing_shapes
