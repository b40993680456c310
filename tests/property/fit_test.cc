// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of what fits, and slow obvious twins of the exact check and of the searches.
#include "fit/fit.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "fit/border.h"
#include "fit/family.h"
#include "fit/inside.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

// ---- Made-up shapes ----

// Some lengths lie on ruler marks, so that panels touch exactly; some one nanometre beside them; some
// anywhere; a few at the limits.
Length any_length(std::int64_t most) {
  const int way = *rc::gen::inRange(0, 8);
  const std::int64_t mark =
      in64(4).nm() * *rc::gen::inRange<std::int64_t>(1, std::max<std::int64_t>(2, most / in64(4).nm()));
  std::int64_t nm = mark;
  if (way == 0) nm = *rc::gen::inRange<std::int64_t>(1, 50);
  if (way == 1) nm = most - *rc::gen::inRange<std::int64_t>(0, 3);
  if (way == 2) nm = mark + *rc::gen::inRange<std::int64_t>(-1, 2);
  if (way >= 5) nm = *rc::gen::inRange<std::int64_t>(1, most);
  return Length::nm(std::clamp<std::int64_t>(nm, 1, most));
}

Shape any_shape(std::int64_t most) {
  const auto kind = *rc::gen::element(ShapeKind::circle, ShapeKind::oval, ShapeKind::square,
                                      ShapeKind::rectangle, ShapeKind::rounded_rectangle, ShapeKind::polygon);
  const Length width = any_length(most);
  const bool equal = kind == ShapeKind::circle || kind == ShapeKind::square || *rc::gen::inRange(0, 4) == 0;
  Shape shape = plain(kind, width, equal ? width : any_length(most));
  if (kind == ShapeKind::rounded_rectangle) {
    const std::int64_t half = std::min(shape.width, shape.height).nm() / 2;
    shape.corner_radius = std::min(any_length(std::max<std::int64_t>(half, 1)), Length::nm(half));
  }
  if (kind == ShapeKind::polygon) {
    shape.sides = *rc::gen::inRange(3, 14);
    shape.flat_on_top = *rc::gen::arbitrary<bool>();
  }
  return shape;
}

constexpr std::int64_t usual = 200'000'000;

// A panel not much smaller than the opening, so that the answer is open.
Shape panel_for(const Shape& opening) {
  Shape panel = any_shape(std::max<std::int64_t>(2, std::max(opening.width, opening.height).nm()));
  if (*rc::gen::inRange(0, 3) != 0) {
    const std::int64_t part = *rc::gen::inRange<std::int64_t>(300, 1001);
    const bool round = panel.kind == ShapeKind::circle || panel.kind == ShapeKind::square;
    panel.width = Length::nm(std::max<std::int64_t>(1, opening.width.nm() * part / 1000));
    panel.height =
        round ? panel.width : Length::nm(std::max<std::int64_t>(1, opening.height.nm() * part / 1000));
    if (panel.corner_radius) {
      panel.corner_radius = std::min({*panel.corner_radius, panel.width / 2, panel.height / 2});
    }
  }
  if (panel.kind == ShapeKind::polygon && opening.kind == ShapeKind::polygon && *rc::gen::arbitrary<bool>()) {
    panel.sides = opening.sides;
    panel.flat_on_top = opening.flat_on_top;
  }
  return panel;
}

// ---- The slow twin: how far a convex outline reaches in every direction ----

struct Corner {
  long double x, y;
};

class Reach {
 public:
  explicit Reach(const Shape& shape)
      : kind_(shape.kind),
        half_width_(static_cast<long double>(shape.width.nm()) / 2),
        half_height_(static_cast<long double>(shape.height.nm()) / 2) {
    if (kind_ == ShapeKind::rounded_rectangle) radius_ = static_cast<long double>(shape.corner_radius->nm());
    if (kind_ == ShapeKind::circle) radius_ = half_width_;
    if (kind_ == ShapeKind::polygon) set_corners(shape);
  }

  long double in(long double angle) const {
    const long double x = std::fabs(std::cos(angle)), y = std::fabs(std::sin(angle));
    if (kind_ == ShapeKind::oval) return std::hypot(half_width_ * x, half_height_ * y);
    if (kind_ != ShapeKind::polygon)
      return (half_width_ - radius_) * x + (half_height_ - radius_) * y + radius_;
    long double most = -1e30L;
    for (const Corner& corner : corners_) {
      most = std::max(most, corner.x * std::cos(angle) + corner.y * std::sin(angle));
    }
    return most;
  }

  // Directions in which the reach has a corner or may be met by one.
  const std::vector<long double>& normals() const { return normals_; }

 private:
  void set_corners(const Shape& shape) {
    const long double pi = std::numbers::pi_v<long double>;
    const long double first = shape.flat_on_top ? pi / shape.sides : 0;
    for (int i = 0; i < shape.sides; ++i) {
      const long double angle = first + 2 * pi * i / shape.sides;
      corners_.push_back({std::sin(angle), std::cos(angle)});
    }
    const auto by_x = [](const Corner& a, const Corner& b) { return a.x < b.x; };
    const auto by_y = [](const Corner& a, const Corner& b) { return a.y < b.y; };
    const auto [left, right] = std::minmax_element(corners_.begin(), corners_.end(), by_x);
    const auto [bottom, top] = std::minmax_element(corners_.begin(), corners_.end(), by_y);
    const long double x0 = left->x, x1 = right->x, y0 = bottom->y, y1 = top->y;
    for (Corner& corner : corners_) {
      corner = {half_width_ * (2 * corner.x - x0 - x1) / (x1 - x0),
                half_height_ * (2 * corner.y - y0 - y1) / (y1 - y0)};
    }
    for (std::size_t i = 0; i < corners_.size(); ++i) {
      const Corner &a = corners_[i], &b = corners_[(i + 1) % corners_.size()];
      normals_.push_back(std::atan2(b.x - a.x, a.y - b.y) + pi / 2);
      normals_.push_back(std::atan2(b.y - a.y, b.x - a.x) + pi / 2);
    }
  }

  ShapeKind kind_;
  long double half_width_, half_height_, radius_ = 0;
  std::vector<Corner> corners_;
  std::vector<long double> normals_;
};

// The least of a function near `middle` on which it has one valley within `width`.
template <class Function>
long double valley(const Function& function, long double middle, long double width) {
  long double low = middle - width, high = middle + width;
  for (int round = 0; round < 90; ++round) {
    const long double first = low + (high - low) / 3, second = high - (high - low) / 3;
    (function(first) < function(second) ? high : low) = function(first) < function(second) ? second : first;
  }
  return function((low + high) / 2);
}

// The room for a border with the panel's middle moved up by `up`, in nanometres: the least over all
// directions.
long double room_at(const Reach& opening, const Reach& panel, long double up, int directions) {
  const auto room = [&](long double angle) { return opening.in(angle)-panel.in(angle)-up * std::sin(angle); };
  const long double turn = 2 * std::numbers::pi_v<long double>;
  std::vector<std::pair<long double, long double>> found;
  for (int i = 0; i < directions; ++i) found.emplace_back(room(turn * i / directions), turn * i / directions);
  for (const long double angle : opening.normals()) found.emplace_back(room(angle), angle);
  for (const long double angle : panel.normals()) found.emplace_back(room(angle), angle);
  std::partial_sort(found.begin(), found.begin() + 6, found.end());
  long double least = found[0].first;
  for (int i = 0; i < 6; ++i) {
    least = std::min(least, valley(room, found[static_cast<std::size_t>(i)].second, turn / directions));
  }
  return least;
}

bool upside_down_alike(const Shape& shape) {
  return shape.kind != ShapeKind::polygon || shape.sides % 2 == 0;
}

long double slow_room(const Shape& opening, const Shape& panel) {
  const Reach outer(opening), inner(panel);
  if (upside_down_alike(opening) && upside_down_alike(panel)) return room_at(outer, inner, 0, 720);
  const auto height = static_cast<long double>(opening.height.nm());
  const auto less_room = [&](long double up) { return -room_at(outer, inner, up, 180); };
  return -valley(less_room, 0, height);
}

Where where_at(const Shape& opening, const Shape& panel, Length border) {
  return lies_in(Ground(form_of(opening)), form_of(panel), ticks(border));
}

// As inside.h says.
bool always_decided(const Shape& opening, const Shape& panel) {
  const bool curved = opening.kind == ShapeKind::oval || opening.kind == ShapeKind::rounded_rectangle;
  const auto rational = [](const Shape& shape) {
    return shape.kind != ShapeKind::polygon || shape.sides == 3 || shape.sides == 4 || shape.sides == 6;
  };
  if (!rational(opening) || !rational(panel)) return false;
  if (panel.kind == ShapeKind::polygon) return opening.kind == ShapeKind::polygon || upside_down_alike(panel);
  return panel.kind != ShapeKind::oval || !curved || opening.kind == ShapeKind::oval;
}

RC_GTEST_PROP(ExactCheck, AgreesWithASlowLookInEveryDirection, ()) {
  const Shape opening = any_shape(*rc::gen::element(usual, largest_figure.nm(), std::int64_t{1000}));
  const Shape panel = panel_for(opening);
  const long double room = slow_room(opening, panel);
  const long double blur =
      0.001L + 1e-12L * static_cast<long double>(opening.width.nm() + opening.height.nm());
  const std::int64_t around =
      std::max<std::int64_t>(0, std::llround(room)) + *rc::gen::inRange<std::int64_t>(-3, 4);
  const std::int64_t anywhere =
      *rc::gen::inRange<std::int64_t>(0, std::max<std::int64_t>(1, opening.width.nm()));
  for (const std::int64_t border : {std::max<std::int64_t>(0, around), std::int64_t{0}, anywhere}) {
    const Where where = where_at(opening, panel, Length::nm(border));
    const long double left = room - static_cast<long double>(border);
    if (always_decided(opening, panel)) RC_ASSERT(where != Where::undecided);
    RC_CLASSIFY(where == Where::undecided, "undecided");
    RC_CLASSIFY(where == Where::on, "touching");
    RC_CLASSIFY(where == Where::inside, "inside");
    if (left > 1 + blur) RC_ASSERT(where == Where::inside);
    if (left < -1 - blur) RC_ASSERT(where == Where::outside);
    if (left > blur) RC_ASSERT(where == Where::inside || where == Where::undecided);
    if (left < -blur) RC_ASSERT(where == Where::outside || where == Where::undecided);
  }
}

// ---- Exact touching, made on purpose ----

// The half axes 2 and 5 (in any unit) have at (6/5, 4) the normal (15, 8)/17; 17/100 inwards from there lies
// (105/100, 392/100).
RC_GTEST_PROP(ExactCheck, KnowsWhenTheCornerOfARectangleTouchesAnOval, ()) {
  const std::int64_t unit = *rc::gen::inRange<std::int64_t>(1, 1'000'000);
  const bool across = *rc::gen::arbitrary<bool>();
  const auto turned = [&](Shape shape) {
    if (across) std::swap(shape.width, shape.height);
    return shape;
  };
  const Shape opening = turned(oval(Length::nm(400 * unit), Length::nm(1000 * unit)));
  const std::int64_t width = 210 * unit, height = 784 * unit;
  const Length border = Length::nm(17 * unit);
  const auto at = [&](std::int64_t w, std::int64_t h, Length b) {
    return where_at(opening, turned(rectangle(Length::nm(w), Length::nm(h))), b);
  };
  RC_ASSERT(at(width, height, border) == Where::on);
  RC_ASSERT(at(width + 1, height, border) == Where::outside);
  RC_ASSERT(at(width, height + 1, border) == Where::outside);
  RC_ASSERT(at(width - 1, height, border) == Where::inside);
  RC_ASSERT(at(width, height - 1, border) == Where::inside);
  RC_ASSERT(at(width, height, border + Length::nm(1)) == Where::outside);
  if (unit > 1) RC_ASSERT(at(width, height, border - Length::nm(1)) == Where::inside);
}

// A rectangle of 3 by 4 parts touches a circle of 5.
RC_GTEST_PROP(ExactCheck, KnowsWhenARectangleTouchesACircle, ()) {
  const std::int64_t part = *rc::gen::inRange<std::int64_t>(2, 100'000'000);
  const Length border = Length::nm(*rc::gen::inRange<std::int64_t>(0, 10'000'000));
  const Shape opening = circle(Length::nm(5 * part) + 2 * border);
  RC_ASSERT(where_at(opening, rectangle(Length::nm(3 * part), Length::nm(4 * part)), border) == Where::on);
  RC_ASSERT(where_at(opening, rectangle(Length::nm(3 * part + 1), Length::nm(4 * part)), border) ==
            Where::outside);
  RC_ASSERT(where_at(opening, rectangle(Length::nm(3 * part - 1), Length::nm(4 * part)), border) ==
            Where::inside);
}

// In a diamond of 6 by 8 parts the middle is 12/5 from each side; in a triangle of base 6 and height 4 the
// inscribed circle is 3 wide.
RC_GTEST_PROP(ExactCheck, KnowsWhenACircleTouchesTheSlantingSidesOfAPolygon, ()) {
  const std::int64_t part = *rc::gen::inRange<std::int64_t>(1, 10'000'000);
  const bool upside_down = *rc::gen::arbitrary<bool>();
  const Shape diamond = polygon(4, Length::nm(30 * part), Length::nm(40 * part), false);
  const Shape triangle = polygon(3, Length::nm(6 * part), Length::nm(4 * part), upside_down);
  const std::int64_t border = *rc::gen::inRange<std::int64_t>(0, part);
  const auto at = [&](const Shape& opening, std::int64_t width) {
    return where_at(opening, circle(Length::nm(width - 2 * border)), Length::nm(border));
  };
  RC_ASSERT(at(diamond, 24 * part) == Where::on);
  RC_ASSERT(at(diamond, 24 * part + 1) == Where::outside);
  RC_ASSERT(at(triangle, 3 * part) == Where::on);
  RC_ASSERT(at(triangle, 3 * part + 1) == Where::outside);
  if (3 * part - 1 > 2 * border) RC_ASSERT(at(triangle, 3 * part - 1) == Where::inside);
}

// ---- Laws ----

Shape turned_by_quarter(Shape shape) {
  std::swap(shape.width, shape.height);
  if (shape.kind == ShapeKind::polygon && shape.sides % 4 == 2) shape.flat_on_top = !shape.flat_on_top;
  return shape;
}

RC_GTEST_PROP(ExactCheck, IsTheSameTurnedByAQuarter, ()) {
  const Shape opening = any_shape(usual), panel = panel_for(opening);
  RC_PRE(upside_down_alike(opening) && upside_down_alike(panel));
  const Length border = any_length(std::max<std::int64_t>(1, opening.width.nm() / 4));
  RC_ASSERT(where_at(opening, panel, border) ==
            where_at(turned_by_quarter(opening), turned_by_quarter(panel), border));
}

RC_GTEST_PROP(ExactCheck, IsTheSameTurnedUpsideDown, ()) {
  Shape opening = any_shape(usual), panel = panel_for(opening);
  const Length border = any_length(std::max<std::int64_t>(1, opening.width.nm() / 4));
  const Where before = where_at(opening, panel, border);
  for (Shape* shape : {&opening, &panel}) {
    if (shape->kind == ShapeKind::polygon && shape->sides % 2 == 1) shape->flat_on_top = !shape->flat_on_top;
  }
  RC_ASSERT(where_at(opening, panel, border) == before);
}

RC_GTEST_PROP(ExactCheck, IsTheSameAtEveryScale, ()) {
  const Shape opening = any_shape(1'000'000), panel = panel_for(opening);
  const std::int64_t times = *rc::gen::inRange<std::int64_t>(2, 1000);
  const Length border = any_length(std::max<std::int64_t>(1, opening.width.nm() / 4));
  const auto scaled = [&](Shape shape) {
    shape.width = shape.width * times;
    shape.height = shape.height * times;
    if (shape.corner_radius) shape.corner_radius = *shape.corner_radius * times;
    return shape;
  };
  const Where small = where_at(opening, panel, border);
  const Where large = where_at(scaled(opening), scaled(panel), border * times);
  // What is undecided below a nanometre may be decided when it is larger.
  RC_ASSERT(small == large || small == Where::undecided || large == Where::undecided);
}

RC_GTEST_PROP(ExactCheck, NeverHoldsForMoreThanItHeldFor, ()) {
  const Shape opening = any_shape(usual);
  Shape panel = panel_for(opening);
  const Length border = any_length(std::max<std::int64_t>(1, opening.width.nm() / 4));
  RC_PRE(holds(where_at(opening, panel, border)));
  RC_ASSERT(where_at(opening, panel, border) <= where_at(opening, panel, border - Length::nm(1)));
  Shape larger = opening;
  larger.width += Length::nm(*rc::gen::inRange<std::int64_t>(0, 1000));
  larger.height += larger.kind == ShapeKind::circle || larger.kind == ShapeKind::square
                       ? larger.width - opening.width
                       : Length::nm(*rc::gen::inRange<std::int64_t>(0, 1000));
  RC_ASSERT(where_at(larger, panel, border) != Where::outside);
  panel.kind = panel.kind == ShapeKind::polygon || panel.kind == ShapeKind::rounded_rectangle
                   ? panel.kind
                   : ShapeKind::oval;
  RC_ASSERT(where_at(opening, panel, border) != Where::outside);
}

RC_GTEST_PROP(GreatestBorder, IsTheLastThatFits, ()) {
  const Shape opening = any_shape(usual), panel = panel_for(opening);
  const auto border = greatest_border(Ground(form_of(opening)), form_of(panel));
  RC_ASSERT(border.has_value() == holds(where_at(opening, panel, Length())));
  if (!border) return;
  RC_ASSERT(holds(where_at(opening, panel, *border)));
  RC_ASSERT(!holds(where_at(opening, panel, *border + Length::nm(1))));
}

// ---- The searches against going through everything ----

FitQuestion coarse_question(const Shape& opening) {
  FitQuestion question;
  const std::int64_t longest = std::max(opening.width, opening.height).nm();
  question.step = Length::nm(std::max<std::int64_t>(1, longest / *rc::gen::inRange<std::int64_t>(1, 90)));
  question.border = Length::nm(*rc::gen::inRange<std::int64_t>(0, 1 + longest / 8));
  question.shapes = {opening.kind, ShapeKind::oval, ShapeKind::rectangle, ShapeKind::square,
                     ShapeKind::circle};
  return question;
}

Int128 area(const Shape& shape) {
  return static_cast<Int128>(shape.width.nm()) * shape.height.nm();
}

RC_GTEST_PROP(PanelsInside, KeepTheirPromise, ()) {
  const Shape opening = any_shape(usual);
  const FitQuestion question = coarse_question(opening);
  const auto panels = panels_inside({opening, Length()}, question);
  RC_ASSERT(panels.has_value());
  for (const Panel& panel : *panels) {
    RC_ASSERT(panel.shape.width.nm() % question.step.nm() == 0 &&
              panel.shape.height.nm() % question.step.nm() == 0);
    RC_ASSERT(holds(where_at(opening, panel.shape, question.border)));
    RC_ASSERT(panel.border >= question.border);
    RC_ASSERT(panel.verdict == Verdict::fits);
    const bool one_figure = panel.shape.kind == ShapeKind::circle || panel.shape.kind == ShapeKind::square;
    Shape wider = panel.shape, taller = panel.shape;
    wider.width += question.step;
    taller.height += question.step;
    if (one_figure) wider.height = taller.width = wider.width;
    const bool larger_fits =
        holds(where_at(opening, wider, question.border)) || holds(where_at(opening, taller, question.border));
    if (panel.kind == PanelKind::largest && panel.shape.kind != ShapeKind::polygon) RC_ASSERT(!larger_fits);
  }
}

RC_GTEST_PROP(PanelsInside, ListTheLargestOfAllThereAre, ()) {
  const Shape opening = any_shape(usual);
  FitQuestion question = coarse_question(opening);
  const auto kind =
      *rc::gen::element(ShapeKind::rectangle, ShapeKind::oval, ShapeKind::square, ShapeKind::circle);
  question.shapes = {kind};
  const auto panels = panels_inside({opening, Length()}, question);
  RC_ASSERT(panels.has_value());
  const bool one_figure = kind == ShapeKind::circle || kind == ShapeKind::square;
  Int128 most = 0;
  for (Length width = question.step; width <= opening.width; width += question.step) {
    for (Length height = question.step; height <= opening.height; height += question.step) {
      const Shape panel = plain(kind, width, height);
      if (one_figure && width != height) continue;
      if (area(panel) > most && holds(where_at(opening, panel, question.border))) most = area(panel);
    }
  }
  RC_ASSERT((panels->empty() ? Int128{0} : area(panels->front().shape)) == most);
}

RC_GTEST_PROP(PanelsInside, AreNoLargerWithAWiderBorderNorSmallerInALargerOpening, ()) {
  const Shape opening = any_shape(usual);
  const FitQuestion question = coarse_question(opening);
  const auto largest = [](const Shape& shape, FitQuestion asked) {
    asked.shapes = {ShapeKind::rectangle};
    const auto panels = panels_inside({shape, Length()}, asked);
    return panels->empty() ? Int128{0} : area(panels->front().shape);
  };
  FitQuestion wider = question;
  wider.border += any_length(usual / 8);
  RC_ASSERT(largest(opening, wider) <= largest(opening, question));
  Shape larger = opening;
  larger.width += any_length(usual / 8);
  larger.height += opening.width == opening.height ? larger.width - opening.width : any_length(usual / 8);
  RC_ASSERT(largest(larger, question) >= largest(opening, question));
}

// The chain of the opening's proportions, gone through from its small end.
RC_GTEST_PROP(PanelsInside, ListTheLastInProportion, ()) {
  const Shape opening = any_shape(usual);
  const FitQuestion question = coarse_question(opening);
  const Ground ground(form_of(opening));
  const Opening measured{opening, Length()};
  const Family family(measured, ground, plain(ShapeKind::rectangle, Length(), Length()), question.border,
                      question.step);
  const std::int64_t step = question.step.nm(), width = opening.width.nm(), height = opening.height.nm();
  std::optional<Sides> last;
  for (std::int64_t i = 0, j = 0; i * step <= width && j * step <= height;) {
    if (i > 0 && j > 0) {
      const Shape panel = rectangle(Length::nm(i * step), Length::nm(j * step));
      if (!holds(where_at(opening, panel, question.border))) break;
      last = Sides{i * step, j * step};
    }
    const Int128 next_width = static_cast<Int128>(i + 1) * height,
                 next_height = static_cast<Int128>(j + 1) * width;
    i += next_width <= next_height ? 1 : 0;
    j += next_height <= next_width ? 1 : 0;
  }
  RC_ASSERT(family.proportional() == last);
}

RC_GTEST_PROP(PanelsInside, ListTheLargestEvenBorder, ()) {
  const Shape opening = any_shape(usual);
  RC_PRE(opening.kind == ShapeKind::oval || opening.kind == ShapeKind::rectangle);
  const FitQuestion question = coarse_question(opening);
  const Ground ground(form_of(opening));
  const Opening measured{opening, Length()};
  const Family family(measured, ground, plain(opening.kind, Length(), Length()), question.border,
                      question.step);
  Int128 most = 0;
  for (Length width = question.step; width <= opening.width; width += question.step) {
    for (Length height = question.step; height <= opening.height; height += question.step) {
      const std::int64_t uneven = (opening.width - width - opening.height + height).nm();
      const Shape panel = plain(opening.kind, width, height);
      if (std::abs(uneven) > question.step.nm() || area(panel) <= most) continue;
      if (holds(where_at(opening, panel, question.border))) most = area(panel);
    }
  }
  const auto found = family.even_border();
  RC_ASSERT((found ? static_cast<Int128>(found->width) * found->height : 0) == most);
}

// ---- Estimates ----

RC_GTEST_PROP(Estimates, OfAnEvenSetAreRight, ()) {
  const std::int64_t step = *rc::gen::inRange<std::int64_t>(1, 10'000'000);
  const std::size_t count = *rc::gen::inRange<std::size_t>(0, 12);
  const Length give_or_take = Length::nm(*rc::gen::inRange<std::int64_t>(0, 1'000'000));
  std::vector<Ranked> all;
  for (std::size_t i = 0; i < count; ++i) {
    const Length width = Length::nm(200'000'000 - static_cast<std::int64_t>(i) * step);
    all.push_back({width, width + Length::mm(20), give_or_take});
  }
  std::vector<std::optional<Ranked>> known;
  for (const Ranked& one : all)
    known.push_back(*rc::gen::arbitrary<bool>() ? std::optional(one) : std::nullopt);
  const auto found = estimates(known);
  RC_ASSERT(found.size() == known.size());
  const auto measured =
      std::count_if(known.begin(), known.end(), [](const auto& one) { return one.has_value(); });
  for (std::size_t i = 0; i < count; ++i) {
    const auto is_known = [](const auto& one) { return one.has_value(); };
    const bool between =
        std::any_of(known.begin(), known.begin() + static_cast<std::ptrdiff_t>(i), is_known) &&
        std::any_of(known.begin() + static_cast<std::ptrdiff_t>(i) + 1, known.end(), is_known);
    RC_ASSERT(found[i].has_value() == (between && !known[i]));
    if (!found[i]) continue;
    RC_ASSERT(found[i]->width == all[i].width && found[i]->height == all[i].height);
    RC_ASSERT(found[i]->spread ==
              std::max(give_or_take, measured == 2 ? Length::nm((step + 1) / 2) : Length()));
  }
}

}  // namespace
}  // namespace insetbook
