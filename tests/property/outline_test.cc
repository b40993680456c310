// SPDX-License-Identifier: GPL-3.0-or-later
//
// The side of a point by whole numbers against the slow way: rational arithmetic, where the line to the right
// really meets each edge.
#include "shape/outline.h"

#include <gmpxx.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace insetbook {
namespace {

mpq_class number(std::int64_t value) {
  return mpq_class(std::to_string(value));
}

bool slow_on_edge(Point a, Point b, Point point) {
  const mpq_class ax = number(a.x), ay = number(a.y), dx = number(b.x) - ax, dy = number(b.y) - ay;
  const mpq_class px = number(point.x) - ax, py = number(point.y) - ay;
  const mpq_class length = dx * dx + dy * dy;
  if (length == 0) return px == 0 && py == 0;
  const mpq_class along = (px * dx + py * dy) / length;
  return along >= 0 && along <= 1 && px == along * dx && py == along * dy;
}

// Half a nanometre lower than the point no corner is met: the parity there, where nothing lies between. A
// point off all edges keeps its side when it is moved by less than the distance to the nearest one.
PointSide slow_side(const Outline& outline, Point point) {
  mpq_class step = 1;
  const auto each_edge = [&](const auto& visit) {
    for (const Ring& ring : outline.rings) {
      for (std::size_t i = 0; i < ring.points.size(); ++i)
        visit(ring.points[i], ring.points[(i + 1) % ring.points.size()]);
    }
  };
  bool on_edge = false;
  each_edge([&](Point a, Point b) {
    on_edge = on_edge || slow_on_edge(a, b, point);
    if (a.x != b.x && std::min(a.x, b.x) <= point.x && point.x <= std::max(a.x, b.x)) {
      const mpq_class y =
          number(a.y) + (number(b.y) - number(a.y)) * (number(point.x) - number(a.x)) / number(b.x - a.x);
      if (y > number(point.y)) step = std::min(step, mpq_class((y - number(point.y)) / 2));
    }
  });
  if (on_edge) return PointSide::on_edge;
  const mpq_class level = number(point.y) + step / 2;
  bool inside = false;
  each_edge([&](Point a, Point b) {
    if (number(std::min(a.y, b.y)) > level || number(std::max(a.y, b.y)) < level || a.y == b.y) return;
    const mpq_class x = number(a.x) + (number(b.x) - number(a.x)) * (level - number(a.y)) / number(b.y - a.y);
    if (x > number(point.x)) inside = !inside;
  });
  return inside ? PointSide::inside : PointSide::outside;
}

Outline outline_of_small_numbers(std::int64_t scale) {
  Outline outline;
  const int rings = *rc::gen::inRange(1, 4);
  for (int i = 0; i < rings; ++i) {
    Ring ring;
    const int points = *rc::gen::inRange(3, 9);
    for (int p = 0; p < points; ++p)
      ring.points.push_back({*rc::gen::inRange(-6, 7) * scale, *rc::gen::inRange(-6, 7) * scale});
    outline.rings.push_back(ring);
  }
  return outline;
}

// Rings that cross and repeat points have a parity too, and the law does not need more.
RC_GTEST_PROP(OutlineLaws, SideOnASmallGrid, ()) {
  const Outline outline = outline_of_small_numbers(1);
  for (std::int64_t x = -7; x <= 7; ++x) {
    for (std::int64_t y = -7; y <= 7; ++y) RC_ASSERT(side_of(outline, {x, y}) == slow_side(outline, {x, y}));
  }
}

RC_GTEST_PROP(OutlineLaws, SideAtTheLimit, ()) {
  constexpr std::int64_t limit = std::int64_t{1} << 30;
  const Outline outline = outline_of_small_numbers(limit / 6);
  for (int i = 0; i < 40; ++i) {
    const Point corner =
        outline.rings[0].points[static_cast<std::size_t>(i) % outline.rings[0].points.size()];
    const Point next =
        outline.rings[0].points[static_cast<std::size_t>(i + 1) % outline.rings[0].points.size()];
    const Point near{(corner.x + next.x) / 2 + *rc::gen::inRange(-1, 2),
                     (corner.y + next.y) / 2 + *rc::gen::inRange(-1, 2)};
    RC_ASSERT(side_of(outline, near) == slow_side(outline, near));
  }
}

}  // namespace
}  // namespace insetbook
