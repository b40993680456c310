// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where a drawing's figures lie on paper: affine maps (SVG 2, chapter 8) and the lengths and numbers of
// attributes. Figures are in user units until the outermost map, which is to nanometres.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook {

struct Vector2 {
  double x = 0, y = 0;
};

// x' = a·x + c·y + e, y' = b·x + d·y + f
struct Transform {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
  Vector2 operator()(Vector2 point) const {
    return {a * point.x + c * point.y + e, b * point.x + d * point.y + f};
  }
  double determinant() const { return a * d - b * c; }
};
// The inner one first.
Transform operator*(const Transform& outer, const Transform& inner);

// `matrix`, `translate`, `scale`, `rotate`, `skewX`, `skewY`, in a row; blank is no map. A Problem quotes the
// attribute.
Result<Transform> read_transform(std::string_view text);

// A plain number list ("0 0 210 297", commas or spaces). Empty optional: something else stands there.
std::optional<std::vector<double>> read_numbers(std::string_view text);

// A length with its unit: in nanometres where the unit is one of paper (mm, cm, in, pt, pc, Q; px is 1/96
// in), else (no unit) in user units.
struct DrawnLength {
  double value = 0;
  bool is_absolute = false;  // value is in nm
  bool is_pixels = false;    // it was written in px, which says little of paper
};
// Per cent and units of type (em, ex) are a Problem.
Result<DrawnLength> read_drawn_length(std::string_view text);

// An ellipse with radii `rx`, `ry` turned by `turned` degrees, under a map: the radii and angle that it has
// then.
struct MappedEllipse {
  double rx = 0, ry = 0, turned = 0;
};
MappedEllipse map_ellipse(const Transform& map, double rx, double ry, double turned);

}  // namespace insetbook
