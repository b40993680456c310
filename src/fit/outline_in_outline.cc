// SPDX-License-Identifier: GPL-3.0-or-later
//
// Widths: as in in_outline.cc.
#include "fit/outline_in_outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "shape/wide.h"

namespace insetbook {
namespace {

constexpr double sure = 1 + 1e-9;  // as in in_outline.cc

struct Corner {
  Int128 x, y;  // ticks
};

struct Straight {
  Corner from, to;
};

Corner corner_at(double x, double y) {
  return {static_cast<std::int64_t>(x) * ticks_in_nm, static_cast<std::int64_t>(y) * ticks_in_nm};
}

Int128 cross(Corner a, Corner b, Corner c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool crosses(const Straight& a, const Straight& b) {
  const int first = sign_of(cross(a.from, a.to, b.from)) * sign_of(cross(a.from, a.to, b.to));
  const int second = sign_of(cross(b.from, b.to, a.from)) * sign_of(cross(b.from, b.to, a.to));
  return first < 0 && second < 0;
}

bool too_near(Corner point, const Straight& edge, Int128 distance2) {
  const Corner along{edge.to.x - edge.from.x, edge.to.y - edge.from.y};
  const Corner from{point.x - edge.from.x, point.y - edge.from.y};
  const Int128 square = along.x * along.x + along.y * along.y;
  const Int128 dot = from.x * along.x + from.y * along.y;
  if (dot <= 0) return from.x * from.x + from.y * from.y < distance2;
  if (dot >= square) {
    const Corner to{point.x - edge.to.x, point.y - edge.to.y};
    return to.x * to.x + to.y * to.y < distance2;
  }
  const Int128 area = from.x * along.y - from.y * along.x;
  const double left = static_cast<double>(area) * static_cast<double>(area);
  const double right = static_cast<double>(square) * static_cast<double>(distance2);
  if (left > right * sure) return false;
  if (left * sure < right) return true;
  return compare(product(area, area), product(square, distance2)) < 0;
}

bool too_near(const Straight& a, const Straight& b, Int128 distance2) {
  return crosses(a, b) || too_near(a.from, b, distance2) || too_near(a.to, b, distance2) ||
         too_near(b.from, a, distance2) || too_near(b.to, a, distance2);
}

Straight moved(const OutlineEdge& edge, Middle by) {
  const Corner from = corner_at(edge.x0, edge.y0), to = corner_at(edge.x1, edge.y1);
  return {{from.x + by.x, from.y + by.y}, {to.x + by.x, to.y + by.y}};
}

struct Shift {
  double x, y;  // nm
};

// The boxes of the curves that two edges are a part of, or of an edge that is a line.
CurveBox box_of_edge(const EdgeTree& edges, const OutlineEdge& edge) {
  if (edge.curve >= 0) return edges.curves()[static_cast<std::size_t>(edge.curve)];
  const double e = edge.error;
  return {std::min(edge.x0, edge.x1) - e, std::max(edge.x0, edge.x1) + e, std::min(edge.y0, edge.y1) - e,
          std::max(edge.y0, edge.y1) + e};
}

bool beside(const CurveBox& opening, const CurveBox& panel, Shift by, double distance) {
  return opening.x_least - panel.x_most - by.x >= distance ||
         panel.x_least + by.x - opening.x_most >= distance ||
         opening.y_least - panel.y_most - by.y >= distance ||
         panel.y_least + by.y - opening.y_most >= distance;
}

// How one edge of the panel keeps the border to the edges of the opening.
class PanelEdge {
 public:
  PanelEdge(const EdgeTree& opening, const EdgeTree& panel, const OutlineEdge& edge, Middle corner,
            std::int64_t border)
      : opening_(opening),
        panel_(panel),
        edge_(edge),
        corner_(corner),
        here_(moved(edge, corner)),
        by_{static_cast<double>(corner.x) / ticks_in_nm, static_cast<double>(corner.y) / ticks_in_nm},
        border_(border) {}

  Where keeps() const {
    const double reach = static_cast<double>(std::max<std::int64_t>(1, border_)) / ticks_in_nm +
                         opening_.error() + edge_.error;
    const double left = std::min(edge_.x0, edge_.x1) + by_.x - reach;
    const double right = std::max(edge_.x0, edge_.x1) + by_.x + reach;
    const double top = std::min(edge_.y0, edge_.y1) + by_.y - reach;
    const double bottom = std::max(edge_.y0, edge_.y1) + by_.y + reach;
    Where where = Where::inside;
    opening_.walk(
        [&](const EdgeNode& node) {
          return node.x_most > left && node.x_least < right && node.y_most > top && node.y_least < bottom;
        },
        [&](const OutlineEdge& other) {
          where = both(where, keeps_to(other));
          return where != Where::outside;
        });
    return where;
  }

 private:
  Where keeps_to(const OutlineEdge& other) const {
    const Straight there{corner_at(other.x0, other.y0), corner_at(other.x1, other.y1)};
    const std::int64_t error = static_cast<std::int64_t>(edge_.error + other.error) * ticks_in_nm;
    const auto nearer = [&](Int128 distance) { return too_near(here_, there, distance * distance); };
    if (!nearer(std::max<std::int64_t>(1, border_ + error))) return Where::inside;
    if (error == 0) return border_ > 0 || crosses(here_, there) ? Where::outside : Where::undecided;
    if (border_ > 0 && beside(box_of_edge(opening_, other), box_of_edge(panel_, edge_), by_,
                              static_cast<double>(border_) / ticks_in_nm))
      return Where::inside;
    if (round_in_round(other) || straight_beside_round(other)) return Where::inside;
    return border_ > error && nearer(border_ - error) ? Where::outside : Where::undecided;
  }

  // Quarters of two circles, of which the panel's lies in the opening's with the border: the distance of
  // their middles is at most what the radii differ by beyond it.
  bool round_in_round(const OutlineEdge& other) const {
    if (edge_.curve < 0 || other.curve < 0) return false;
    const auto& outer = opening_.curves()[static_cast<std::size_t>(other.curve)].quarter;
    const auto& inner = panel_.curves()[static_cast<std::size_t>(edge_.curve)].quarter;
    if (!outer || !inner) return false;
    const Int128 dx = (inner->x - outer->x) * ticks_in_nm + corner_.x;
    const Int128 dy = (inner->y - outer->y) * ticks_in_nm + corner_.y;
    const Int128 room = (outer->radius - inner->radius) * ticks_in_nm - border_;
    return room >= 0 && dx * dx + dy * dy <= room * room;
  }

  // An upright or level line is a core without a width or height.
  bool straight_beside_round(const OutlineEdge& other) const {
    if (edge_.error > 0 || other.curve < 0) return false;
    const auto& quarter = opening_.curves()[static_cast<std::size_t>(other.curve)].quarter;
    if (!quarter || (edge_.x0 != edge_.x1 && edge_.y0 != edge_.y1)) return false;
    const auto half = [](Int128 from, Int128 to) {
      return static_cast<std::int64_t>(from < to ? to - from : from - to) / 2;
    };
    const auto middle = [](Int128 from, Int128 to) { return static_cast<std::int64_t>(from + to) / 2; };
    return keeps_to_quarter(*quarter, {half(here_.from.x, here_.to.x), half(here_.from.y, here_.to.y)},
                            {middle(here_.from.x, here_.to.x), middle(here_.from.y, here_.to.y)}, border_);
  }

  const EdgeTree& opening_;
  const EdgeTree& panel_;
  const OutlineEdge& edge_;
  Middle corner_;
  Straight here_;
  Shift by_;
  std::int64_t border_;
};

Where apart(const EdgeTree& opening, const EdgeTree& panel, Middle corner, std::int64_t border, bool soon) {
  Where where = Where::inside;
  for (const OutlineEdge& edge : panel.edges()) {
    where = both(where, PanelEdge(opening, panel, edge, corner, border).keeps());
    if (where == Where::outside || (soon && where == Where::undecided)) break;
  }
  return where;
}

Middle ticks_of(double x, double y) {
  return {static_cast<std::int64_t>(x) * ticks_in_nm, static_cast<std::int64_t>(y) * ticks_in_nm};
}

// No edges cross: each ring lies wholly on one side of every other.
bool rings_lie_inside(const EdgeTree& opening, const EdgeTree& panel, Middle corner) {
  for (const OutlineEdge& edge : panel.edges()) {
    if (!edge.begins) continue;
    const Middle start = ticks_of(edge.x0, edge.y0);
    if (!goes_round(opening, {start.x + corner.x, start.y + corner.y})) return false;
  }
  for (const OutlineEdge& edge : opening.edges()) {
    if (!edge.begins) continue;
    const Middle start = ticks_of(edge.x0, edge.y0);
    if (goes_round(panel, {start.x - corner.x, start.y - corner.y})) return false;
  }
  return true;
}

// The panel is the opening itself, edge for edge.
bool is_the_opening(const EdgeTree& opening, const EdgeTree& panel, Middle corner) {
  if (corner.x % ticks_in_nm != 0 || corner.y % ticks_in_nm != 0) return false;
  const auto x = static_cast<double>(corner.x / ticks_in_nm), y = static_cast<double>(corner.y / ticks_in_nm);
  const auto& there = opening.edges();
  return std::equal(panel.edges().begin(), panel.edges().end(), there.begin(), there.end(),
                    [&](const OutlineEdge& a, const OutlineEdge& b) {
                      return a.x0 + x == b.x0 && a.y0 + y == b.y0 && a.x1 + x == b.x1 && a.y1 + y == b.y1;
                    });
}

}  // namespace

double panel_depth(const EdgeTree& opening, const EdgeTree& panel, double x, double y, double enough,
                   bool thorough) {
  const double shift_x = x - static_cast<double>(panel.box().width()) / 2;
  const double shift_y = y - static_cast<double>(panel.box().height()) / 2;
  double least = std::numeric_limits<double>::infinity();
  // Corners far from each other first: where some corner is too far out, one of these mostly is.
  const std::vector<OutlineEdge>& edges = panel.edges();
  const std::size_t apart = std::max<std::size_t>(1, edges.size() / 8);
  for (std::size_t start = 0; start < (thorough ? apart : 1); ++start) {
    for (std::size_t i = start; i < edges.size(); i += apart) {
      least = opening.depth_or(least, edges[i].x0 + shift_x, edges[i].y0 + shift_y);
      if (least < enough) return least;
    }
  }
  if (!thorough) return least;
  // A corner of the opening counts as far as it may be nearer than what was found.
  const Box& box = panel.box();
  const double right = static_cast<double>(box.width()) + shift_x;
  const double bottom = static_cast<double>(box.height()) + shift_y;
  opening.walk(
      [&](const EdgeNode& node) {
        const double beyond = std::max(least, 0.0);
        return node.x_most > shift_x - beyond && node.x_least < right + beyond &&
               node.y_most > shift_y - beyond && node.y_least < bottom + beyond && least >= enough;
      },
      [&](const OutlineEdge& edge) {
        least = panel.apart_or(least, edge.x0 - shift_x, edge.y0 - shift_y);
        return least >= enough;
      });
  return least;
}

bool lies_nowhere_near(const EdgeTree& opening, const EdgeTree& panel, double depth, double reach,
                       double border) {
  constexpr double rounding = 0.05;
  return depth < border - reach - opening.error() - panel.error() - rounding;
}

Where outline_lies_at(const EdgeTree& opening, const EdgeTree& panel, Middle middle, std::int64_t border,
                      bool soon) {
  const Box& box = panel.box();
  const Middle corner{middle.x - box.width() * (ticks_in_nm / 2),
                      middle.y - box.height() * (ticks_in_nm / 2)};
  if (border == 0 && is_the_opening(opening, panel, corner)) return Where::inside;
  const Where where = apart(opening, panel, corner, border, soon);
  if (where == Where::outside || (soon && where == Where::undecided)) return where;
  if (where == Where::inside) return rings_lie_inside(opening, panel, corner) ? where : Where::outside;
  constexpr double nm = 1.0 / ticks_in_nm;
  const double depth = panel_depth(opening, panel, static_cast<double>(middle.x) * nm,
                                   static_cast<double>(middle.y) * nm, -1e18, true);
  return lies_nowhere_near(opening, panel, depth, 0, static_cast<double>(border) * nm) ? Where::outside
                                                                                       : Where::undecided;
}

}  // namespace insetbook
