// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/basic_shapes.h"

#include <fmt/format.h>

#include <cmath>

namespace insetbook {
namespace {

Point rounded(const Transform& map, Point point) {
  const Vector2 mapped = map({static_cast<double>(point.x), static_cast<double>(point.y)});
  return {std::llround(mapped.x), std::llround(mapped.y)};
}

bool keeps_axes(const Transform& map) {
  const double size = std::abs(map.a) + std::abs(map.d);
  return std::abs(map.b) + std::abs(map.c) <= 1e-12 * size && map.a != 0 && map.d != 0;
}

}  // namespace

std::string rect_path(double x, double y, double width, double height, double rx, double ry) {
  if (rx <= 0 || ry <= 0) return fmt::format("M{} {}h{}v{}h{}z", x, y, width, height, -width);
  return fmt::format(
      "M{} {}h{}a{rx} {ry} 0 0 1 {rx} {ry}v{}a{rx} {ry} 0 0 1 {lx} {ry}h{}a{rx} {ry} 0 0 1 "
      "{lx} {ly}v{}a{rx} {ry} 0 0 1 {rx} {ly}z",
      x + rx, y, width - 2 * rx, height - 2 * ry, -(width - 2 * rx), -(height - 2 * ry), fmt::arg("rx", rx),
      fmt::arg("ry", ry), fmt::arg("lx", -rx), fmt::arg("ly", -ry));
}

std::string ellipse_path(double cx, double cy, double rx, double ry) {
  return fmt::format("M{} {cy}A{rx} {ry} 0 0 1 {} {cy}A{rx} {ry} 0 0 1 {} {cy}z", cx - rx, cx + rx, cx - rx,
                     fmt::arg("cy", cy), fmt::arg("rx", rx), fmt::arg("ry", ry));
}

std::optional<PlainShape> plain_shape(const ShapePath& shape, const Transform& map) {
  if (shape.word.empty() || !keeps_axes(map)) return std::nullopt;
  const auto length = [](double nm) { return Length::nm(std::llround(std::abs(nm))); };
  PlainShape plain{shape.word, length(shape.width * map.a), length(shape.height * map.d), {}};
  if (plain.word == "rounded rectangle") {
    const Length across = length(shape.rx * map.a), down = length(shape.ry * map.d);
    if (across != down) return std::nullopt;
    plain.corner_radius = across;
  } else if (plain.word == "oval") {
    if (plain.width == plain.height) plain.word = "circle";
  } else if (plain.width == plain.height) {
    plain.word = "square";
  }
  return plain;
}

CurvedOutline mapped(const CurvedOutline& outline, const Transform& map) {
  CurvedOutline result{{}, outline.rule};
  for (const Contour& contour : outline.contours) {
    Contour& next = result.contours.emplace_back();
    next.start = rounded(map, contour.start);
    next.closed = contour.closed;
    for (const Curve& curve : contour.curves) {
      if (const auto* line = std::get_if<LineTo>(&curve)) {
        next.curves.emplace_back(LineTo{rounded(map, line->to)});
      } else if (const auto* cubic = std::get_if<CubicTo>(&curve)) {
        next.curves.emplace_back(
            CubicTo{rounded(map, cubic->first), rounded(map, cubic->second), rounded(map, cubic->to)});
      } else {
        ArcTo arc = std::get<ArcTo>(curve);
        const MappedEllipse ellipse = map_ellipse(map, static_cast<double>(arc.radius_x),
                                                  static_cast<double>(arc.radius_y), arc.turned);
        arc.radius_x = std::llround(ellipse.rx);
        arc.radius_y = std::llround(ellipse.ry);
        arc.turned = ellipse.turned;
        arc.clockwise = arc.clockwise == (map.determinant() > 0);
        arc.to = rounded(map, arc.to);
        next.curves.emplace_back(arc);
      }
    }
  }
  return result;
}

}  // namespace insetbook
