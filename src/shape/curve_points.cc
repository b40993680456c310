// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/curve_points.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "shape/wide.h"

namespace insetbook {
namespace {

constexpr double limit = static_cast<double>(std::int64_t{1} << 30);
constexpr long double pi = std::numbers::pi_v<long double>;

bool add_point(double x, double y, std::vector<Point>& points) {
  if (!(std::fabs(x) <= limit && std::fabs(y) <= limit) || points.size() >= most_points) return false;
  points.push_back({std::llround(x), std::llround(y)});
  return true;
}

bool add_end(Point to, std::vector<Point>& points) {
  if (points.size() >= most_points) return false;
  points.push_back(to);
  return true;
}

// ---- Cubics ----

struct Bends {
  double x, y;
  double size() const { return std::hypot(x, y); }
};

// The second difference of three control points; the curve's second derivative runs straight from six times
// the first one to six times the last.
Bends bend(Point a, Point b, Point c) {
  return {static_cast<double>(a.x - 2 * b.x + c.x), static_cast<double>(a.y - 2 * b.y + c.y)};
}

// Between points at a distance of h of the parameter the way leaves the curve by at most h²/8 of the greatest
// second derivative between them, at the same parameter.
double parts_wanted(double length, double second_derivative, double bound) {
  return std::max(1.0, std::ceil(length * std::sqrt(second_derivative / (8 * bound))));
}

bool add_cubic(Point from, const CubicTo& cubic, double bound, std::vector<Point>& points) {
  const Bends first = bend(from, cubic.first, cubic.second), last = bend(cubic.first, cubic.second, cubic.to);
  const auto second_derivative = [&](double t) {
    return 6 * Bends{(1 - t) * first.x + t * last.x, (1 - t) * first.y + t * last.y}.size();
  };
  const auto at = [&](double t) {
    const double u = 1 - t;
    const auto mix = [&](std::int64_t a, std::int64_t b, std::int64_t c, std::int64_t d) {
      return u * u * u * static_cast<double>(a) + 3 * u * u * t * static_cast<double>(b) +
             3 * u * t * t * static_cast<double>(c) + t * t * t * static_cast<double>(d);
    };
    return std::pair(mix(from.x, cubic.first.x, cubic.second.x, cubic.to.x),
                     mix(from.y, cubic.first.y, cubic.second.y, cubic.to.y));
  };
  // A curve that bends more at one end is cut in stretches that take as many points as each needs.
  constexpr int most_stretches = 16;
  const double all = parts_wanted(1, std::max(second_derivative(0), second_derivative(1)), bound);
  const int stretches = all <= most_stretches ? 1 : most_stretches;
  for (int s = 0; s < stretches; ++s) {
    const double begin = static_cast<double>(s) / stretches, end = static_cast<double>(s + 1) / stretches;
    const double parts =
        parts_wanted(end - begin, std::max(second_derivative(begin), second_derivative(end)), bound);
    if (parts > static_cast<double>(most_points)) return false;
    const int count = static_cast<int>(parts);
    for (int i = 1; i <= count; ++i) {
      if (s + 1 == stretches && i == count) break;
      const auto [x, y] = at(begin + (end - begin) * i / count);
      if (!add_point(x, y, points)) return false;
    }
  }
  return add_end(cubic.to, points);
}

// ---- Arcs ----

// What is left of the square under the root of B.2.4, for radii that are not turned: exact in whole numbers,
// because half an ellipse and what is nearly one decide by it where the centre lies. As a part of
// 4·rx²·ry².
long double left_of_square(std::int64_t radius_x, std::int64_t radius_y, std::int64_t dx, std::int64_t dy) {
  const Wide<4> all =
      product(static_cast<Int128>(4) * radius_x * radius_x, static_cast<Int128>(radius_y) * radius_y);
  const Wide<4> used = product(static_cast<Int128>(dx) * dx, static_cast<Int128>(radius_y) * radius_y) +
                       product(static_cast<Int128>(dy) * dy, static_cast<Int128>(radius_x) * radius_x);
  const Wide<4> left = all - used;
  const auto approximate = [](const Wide<4>& value) {
    long double sum = 0;
    for (std::size_t i = 4; i-- > 0;) sum = std::ldexp(sum, 64) + static_cast<long double>(value.limb[i]);
    return value.negative ? -sum : sum;
  };
  return approximate(left) / approximate(all);
}

// Quarter turns are exact.
std::pair<long double, long double> cosine_and_sine(double degrees) {
  const double turned = std::remainder(degrees, 360.0);
  if (turned == 0) return {1, 0};
  if (turned == 90) return {0, 1};
  if (turned == -90) return {0, -1};
  if (std::fabs(turned) == 180) return {-1, 0};
  const long double angle = static_cast<long double>(turned) * pi / 180;
  return {std::cos(angle), std::sin(angle)};
}

template <class Number>
bool add_point_of(const CentredArc& arc, long double at, std::vector<Point>& points) {
  const auto angle = static_cast<Number>(at);
  const Number u = static_cast<Number>(arc.radius_x) * std::cos(angle);
  const Number v = static_cast<Number>(arc.radius_y) * std::sin(angle);
  const auto cosine = static_cast<Number>(arc.cosine), sine = static_cast<Number>(arc.sine);
  return add_point(static_cast<double>(static_cast<Number>(arc.x) + cosine * u - sine * v),
                   static_cast<double>(static_cast<Number>(arc.y) + sine * u + cosine * v), points);
}

bool add_arc(Point from, const ArcTo& arc, double bound, std::vector<Point>& points) {
  if (arc.radius_x == 0 || arc.radius_y == 0) return add_end(arc.to, points);
  if (from == arc.to) return true;
  const CentredArc centre = centred(from, arc);
  // An arc of the unit circle leaves its chord by 1 - cos(step/2) = 2 sin²(step/4) at most; the ellipse is
  // its image, stretched by the larger radius at most.
  const long double radius = std::max(centre.radius_x, centre.radius_y);
  const long double part = std::sqrt(static_cast<long double>(bound) / (2 * radius));
  const long double step = std::min(pi / 4, 4 * std::asin(std::min(1.0L, part)));
  const long double steps = std::max(1.0L, std::ceil(std::fabs(centre.sweep) / step));
  if (!(steps < static_cast<long double>(most_points))) return false;
  const auto count = static_cast<std::int64_t>(steps);
  // What a double rounds grows with the radius; those of dies stay far below this one.
  const bool large = radius > std::ldexp(1.0L, 33);
  for (std::int64_t i = 1; i < count; ++i) {
    const long double angle =
        centre.start + centre.sweep * static_cast<long double>(i) / static_cast<long double>(count);
    if (!(large ? add_point_of<long double>(centre, angle, points)
                : add_point_of<double>(centre, angle, points)))
      return false;
  }
  return add_end(arc.to, points);
}

}  // namespace

CentredArc centred(Point from, const ArcTo& arc) {
  CentredArc centre;
  std::int64_t rx = std::abs(arc.radius_x), ry = std::abs(arc.radius_y);
  std::tie(centre.cosine, centre.sine) = cosine_and_sine(rx == ry ? 0.0 : arc.turned);
  const auto dx = static_cast<long double>(from.x - arc.to.x),
             dy = static_cast<long double>(from.y - arc.to.y);
  const long double x = (centre.cosine * dx + centre.sine * dy) / 2;
  const long double y = (centre.cosine * dy - centre.sine * dx) / 2;
  centre.radius_x = static_cast<long double>(rx);
  centre.radius_y = static_cast<long double>(ry);
  const long double used =
      x * x / (centre.radius_x * centre.radius_x) + y * y / (centre.radius_y * centre.radius_y);
  // Turned at an angle the figures are not exact; closer to half an ellipse than they can tell is half of
  // one.
  const bool level = centre.sine == 0, upright = centre.cosine == 0;
  long double left = 1 - used;
  if (level) left = left_of_square(rx, ry, from.x - arc.to.x, from.y - arc.to.y);
  if (upright) left = left_of_square(rx, ry, from.y - arc.to.y, from.x - arc.to.x);
  if (!level && !upright && std::fabs(left) < std::ldexp(1.0L, -58)) left = 0;
  long double centre_x = 0, centre_y = 0;
  if (left <= 0) {
    const long double grown = std::sqrt(used);
    centre.radius_x *= grown;
    centre.radius_y *= grown;
  } else {
    const long double scale = (arc.large == arc.clockwise ? -1 : 1) * std::sqrt(left / (1 - left));
    centre_x = scale * centre.radius_x * y / centre.radius_y;
    centre_y = -scale * centre.radius_y * x / centre.radius_x;
  }
  centre.x =
      centre.cosine * centre_x - centre.sine * centre_y + static_cast<long double>(from.x + arc.to.x) / 2;
  centre.y =
      centre.sine * centre_x + centre.cosine * centre_y + static_cast<long double>(from.y + arc.to.y) / 2;
  centre.start = std::atan2((y - centre_y) / centre.radius_y, (x - centre_x) / centre.radius_x);
  const long double end = std::atan2((-y - centre_y) / centre.radius_y, (-x - centre_x) / centre.radius_x);
  centre.sweep = end - centre.start;
  if (left <= 0) {
    centre.sweep = arc.clockwise ? pi : -pi;
  } else if (arc.clockwise && centre.sweep < 0) {
    centre.sweep += 2 * pi;
  } else if (!arc.clockwise && centre.sweep > 0) {
    centre.sweep -= 2 * pi;
  }
  return centre;
}

bool add_points(Point from, const Curve& curve, double bound, std::vector<Point>& points) {
  if (const auto* line = std::get_if<LineTo>(&curve)) return add_end(line->to, points);
  if (const auto* cubic = std::get_if<CubicTo>(&curve)) return add_cubic(from, *cubic, bound, points);
  return add_arc(from, std::get<ArcTo>(curve), bound, points);
}

}  // namespace insetbook
