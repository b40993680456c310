// SPDX-License-Identifier: GPL-3.0-or-later
//
// An outline as it is given: lines, Bézier curves and arcs of ellipses between whole-nanometre points.
// It comes from a shape's figures (shape_outline.h) or from path data (path_data.h); `flatten` makes the
// rings of outline.h from it.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "shape/outline.h"
#include "text/problem.h"

namespace insetbook {

// Each goes from the end of the one before it to `to`.
struct LineTo {
  Point to;
};
struct CubicTo {
  Point first, second, to;  // the two control points
};
// As in path data (SVG 2, "elliptical arc"): radii that are too small for the distance grow until they reach.
struct ArcTo {
  std::int64_t radius_x = 0, radius_y = 0;  // nm; either 0: a line
  double turned = 0;                        // degrees, clockwise as seen
  bool large = false, clockwise = false;
  Point to;
};
using Curve = std::variant<LineTo, CubicTo, ArcTo>;

struct Contour {
  Point start;
  std::vector<Curve> curves;
  bool closed = true;  // false: drawn open; a line closes it
};

enum class FillRule { even_odd, non_zero };

struct CurvedOutline {
  std::vector<Contour> contours;
  FillRule rule = FillRule::even_odd;
};

// What was mended, each as a sentence with the place ("the outline crosses itself at 12.5, 3 mm: ...").
struct Flattened {
  Outline outline;
  std::vector<std::string> mended;
};

// The rings, no farther than `error` (≥ 1 nm) from the curves. Where contours cross or lie on each other, the
// region is what the fill rule says and its edge alone is kept; crossing points are rounded to the nanometre.
// The error that holds is in the outline: the one asked for, 0 for straight lines that cross nothing, and a
// few nanometres more than asked where something crosses and the error asked for leaves no room for that.
// What the region and its rings cannot differ in: a point farther than the error from all curves is inside
// both or outside both. Parts thinner than twice the error may close up or come apart.
// A contour that was drawn open is closed by a line where its ends lie within 0.1 mm (or a hundredth of the
// longer side of its box) of each other, else a Problem with the place; so is an outline that goes round
// nothing, one with more than four million edges and one that leaves ±2^30 nm.
Result<Flattened> flatten(const CurvedOutline& outline, std::int64_t error);

// The least upright box round the curves, to the nearest nanometre. No curves: all zero.
Box box_of(const CurvedOutline& outline);

// The same curves scaled so that their box is width × height, its top left corner at (0, 0).
Result<CurvedOutline> scaled_to(const CurvedOutline& outline, std::int64_t width, std::int64_t height);

}  // namespace insetbook
