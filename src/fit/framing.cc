// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "fit/border.h"
#include "fit/framing_in_outline.h"
#include "fit/panels_in_outline.h"
#include "fit/turned.h"
#include "fit/verdict.h"

namespace insetbook {
namespace {

Length nm_below(std::int64_t tick_count) {
  return round_down(Length::nm(tick_count), Length::nm(ticks_in_nm)) / ticks_in_nm;
}

// Half of the opening's width, in ticks, at the height at which the panel's middle lies. (In a curved opening
// a polygon of an odd number of sides may lie off the middle too; there the widest place is what is said.)
std::int64_t half_width_at(const Ground& ground, std::int64_t height) {
  const Form& opening = ground.form();
  return opening.kind == FormKind::polygon ? half_width_of_polygon(ground.edges(), height)
                                           : opening.half_width;
}

void set_distances(const Ground& ground, const Form& panel, Length step, Framing& framing) {
  const Form& opening = ground.form();
  const std::int64_t height = height_in(ground, panel, ticks(framing.greatest_border));
  const std::int64_t up_and_down = opening.half_height - panel.half_height;
  const std::int64_t beside = half_width_at(ground, height) - panel.half_width;
  framing.left = framing.right = nm_below(beside);
  framing.top = nm_below(up_and_down - height);
  framing.bottom = nm_below(up_and_down + height);
  const auto [least, most] = std::minmax({beside, up_and_down - height, up_and_down + height});
  framing.even = 2 * (most - least) <= ticks(step);
}

// Round two curved corners whose straight sides are `distance` apart the strip is as wide as beside them when
// the radii differ by just that distance; a panel rounder than that leaves more, up to √2 - 1 of what its
// radius is too large. One less round shows in the greatest border.
std::int64_t widening_at_corners(const Form& opening, const Form& panel, std::int64_t distance) {
  const std::int64_t even = std::max<std::int64_t>(0, opening.radius - distance);
  return panel.radius <= even
             ? 0
             : static_cast<std::int64_t>(static_cast<Int128>(panel.radius - even) * 41421357 / 100000000);
}

bool is_round(const Form& form) {
  return form.kind == FormKind::ellipse || form.is_circle();
}

// The widest place of the strip between a panel and the line, or nothing where their outlines are of
// different kinds.
std::optional<std::int64_t> widest_strip(const Ground& ground, const Form& panel, const Framing& framing) {
  const Form& opening = ground.form();
  const std::int64_t beside = ticks(std::max({framing.left, framing.right, framing.top, framing.bottom}));
  if (is_round(opening) && is_round(panel)) return beside;
  if (opening.kind != panel.kind) return std::nullopt;
  if (opening.kind == FormKind::rounded) return beside + widening_at_corners(opening, panel, beside);
  if (opening.sides != panel.sides || opening.flat_on_top != panel.flat_on_top) return std::nullopt;
  return widest_strip_in_polygon(ground.edges(), panel,
                                 height_in(ground, panel, ticks(framing.greatest_border)));
}

std::optional<Framing> framed(const Opening& opening, const Ground& ground, const Shape& panel, Length border,
                              Length step) {
  const Length room = std::min(opening.shape.width - panel.width, opening.shape.height - panel.height);
  if (room < 2 * border) return std::nullopt;
  const Form form = form_of(panel);
  if (!holds(lies_in(ground, form, ticks(border)))) return std::nullopt;
  Framing framing;
  framing.greatest_border = *greatest_border(ground, form);
  framing.verdict = verdict_inside(opening, form);
  set_distances(ground, form, step, framing);
  if (const auto widest = widest_strip(ground, form, framing)) {
    framing.even_strip = 2 * (*widest - ticks(framing.greatest_border)) <= ticks(step);
  }
  return framing;
}

using Framed = std::optional<Framing>;

Framed tighter(const Framed& lying, Framed turned) {
  if (turned) turned->turned = true;
  return turned && (!lying || turned->greatest_border > lying->greatest_border) ? turned : lying;
}

Result<Framed> framing_of_forms(const Opening& opening, const Shape& panel,
                                const std::optional<Shape>& turned, Length border, Length step) {
  const Ground ground(form_of(opening.shape));
  const Framed lying = framed(opening, ground, panel, border, step);
  if (!turned) return lying;
  return tighter(lying, framed(opening, ground, *turned, border, step));
}

Result<Framed> framing_of_outlines(const Opening& opening, const Shape& panel,
                                   const std::optional<Shape>& turned, Length border, Length step) {
  const Result<Framed> lying = framed_in_outline(opening, panel, border, step);
  if (!lying || !turned) return lying;
  const Result<Framed> other = framed_in_outline(opening, *turned, border, step);
  if (!other) return other;
  return tighter(*lying, *other);
}

}  // namespace

Result<std::optional<Framing>> framing(const Opening& opening, const Shape& panel, Length border, Length step,
                                       bool may_turn) {
  if (auto problem = not_computable(opening.shape)) return failure(*problem);
  if (std::max(panel.width, panel.height) > largest_figure && missing_figure(panel).empty() &&
      !is_outline(panel))
    return std::optional<Framing>();
  if (auto problem = not_computable(panel)) return failure(*problem);
  const Length at_least = std::max(border, Length());
  const std::optional<Shape> other = may_turn ? turned_by_a_quarter(panel) : std::nullopt;
  const bool outlines = is_outline(opening.shape) || is_outline(panel);
  return outlines ? framing_of_outlines(opening, panel, other, at_least, step)
                  : framing_of_forms(opening, panel, other, at_least, step);
}

std::optional<Length> border_in_the_middle(const Opening& opening, const Shape& panel, Length border,
                                           bool may_turn) {
  const Length at_least = std::max(border, Length());
  std::optional<Length> found = middle_border_in_outline(opening.shape, panel, at_least);
  const std::optional<Shape> turned = may_turn ? turned_by_a_quarter(panel) : std::nullopt;
  if (!turned) return found;
  const std::optional<Length> other = middle_border_in_outline(opening.shape, *turned, at_least);
  return found && other ? std::max(*found, *other) : found ? found : other;
}

}  // namespace insetbook
