// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/turned.h"

#include <utility>

#include "fit/panels_in_outline.h"

namespace insetbook {

// A polygon with an even number of sides is one again, flat where it was pointed or the same.
std::optional<Shape> turned_by_a_quarter(Shape panel) {
  if (is_outline(panel)) return std::nullopt;
  if (panel.width == panel.height && panel.kind != ShapeKind::polygon) return std::nullopt;
  if (panel.kind == ShapeKind::polygon && panel.sides % 2 == 1) return std::nullopt;
  std::swap(panel.width, panel.height);
  if (panel.kind == ShapeKind::polygon && panel.sides % 4 == 2) panel.flat_on_top = !panel.flat_on_top;
  return panel;
}

}  // namespace insetbook
