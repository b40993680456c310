// SPDX-License-Identifier: GPL-3.0-or-later
//
// The outline of a shape of the trade from its figures (shape.h): each kind's figures and how its curves are
// drawn are written here and at its function in shape_outline.cc. The box of the outline is the shape's size.
// A figure that is wanted and not recorded is a Problem that names it (`missing_figure`); one that cannot be
// with the others ("depth 2 in" of a shape 3 in high) a Problem that says which. A point of a construction
// that lies on no whole nanometre is rounded to the nearest one, and so is drawn with less than 2 nm off.
//
// - circle, oval: four quarters of an ellipse. Square, rectangle; rounded rectangle: its corner radius.
// - polygon: the corners of regular_polygon.h.
// - scalloped edge round a circle, oval, square or rectangle: `scallops` is how wide one is, from notch to
//   notch, `depth` from the notches out to the tops. The size is over all, from top to top; the notches lie
//   on the shape that is a depth smaller all round, as evenly as can be: a whole number of scallops on each
//   side of a rectangle with a notch at each corner, a whole number of fours round an oval with a top at each
//   of its four ends. Each scallop is an arc of a circle through two notches
//   and its top, at most half of it and at least a fiftieth as deep as wide.
// - arch: upright sides under half an ellipse that is `rise` high; without a rise half a circle. One that
//   comes to a point: two arcs of circles that go on straight from the sides, at least half as high as wide.
// - tag: a rectangle whose top corners are cut at 45°, `corner` off each side, or rounded (`radius`); a round
//   hole in the middle of its width, `hole` across, its upper edge `hole down` from the top.
// - banner: a rectangle with a notch, `notch` deep, as wide as the end it is at.
// - heart: a square on its corner with half a circle on each upper side, stretched to its box.
// - any kind after polygon with path data: those, by SVG's own rule (non-zero) or where the figures say so by
//   even-odd, scaled to the size.
// That scallops meet in notches at corners, how an arch is round and the heart is drawn: common practice, no
// source.
#pragma once

#include <string>
#include <vector>

#include "shape/curves.h"
#include "shape/shape.h"

namespace insetbook {

Result<CurvedOutline> outline_of(const Shape& shape);

// Whether outline_of can be asked: the shape has a construction or path data, and no figure is missing.
// Figures that cannot be with each other, and bad path data, are still its Problem.
bool has_outline(const Shape& shape);

// What is mended of the path data of a shape so that it goes round an area, each as a sentence with the place
// in the shape's size (curves.h). Nothing: nothing is, or it cannot be drawn.
std::vector<std::string> mended_in(const Shape& shape);

// What is said of a shape whose `missing_figure` is not empty, wherever that is found out.
Problem figure_missing(const Shape& shape);

}  // namespace insetbook
