// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/form.h"

#include <algorithm>
#include <cassert>

namespace insetbook {

Form form_of(const Shape& shape) {
  assert(computable(shape));
  Form form;
  form.half_width = half_ticks(shape.width);
  form.half_height = half_ticks(shape.height);
  switch (shape.kind) {
    case ShapeKind::circle:
      form.radius = form.half_width;
      break;
    case ShapeKind::oval:
      if (form.half_width == form.half_height) {
        form.radius = form.half_width;
      } else {
        form.kind = FormKind::ellipse;
      }
      break;
    case ShapeKind::rounded_rectangle:
      form.radius = std::min(
          {ticks(std::min(*shape.corner_radius, largest_figure)), form.half_width, form.half_height});
      break;
    case ShapeKind::polygon:
      if (shape.sides != 4 || !shape.flat_on_top) {
        form.kind = FormKind::polygon;
        form.sides = shape.sides;
        form.flat_on_top = shape.flat_on_top;
      }
      break;
    default:
      break;
  }
  return form;
}

}  // namespace insetbook
