// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/curves.h"

#include <algorithm>
#include <cmath>

#include "shape/curve_points.h"
#include "shape/region.h"
#include "shape/said_point.h"

namespace insetbook {
namespace {

constexpr std::int64_t limit = std::int64_t{1} << 30;

// An open contour whose ends lie so close together was meant to be closed: the larger of these.
constexpr std::int64_t close_together = 100'000;  // 0.1 mm
constexpr std::int64_t close_part_of_box = 100;   // a hundredth of the longer side

// ---- What is said to the person ----

Problem goes_round_nothing(const CurvedOutline& outline) {
  std::string what = "the outline goes round nothing";
  if (!outline.contours.empty())
    what = "the outline at " + said(outline.contours[0].start) + " goes round nothing";
  return {.what = what, .where = {}, .expected = "a line round an area", .candidates = {}};
}

Problem stays_open(Point start, Point end) {
  return {.what = "the line that starts at " + said(start) + " ends at " + said(end) + " and is not closed",
          .where = {},
          .expected = "a line that comes back to its start (\"z\" in path data closes it)",
          .candidates = {}};
}

Problem reaches_too_far(Point near) {
  return {
      .what = "the outline near " + said(near) + " reaches too far or has too many parts to compute with",
      .where = {},
      .expected = "at most 1073 mm (42 in) from the origin each way, and curves that are not all but endless",
      .candidates = {}};
}

Problem crosses_too_often() {
  return {.what = "the outline crosses itself too often to be mended",
          .where = {},
          .expected = "an outline that crosses itself at most a hundred thousand times",
          .candidates = {}};
}

std::string closed_here(Point start, Point end) {
  return "the line that starts at " + said(start) + " ended at " + said(end) + ": it was closed";
}

std::string left_out(Point start) {
  return "the line at " + said(start) + " goes round nothing: it was left out";
}

std::string crosses_here(const std::vector<Point>& crossings, FillRule rule) {
  std::string text = "the outline crosses or overlaps itself at " + said(crossings[0]);
  if (crossings.size() > 1) {
    text +=
        " and at " + std::to_string(crossings.size() - 1) + " more place" + (crossings.size() > 2 ? "s" : "");
  }
  return text + (rule == FillRule::even_odd ? ": what an odd number of lines go round was kept"
                                            : ": what the lines go round, all told, was kept");
}

// ---- From curves to points ----

struct Ways {
  std::vector<Ring> rings;
  std::vector<std::string> mended;
};

bool within_reach(Point point) {
  return std::abs(point.x) <= limit && std::abs(point.y) <= limit;
}

Result<std::vector<Point>> points_of(const Contour& contour, double bound) {
  std::vector<Point> points = {contour.start};
  Point from = contour.start;
  if (!within_reach(from)) return failure(reaches_too_far(from));
  for (const Curve& curve : contour.curves) {
    if (!within_reach(end_of(curve)) || !add_points(from, curve, bound, points))
      return failure(reaches_too_far(from));
    from = end_of(curve);
  }
  points.erase(std::unique(points.begin(), points.end()), points.end());
  return points;
}

bool ends_are_close(const std::vector<Point>& points) {
  const Box box = box_of(Outline{{Ring{points}}, 0});
  const std::int64_t close =
      std::max(close_together, std::max(box.width(), box.height()) / close_part_of_box);
  return std::hypot(static_cast<double>(points.front().x - points.back().x),
                    static_cast<double>(points.front().y - points.back().y)) <= static_cast<double>(close);
}

Result<Ways> ways_of(const CurvedOutline& outline, double bound) {
  Ways ways;
  std::size_t all = 0;
  for (const Contour& contour : outline.contours) {
    auto points = points_of(contour, bound);
    if (!points) return failure(points.error());
    const Point end = points->back();
    if (!contour.closed && end != contour.start) {
      if (!ends_are_close(*points)) return failure(stays_open(contour.start, end));
      ways.mended.push_back(closed_here(contour.start, end));
    }
    while (points->size() > 1 && points->back() == points->front()) points->pop_back();
    all += points->size();
    if (all > most_points) return failure(reaches_too_far(contour.start));
    if (points->size() < 3) {
      ways.mended.push_back(left_out(contour.start));
    } else {
      ways.rings.push_back(Ring{std::move(*points)});
    }
  }
  return ways;
}

// How far the ways may lie from the curves, so that what rounding adds (to points, and where it can be
// spared, to a few rounds of crossing points) stays within the error.
double bound_for(std::int64_t error) {
  const auto all = static_cast<double>(error);
  const double for_crossings = std::min(6.0, (all - 1) / 4);
  return std::max(least_curve_bound, all - rounding_of_points - for_crossings);
}

}  // namespace

Result<Flattened> flatten(const CurvedOutline& outline, std::int64_t error) {
  const double bound = bound_for(std::max<std::int64_t>(error, 1));
  auto ways = ways_of(outline, bound);
  if (!ways) return failure(ways.error());
  auto region = region_of(ways->rings, outline.rule);
  if (!region) return failure(crosses_too_often());
  if (region->rings.empty()) return failure(goes_round_nothing(outline));
  Flattened result{.outline = {.rings = std::move(region->rings), .error = 0},
                   .mended = std::move(ways->mended)};
  if (!region->crossings.empty()) result.mended.push_back(crosses_here(region->crossings, outline.rule));
  const bool straight =
      std::all_of(outline.contours.begin(), outline.contours.end(), [](const Contour& contour) {
        return std::all_of(contour.curves.begin(), contour.curves.end(),
                           [](const Curve& curve) { return std::holds_alternative<LineTo>(curve); });
      });
  const double held = (straight ? 0 : bound + rounding_of_points) + region->rounds * rounding_of_points;
  result.outline.error =
      straight && region->rounds == 0 ? 0 : std::max(error, static_cast<std::int64_t>(std::ceil(held)));
  return result;
}

}  // namespace insetbook
