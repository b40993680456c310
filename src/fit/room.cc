// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/room.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "fit/border.h"
#include "fit/free_circle.h"
#include "fit/free_rectangle.h"
#include "fit/inside.h"
#include "fit/last_that_holds.h"
#include "fit/outline_ground.h"
#include "fit/turned.h"

namespace insetbook {
namespace {

constexpr std::int64_t widths = 16;      // rectangles of a room
constexpr std::int64_t fineness = 2048;  // heights and diameters are found to this part of the box

// The last of a chain that lies inside, and the first that surely does not, by its width or height.
template <class Side>
std::pair<std::int64_t, std::int64_t> last_and_next(const FoundPlace& found, std::int64_t step, Side side) {
  const std::int64_t last = found.placed ? (found.placed->sides).*side : 0;
  const std::int64_t perhaps = found.undecided ? (*found.undecided).*side : last;
  return {last, std::max(last, perhaps) + step};
}

std::int64_t whole_step(std::int64_t longest) {
  return std::max<std::int64_t>(1, longest / fineness);
}

Form rectangle_form(Sides sides) {
  return {FormKind::rounded, sides.width * (ticks_in_nm / 2), sides.height * (ticks_in_nm / 2), 0, 0, true};
}

Form circle_form(std::int64_t across) {
  Form form = rectangle_form({across, across});
  form.radius = form.half_width;
  return form;
}

// How many of the steps lie inside in the middle; 0 where not even one does.
template <class FormOf>
std::int64_t steps_in_middle(const EdgeTree& edges, std::int64_t most, const FormOf& form) {
  const Middle middle = centre_of(edges);
  const auto fits = [&](std::int64_t n) { return lies_at(edges, form(n), middle, 0) == Where::inside; };
  return most > 0 && fits(1) ? last_that_holds(1, most, most, fits) : 0;
}

Room::Rectangles highest(const EdgeTree& edges, std::int64_t wide) {
  const std::int64_t step = whole_step(edges.box().height());
  const Chain chain{edges.box().height() / step, [&](std::int64_t n) { return Sides{wide, n * step}; }};
  const auto [high, too_high] = last_and_next(last_rectangle(edges, 0, chain), step, &Sides::height);
  const std::int64_t in_middle = steps_in_middle(edges, high / step, [&](std::int64_t n) {
    return rectangle_form({wide, n * step});
  });
  return {wide, in_middle * step, high, too_high};
}

void set_circles(const EdgeTree& edges, Room& room) {
  const std::int64_t across = std::min(edges.box().width(), edges.box().height());
  const std::int64_t step = whole_step(across);
  const Chain chain{across / step, [&](std::int64_t n) { return Sides{n * step, n * step}; }};
  std::tie(room.circle, room.too_large_a_circle) =
      last_and_next(last_circle(edges, 0, chain), step, &Sides::width);
  room.circle_in_middle = step * steps_in_middle(edges, room.circle / step,
                                                 [&](std::int64_t n) { return circle_form(n * step); });
}

// Of a panel that lies in another shape; the whole of it counts, wherever it is.
std::int64_t half_below(std::int64_t room) {
  return room < 0 ? -1 : room / 2;
}

// A panel with a border b around it holds what it holds with the border around that: of a rectangle, one that
// is √2 b wider and higher, as a circle holds a square.
std::int64_t over_root_two_above(std::int64_t room) {
  return room < 0 ? -1 : static_cast<std::int64_t>(std::ceil(static_cast<double>(room) / std::sqrt(2.0))) + 1;
}

BorderBounds bounds(const Room& room, Sides opening, const PanelReach& panel) {
  BorderBounds found;
  found.most = half_below(std::min(opening.width - panel.box.width, opening.height - panel.box.height) + 1);
  found.most = std::min(found.most, half_below(room.too_large_a_circle - panel.holds_circle + 1));
  if (panel.in_circle) {
    found.in_middle = half_below(room.circle_in_middle - *panel.in_circle);
    found.somewhere = half_below(room.circle - *panel.in_circle);
  }
  for (const Room::Rectangles& one : room.rectangles) {
    const auto within = [&](std::int64_t high) {
      return half_below(std::min(one.wide - panel.box.width, high - panel.box.height));
    };
    found.in_middle = std::max(found.in_middle, within(one.high_in_middle));
    found.somewhere = std::max(found.somewhere, within(one.high));
    found.most = std::min(found.most, over_root_two_above(std::max(one.wide - panel.holds.width,
                                                                   one.too_high - panel.holds.height)));
  }
  return found;
}

// Less than is surely kept, where the search would not decide it.
BorderBounds left_open(BorderBounds found, const PanelReach& panel) {
  constexpr std::int64_t undecided = 10'000;
  if (!panel.drawn) return found;
  for (std::int64_t* least : {&found.in_middle, &found.somewhere})
    *least = *least < undecided ? -1 : *least - undecided;
  return found;
}

PanelReach turned(const PanelReach& panel) {
  PanelReach other = panel;
  std::swap(other.box.width, other.box.height);
  std::swap(other.holds.width, other.holds.height);
  return other;
}

// Of a rectangle or circle in a plain shape, to the nanometre below; -1 where it does not fit.
std::int64_t border_of(const Ground& ground, const Form& panel) {
  const std::optional<Length> border = greatest_border(ground, panel);
  return border ? border->nm() : -1;
}

}  // namespace

Result<Room> room_in(const Shape& opening) {
  const Result<OutlineGround> ground = OutlineGround::of(opening);
  if (!ground) return failure(ground.error());
  const EdgeTree& edges = ground->edges();
  Room room;
  for (std::int64_t part = 1; part <= widths; ++part) {
    const Room::Rectangles one = highest(edges, edges.box().width() * part / widths);
    room.rectangles.push_back(one);
    if (one.high == 0) break;  // a wider one does not lie inside either
  }
  set_circles(edges, room);
  return room;
}

Result<PanelReach> reach_of(const Shape& panel) {
  PanelReach reach;
  reach.panel = panel;
  reach.box = {panel.width.nm(), panel.height.nm()};
  const std::int64_t shorter = std::min(reach.box.width, reach.box.height);
  if (panel.kind == ShapeKind::rectangle || panel.kind == ShapeKind::square) {
    reach.holds = reach.box;
    reach.holds_circle = shorter;
    return reach;
  }
  if (panel.kind == ShapeKind::circle) {
    const auto side = static_cast<std::int64_t>(static_cast<double>(shorter) / std::sqrt(2.0)) - 1;
    reach.in_circle = reach.holds_circle = shorter;
    reach.holds = {side, side};
    return reach;
  }
  reach.drawn = true;
  const Result<OutlineGround> ground = OutlineGround::of(panel);
  if (!ground) return failure(ground.error());
  const FoundPlace found =
      largest_rectangle(ground->edges(), 0, whole_step(std::max(reach.box.width, reach.box.height)) * 8);
  if (found.placed) reach.holds = found.placed->sides;
  Room circles;
  set_circles(ground->edges(), circles);
  reach.holds_circle = circles.circle;
  reach.hull = hull_of(ground->edges());
  return reach;
}

BorderBounds border_bounds(const Room& room, Sides opening, const PanelReach& panel, bool may_turn) {
  const BorderBounds found = left_open(bounds(room, opening, panel), panel);
  if (!may_turn || !turned_by_a_quarter(panel.panel)) return found;
  const BorderBounds other = left_open(bounds(room, opening, turned(panel)), panel);
  return {std::max(found.in_middle, other.in_middle), std::max(found.somewhere, other.somewhere),
          std::max(found.most, other.most)};
}

BorderBounds border_bounds(const Shape& plain_opening, const PanelReach& panel) {
  const Ground ground(form_of(plain_opening));
  BorderBounds found;
  found.somewhere = border_of(ground, rectangle_form(panel.box));
  // The widest place of a triangle or a pentagon is not its middle.
  const bool as_wide_in_middle = plain_opening.kind != ShapeKind::polygon || plain_opening.sides % 2 == 0;
  found.in_middle = as_wide_in_middle ? found.somewhere : -1;
  found.most = half_below(
      std::min(plain_opening.width.nm() - panel.box.width, plain_opening.height.nm() - panel.box.height));
  const auto at_most = [&](const Form& held) {
    if (held.half_width <= 0 || held.half_height <= 0) return;
    const std::int64_t border = border_of(ground, held);
    found.most = std::min(found.most, border < 0 ? -1 : border + 1);
  };
  at_most(rectangle_form(panel.holds));
  at_most(circle_form(panel.holds_circle));
  if (const auto hull = hull_bounds(form_of(plain_opening), panel.hull)) {
    const auto whole = [](double nm) { return static_cast<std::int64_t>(std::floor(nm)) - usual_error; };
    found.in_middle = std::max(found.in_middle, whole(hull->in_middle));
    found.somewhere = std::max(found.somewhere, whole(hull->somewhere));
    found.most = std::min(found.most, whole(hull->most) + 2 * usual_error + 1);
  }
  return left_open(found, panel);
}

}  // namespace insetbook
