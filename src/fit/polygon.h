// SPDX-License-Identifier: GPL-3.0-or-later
//
// Panels in a regular polygon: one half-plane for each side. The sides are computed once for an opening, so
// that each check is a few whole products. Every figure is held between two whole numbers; where they leave a
// sign open and the polygon's figures are rational (3, 4 and 6 sides), the sign is computed exactly from the
// squares.
#pragma once

#include <vector>

#include "fit/form.h"
#include "shape/wide.h"

namespace insetbook {

struct Bounds {
  Int128 low = 0, high = 0;
};

// A side of the right half: across·x + up·y ≤ reach, in ticks and 2^-60ths. `length` is the length of
// (across, up), by which a border moves it in.
struct Edge {
  Bounds across, up, reach, length;
};

std::vector<Edge> edges_of(const Form& polygon);

// border ≥ 0.
Where in_polygon(const Form& opening, const std::vector<Edge>& edges, const Form& panel, std::int64_t border);

// To be shown; they decide nothing. The height as in inside.h, and the greatest distance of a panel at that
// height from a side, in ticks.
std::int64_t height_in_polygon(const std::vector<Edge>& edges, const Form& panel, std::int64_t border);
std::int64_t widest_strip_in_polygon(const std::vector<Edge>& edges, const Form& panel, std::int64_t height);
// Half of the polygon's width at a height above the middle of its box.
std::int64_t half_width_of_polygon(const std::vector<Edge>& edges, std::int64_t height);

// A corner of a polygon's right half, held in a box of whole ticks.
struct CornerBox {
  std::int64_t x_low, x_high, y_low, y_high;
  bool exact() const { return x_low == x_high && y_low == y_high; }
};
std::vector<CornerBox> corner_boxes(const Form& polygon);

}  // namespace insetbook
