// SPDX-License-Identifier: GPL-3.0-or-later
//
// Widths: a side's figures are below 2^61 in 2^-60ths and half sides of a box at most 2^31 ticks, so across
// and up are below 2^92, reach and all that is taken from it below 2^125 (the panel's box lies in the
// opening's), pairs below 2^219.
#include "fit/polygon.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "shape/regular_polygon.h"

namespace insetbook {
namespace {

Bounds operator*(Bounds a, Int128 factor) {
  return factor >= 0 ? Bounds{a.low * factor, a.high * factor} : Bounds{a.high * factor, a.low * factor};
}
Bounds operator+(Bounds a, Bounds b) {
  return {a.low + b.low, a.high + b.high};
}
Bounds operator-(Bounds a, Bounds b) {
  return {a.low - b.high, a.high - b.low};
}
Bounds magnitude(Bounds a) {
  return a.low >= 0 ? a : Bounds{-a.high, -a.low};
}
Bounds bounds(Near near) {
  return {near.low(), near.high()};
}

// The length of a vector with figures ≥ 0.
Bounds length_of(Bounds x, Bounds y) {
  const Root low = root(product(x.low, x.low) + product(y.low, y.low));
  const Root high =
      x.low == x.high && y.low == y.high ? low : root(product(x.high, x.high) + product(y.high, y.high));
  return {static_cast<Int128>(low.floor), static_cast<Int128>(high.floor) + (high.exact ? 0 : 1)};
}

Where where_by_bounds(int low, int high) {
  if (low > 0) return Where::inside;
  if (high < 0) return Where::outside;
  return low == 0 && high == 0 ? Where::on : Where::undecided;
}

// How far the panel reaches in the direction of an edge, times the edge's length.
Bounds panel_reach(const Edge& edge, const Form& panel, const std::vector<CornerBox>& corners) {
  if (panel.kind == FormKind::rounded) {
    return edge.across * (panel.half_width - panel.radius) +
           magnitude(edge.up) * (panel.half_height - panel.radius) + edge.length * panel.radius;
  }
  if (panel.kind == FormKind::ellipse) {
    return length_of(edge.across * panel.half_width, magnitude(edge.up) * panel.half_height);
  }
  Bounds reach;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Bounds here{(edge.across * corners[i].x_low).low +
                          std::min((edge.up * corners[i].y_low).low, (edge.up * corners[i].y_high).low),
                      (edge.across * corners[i].x_high).high +
                          std::max((edge.up * corners[i].y_low).high, (edge.up * corners[i].y_high).high)};
    reach = i == 0 ? here : Bounds{std::max(reach.low, here.low), std::max(reach.high, here.high)};
  }
  return reach;
}

Bounds slack_at(const Edge& edge, const Form& panel, const std::vector<CornerBox>& corners,
                std::int64_t border) {
  return edge.reach - panel_reach(edge, panel, corners) - edge.length * border;
}

Where where_alone(Bounds slack) {
  return where_by_bounds(sign_of(slack.low), sign_of(slack.high));
}

// The panel moved up by t stays within an upper and a lower edge for some t just when, the edges scaled to
// the same rise, the sum of what both leave is not negative.
Where where_between(const Edge& upper, Bounds above, const Edge& lower, Bounds below) {
  const Bounds rise = upper.up, fall = magnitude(lower.up);
  const auto scaled = [](Bounds factor, Bounds slack) {
    return std::pair{product(slack.low, slack.low < 0 ? factor.high : factor.low),
                     product(slack.high, slack.high < 0 ? factor.low : factor.high)};
  };
  const auto [first_low, first_high] = scaled(fall, above);
  const auto [second_low, second_high] = scaled(rise, below);
  return where_by_bounds((first_low + second_low).sign(), (first_high + second_high).sign());
}

// A side of a polygon with rational figures, all of them doubled and whole, and what it leaves but for the
// roots: the panel fits when rest ≥ (border + radius) √side2 + √panel2, where a level side has no roots.
struct ExactEdge {
  Int128 up = 0, rest = 0;
  Wide<4> border_root, panel_root;
  bool has_roots = false;
};

ExactEdge exact_edge(const Form& opening, const PolygonSide& side, const Form& panel,
                     const std::vector<CornerBox>& corners, std::int64_t border) {
  const auto doubled = [](Near figure) { return static_cast<Int128>(figure.value >> (near_bits - 1)); };
  const Int128 across = doubled(side.a) * opening.half_height;
  const Int128 up = doubled(side.b) * opening.half_width;
  const Int128 upward = up < 0 ? -up : up;
  const std::int64_t radius = panel.kind == FormKind::rounded ? panel.radius : 0;
  ExactEdge edge;
  edge.up = up;
  edge.rest = doubled(side.c) * opening.half_width * opening.half_height;
  edge.has_roots = across != 0 && up != 0;
  const Int128 strip = border + radius;
  if (edge.has_roots) {
    edge.border_root = Wide<4>(product(strip, strip) * (product(across, across) + product(up, up)));
  } else {
    edge.rest -= strip * (across + upward);
  }
  if (panel.kind == FormKind::rounded) {
    edge.rest -= across * (panel.half_width - radius) + upward * (panel.half_height - radius);
  } else if (panel.kind == FormKind::polygon) {
    Int128 reach = across * corners[0].x_low + up * corners[0].y_low;
    for (const CornerBox& corner : corners)
      reach = std::max(reach, across * corner.x_low + up * corner.y_low);
    edge.rest -= reach;
  } else if (edge.has_roots) {
    const Int128 wide = across * panel.half_width, high = up * panel.half_height;
    edge.panel_root = product(wide, wide) + product(high, high);
  } else {
    edge.rest -= across * panel.half_width + upward * panel.half_height;
  }
  return edge;
}

Where exactly_alone(const ExactEdge& edge) {
  return where_by_sign(sign_minus_roots(Wide<2>(edge.rest), edge.border_root, edge.panel_root));
}

// All slanting sides of a polygon of 3, 4 or 6 sides are equally steep, so that their roots are the same and
// add up.
Where exactly_between(const ExactEdge& upper, const ExactEdge& lower) {
  const Int128 rise = upper.up, fall = -lower.up;
  const Int128 rest = fall * upper.rest + rise * lower.rest;
  const ExactEdge& roots = upper.has_roots ? upper : lower;
  const Int128 times = (upper.has_roots ? fall : 0) + (lower.has_roots ? rise : 0);
  const Wide<2> times2(times * times);
  return where_by_sign(
      sign_minus_roots(Wide<2>(rest), roots.border_root * times2, roots.panel_root * times2));
}

// Goes through the edges, or through their pairs where the panel is free to move up and down.
template <class Item, class Alone, class Between>
Where through(const std::vector<Item>& items, bool free, const Alone& alone, const Between& between) {
  Where where = Where::inside;
  for (const Item& item : items) {
    if (!free || sign_of(item.up_sign) == 0) where = both(where, alone(item));
    if (!free || item.up_sign <= 0) continue;
    for (const Item& other : items) {
      if (other.up_sign < 0) where = both(where, between(item, other));
    }
  }
  return where;
}

std::vector<CornerBox> corners_of(const Form& panel) {
  return panel.kind == FormKind::polygon ? corner_boxes(panel) : std::vector<CornerBox>{};
}

long double shown(Int128 value) {
  return static_cast<long double>(value);
}

// A polygon of 4, 8, 12 … sides that is flat on top and as wide as it is high is quite regular: all its sides
// are as far from the middle as the upper one. So a circle or the same polygon smaller keeps one border all
// round, and whether it touches is known from whole figures, though the sides themselves are irrational.
std::optional<Where> where_by_apothem(const Form& opening, const Form& panel, std::int64_t border) {
  const auto regular = [](const Form& form) {
    return form.kind == FormKind::polygon && form.sides % 4 == 0 && form.flat_on_top &&
           form.half_width == form.half_height;
  };
  if (!regular(opening) || !(panel.is_circle() || (regular(panel) && panel.sides == opening.sides)))
    return std::nullopt;
  return where_by_sign(sign_of(opening.half_width - panel.half_width - border));
}

struct HeldEdge {
  const Edge* edge;
  Bounds slack;
  int up_sign;
};

struct WholeEdge {
  ExactEdge edge;
  int up_sign;
};

Where decide_exactly(const Form& opening, const Form& panel, const std::vector<CornerBox>& corners,
                     std::int64_t border, bool free) {
  std::vector<WholeEdge> items;
  for (const PolygonSide& side : sides_of_polygon(opening.sides, opening.flat_on_top)) {
    const ExactEdge edge = exact_edge(opening, side, panel, corners, border);
    items.push_back({edge, sign_of(edge.up)});
  }
  return through(
      items, free, [](const WholeEdge& item) { return exactly_alone(item.edge); },
      [](const WholeEdge& upper, const WholeEdge& lower) { return exactly_between(upper.edge, lower.edge); });
}

}  // namespace

std::vector<Edge> edges_of(const Form& polygon) {
  std::vector<Edge> edges;
  for (const PolygonSide& side : sides_of_polygon(polygon.sides, polygon.flat_on_top)) {
    Edge edge{bounds(side.a) * polygon.half_height,
              bounds(side.b) * polygon.half_width,
              bounds(side.c) * polygon.half_width * polygon.half_height,
              {}};
    edge.length = length_of(edge.across, magnitude(edge.up));
    edges.push_back(edge);
  }
  return edges;
}

std::vector<CornerBox> corner_boxes(const Form& polygon) {
  const auto held = [](Near figure, std::int64_t half) {
    const Bounds exact = bounds(figure) * half;
    const Int128 up = (Int128{1} << near_bits) - 1;
    return std::pair{static_cast<std::int64_t>(exact.low >> near_bits),
                     static_cast<std::int64_t>((exact.high + up) >> near_bits)};
  };
  std::vector<CornerBox> boxes;
  for (const PolygonCorner& corner : corners_of_polygon(polygon.sides, polygon.flat_on_top)) {
    const auto [x_low, x_high] = held(corner.x, polygon.half_width);
    const auto [y_low, y_high] = held(corner.y, polygon.half_height);
    boxes.push_back({x_low, x_high, y_low, y_high});
  }
  return boxes;
}

Where in_polygon(const Form& opening, const std::vector<Edge>& edges, const Form& panel,
                 std::int64_t border) {
  if (panel.half_width + border > opening.half_width || panel.half_height + border > opening.half_height) {
    return Where::outside;
  }
  const bool free = !opening.is_symmetric() || !panel.is_symmetric();
  // A polygon in one of its own kind without a border lies in it just when its box does: it is the other one
  // squeezed towards its middle and towards the height where it is widest.
  const bool same = panel.kind == FormKind::polygon && panel.sides == opening.sides &&
                    panel.flat_on_top == opening.flat_on_top;
  if (same && border == 0) {
    return where_by_sign(
        panel.half_width == opening.half_width || panel.half_height == opening.half_height ? 0 : 1);
  }
  if (const auto where = where_by_apothem(opening, panel, border)) return *where;
  const std::vector<CornerBox> corners = corners_of(panel);
  std::vector<HeldEdge> items;
  for (const Edge& edge : edges) {
    const Bounds slack = slack_at(edge, panel, corners, border);
    items.push_back({&edge, slack, edge.up.low > 0 ? 1 : edge.up.high < 0 ? -1 : 0});
  }
  const Where where = through(
      items, free, [](const HeldEdge& item) { return where_alone(item.slack); },
      [](const HeldEdge& upper, const HeldEdge& lower) {
        return where_between(*upper.edge, upper.slack, *lower.edge, lower.slack);
      });
  const bool rational =
      polygon_is_rational(opening.sides) &&
      std::all_of(corners.begin(), corners.end(), [](const CornerBox& box) { return box.exact(); });
  if (where != Where::undecided || !rational) return where;
  return decide_exactly(opening, panel, corners, border, free);
}

std::int64_t height_in_polygon(const std::vector<Edge>& edges, const Form& panel, std::int64_t border) {
  const std::vector<CornerBox> corners = corners_of(panel);
  long double lowest = -std::numeric_limits<long double>::infinity(), highest = -lowest;
  for (const Edge& edge : edges) {
    const long double room =
        shown(slack_at(edge, panel, corners, border).low) / std::fabs(shown(edge.up.low));
    if (edge.up.low > 0) highest = std::min(highest, room);
    if (edge.up.high < 0) lowest = std::max(lowest, -room);
  }
  return std::llround((lowest + highest) / 2);
}

std::int64_t widest_strip_in_polygon(const std::vector<Edge>& edges, const Form& panel, std::int64_t height) {
  const std::vector<CornerBox> corners = corners_of(panel);
  long double widest = 0;
  for (const Edge& edge : edges) {
    const long double room =
        shown(slack_at(edge, panel, corners, 0).high) - shown(edge.up.low) * shown(height);
    widest = std::max(widest, room / shown(edge.length.low));
  }
  return std::llround(widest);
}

std::int64_t half_width_of_polygon(const std::vector<Edge>& edges, std::int64_t height) {
  long double least = std::numeric_limits<long double>::infinity();
  for (const Edge& edge : edges) {
    if (edge.across.low <= 0) continue;
    least = std::min(least,
                     (shown(edge.reach.low) - shown(edge.up.low) * shown(height)) / shown(edge.across.low));
  }
  return std::llround(least);
}

}  // namespace insetbook
