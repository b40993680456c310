// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/inside.h"

#include <algorithm>

#include "fit/ellipse.h"

namespace insetbook {
namespace {

// A core in a box with quarter circles at its corners. Pulled in by a border wider than their radius the
// corners are square.
Where core_in_rounded(const Form& opening, const Core& core, std::int64_t border) {
  const std::int64_t across = opening.half_width - core.half_width - border;
  const std::int64_t along = opening.half_height - core.half_height - border;
  if (across < 0 || along < 0) return Where::outside;
  const Where box = where_by_sign(across == 0 || along == 0 ? 0 : 1);
  const Int128 x = core.half_width - (opening.half_width - opening.radius);
  const Int128 y = core.half_height - (opening.half_height - opening.radius);
  if (x <= 0 || y <= 0) return box;
  const Int128 radius = opening.radius - border;
  return both(box, where_by_sign(sign_of(radius * radius - x * x - y * y)));
}

bool box_too_large(const Form& opening, const Form& panel, std::int64_t border) {
  return panel.half_width + border > opening.half_width || panel.half_height + border > opening.half_height;
}

Where box_in_box(const Form& opening, const Form& panel, std::int64_t border) {
  return core_in_rounded(opening, {panel.half_width, panel.half_height}, border);
}

Where core_in_curve(const Form& opening, const Core& core, std::int64_t border) {
  return opening.kind == FormKind::ellipse ? core_in_ellipse(opening, core, border)
                                           : core_in_rounded(opening, core, border);
}

// The largest y for which the core (x, y) lies in the opening, or -1: the half height of the pulled-in
// opening at x.
std::int64_t half_height_at(const Form& opening, std::int64_t x, std::int64_t border) {
  std::int64_t fits = -1, too_high = opening.half_height + 1;
  while (too_high - fits > 1) {
    const std::int64_t middle = fits + (too_high - fits) / 2;
    (holds(core_in_curve(opening, {x, middle}, border)) ? fits : too_high) = middle;
  }
  return fits;
}

struct Heights {
  std::int64_t lowest, highest;
};

// Between which heights a polygon that is not the same upside down fits; none when lowest > highest.
// `outermost`: each corner is taken where its box sticks out most (then a yes is sure), else where it does
// least (then a no is sure).
Heights heights_in_curve(const Form& opening, const std::vector<CornerBox>& corners, std::int64_t border,
                         bool outermost) {
  Heights heights{-4 * opening.half_height, 4 * opening.half_height};
  for (const CornerBox& corner : corners) {
    const std::int64_t most = half_height_at(opening, outermost ? corner.x_high : corner.x_low, border);
    if (most < 0) return {1, 0};
    const std::int64_t allowed = outermost ? most : most + 1;
    heights.highest = std::min(heights.highest, allowed - (outermost ? corner.y_high : corner.y_low));
    heights.lowest = std::max(heights.lowest, -allowed - (outermost ? corner.y_low : corner.y_high));
  }
  return heights;
}

bool some_height(const Heights& heights) {
  return heights.lowest <= heights.highest;
}

Where polygon_in_curve(const Form& opening, const Form& panel, std::int64_t border) {
  if (opening.kind == FormKind::rounded && opening.radius <= border)
    return box_in_box(opening, panel, border);
  const std::vector<CornerBox> corners = corner_boxes(panel);
  if (!panel.is_symmetric()) {
    if (some_height(heights_in_curve(opening, corners, border, true))) return Where::inside;
    return some_height(heights_in_curve(opening, corners, border, false)) ? Where::undecided : Where::outside;
  }
  Where where = Where::inside;
  for (const CornerBox& corner : corners) {
    if (corner.y_high < 0) continue;  // the lower half mirrors the upper one
    const Where least =
        core_in_curve(opening, {corner.x_low, std::max<std::int64_t>(corner.y_low, 0)}, border);
    if (least == Where::outside) return least;
    const Where most = core_in_curve(opening, {corner.x_high, corner.y_high}, border);
    where = both(where, corner.exact() ? least : most == Where::inside ? most : Where::undecided);
  }
  return where;
}

}  // namespace

Ground::Ground(const Form& opening) : form_(opening) {
  if (opening.kind == FormKind::polygon) edges_ = edges_of(opening);
}

Where lies_in(const Ground& ground, const Form& panel, std::int64_t border) {
  const Form& opening = ground.form();
  if (box_too_large(opening, panel, border)) return Where::outside;
  if (opening.kind == FormKind::polygon) return in_polygon(opening, ground.edges(), panel, border);
  if (panel.kind == FormKind::polygon) return polygon_in_curve(opening, panel, border);
  if (panel.kind == FormKind::rounded) {
    const Core core{panel.half_width - panel.radius, panel.half_height - panel.radius};
    return core_in_curve(opening, core, border + panel.radius);
  }
  return opening.kind == FormKind::ellipse ? ellipse_in_ellipse(opening, panel, border)
                                           : ellipse_in_rounded(opening, panel, border);
}

std::int64_t height_in(const Ground& ground, const Form& panel, std::int64_t border) {
  const Form& opening = ground.form();
  if (opening.is_symmetric() && panel.is_symmetric()) return 0;
  if (opening.kind == FormKind::polygon) return height_in_polygon(ground.edges(), panel, border);
  const Heights heights = heights_in_curve(opening, corner_boxes(panel), border, true);
  return (heights.lowest + heights.highest) / 2;
}

}  // namespace insetbook
