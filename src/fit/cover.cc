// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/cover.h"

#include <optional>

#include "fit/fit.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

bool grows_evenly(ShapeKind kind) {  // each side by twice the overlap overlaps by just that
  return kind == ShapeKind::circle || kind == ShapeKind::square || kind == ShapeKind::rectangle ||
         kind == ShapeKind::rounded_rectangle;
}

Shape wider(Shape window, Length by) {
  window.width = window.width + by;
  window.height = window.height + by;
  if (window.corner_radius) window.corner_radius = *window.corner_radius + by / 2;
  return window;
}

Shape box_of(const Shape& window) {
  Shape box;
  box.kind = window.width == window.height ? ShapeKind::square : ShapeKind::rectangle;
  box.width = window.width;
  box.height = window.height;
  return box;
}

// In the window's proportions; figures that say how large a part is stay as they are.
Shape in_proportion(Shape window, Length width) {
  const auto height = static_cast<__int128>(window.height.nm()) * width.nm() / window.width.nm();
  window.width = width;
  window.height = Length::nm(static_cast<std::int64_t>(height));
  return window;
}

bool covers(const Shape& cover, const Shape& window, Length overlap, Length step) {
  const Result<std::optional<Framing>> framed = framing({cover, Length()}, window, overlap, step, false);
  return framed && *framed;
}

std::optional<Shape> own_shape(const Shape& window, Length overlap, Length step) {
  if (!window.outline.empty() || !has_outline(window)) return std::nullopt;
  // A piece of more than twice the window and four overlaps would waste more than the rectangle.
  const Length most = 2 * window.width + 4 * overlap;
  const Length least = window.width + 2 * overlap;
  for (Length width = round_down(least + step - Length::nm(1), step); width <= most; width = width + step) {
    const Shape cover = in_proportion(window, width);
    if (covers(cover, window, overlap, step)) return cover;
  }
  return std::nullopt;
}

}  // namespace

Shape cover_from_behind(const Shape& window, Length overlap, Length step) {
  if (grows_evenly(window.kind)) return wider(window, 2 * overlap);
  if (std::optional<Shape> own = own_shape(window, overlap, step)) return *own;
  return wider(box_of(window), 2 * overlap);
}

}  // namespace insetbook
