// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/write_path_data.h"

#include <fmt/format.h>

namespace insetbook {

namespace {

std::string millimetres(std::int64_t nm) {
  const std::int64_t size = nm < 0 ? -nm : nm;
  std::string text = fmt::format("{}{}.{:06}", nm < 0 ? "-" : "", size / 1'000'000, size % 1'000'000);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string at(Point point) {
  return millimetres(point.x) + "," + millimetres(point.y);
}

std::string written(const Curve& curve) {
  if (const auto* line = std::get_if<LineTo>(&curve)) return "L" + at(line->to);
  if (const auto* cubic = std::get_if<CubicTo>(&curve))
    return "C" + at(cubic->first) + " " + at(cubic->second) + " " + at(cubic->to);
  const ArcTo& arc = std::get<ArcTo>(curve);
  return fmt::format("A{},{} {} {} {} {}", millimetres(arc.radius_x), millimetres(arc.radius_y), arc.turned,
                     arc.large ? 1 : 0, arc.clockwise ? 1 : 0, at(arc.to));
}

}  // namespace

std::string write_path_data(const CurvedOutline& outline) {
  std::string text;
  for (const Contour& contour : outline.contours) {
    text += (text.empty() ? "M" : " M") + at(contour.start);
    for (const Curve& curve : contour.curves) text += " " + written(curve);
    if (contour.closed) text += " Z";
  }
  return text;
}

std::string write_path_data(const Outline& outline) {
  CurvedOutline curved;
  for (const Ring& ring : outline.rings) {
    Contour& contour = curved.contours.emplace_back();
    contour.start = ring.points.front();
    for (std::size_t i = 1; i < ring.points.size(); ++i) contour.curves.emplace_back(LineTo{ring.points[i]});
  }
  return write_path_data(curved);
}

}  // namespace insetbook
