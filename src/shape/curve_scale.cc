// SPDX-License-Identifier: GPL-3.0-or-later
//
// Curves moved and stretched to a box.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "shape/curve_points.h"
#include "shape/curves.h"

namespace insetbook {
namespace {

struct Span {
  double least = 0, most = 0;
  bool any = false;
  void take(double value) {
    least = any ? std::min(least, value) : value;
    most = any ? std::max(most, value) : value;
    any = true;
  }
};

double as_double(std::int64_t value) {
  return static_cast<double>(value);
}

// A cubic's least and greatest are at its ends or where its derivative, a quadratic, is zero.
void take_cubic(double a, double b, double c, double d, Span& span) {
  span.take(d);
  const auto at = [&](double t) {
    const double u = 1 - t;
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
  };
  const double second = -a + 3 * b - 3 * c + d, first = 2 * (a - 2 * b + c), constant = b - a;
  const auto take_root = [&](double t) {
    if (t > 0 && t < 1) span.take(at(t));
  };
  if (second == 0) {
    if (first != 0) take_root(-constant / first);
    return;
  }
  const double under = first * first - 4 * second * constant;
  if (under < 0) return;
  const double sum = -(first + std::copysign(std::sqrt(under), first)) / 2;
  take_root(sum / second);
  if (sum != 0) take_root(constant / sum);
}

// x = centre + along·cos θ + across·sin θ is least and greatest where tan θ = across/along.
void take_arc(const CentredArc& arc, long double centre, long double along, long double across, Span& span) {
  constexpr long double pi = std::numbers::pi_v<long double>;
  const long double top = std::atan2(across, along);
  for (int half = -6; half <= 6; ++half) {
    const long double angle = top + half * pi;
    const long double part = (angle - arc.start) / arc.sweep;
    if (part > 0 && part < 1)
      span.take(static_cast<double>(centre + along * std::cos(angle) + across * std::sin(angle)));
  }
}

struct Spans {
  Span x, y;
};

void take_curve(Point from, const Curve& curve, Spans& spans) {
  const Point to = end_of(curve);
  spans.x.take(as_double(to.x));
  spans.y.take(as_double(to.y));
  if (const auto* cubic = std::get_if<CubicTo>(&curve)) {
    take_cubic(as_double(from.x), as_double(cubic->first.x), as_double(cubic->second.x), as_double(to.x),
               spans.x);
    take_cubic(as_double(from.y), as_double(cubic->first.y), as_double(cubic->second.y), as_double(to.y),
               spans.y);
  }
  if (const auto* arc = std::get_if<ArcTo>(&curve)) {
    if (from == to || arc->radius_x == 0 || arc->radius_y == 0) return;
    const CentredArc centre = centred(from, *arc);
    take_arc(centre, centre.x, centre.cosine * centre.radius_x, -centre.sine * centre.radius_y, spans.x);
    take_arc(centre, centre.y, centre.sine * centre.radius_x, centre.cosine * centre.radius_y, spans.y);
  }
}

Spans spans_of(const CurvedOutline& outline) {
  Spans spans;
  for (const Contour& contour : outline.contours) {
    Point from = contour.start;
    if (contour.curves.empty()) continue;
    spans.x.take(as_double(from.x));
    spans.y.take(as_double(from.y));
    for (const Curve& curve : contour.curves) {
      take_curve(from, curve, spans);
      from = end_of(curve);
    }
  }
  return spans;
}

}  // namespace

Box box_of(const CurvedOutline& outline) {
  const Spans spans = spans_of(outline);
  return {{std::llround(spans.x.least), std::llround(spans.y.least)},
          {std::llround(spans.x.most), std::llround(spans.y.most)}};
}

namespace {

// Before it is scaled no place in it says anything.
Problem no_box() {
  return {.what = "the outline is as thin as a line and cannot be scaled",
          .where = {},
          .expected = "a line round an area",
          .candidates = {}};
}

// Of a thin outline that is widened, arcs may be those of very large ellipses.
std::int64_t as_radius(double value) {
  return std::llround(std::min(value, 0x1p60));
}

struct Scale {
  double x, y;            // of the way
  double from_x, from_y;  // the corner that goes to (0, 0)

  Point operator()(Point point) const {
    return {std::llround((as_double(point.x) - from_x) * x), std::llround((as_double(point.y) - from_y) * y)};
  }
};

// An ellipse that is stretched along the axes of the drawing is another ellipse: its half axes are the
// singular values of the stretch times the turn times the half axes.
ArcTo scaled(const ArcTo& arc, const Scale& scale) {
  ArcTo result = arc;
  result.to = scale(arc.to);
  const double rx = as_double(std::abs(arc.radius_x)), ry = as_double(std::abs(arc.radius_y));
  const double turned = std::remainder(arc.turned, 180.0);
  if (turned == 0 || std::fabs(turned) == 90) {
    const bool upright = turned != 0;
    result.radius_x = as_radius(rx * (upright ? scale.y : scale.x));
    result.radius_y = as_radius(ry * (upright ? scale.x : scale.y));
    return result;
  }
  const double angle = arc.turned * std::numbers::pi / 180;
  const double a = scale.x * std::cos(angle) * rx, b = -scale.x * std::sin(angle) * ry;
  const double c = scale.y * std::sin(angle) * rx, d = scale.y * std::cos(angle) * ry;
  const double sum = std::hypot(a + d, c - b), difference = std::hypot(a - d, c + b);
  result.radius_x = as_radius((sum + difference) / 2);
  result.radius_y = as_radius(std::fabs(sum - difference) / 2);
  result.turned = (std::atan2(c - b, a + d) + std::atan2(c + b, a - d)) / 2 * 180 / std::numbers::pi;
  return result;
}

}  // namespace

Result<CurvedOutline> scaled_to(const CurvedOutline& outline, std::int64_t width, std::int64_t height) {
  const Spans spans = spans_of(outline);
  const double across = spans.x.most - spans.x.least, down = spans.y.most - spans.y.least;
  if (!(across > 0 && down > 0)) return failure(no_box());
  const Scale scale{as_double(width) / across, as_double(height) / down, spans.x.least, spans.y.least};
  CurvedOutline result{.contours = {}, .rule = outline.rule};
  for (const Contour& contour : outline.contours) {
    Contour moved{.start = scale(contour.start), .curves = {}, .closed = contour.closed};
    for (const Curve& curve : contour.curves) {
      if (const auto* line = std::get_if<LineTo>(&curve)) {
        moved.curves.push_back(LineTo{scale(line->to)});
      } else if (const auto* cubic = std::get_if<CubicTo>(&curve)) {
        moved.curves.push_back(CubicTo{scale(cubic->first), scale(cubic->second), scale(cubic->to)});
      } else {
        moved.curves.push_back(scaled(std::get<ArcTo>(curve), scale));
      }
    }
    result.contours.push_back(std::move(moved));
  }
  return result;
}

}  // namespace insetbook
