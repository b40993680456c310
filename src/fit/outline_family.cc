// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/outline_family.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "fit/free_circle.h"
#include "fit/last_that_holds.h"
#include "shape/shape_outline.h"
#include "shape/wide.h"

namespace insetbook {
namespace {

// nm; borders of two places that are no more apart are alike. An outline's place takes long to find.
constexpr std::int64_t alike_when_plain = 10'000, alike_when_drawn = 100'000;

Int128 area(Sides sides) {
  return static_cast<Int128>(sides.width) * sides.height;
}

std::int64_t times(std::int64_t a, std::int64_t b, std::int64_t divided_by) {
  return static_cast<std::int64_t>(static_cast<Int128>(a) * b / divided_by);
}

// The first member of a chain that has both sides, by how long its shorter side grows.
std::int64_t first_with_both(std::int64_t count, const std::function<Sides(std::int64_t)>& at) {
  std::int64_t without = 0, with = count + 1;
  while (with - without > 1) {
    const std::int64_t middle = without + (with - without) / 2;
    const Sides sides = at(middle);
    (sides.width > 0 && sides.height > 0 ? with : without) = middle;
  }
  return with;
}

Chain without_empty(std::int64_t count, std::function<Sides(std::int64_t)> at) {
  if (count < 1) return {};
  const std::int64_t before = first_with_both(count, at) - 1;
  return {count - before, [at = std::move(at), before](std::int64_t n) { return at(n + before); }};
}

// The better of two answers by area, and what either leaves open above it.
FoundPlace better(FoundPlace a, FoundPlace b) {
  const auto size = [](const FoundPlace& found) {
    return found.placed ? area(found.placed->sides) : Int128{0};
  };
  FoundPlace best = size(a) >= size(b) ? a : b;
  best.undecided.reset();
  best.ended = false;
  for (const FoundPlace* found : {&a, &b}) {
    if (!found->undecided || area(*found->undecided) <= size(best)) continue;
    if (!best.undecided || area(*found->undecided) > area(*best.undecided)) best.undecided = found->undecided;
    best.ended |= found->ended;
  }
  best.looked_at = a.looked_at + b.looked_at;
  return best;
}

Form whole_form(ShapeKind kind, Sides sides) {
  Form form{FormKind::rounded, sides.width * (ticks_in_nm / 2), sides.height * (ticks_in_nm / 2), 0, 0, true};
  if (kind == ShapeKind::circle) form.radius = form.half_width;
  return form;
}

// Path data and a heart's construction are stretched to their box; other figures stay as they are.
bool is_one_outline_scaled(const Shape& shape) {
  return !shape.outline.empty() || shape.kind == ShapeKind::heart;
}

bool open(const FoundPlace& found) {
  return found.undecided.has_value();
}

}  // namespace

bool is_whole_figure(ShapeKind kind) {
  return kind == ShapeKind::rectangle || kind == ShapeKind::square || kind == ShapeKind::circle;
}

OutlineFamily::OutlineFamily(const OutlineGround& ground, ShapeKind kind, std::optional<CurvedOutline> drawn,
                             Length border, Length step, std::optional<Shape> pattern)
    : ground_(ground),
      kind_(kind),
      drawn_(std::move(drawn)),
      pattern_(std::move(pattern)),
      border_(border),
      step_(step.nm()) {}

EdgeTree OutlineFamily::panel_edges(Sides sides) const {
  std::optional<CurvedOutline> curves = drawn_;
  if (pattern_) {
    Shape shape = *pattern_;
    shape.width = Length::nm(sides.width);
    shape.height = Length::nm(sides.height);
    Result<CurvedOutline> own = outline_of(shape);
    if (!own) return EdgeTree(Outline{});
    curves = std::move(*own);
  }
  const Result<EdgeTree> edges = scaled_edges(*curves, sides, usual_error);
  return edges ? *edges : EdgeTree(Outline{});
}

FoundPlace OutlineFamily::last(const OutlineGround& ground, Length border, const Chain& chain) const {
  if (chain.count < 1) return {};
  const std::int64_t nm = border.nm();
  if (drawn_) {
    const OutlineChain drawn{chain, [&](std::int64_t n) { return panel_edges(chain.at(n)); },
                             !pattern_ || is_one_outline_scaled(*pattern_)};
    return last_outline(ground.edges(), nm, drawn);
  }
  return ground.ask(
      [&](const EdgeTree& edges) {
        return kind_ == ShapeKind::circle ? last_circle(edges, nm, chain) : last_rectangle(edges, nm, chain);
      },
      open);
}

// The opening's proportions, the other side rounded down; all that are as wide as the opening or less.
Chain OutlineFamily::by_width() const {
  const Sides whole = ground_.size();
  const bool equal = kind_ == ShapeKind::square || kind_ == ShapeKind::circle;
  return without_empty(whole.width / step_, [whole, equal, step = step_](std::int64_t n) {
    const std::int64_t width = n * step;
    return Sides{width, equal ? width : times(width, whole.height, whole.width) / step * step};
  });
}

Chain OutlineFamily::by_height() const {
  const Sides whole = ground_.size();
  return without_empty(whole.height / step_, [whole, step = step_](std::int64_t n) {
    const std::int64_t height = n * step;
    return Sides{times(height, whole.width, whole.height) / step * step, height};
  });
}

FoundPlace OutlineFamily::largest() const {
  if (drawn_ || kind_ != ShapeKind::rectangle) return proportional();
  return ground_.ask([&](const EdgeTree& edges) { return largest_rectangle(edges, border_.nm(), step_); },
                     open);
}

FoundPlace OutlineFamily::proportional() const {
  const FoundPlace wide = last(ground_, border_, by_width());
  if (kind_ == ShapeKind::square || kind_ == ShapeKind::circle) return wide;
  return better(wide, last(ground_, border_, by_height()));
}

// As family.h: for each difference of the sides, in whole steps, that leaves what is left and right within
// half a step of what is above and below.
FoundPlace OutlineFamily::even_border() const {
  const Sides whole = ground_.size();
  const std::int64_t difference = whole.width - whole.height, middle = difference / step_;
  FoundPlace best;
  for (std::int64_t more = middle - 2; more <= middle + 2; ++more) {
    if (std::abs(difference - more * step_) > step_) continue;
    const std::int64_t skipped = std::max<std::int64_t>(0, more);
    const Chain chain{std::min(whole.width / step_, whole.height / step_ + more) - skipped,
                      [more, skipped, step = step_](std::int64_t n) {
                        return Sides{(n + skipped) * step, (n + skipped - more) * step};
                      }};
    best = better(best, last(ground_, border_, chain));
  }
  return best;
}

FoundPlace OutlineFamily::given_side(std::optional<Length> width, std::optional<Length> height) const {
  const bool equal = kind_ == ShapeKind::square || kind_ == ShapeKind::circle;
  const auto one = [&](Sides sides) {
    if (sides.width <= 0 || sides.height <= 0) return FoundPlace{};
    return last(ground_, border_, {1, [sides](std::int64_t) { return sides; }});
  };
  if (width && height) return equal && *width != *height ? FoundPlace{} : one({width->nm(), height->nm()});
  const std::int64_t given = (width ? *width : *height).nm();
  if (equal) return one({given, given});
  const Sides whole = ground_.size();
  if (drawn_) {
    return width ? one({given, times(given, whole.height, whole.width) / step_ * step_})
                 : one({times(given, whole.width, whole.height) / step_ * step_, given});
  }
  const Chain chain{(width ? whole.height : whole.width) / step_, [&](std::int64_t n) {
                      return width ? Sides{given, n * step_} : Sides{n * step_, given};
                    }};
  return last(ground_, border_, chain);
}

// A panel at its place, ready to be checked with several borders.
class OutlineFamily::Check {
 public:
  Check(const OutlineFamily& family, const Placed& placed) : family_(family), placed_(placed) {
    if (!family.drawn_) return;
    panel_ = family.panel_edges(placed.sides);
  }

  Where where(std::int64_t border) const {
    const OutlineGround& ground = family_.ground_;
    if (panel_) {
      return panel_->empty() ? Where::undecided
                             : outline_lies_at(ground.edges(), *panel_, placed_.middle, border * ticks_in_nm);
    }
    return ground.ask(
        [&](const EdgeTree& edges) {
          return lies_at(edges, whole_form(family_.kind_, placed_.sides), placed_.middle,
                         border * ticks_in_nm);
        },
        [](Where where) { return where == Where::undecided; });
  }

  // About the greatest border; it only saves checks.
  std::int64_t guess() const {
    const double x = static_cast<double>(placed_.middle.x) / ticks_in_nm;
    const double y = static_cast<double>(placed_.middle.y) / ticks_in_nm;
    const EdgeTree& opening = family_.ground_.edges();
    if (family_.kind_ == ShapeKind::circle && !panel_)
      return std::llround(opening.depth(x, y)) - placed_.sides.width / 2;
    if (!panel_) return family_.border_.nm();
    const double left = x - static_cast<double>(panel_->box().width()) / 2;
    const double top = y - static_cast<double>(panel_->box().height()) / 2;
    double least = static_cast<double>(placed_.sides.width);
    for (const OutlineEdge& edge : panel_->edges())
      least = std::min(least, opening.depth(edge.x0 + left, edge.y0 + top));
    return std::llround(least - opening.error() - panel_->error());
  }

 private:
  const OutlineFamily& family_;
  const Placed& placed_;
  std::optional<EdgeTree> panel_;
};

// Outlines that touch on curves are undecided at the border with which they do: where half of what the boxes
// leave is that border, it is what is shown.
Length OutlineFamily::border_at(const Placed& placed) const {
  const Check check(*this, placed);
  const Sides whole = ground_.size();
  const std::int64_t room =
      std::min(whole.width - placed.sides.width, whole.height - placed.sides.height) / 2;
  const std::int64_t most = std::max(border_.nm(), room);
  const auto fits = [&](std::int64_t nm) { return check.where(nm) == Where::inside; };
  const std::int64_t sure = last_that_holds(border_.nm(), most, check.guess(), fits);
  return Length::nm(most - sure <= 5 * usual_error && check.where(most) != Where::outside ? most : sure);
}

std::optional<Placed> OutlineFamily::in_the_middle(Sides sides) const {
  const Placed centred{sides, centre_of(ground_.edges())};
  if (Check(*this, centred).where(border_.nm()) != Where::inside) return std::nullopt;
  return centred;
}

// A search that was ended undecided may still have missed a place that lies deep enough.
std::optional<Placed> OutlineFamily::somewhere(Sides sides) const {
  if (const auto centred = in_the_middle(sides)) return centred;
  const FoundPlace found = given_side(Length::nm(sides.width), Length::nm(sides.height));
  if (found.placed || !found.undecided || !drawn_) return found.placed;
  const Placed best = deepest({sides, centre_of(ground_.edges())}).first;
  if (Check(*this, best).where(border_.nm()) != Where::inside) return std::nullopt;
  return best;
}

OutlineFamily::Shown OutlineFamily::shown(const Placed& placed) const {
  if (const auto centred = in_the_middle(placed.sides)) return {centred->middle, border_at(*centred), true};
  Placed best = placed;
  const Chain only{1, [&](std::int64_t) { return placed.sides; }};
  std::int64_t holds = border_.nm(), fails = border_.nm() + 2 * step_;
  for (int round = 0; round < 5 && fails - holds > 1; ++round) {
    const std::int64_t middle = holds + (fails - holds) / 2;
    const FoundPlace found = last(ground_, Length::nm(middle), only);
    if (found.placed) best = *found.placed;
    (found.placed ? holds : fails) = middle;
  }
  best = aligned(best, holds);
  return {best.middle, border_at(best), false};
}

// The middle of one way, where that is as good: nobody would choose a place beside it.
Placed OutlineFamily::aligned(const Placed& placed, std::int64_t border) const {
  const Middle centre = centre_of(ground_.edges());
  for (const Middle middle : {Middle{centre.x, placed.middle.y}, Middle{placed.middle.x, centre.y}}) {
    const Placed other{placed.sides, middle};
    if (Check(*this, other).where(border) == Where::inside) return other;
  }
  return placed;
}

// Where a panel that is drawn itself lies deepest, and the border that it surely keeps there.
std::pair<Placed, std::int64_t> OutlineFamily::deepest(const Placed& placed) const {
  const EdgeTree panel = panel_edges(placed.sides);
  if (panel.empty()) return {placed, border_.nm()};
  const EdgeTree& opening = ground_.edges();
  const DeepPlace deep = deepest_place(opening, panel, placed.middle, alike_when_drawn);
  const Placed there{placed.sides, deep.middle};
  const auto surely = static_cast<std::int64_t>(deep.depth - opening.error() - panel.error()) - 1;
  if (surely > border_.nm() && Check(*this, there).where(surely) == Where::inside) return {there, surely};
  return {placed, border_.nm()};
}

OutlineFamily::Shown OutlineFamily::widest(const Placed& placed) const {
  const std::optional<Placed> centred = in_the_middle(placed.sides);
  const std::int64_t in_middle = centred ? border_at(*centred).nm() : -1;
  const Sides whole = ground_.size();
  const std::int64_t most =
      std::min(whole.width - placed.sides.width, whole.height - placed.sides.height) / 2;
  const std::int64_t alike = drawn_ ? alike_when_drawn : alike_when_plain;
  if (centred && most <= in_middle + alike) return {centred->middle, Length::nm(in_middle), true};
  const auto [best, holds] =
      drawn_ ? deepest(centred.value_or(placed)) : widest_plain(centred.value_or(placed), most);
  if (centred && holds <= in_middle + 2 * alike) return {centred->middle, Length::nm(in_middle), true};
  const Placed nice = aligned(amid(best, holds), holds);
  return {nice.middle, border_at(nice), false};
}

// By halving: a larger border leaves fewer places. In doubling steps first: where it fits in the middle there
// is seldom much more elsewhere.
std::pair<Placed, std::int64_t> OutlineFamily::widest_plain(const Placed& placed, std::int64_t most) const {
  Placed best = placed;
  const Chain only{1, [&](std::int64_t) { return placed.sides; }};
  std::int64_t holds = border_at(placed).nm(), fails = most + alike_when_plain;
  for (std::int64_t step = alike_when_plain; fails - holds > alike_when_plain; step *= 2) {
    const std::int64_t tried = std::min(holds + step, holds + (fails - holds) / 2);
    const FoundPlace found = last(ground_, Length::nm(tried), only);
    if (found.placed) best = *found.placed;
    (found.placed ? holds : fails) = tried;
    if (!found.placed) step = alike_when_plain / 2;  // doubled at once
  }
  return {best, holds};
}

// Between two sides that are as near, half-way: as far as it can be moved either way, in nm.
Placed OutlineFamily::amid(Placed placed, std::int64_t border) const {
  constexpr std::int64_t farthest = 100'000;
  const std::int64_t step = drawn_ ? 500 : 1;  // an outline is slow to check
  for (std::int64_t Middle::*const way : {&Middle::x, &Middle::y}) {
    const auto moved = [&](std::int64_t nm) {
      Placed other = placed;
      other.middle.*way += nm * ticks_in_nm;
      return other;
    };
    const auto room = [&](std::int64_t direction) {
      return step * last_that_holds(0, farthest / step, 0, [&](std::int64_t steps) {
               return Check(*this, moved(direction * steps * step)).where(border) == Where::inside;
             });
    };
    const std::int64_t before = room(-1), behind = room(1);
    if (before < farthest && behind < farthest) placed.middle.*way += (behind - before) * ticks_in_nm / 2;
  }
  return placed;
}

bool OutlineFamily::lies_in(const OutlineGround& other, Sides sides, Length border) const {
  return last(other, border, {1, [sides](std::int64_t) { return sides; }}).placed.has_value();
}

}  // namespace insetbook
