// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/scallops.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "measure/write.h"

namespace insetbook {
namespace {

constexpr std::int64_t most_scallops = 4000;

std::string both_units(Length length) {
  return write(length, Unit::inch) + " (" + write(length, Unit::mm) + ")";
}

Problem not_so_deep(Length depth, const std::string& expected) {
  return {.what = "scallops that are " + both_units(depth) + " deep cannot be drawn",
          .where = {},
          .expected = expected,
          .candidates = {}};
}

Problem too_narrow(Length width) {
  return {.what = "scallops that are " + both_units(width) + " wide cannot be drawn",
          .where = {},
          .expected = "at most " + std::to_string(most_scallops) + " of them round the edge",
          .candidates = {}};
}

struct Place {
  double x = 0, y = 0;
};

Point rounded(Place place) {
  return {std::llround(place.x), std::llround(place.y)};
}

// Notches and tops in turn, clockwise as seen.
struct Places {
  std::vector<Place> notches;
  std::vector<Place> tops;  // between its notch and the next one
};

// ---- Round an oval ----

// From the top of an ellipse clockwise a quarter of the way round: how far it is to each of many angles.
struct Quarter {
  static constexpr int parts = 1 << 12;
  double across, down;  // half axes
  std::vector<double> way = std::vector<double>(parts + 1, 0.0);

  Quarter(double a, double b) : across(a), down(b) {
    const auto speed = [&](double angle) { return std::hypot(a * std::cos(angle), b * std::sin(angle)); };
    const double step = std::numbers::pi / 2 / parts;
    for (int i = 0; i < parts; ++i) {
      const double begin = i * step;  // Simpson's rule over each part
      way[static_cast<std::size_t>(i) + 1] =
          way[static_cast<std::size_t>(i)] +
          step / 6 * (speed(begin) + 4 * speed(begin + step / 2) + speed(begin + step));
    }
  }
  double length() const { return way.back(); }

  // The angle from the top at which so much of the way is behind.
  double angle_at(double wanted) const {
    const auto after = std::upper_bound(way.begin(), way.end(), wanted);
    const auto i =
        static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(after - way.begin() - 1, 0, parts - 1));
    const double part = (wanted - way[i]) / (way[i + 1] - way[i]);
    return (static_cast<double>(i) + part) * std::numbers::pi / 2 / parts;
  }
};

// `fours` scallops in a quarter; tops at the four ends, so that notches and tops alternate by half a scallop.
Places round_an_oval(double width, double height, double depth, std::int64_t fours) {
  const Quarter quarter(width / 2 - depth, height / 2 - depth);
  std::vector<Place> halves;  // from the top clockwise to the right end, top, notch, top, …, as offsets
  for (std::int64_t i = 0; i <= 2 * fours; ++i) {
    const double angle =
        i == 2 * fours
            ? std::numbers::pi / 2
            : quarter.angle_at(quarter.length() * static_cast<double>(i) / static_cast<double>(2 * fours));
    const double cosine = i == 2 * fours ? 0 : std::cos(angle), sine = std::sin(angle);
    Place place{quarter.across * sine, quarter.down * cosine};
    if (i % 2 == 0) {
      // Out by the depth, straight away from the ellipse.
      const double normal = std::hypot(quarter.down * sine, quarter.across * cosine);
      place.x += depth * quarter.down * sine / normal;
      place.y += depth * quarter.across * cosine / normal;
    }
    halves.push_back(place);
  }
  const double x = width / 2, y = height / 2;
  Places places;
  const auto add = [&](Place place, std::size_t i) {
    (i % 2 == 0 ? places.tops : places.notches).push_back(place);
  };
  const std::size_t last = halves.size() - 1;
  for (std::size_t i = 0; i < last; ++i) add({x + halves[i].x, y - halves[i].y}, i);
  for (std::size_t i = 0; i < last; ++i) add({x + halves[last - i].x, y + halves[last - i].y}, i);
  for (std::size_t i = 0; i < last; ++i) add({x - halves[i].x, y + halves[i].y}, i);
  for (std::size_t i = 0; i < last; ++i) add({x - halves[last - i].x, y - halves[last - i].y}, i);
  // The first top stands before the first notch.
  std::rotate(places.tops.begin(), places.tops.begin() + 1, places.tops.end());
  return places;
}

// ---- Round a rectangle ----

Places round_a_rectangle(double width, double height, double depth, std::int64_t across, std::int64_t down) {
  Places places;
  const std::array corners = {Place{depth, depth}, Place{width - depth, depth},
                              Place{width - depth, height - depth}, Place{depth, height - depth}};
  const std::array outwards = {Place{0, -depth}, Place{depth, 0}, Place{0, depth}, Place{-depth, 0}};
  for (std::size_t side = 0; side < 4; ++side) {
    const Place from = corners[side], to = corners[(side + 1) % 4], out = outwards[side];
    const std::int64_t count = side % 2 == 0 ? across : down;
    const auto at = [&](double part) {
      return Place{from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part};
    };
    for (std::int64_t i = 0; i < count; ++i) {
      const Place middle = at((static_cast<double>(i) + 0.5) / static_cast<double>(count));
      places.notches.push_back(at(static_cast<double>(i) / static_cast<double>(count)));
      places.tops.push_back({middle.x + out.x, middle.y + out.y});
    }
  }
  return places;
}

// ---- The edge ----

// A circle through two notches and the top between them.
ArcTo arc_through(Place notch, Place top, Place next, Point to) {
  const double a = std::hypot(top.x - notch.x, top.y - notch.y),
               b = std::hypot(next.x - top.x, next.y - top.y);
  const double c = std::hypot(next.x - notch.x, next.y - notch.y);
  const double doubled_area =
      std::fabs((top.x - notch.x) * (next.y - notch.y) - (top.y - notch.y) * (next.x - notch.x));
  const std::int64_t radius = std::llround(a * b * c / (2 * doubled_area));
  return {.radius_x = radius, .radius_y = radius, .turned = 0, .large = false, .clockwise = true, .to = to};
}

// Where an oval bends sharply a scallop can reach farther over its notches than it is deep.
bool more_than_half_circles(const Places& places) {
  for (std::size_t i = 0; i < places.notches.size(); ++i) {
    const Place a = places.notches[i], top = places.tops[i],
                b = places.notches[(i + 1) % places.notches.size()];
    const double middle = std::hypot(top.x - (a.x + b.x) / 2, top.y - (a.y + b.y) / 2);
    if (2 * middle > std::hypot(b.x - a.x, b.y - a.y) + 2) return true;
  }
  return false;
}

constexpr double shallowest = 1.0 / 50;  // of a scallop's width; its circle stays within 7 widths

bool too_shallow(const Places& places, double depth) {
  for (std::size_t i = 0; i < places.notches.size(); ++i) {
    const Place a = places.notches[i], b = places.notches[(i + 1) % places.notches.size()];
    if (depth < shallowest * std::hypot(b.x - a.x, b.y - a.y)) return true;
  }
  return false;
}

Contour contour_through(const Places& places) {
  const std::size_t count = places.notches.size();
  Contour contour{.start = rounded(places.notches[0]), .curves = {}, .closed = true};
  for (std::size_t i = 0; i < count; ++i) {
    const Place notch = places.notches[i], top = places.tops[i], next = places.notches[(i + 1) % count];
    contour.curves.push_back(arc_through(notch, top, next, rounded(top)));
    contour.curves.push_back(arc_through(notch, top, next, rounded(next)));
  }
  return contour;
}

std::int64_t whole_number(double length, double width, std::int64_t least) {
  return std::max(least, static_cast<std::int64_t>(std::llround(std::min(length / width, 1e7))));
}

}  // namespace

Result<Contour> scalloped_edge(const Shape& shape) {
  const Length depth = *shape.scallop_depth, most = std::min(shape.width, shape.height) / 4;
  if (depth > most || depth == Length())
    return failure(
        not_so_deep(depth, "above zero and at most a quarter of the shorter side, " + both_units(most)));
  if (*shape.scallop_width == Length()) return failure(too_narrow(*shape.scallop_width));
  const auto width = static_cast<double>(shape.width.nm()), height = static_cast<double>(shape.height.nm());
  const auto deep = static_cast<double>(depth.nm()), wide = static_cast<double>(shape.scallop_width->nm());
  Places places;
  if (*shape.scallops_round == ShapeKind::circle || *shape.scallops_round == ShapeKind::oval) {
    const std::int64_t fours = whole_number(Quarter(width / 2 - deep, height / 2 - deep).length(), wide, 1);
    if (4 * fours > most_scallops) return failure(too_narrow(*shape.scallop_width));
    places = round_an_oval(width, height, deep, fours);
  } else {
    const std::int64_t across = whole_number(width - 2 * deep, wide, 1),
                       down = whole_number(height - 2 * deep, wide, 1);
    if (2 * (across + down) > most_scallops) return failure(too_narrow(*shape.scallop_width));
    places = round_a_rectangle(width, height, deep, across, down);
  }
  if (too_shallow(places, deep))
    return failure(not_so_deep(depth, "at least a fiftieth of the width of a scallop"));
  if (more_than_half_circles(places)) {
    const bool too_deep_anyway = depth * 2 > *shape.scallop_width;
    return failure(not_so_deep(depth, too_deep_anyway
                                          ? "scallops at most half as deep as they are wide, " +
                                                both_units(*shape.scallop_width / 2) + " here"
                                          : "scallops that are at most half circles at the ends of the "
                                            "shape: less deep ones, or of another width"));
  }
  return contour_through(places);
}

}  // namespace insetbook
