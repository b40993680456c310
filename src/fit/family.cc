// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/family.h"

#include <algorithm>

#include "fit/last_that_holds.h"

namespace insetbook {
namespace {

std::int64_t down_to(std::int64_t nm, std::int64_t step) {
  return nm / step * step;
}

Int128 area(Sides sides) {
  return static_cast<Int128>(sides.width) * sides.height;
}

}  // namespace

Family::Family(const Opening& opening, const Ground& ground, Shape pattern, Length border, Length step)
    : opening_(opening),
      ground_(ground),
      pattern_(std::move(pattern)),
      border_(ticks(border)),
      step_(step.nm()),
      most_width_(opening.shape.width.nm() - 2 * border.nm()),
      most_height_(opening.shape.height.nm() - 2 * border.nm()) {}

// A corner radius can be no more than half of a side.
Shape Family::shape(Sides sides) const {
  Shape shape = pattern_;
  shape.width = Length::nm(sides.width);
  shape.height = Length::nm(sides.height);
  if (shape.corner_radius)
    shape.corner_radius = std::min({*shape.corner_radius, shape.width / 2, shape.height / 2});
  return shape;
}

Form Family::form(Sides sides) const {
  Shape shape;
  shape.kind = pattern_.kind;
  shape.width = Length::nm(sides.width);
  shape.height = Length::nm(sides.height);
  shape.corner_radius = pattern_.corner_radius;
  shape.sides = pattern_.sides;
  shape.flat_on_top = pattern_.flat_on_top;
  return form_of(shape);
}

// A panel with a side of no step is none, and is in nobody's way.
Where Family::where(Sides sides) const {
  if (sides.width <= 0 || sides.height <= 0) return Where::inside;
  if (sides.width > most_width_ || sides.height > most_height_) return Where::outside;
  return lies_in(ground_, form(sides), border_);
}

std::optional<Sides> Family::largest() const {
  if (most_width_ < step_ || most_height_ < step_) return std::nullopt;
  if (one_figure()) return largest_of_one_figure();
  if (pattern_.kind == ShapeKind::polygon) return proportional();
  return largest_of_two_figures(step_);
}

std::optional<Sides> Family::largest_of_one_figure() const {
  const std::int64_t most = std::min(most_width_, most_height_) / step_;
  const std::int64_t steps = last_that_holds(0, most, most, [&](std::int64_t n) {
    return fits({n * step_, n * step_});
  });
  if (steps == 0) return std::nullopt;
  return Sides{steps * step_, steps * step_};
}

// The longest other side, in whole steps, with which a panel of the given side fits; 0 when none does.
Sides Family::longest(std::int64_t given, bool given_is_width, std::int64_t step, std::int64_t guess) const {
  const auto sides = [&](std::int64_t n) {
    return given_is_width ? Sides{given, n * step} : Sides{n * step, given};
  };
  const std::int64_t most = std::max<std::int64_t>(0, (given_is_width ? most_height_ : most_width_) / step);
  return sides(last_that_holds(0, most, guess / step, [&](std::int64_t n) { return fits(sides(n)); }));
}

// Larger area; of equal ones, the one nearer the opening's proportions: whose ratio of ratios is nearer 1.
bool Family::better(Sides a, Sides b) const {
  if (area(a) != area(b)) return area(a) > area(b);
  return nearer_proportions(a, b, {opening_.shape.width.nm(), opening_.shape.height.nm()});
}

// The longest height h(w) that fits a width w is concave in w, because all panels (w, h) that fit form a
// convex set: half way between two panels that fit is one that fits. So the area w h(w) rises to one peak and
// falls. Looking outwards from any width, where w (h + step), more than the area that any panel of that width
// can have, is not above the best found nearer by, everything farther out on that side is smaller still. A
// first look in coarser steps finds a width near the peak. The side with fewer steps is gone through.
std::optional<Sides> Family::largest_of_two_figures(std::int64_t step) const {
  constexpr std::int64_t few = 64, coarser = 8;
  const bool by_width = most_width_ <= most_height_;
  const std::int64_t most = std::min(most_width_, most_height_) / step;
  if (most < 1) return std::nullopt;
  const auto coarse = most > few ? largest_of_two_figures(step * coarser) : std::nullopt;
  const Sides near = coarse.value_or(Sides{most * step, most * step});
  const std::int64_t start = (by_width ? near.width : near.height) / step;
  Sides best;
  const auto look = [&](std::int64_t n, std::int64_t& guess) {
    const Sides here = longest(n * step, by_width, step, guess);
    if (area(here) > 0 && (area(best) == 0 || better(here, best))) best = here;
    guess = by_width ? here.height : here.width;
    return static_cast<Int128>(n * step) * (guess + step) > area(best);
  };
  std::int64_t guess = by_width ? near.height : near.width;
  for (std::int64_t n = start; n >= 1 && look(n, guess); --n) {
  }
  guess = by_width ? near.height : near.width;
  for (std::int64_t n = start + 1; n <= most && look(n, guess); ++n) {
  }
  if (area(best) == 0) return std::nullopt;
  return best;
}

Sides Family::in_proportion_to_width(std::int64_t width) const {
  const Int128 height = static_cast<Int128>(width) * opening_.shape.height.nm() / opening_.shape.width.nm();
  return {width, down_to(static_cast<std::int64_t>(height), step_)};
}

Sides Family::in_proportion_to_height(std::int64_t height) const {
  const Int128 width = static_cast<Int128>(height) * opening_.shape.width.nm() / opening_.shape.height.nm();
  return {down_to(static_cast<std::int64_t>(width), step_), height};
}

// As the opening is made smaller evenly, its sides rounded down change one at a time: each such panel is the
// first of its width or the first of its height. The last of either that fits is the last of all.
std::optional<Sides> Family::proportional() const {
  if (one_figure()) return largest();
  if (most_width_ < step_ || most_height_ < step_) return std::nullopt;
  const std::int64_t most_wide = most_width_ / step_, most_high = most_height_ / step_;
  const std::int64_t wide = last_that_holds(
      0, most_wide, most_wide, [&](std::int64_t n) { return fits(in_proportion_to_width(n * step_)); });
  const std::int64_t high = last_that_holds(
      0, most_high, most_high, [&](std::int64_t n) { return fits(in_proportion_to_height(n * step_)); });
  const Sides by_width = in_proportion_to_width(wide * step_),
              by_height = in_proportion_to_height(high * step_);
  const Sides best = area(by_width) >= area(by_height) ? by_width : by_height;
  if (best.width == 0 || best.height == 0) return std::nullopt;
  return best;
}

// For each difference of width and height, in whole steps, that keeps the borders within half a step of each
// other (two or three of them), the last panel that fits; of these the best. A polygon's border is even when
// it is the same polygon smaller.
std::optional<Sides> Family::even_border() const {
  if (one_figure()) return largest();
  if (pattern_.kind == ShapeKind::polygon) return proportional();
  const std::int64_t difference = opening_.shape.width.nm() - opening_.shape.height.nm();
  const std::int64_t middle = difference / step_;
  std::optional<Sides> best;
  for (std::int64_t more = middle - 2; more <= middle + 2; ++more) {
    if (std::abs(difference - more * step_) > step_) continue;
    const std::int64_t first = std::max<std::int64_t>(0, more);
    const std::int64_t most = std::min(most_width_ / step_, most_height_ / step_ + more);
    if (most < first + 1) continue;
    const auto sides = [&](std::int64_t n) { return Sides{n * step_, (n - more) * step_}; };
    const Sides last =
        sides(last_that_holds(first, most, most, [&](std::int64_t n) { return fits(sides(n)); }));
    if (last.width == 0 || last.height == 0) continue;
    if (!best || better(last, *best)) best = last;
  }
  return best;
}

std::optional<Sides> Family::given_side(std::optional<Length> width, std::optional<Length> height) const {
  Sides sides;
  if (width && height) {
    sides = {width->nm(), height->nm()};
    if (one_figure() && sides.width != sides.height) return std::nullopt;
  } else if (one_figure()) {
    const std::int64_t side = (width ? *width : *height).nm();
    sides = {side, side};
  } else if (pattern_.kind == ShapeKind::polygon) {
    sides = width ? in_proportion_to_width(width->nm()) : in_proportion_to_height(height->nm());
  } else {
    sides = width ? longest(width->nm(), true, step_, most_height_)
                  : longest(height->nm(), false, step_, most_width_);
  }
  if (sides.width <= 0 || sides.height <= 0 || !fits(sides)) return std::nullopt;
  return sides;
}

bool Family::larger_undecided(Sides sides) const {
  const Sides wider{sides.width + step_, one_figure() ? sides.height + step_ : sides.height};
  const Sides taller{one_figure() ? sides.width + step_ : sides.width, sides.height + step_};
  return where(wider) == Where::undecided || where(taller) == Where::undecided;
}

}  // namespace insetbook
