// SPDX-License-Identifier: GPL-3.0-or-later
//
// A shape of the trade with its figures: what is inside a line of a die, or the paper of a panel.
// All figures are whole nanometres within ±2^30 nm. The size of a shape is the size of its upright box; a
// polygon's size is that of its box as it lies (`flat_on_top` or with a point up). A shape whose figures are
// not all known is kept and shown, but not computed: `missing_figure` says which one is wanted.
//
// `outline` carries SVG path data as recorded. `computable` is for `fit`; whether an outline can be drawn is
// has_outline's to say (shape_outline.h).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

// Kept in this order: plain shapes that are computed, then those that are not computed yet.
enum class ShapeKind {
  circle,
  oval,  // an ellipse on two axes
  square,
  rectangle,
  rounded_rectangle,
  polygon,  // regular, `sides` sides
  scalloped,
  arch,
  tag,
  banner,
  heart,
  outline,  // any outline given as path data
  other,    // a name nobody has figures for ("leaf"); `name` keeps it
};

// The largest figure that geometry works with, about 1 m.
inline constexpr Length largest_figure = Length::nm(std::int64_t{1} << 30);

// Where a banner is notched: at one end, or at the two of its longer way.
enum class NotchEnd { left, right, top, bottom, both };

struct Shape {
  ShapeKind kind = ShapeKind::rectangle;
  std::string name;  // as recorded, where it says more than the kind ("hexagon", "leaf"); else empty
  Length width;
  Length height;
  std::optional<Length> corner_radius;  // rounded rectangle; tag: of the top corners
  int sides = 0;                        // polygon; 0 = not known
  bool flat_on_top = true;              // polygon: a level side on top, else a point
  std::string figures;                  // the figures as recorded
  std::string outline;                  // SVG path data as recorded
  bool even_odd = false;                // of path data: what an odd number of lines go round; else SVG's
                                        // own rule, non-zero. The figures say it ("even-odd")

  // What the figures say of the kinds whose outline is drawn (shape_outline.h says what each is).
  std::optional<Length> scallop_width, scallop_depth;  // scalloped edge
  std::optional<ShapeKind> scallops_round;             // circle, oval, square or rectangle
  std::optional<Length> rise;                          // arch
  std::optional<Length> corner;                        // tag: how much of each side the cut takes
  std::optional<Length> hole, hole_down;               // tag: across, and its upper edge from the top
  std::optional<Length> notch;                         // banner: how deep
  std::optional<NotchEnd> notch_end;

  bool operator==(const Shape&) const = default;
};

// The word for a kind in answers ("rounded rectangle"), and back from any word of the trade for it ("oval",
// "ellipse", "hexagon" → polygon). Vocabulary terms use the same words. Unknown word: empty.
std::string_view shape_word(ShapeKind kind);
std::optional<ShapeKind> shape_kind(std::string_view word);

// The sides that a polygon's word says ("hexagon" → 6), else 0.
int polygon_sides(std::string_view word);

// A shape from a word, a size and the `figures` cell of the dies table ("radius 1/4 in", "6 sides, flat on
// top"; of any shape that may have path data "even-odd" or "non-zero"). A circle or square takes one figure;
// two different ones are a Problem. One figure of a polygon is its width; two equal ones are that too, and a
// Problem where the regular polygon is not about as high as wide. Figures that a kind does not know are a
// Problem that names those it does.
Result<Shape> make_shape(std::string_view word, const Size& size, std::string_view figures, Unit no_unit);

// How the figures of a kind are written, in quotes ("\"scallops 3/8 in\", \"depth 1/8 in\" …"); empty where
// it has none but its size.
std::string_view figures_known(ShapeKind kind);

// The figure that is wanted before the shape can be computed ("the corner radius"), or empty when it can be.
std::string missing_figure(const Shape& shape);

// Whether `fit` can compute with it: the kind is computed and no figure is missing.
bool computable(const Shape& shape);

// "rectangle 2-7/8 x 4-1/8 in", "circle 2-3/8 in"
std::string describe(const Shape& shape, Unit unit);

}  // namespace insetbook
