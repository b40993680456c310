// SPDX-License-Identifier: GPL-3.0-or-later
//
// The basic shapes of a drawing as path data (SVG 2, chapter 10 gives these paths), and outlines under a map.
#pragma once

#include <optional>
#include <string>

#include "importers/svg/drawing.h"
#include "importers/svg/transform.h"
#include "shape/curves.h"

namespace insetbook {

struct ShapePath {
  std::string path;
  std::string word;  // of a basic shape with these figures in user units; blank: its path is all there is
  double width = 0, height = 0, rx = 0, ry = 0;
};

// In user units.
std::string rect_path(double x, double y, double width, double height, double rx, double ry);
std::string ellipse_path(double cx, double cy, double rx, double ry);

// The shape of the trade that it is, where the map keeps it one.
std::optional<PlainShape> plain_shape(const ShapePath& shape, const Transform& map);

// The curves under a map that keeps lengths but for rounding.
CurvedOutline mapped(const CurvedOutline& outline, const Transform& map);

}  // namespace insetbook
