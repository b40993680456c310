// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/framing_in_outline.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "fit/outline_family.h"
#include "fit/smaller_opening.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

Sides sides_of(const Shape& shape) {
  return {shape.width.nm(), shape.height.nm()};
}

// The family that has this one panel.
Result<OutlineFamily> family_of(const OutlineGround& ground, const Shape& panel, Length border, Length step) {
  std::optional<CurvedOutline> drawn;
  if (!is_whole_figure(panel.kind)) {
    Result<CurvedOutline> curves = outline_of(panel);
    if (!curves) return failure(curves.error());
    drawn = std::move(*curves);
  }
  return OutlineFamily(ground, panel.kind, std::move(drawn), border, step);
}

// The way from a point to the nearest edge in a direction along an axis, to the nanometre below; to be shown.
Length way_to_edge(const EdgeTree& edges, double x, double y, bool along_x, double direction) {
  double least = std::numeric_limits<double>::infinity();
  edges.walk(
      [&](const EdgeNode& node) {
        return along_x ? node.y_least <= y && y <= node.y_most : node.x_least <= x && x <= node.x_most;
      },
      [&](const OutlineEdge& edge) {
        const double from = along_x ? edge.y0 - y : edge.x0 - x, to = along_x ? edge.y1 - y : edge.x1 - x;
        if (from * to > 0 || from == to) return true;
        const double part = from / (from - to);
        const double at =
            along_x ? edge.x0 + part * (edge.x1 - edge.x0) - x : edge.y0 + part * (edge.y1 - edge.y0) - y;
        if (at * direction >= -1) least = std::min(least, std::max(0.0, at * direction));
        return true;
      });
  return std::isfinite(least) ? Length::nm(static_cast<std::int64_t>(least)) : Length();
}

// Where the panel reaches the sides of its box, as seen from the box's top left corner.
struct Reaches {
  std::vector<double> left, right;  // heights
  std::vector<double> top, bottom;  // from the left
};

// A heart reaches its top in two places; a rectangle is met in the middle of each side.
Reaches reaches_of(const EdgeTree* drawn, Sides sides) {
  const double middle_x = static_cast<double>(sides.width) / 2,
               middle_y = static_cast<double>(sides.height) / 2;
  if (drawn == nullptr) return {{middle_y}, {middle_y}, {middle_x}, {middle_x}};
  constexpr double close = 2000;  // nm: twice what its edges may be off
  Reaches reaches;
  for (const OutlineEdge& edge : drawn->edges()) {
    if (edge.x0 <= close) reaches.left.push_back(edge.y0);
    if (edge.x0 >= 2 * middle_x - close) reaches.right.push_back(edge.y0);
    if (edge.y0 <= close) reaches.top.push_back(edge.x0);
    if (edge.y0 >= 2 * middle_y - close) reaches.bottom.push_back(edge.x0);
  }
  return reaches;
}

void set_distances(const EdgeTree& edges, Sides sides, const Reaches& reaches, Middle middle, Length step,
                   Framing& framing) {
  const double left = static_cast<double>(middle.x) / ticks_in_nm - static_cast<double>(sides.width) / 2,
               top = static_cast<double>(middle.y) / ticks_in_nm - static_cast<double>(sides.height) / 2;
  const double right = left + static_cast<double>(sides.width),
               bottom = top + static_cast<double>(sides.height);
  const auto least = [](const std::vector<double>& places, const auto& way) {
    Length found = largest_figure;
    for (const double place : places) found = std::min(found, way(place));
    return places.empty() ? Length() : found;
  };
  framing.left = least(reaches.left, [&](double y) { return way_to_edge(edges, left, top + y, true, -1); });
  framing.right = least(reaches.right, [&](double y) { return way_to_edge(edges, right, top + y, true, 1); });
  framing.top = least(reaches.top, [&](double x) { return way_to_edge(edges, left + x, top, false, -1); });
  framing.bottom =
      least(reaches.bottom, [&](double x) { return way_to_edge(edges, left + x, bottom, false, 1); });
  const auto [least_side, most_side] =
      std::minmax({framing.left, framing.right, framing.top, framing.bottom});
  framing.even = 2 * (most_side - least_side) <= step;
}

// The widest place of the strip between panel and line: how far the panel's edge is from the line, and how
// far the line's is from the panel, where at a corner the strip is √2 of what it is beside it.
Length widest_strip(const EdgeTree& opening, const EdgeTree& panel, Middle middle) {
  const double x = static_cast<double>(middle.x) / ticks_in_nm - static_cast<double>(panel.box().width()) / 2;
  const double y =
      static_cast<double>(middle.y) / ticks_in_nm - static_cast<double>(panel.box().height()) / 2;
  double widest = 0;
  for (const OutlineEdge& edge : panel.edges()) {
    widest = std::max(widest, opening.depth(edge.x0 + x, edge.y0 + y));
    widest = std::max(widest, opening.depth((edge.x0 + edge.x1) / 2 + x, (edge.y0 + edge.y1) / 2 + y));
  }
  for (const OutlineEdge& edge : opening.edges()) {
    const double corner = -panel.depth(edge.x0 - x, edge.y0 - y) / std::numbers::sqrt2;
    const double beside = -panel.depth((edge.x0 + edge.x1) / 2 - x, (edge.y0 + edge.y1) / 2 - y);
    // A curve has no corner in its middle: the top of a scallop is as far as it is.
    widest = std::max({widest, corner, edge.error > 0 ? beside : beside / std::numbers::sqrt2});
  }
  return Length::nm(std::llround(widest));
}

}  // namespace

Result<Verdict> verdict_in_outline(const Opening& opening, const Shape& panel, Length border) {
  const Result<OutlineGround> ground = OutlineGround::of(opening.shape);
  if (!ground) return failure(ground.error());
  const Result<OutlineFamily> family = family_of(*ground, panel, border, Length::nm(1));
  if (!family) return failure(family.error());
  const FoundPlace found = family->given_side(panel.width, panel.height);
  if (found.placed) return SmallerOpening(opening, *ground).verdict(*family, sides_of(panel));
  return found.undecided ? Verdict::undecided : Verdict::too_big;
}

std::optional<Length> middle_border_in_outline(const Shape& opening, const Shape& panel, Length border) {
  if (std::min(opening.width - panel.width, opening.height - panel.height) < 2 * border) return std::nullopt;
  const Result<OutlineGround> ground = OutlineGround::of(opening);
  if (!ground) return std::nullopt;
  const Result<OutlineFamily> family = family_of(*ground, panel, border, Length::nm(1));
  if (!family) return std::nullopt;
  const std::optional<Placed> placed = family->in_the_middle(sides_of(panel));
  if (!placed) return std::nullopt;
  return family->shown(*placed).border;
}

Result<std::optional<Framing>> framed_in_outline(const Opening& opening, const Shape& panel, Length border,
                                                 Length step) {
  const Length room = std::min(opening.shape.width - panel.width, opening.shape.height - panel.height);
  if (room < 2 * border) return std::optional<Framing>();
  const Result<OutlineGround> ground = OutlineGround::of(opening.shape);
  if (!ground) return failure(ground.error());
  const Result<OutlineFamily> family = family_of(*ground, panel, border, step);
  if (!family) return failure(family.error());
  const Sides sides = sides_of(panel);
  const std::optional<Placed> placed = family->somewhere(sides);
  if (!placed) return std::optional<Framing>();
  const OutlineFamily::Shown shown = family->widest(*placed);
  Framing framing;
  framing.greatest_border = shown.border;
  framing.verdict = SmallerOpening(opening, *ground).verdict(*family, sides);
  const Result<CurvedOutline> curves = outline_of(panel);
  const Result<EdgeTree> drawn = curves ? scaled_edges(*curves, sides, usual_error) : failure(curves.error());
  const bool by_middles = !drawn || is_whole_figure(panel.kind);
  set_distances(ground->edges(), sides, reaches_of(by_middles ? nullptr : &*drawn, sides), shown.middle, step,
                framing);
  if (drawn) {
    const Length widest = widest_strip(ground->edges(), *drawn, shown.middle);
    framing.even_strip = 2 * (widest - framing.greatest_border) <= step;
  }
  return framing;
}

}  // namespace insetbook
