// SPDX-License-Identifier: GPL-3.0-or-later
//
// Outlines: the exact check against a slow twin in rational numbers, the searches against going through all
// places of a coarse grid, and laws.
#include <gmpxx.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "fit/free_circle.h"
#include "fit/free_outline.h"
#include "fit/free_rectangle.h"
#include "fit/outlines.h"

namespace insetbook {
namespace {

using namespace testing_outlines;

// ---- Made-up outlines ----

// Round a middle, at angles that grow: never crosses itself. On a coarse grid, so that much touches and much
// lies on one line.
Outline any_star(std::int64_t grid, std::int64_t reach) {
  const int corners = *rc::gen::inRange(3, 12);
  Ring points;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * (i + 0.25 * *rc::gen::inRange(0, 3)) / corners;
    const double radius = static_cast<double>(*rc::gen::inRange<std::int64_t>(reach / 3, reach));
    const auto at = [&](double part) {
      return std::llround((static_cast<double>(reach) + radius * part) / static_cast<double>(grid)) * grid;
    };
    const Point point{at(std::cos(angle)), at(std::sin(angle))};
    if (points.points.empty() || (points.points.back() != point && points.points.front() != point))
      points.points.push_back(point);
  }
  RC_PRE(points.points.size() >= 3);
  return one(points);
}

// Towers side by side on one ground line: upright and level edges only.
Outline any_skyline(std::int64_t grid) {
  Ring points;
  std::int64_t x = 0, before = 0;
  for (int i = *rc::gen::inRange(2, 7); i > 0; --i) {
    const std::int64_t high = *rc::gen::inRange<std::int64_t>(1, 9) * grid;
    if (high == before) continue;
    points.points.push_back({x, -high});
    if (before == 0)
      points.points.insert(points.points.begin(), {x, 0});
    else
      points.points.insert(points.points.end() - 1, {x, -before});
    before = high;
    x += *rc::gen::inRange<std::int64_t>(1, 6) * grid;
  }
  points.points.push_back({x, -before});
  points.points.push_back({x, 0});
  return one(points);
}

Outline any_outline(std::int64_t grid) {
  Outline outline = *rc::gen::arbitrary<bool>() ? any_star(grid, 12 * grid) : any_skyline(grid);
  if (*rc::gen::inRange(0, 3) == 0) {  // a window; where it lies outside it is a part of its own
    const std::int64_t x = *rc::gen::inRange<std::int64_t>(30, 40) * grid;
    outline.rings.push_back(box_ring(x, 2 * grid, x + 3 * grid, 5 * grid));
  }
  return outline;
}

// Made worse on purpose: points in the middle of edges, steps of a nanometre, needles a nanometre wide; moved
// and blown up to the largest coordinates there are.
Outline any_degenerate(std::int64_t grid) {
  Outline outline = any_outline(grid);
  for (Ring& ring : outline.rings) {
    Ring worse;
    for (std::size_t i = 0; i < ring.points.size(); ++i) {
      const Point a = ring.points[i], b = ring.points[(i + 1) % ring.points.size()];
      worse.points.push_back(a);
      const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
      if (std::abs(b.x - a.x) + std::abs(b.y - a.y) < 8) continue;
      const int way = *rc::gen::inRange(0, 5);
      if (way == 1) worse.points.push_back(middle);
      if (way == 2) worse.points.insert(worse.points.end(), {middle, {middle.x + 1, middle.y}});
      if (way == 3) {
        const Point tip{middle.x + (a.y - b.y) / 3, middle.y + (b.x - a.x) / 3};
        worse.points.insert(worse.points.end(),
                            {middle, tip, {middle.x + (b.x > a.x) - (b.x < a.x), middle.y + 1}});
      }
    }
    ring = worse;
  }
  return outline;
}

constexpr std::int64_t farthest = std::int64_t{1} << 30;

Outline at_the_limit(const Outline& outline) {
  const Box box = EdgeTree(outline).box();
  const std::int64_t size = std::max(box.width(), box.height());
  return changed(outline, [&](Point p) {
    const auto at = [&](std::int64_t from) {
      return -farthest + static_cast<std::int64_t>(static_cast<__int128>(from) * 2 * farthest / size);
    };
    return Point{at(p.x - box.least.x), at(p.y - box.least.y)};
  });
}

Form rectangle(Sides sides) {
  return {FormKind::rounded, sides.width * 2, sides.height * 2, 0, 0, true};
}
Form circle(Sides sides) {
  return {FormKind::rounded, sides.width * 2, sides.width * 2, sides.width * 2, 0, true};
}

// ---- The slow twin: rational numbers, straight from the definition ----

using Rational = mpq_class;

Rational square_of(const Rational& value) {
  return value * value;
}

// The squared distance of a point from an edge.
Rational squared_distance(const Rational& x, const Rational& y, const Point& a, const Point& b) {
  const Rational dx = b.x - a.x, dy = b.y - a.y;
  Rational along = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy);
  along = std::max(Rational(0), std::min(Rational(1), along));
  return square_of(a.x + along * dx - x) + square_of(a.y + along * dy - y);
}

struct Rectangle {
  Rational left, top, right, bottom;
};

// The part of an edge within the open rectangle, as parameters of the edge: none where empty.
bool runs_through(const Rectangle& box, const Point& a, const Point& b) {
  Rational from = 0, to = 1;
  const auto cut = [&](const Rational& start, const Rational& change, const Rational& low,
                       const Rational& high) -> bool {
    if (change == 0) return low < start && start < high;
    Rational first = (low - start) / change, last = (high - start) / change;
    if (first > last) std::swap(first, last);
    from = std::max(from, first);
    to = std::min(to, last);
    return true;
  };
  if (!cut(a.x, b.x - a.x, box.left, box.right) || !cut(a.y, b.y - a.y, box.top, box.bottom)) return false;
  if (from < to) return true;
  // A single point is inside only if it is strictly so.
  const Rational x = a.x + from * (b.x - a.x), y = a.y + from * (b.y - a.y);
  return from == to && box.left < x && x < box.right && box.top < y && y < box.bottom;
}

Rational squared_distance(const Rectangle& box, const Point& a, const Point& b) {
  if (runs_through(box, a, b)) return 0;
  const auto outside = [](const Rational& value, const Rational& low, const Rational& high) -> Rational {
    return std::max(Rational(0), std::max(Rational(low - value), Rational(value - high)));
  };
  Rational least = -1;
  const auto take = [&](const Rational& square) {
    if (least < 0 || square < least) least = square;
  };
  for (const Point& end : {a, b})
    take(square_of(outside(end.x, box.left, box.right)) + square_of(outside(end.y, box.top, box.bottom)));
  for (const Rational& x : {box.left, box.right}) {
    for (const Rational& y : {box.top, box.bottom}) take(squared_distance(x, y, a, b));
  }
  return least;
}

bool slowly_inside(const Outline& outline, const Rational& x, const Rational& y) {
  bool odd = false;
  for (const Ring& points : outline.rings) {
    for (std::size_t i = 0; i < points.points.size(); ++i) {
      const Point a = points.points[i], b = points.points[(i + 1) % points.points.size()];
      if ((a.x <= x) == (b.x <= x)) continue;
      const Rational at = a.y + (x - a.x) / Rational(b.x - a.x) * (b.y - a.y);
      if (at < y) odd = !odd;
    }
  }
  return odd;
}

bool slowly_lies(const Outline& outline, const Form& panel, Middle middle, std::int64_t border) {
  const auto nm = [](std::int64_t ticks) -> Rational { return Rational(ticks) / ticks_in_nm; };
  const Rational x = nm(middle.x), y = nm(middle.y);
  const Rational half_width = nm(panel.half_width - panel.radius),
                 half_height = nm(panel.half_height - panel.radius);
  const Rectangle core{x - half_width, y - half_height, x + half_width, y + half_height};
  const Rational distance = nm(border + panel.radius);
  for (const Ring& points : outline.rings) {
    for (std::size_t i = 0; i < points.points.size(); ++i) {
      const Point a = points.points[i], b = points.points[(i + 1) % points.points.size()];
      if (runs_through(core, a, b)) return false;
      if (squared_distance(core, a, b) < square_of(distance)) return false;
    }
  }
  return slowly_inside(outline, x, y);
}

Chain squares_of(std::int64_t step, std::int64_t count) {
  return {count, [step](std::int64_t n) { return Sides{n * step, n * step}; }};
}

Form any_form(std::int64_t grid) {
  const auto half = [&] { return *rc::gen::inRange<std::int64_t>(1, 8) * grid * ticks_in_nm / 2; };
  Form form{FormKind::rounded, half(), half(), 0, 0, true};
  const int way = *rc::gen::inRange(0, 3);
  if (way == 1) form.radius = std::min(form.half_width, form.half_height) / 2;
  if (way == 2) form.half_height = form.radius = form.half_width;
  return form;
}

// Distances along 3-4-5 triangles and along the axes come out whole, so that slanting edges are touched too.
RC_GTEST_PROP(FitOutline, ExactCheckIsTheSlowOne, ()) {
  const std::int64_t grid = *rc::gen::element<std::int64_t>(2, 20, 5'000'000);
  const Outline outline = any_outline(grid);
  const EdgeTree edges(outline);
  const Form form = any_form(grid);
  const std::int64_t half = grid * ticks_in_nm / 2;
  const Middle middle{*rc::gen::inRange<std::int64_t>(0, 50) * half,
                      *rc::gen::inRange<std::int64_t>(-20, 50) * half};
  std::int64_t border = *rc::gen::inRange<std::int64_t>(0, 4) * half;
  if (*rc::gen::arbitrary<bool>())
    border = std::max<std::int64_t>(0, border + *rc::gen::inRange<std::int64_t>(-1, 2));
  EdgesSettled settled;
  const Where where = lies_at(edges, form, middle, border, &settled);
  RC_ASSERT(where == (slowly_lies(outline, form, middle, border) ? Where::inside : Where::outside));
  RC_TAG(settled.with_wide > 0   ? "wide"
         : settled.exactly > 0   ? "exact"
         : settled.by_filter > 0 ? "filter"
                                 : "box");
}

// Round a place and sides that the search found, so that most of the outline is near.
RC_GTEST_PROP(FitOutline, ExactCheckIsTheSlowOneOnDegenerateOutlines, ()) {
  const std::int64_t grid = *rc::gen::element<std::int64_t>(20, 1'000'000);
  Outline outline = any_degenerate(grid);
  const bool limit = *rc::gen::inRange(0, 4) == 0;
  if (limit) outline = at_the_limit(outline);
  const EdgeTree edges(outline);
  const std::int64_t step = limit ? farthest / 16 : std::max<std::int64_t>(1, grid / 3);
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(0, 2) * step / 2;
  const FoundPlace found = largest_rectangle(edges, border, step);
  if (!found.placed) return;
  const auto off = [] { return *rc::gen::inRange<std::int64_t>(-2, 3); };
  const Sides sides = found.placed->sides;
  RC_ASSERT(slowly_lies(outline, rectangle(sides), found.placed->middle, border * ticks_in_nm));
  for (int i = 0; i < 4; ++i) {
    Form form = rectangle({sides.width + off(), sides.height + off()});
    if (*rc::gen::arbitrary<bool>()) form.radius = std::min(form.half_width, form.half_height) / 3;
    const Middle middle{found.placed->middle.x + off() * (i % 2 == 0 ? 1 : step),
                        found.placed->middle.y + off()};
    const std::int64_t ticks = std::max<std::int64_t>(0, border * ticks_in_nm + off());
    RC_ASSERT((lies_at(edges, form, middle, ticks) == Where::inside) ==
              slowly_lies(outline, form, middle, ticks));
  }
}

// Slanting edges of 3-4-5 triangles, touched to the tick and missed by one.
TEST(FitOutline, TouchesSlantsToTheTick) {
  const std::int64_t unit = 1'000'000;
  const Outline triangle = one(ring({{0, 0}, {80 * unit, 0}, {0, 60 * unit}}));
  const EdgeTree edges(triangle);
  const std::int64_t radius = 20 * unit * ticks_in_nm;  // of the inscribed circle, (60 + 80 - 100) / 2
  const Form circle{FormKind::rounded, radius, radius, radius, 0, true};
  EdgesSettled settled;
  EXPECT_EQ(lies_at(edges, circle, {radius, radius}, 0, &settled), Where::inside);
  EXPECT_GT(settled.with_wide, 0);
  const Form larger{FormKind::rounded, radius + 1, radius + 1, radius + 1, 0, true};
  EXPECT_EQ(lies_at(edges, larger, {radius + 1, radius + 1}, 0), Where::outside);
  EXPECT_EQ(lies_at(edges, circle, {radius + 1, radius}, 0), Where::outside);
  EXPECT_EQ(lies_at(edges, circle, {radius, radius}, 1), Where::outside);
  const Form smaller{FormKind::rounded, radius - 4, radius - 4, radius - 4, 0, true};
  EXPECT_EQ(lies_at(edges, smaller, {radius, radius}, 4), Where::inside);
}

// ---- Panels that are outlines ----

struct RationalEdge {
  Rational x0, y0, x1, y1;
};

std::vector<RationalEdge> edges_of(const Outline& outline, const Rational& x, const Rational& y) {
  std::vector<RationalEdge> edges;
  for (const Ring& points : outline.rings) {
    for (std::size_t i = 0; i < points.points.size(); ++i) {
      const Point a = points.points[i], b = points.points[(i + 1) % points.points.size()];
      edges.push_back({a.x + x, a.y + y, b.x + x, b.y + y});
    }
  }
  return edges;
}

Rational cross(const Rational& x0, const Rational& y0, const Rational& x1, const Rational& y1) {
  return x0 * y1 - y0 * x1;
}

int side(const RationalEdge& edge, const Rational& x, const Rational& y) {
  return sgn(cross(edge.x1 - edge.x0, edge.y1 - edge.y0, x - edge.x0, y - edge.y0));
}

Rational squared_distance(const RationalEdge& edge, const Rational& x, const Rational& y) {
  const Rational dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0;
  Rational along = ((x - edge.x0) * dx + (y - edge.y0) * dy) / (dx * dx + dy * dy);
  along = std::max(Rational(0), std::min(Rational(1), along));
  return square_of(edge.x0 + along * dx - x) + square_of(edge.y0 + along * dy - y);
}

Rational squared_distance(const RationalEdge& a, const RationalEdge& b) {
  if (side(a, b.x0, b.y0) * side(a, b.x1, b.y1) < 0 && side(b, a.x0, a.y0) * side(b, a.x1, a.y1) < 0)
    return 0;
  return std::min({squared_distance(a, b.x0, b.y0), squared_distance(a, b.x1, b.y1),
                   squared_distance(b, a.x0, a.y0), squared_distance(b, a.x1, a.y1)});
}

// No border at all is left to the other way of asking: there it is undecided.
bool slowly_lies(const Outline& opening, const Outline& panel, Middle corner, std::int64_t border) {
  const Rational x = Rational(corner.x) / ticks_in_nm, y = Rational(corner.y) / ticks_in_nm;
  const Rational distance = Rational(border) / ticks_in_nm;
  for (const RationalEdge& a : edges_of(panel, x, y)) {
    for (const RationalEdge& b : edges_of(opening, 0, 0)) {
      if (squared_distance(a, b) < distance * distance) return false;
    }
  }
  for (const Ring& points : panel.rings) {
    if (!slowly_inside(opening, points.points[0].x + x, points.points[0].y + y)) return false;
  }
  for (const Ring& points : opening.rings) {
    if (slowly_inside(panel, points.points[0].x - x, points.points[0].y - y)) return false;
  }
  return true;
}

// With its box from (0, 0).
Outline small_panel(std::int64_t grid) {
  Outline panel = any_star(grid, *rc::gen::inRange<std::int64_t>(2, 7) * grid);
  if (*rc::gen::inRange(0, 3) == 0) panel = one(box_ring(0, 0, *rc::gen::inRange(1, 9) * grid, 3 * grid));
  const Box box = EdgeTree(panel).box();
  return changed(panel, [&](Point p) { return Point{p.x - box.least.x, p.y - box.least.y}; });
}

RC_GTEST_PROP(FitOutline, OutlineInOutlineIsTheSlowOne, ()) {
  const std::int64_t grid = *rc::gen::element<std::int64_t>(4, 20, 5'000'000);
  const Outline opening = any_outline(grid), panel = small_panel(grid);
  const EdgeTree edges(opening), panel_edges(panel);
  const std::int64_t quarter = grid * ticks_in_nm / 4;
  const Middle corner{*rc::gen::inRange<std::int64_t>(0, 80) * quarter,
                      *rc::gen::inRange<std::int64_t>(-20, 80) * quarter};
  const Middle middle{corner.x + panel_edges.box().width() * (ticks_in_nm / 2),
                      corner.y + panel_edges.box().height() * (ticks_in_nm / 2)};
  const std::int64_t border = std::max<std::int64_t>(
      1, *rc::gen::inRange<std::int64_t>(0, 6) * quarter + *rc::gen::inRange<std::int64_t>(-1, 2));
  const Where where = outline_lies_at(edges, panel_edges, middle, border);
  const bool slowly = slowly_lies(opening, panel, corner, border);
  RC_ASSERT(where == (slowly ? Where::inside : Where::outside));
  const double x = static_cast<double>(middle.x) / ticks_in_nm,
               y = static_cast<double>(middle.y) / ticks_in_nm;
  const double nm = static_cast<double>(border) / ticks_in_nm;
  const double depth = panel_depth(edges, panel_edges, x, y, nm, true);
  if (slowly) RC_ASSERT(!lies_nowhere_near(edges, panel_edges, depth, 0, nm));
  RC_TAG(slowly ? "lies there" : "does not");
}

// What the search gives lies there, and a place that the slow check finds for a larger one shows it wrong.
RC_GTEST_PROP(FitOutline, NoLargerOutlineOnAGrid, ()) {
  const std::int64_t grid = 1'000'000;
  const Outline opening = any_outline(grid);
  const Outline pattern = *rc::gen::arbitrary<bool>() ? any_star(1, 500) : any_skyline(60);
  const EdgeTree edges(opening);
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(1, 5) * grid / 4;
  const auto panel = [&](std::int64_t n) {
    const Box box = EdgeTree(pattern).box();
    return changed(pattern, [&](Point p) {
      return Point{(p.x - box.least.x) * n * grid / box.width(),
                   (p.y - box.least.y) * n * grid / box.height()};
    });
  };
  const OutlineChain chain{squares_of(grid, 40), [&](std::int64_t n) { return EdgeTree(panel(n)); },
                           *rc::gen::arbitrary<bool>()};
  const FoundPlace found = last_outline(edges, border, chain);
  const std::int64_t n = found.placed ? found.placed->sides.width / grid : 0;
  const auto corner_of = [&](Middle middle, std::int64_t of) {
    return Middle{middle.x - of * grid * (ticks_in_nm / 2), middle.y - of * grid * (ticks_in_nm / 2)};
  };
  if (found.placed)
    RC_ASSERT(slowly_lies(opening, panel(n), corner_of(found.placed->middle, n), border * ticks_in_nm));
  RC_TAG(found.undecided ? "undecided" : n > 0 ? "found" : "none");
  if (found.undecided) return;
  const Box& box = edges.box();
  for (std::int64_t larger = n + 1; larger * grid <= std::min(box.width(), box.height()); ++larger) {
    const EdgeTree panel_edges(panel(larger));
    for (std::int64_t x = box.least.x; x <= box.most.x; x += grid / 2) {
      for (std::int64_t y = box.least.y; y <= box.most.y; y += grid / 2) {
        const Middle middle{x * ticks_in_nm, y * ticks_in_nm};
        RC_ASSERT(outline_lies_at(edges, panel_edges, middle, border * ticks_in_nm) != Where::inside);
      }
    }
  }
}

// ---- The searches ----

// Whether a panel lies anywhere on a grid of places that has all corners of the outlines above.
bool lies_on_grid(const Outline& outline, const Form& form, std::int64_t border, std::int64_t grid) {
  const EdgeTree edges(outline);
  const Box& box = edges.box();
  for (std::int64_t x = box.least.x * 2; x <= box.most.x * 2; x += grid) {
    for (std::int64_t y = box.least.y * 2; y <= box.most.y * 2; y += grid) {
      if (lies_at(edges, form, {x * 2, y * 2}, border * ticks_in_nm) == Where::inside) return true;
    }
  }
  return false;
}

std::int64_t area(const FoundPlace& found, std::int64_t step) {
  return found.placed ? found.placed->sides.width / step * (found.placed->sides.height / step) : 0;
}

RC_GTEST_PROP(FitOutline, NothingLargerOnAGrid, ()) {
  const std::int64_t grid = 1'000'000;
  const Outline outline = any_outline(grid);
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(0, 3) * grid / 2;
  const EdgeTree edges(outline);
  const FoundPlace found = largest_rectangle(edges, border, grid);
  if (found.placed) {
    RC_ASSERT(
        slowly_lies(outline, rectangle(found.placed->sides), found.placed->middle, border * ticks_in_nm));
  }
  const std::int64_t best = area(found, grid);
  for (std::int64_t wide = 1; wide <= 24; ++wide) {
    const std::int64_t high = best / wide + 1;
    if (high > 24) continue;
    const Sides sides{wide * grid, high * grid};
    if (lies_on_grid(outline, rectangle(sides), border, grid)) RC_FAIL("a larger one lies there");
  }
}

RC_GTEST_PROP(FitOutline, NoLargerSquareOrCircleOnAGrid, ()) {
  const std::int64_t grid = 1'000'000;
  const Outline outline = any_outline(grid);
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(0, 3) * grid / 2;
  const EdgeTree edges(outline);
  const Chain chain = squares_of(grid, 100);
  const auto check = [&](const FoundPlace& found, const auto& form) {
    if (found.placed) {
      RC_ASSERT(slowly_lies(outline, form(found.placed->sides), found.placed->middle, border * ticks_in_nm));
    }
    const std::int64_t side = found.placed ? found.placed->sides.width + grid : grid;
    RC_ASSERT(!lies_on_grid(outline, form(Sides{side, side}), border, grid));
  };
  check(last_rectangle(edges, border, chain), rectangle);
  check(last_circle(edges, border, chain), circle);
}

// ---- Laws ----

Outline flipped(const Outline& outline) {
  return changed(outline, [](Point p) { return Point{-p.x, p.y}; });
}
Outline turned(const Outline& outline) {
  return changed(outline, [](Point p) { return Point{-p.y, p.x}; });
}
Outline moved(const Outline& outline, std::int64_t x, std::int64_t y) {
  return changed(outline, [&](Point p) { return Point{p.x + x, p.y + y}; });
}
Outline scaled(const Outline& outline, std::int64_t times) {
  return changed(outline, [&](Point p) { return Point{p.x * times, p.y * times}; });
}

// What is undecided is compared as if it fitted: either way of an outline may leave it open.
std::int64_t area_at_most(const FoundPlace& found, std::int64_t step) {
  const std::int64_t open =
      found.undecided ? found.undecided->width / step * (found.undecided->height / step) : 0;
  return std::max(area(found, step), open);
}

RC_GTEST_PROP(FitOutline, TurningAndScalingChangeNothing, ()) {
  const std::int64_t grid = 1'000'000, step = 700'000;
  const Outline outline = any_outline(grid);
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(0, 4) * grid / 3;
  const auto largest = [&](const Outline& other, std::int64_t times) {
    return largest_rectangle(EdgeTree(other), border * times, step * times);
  };
  const FoundPlace found = largest(outline, 1);
  const auto same = [&](const FoundPlace& other, std::int64_t times) {
    RC_ASSERT(area(found, step) <= area_at_most(other, step * times));
    RC_ASSERT(area(other, step * times) <= area_at_most(found, step));
  };
  same(largest(flipped(outline), 1), 1);
  same(largest(turned(outline), 1), 1);
  same(largest(turned(turned(outline)), 1), 1);
  same(largest(moved(outline, 12'345'677, -7'654'321), 1), 1);
  same(largest(scaled(outline, 7), 7), 7);
}

RC_GTEST_PROP(FitOutline, ALargerBorderLeavesNoMore, ()) {
  const std::int64_t grid = 1'000'000, step = 300'000;
  const EdgeTree edges(any_outline(grid));
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(0, 2 * grid);
  const std::int64_t more = border + *rc::gen::inRange<std::int64_t>(0, grid);
  const Chain chain = squares_of(step, 100);
  RC_ASSERT(area(largest_rectangle(edges, more, step), step) <=
            area_at_most(largest_rectangle(edges, border, step), step));
  RC_ASSERT(area(last_circle(edges, more, chain), step) <=
            area_at_most(last_circle(edges, border, chain), step));
  RC_ASSERT(area(last_rectangle(edges, more, chain), step) <=
            area_at_most(last_rectangle(edges, border, chain), step));
}

RC_GTEST_PROP(FitOutline, ALargerOpeningHoldsNoLess, ()) {
  const std::int64_t grid = 1'000'000, step = 300'000;
  const Outline outline = any_star(grid, 12 * grid);
  Outline larger = outline;  // towards the outside, seen from the middle it goes round
  for (Point& p : larger.rings[0].points) p = {p.x + (p.x - 12 * grid) / 10, p.y + (p.y - 12 * grid) / 10};
  const Chain chain = squares_of(step, 200);
  const EdgeTree less(outline), more(larger);
  RC_ASSERT(area(largest_rectangle(less, 0, step), step) <=
            area_at_most(largest_rectangle(more, 0, step), step));
  RC_ASSERT(area(last_circle(less, 0, chain), step) <= area_at_most(last_circle(more, 0, chain), step));
}

}  // namespace
}  // namespace insetbook
