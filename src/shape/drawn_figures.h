// SPDX-License-Identifier: GPL-3.0-or-later
//
// The figures of the kinds whose outline is drawn (shape_outline.h): reading them from a row, and which is
// wanted. Every figure is one that a ruler shows on the cut paper. Not every word of a kind is drawn: a round
// tag, a scroll, a pennant or a row of bunting has no construction here and is kept as it was written, unless
// path data are recorded with it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "shape/shape.h"

namespace insetbook {

// The name before or after a figure: "radius 1/4 in", "1/4 in radius". `names` are folded.
struct NamedFigure {
  std::string_view name;
  std::string_view value;
};
std::optional<NamedFigure> named_figure(std::string_view part, const std::vector<std::string_view>& names);

// Whether the shape's word has a construction from figures.
bool is_drawn(const Shape& shape);

// What "scalloped circle", "square scallop" run round; nothing for "scalloped" alone.
std::optional<ShapeKind> base_of_scallops(std::string_view word);

// Whether the arch comes to a point.
bool is_pointed(const Shape& arch);

// The figures of the kind, quoted as they may be written.
std::string_view drawn_figures_known(ShapeKind kind);

// One part of a figures cell into the shape. False: it is no figure of that kind.
Result<bool> take_drawn_figure(std::string_view part, Unit no_unit, Shape& shape);

// As missing_figure, for these kinds. Empty for a shape that has path data.
std::string missing_drawn_figure(const Shape& shape);

}  // namespace insetbook
