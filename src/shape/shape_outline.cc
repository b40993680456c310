// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/shape_outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "measure/write.h"
#include "shape/drawn_figures.h"
#include "shape/path_data.h"
#include "shape/regular_polygon.h"
#include "shape/scallops.h"

namespace insetbook {
namespace {

// ---- What is said to the person ----

Problem not_drawn(const Shape& shape) {
  const std::string word = shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
  return {.what = "the outline of the shape \"" + word + "\" is not known",
          .where = {},
          .expected = "path data of its outline",
          .candidates = {}};
}

Problem size_out_of_reach() {
  return {.what = "the size is too large or zero",
          .where = {},
          .expected = "at most 1073 mm (42 in) each way",
          .candidates = {}};
}

// The shape keeps no unit.
std::string both_units(Length length) {
  return write(length, Unit::inch) + " (" + write(length, Unit::mm) + ")";
}

Problem figure_too_large(const std::string& name, Length figure, Length most,
                         const std::string& bound = "at most ") {
  return {.what = "the " + name + ", " + both_units(figure) + ", is too large for the shape",
          .where = {},
          .expected = bound + both_units(most),
          .candidates = {}};
}

Problem rise_too_low(Length rise, Length least) {
  return {.what = "the rise, " + both_units(rise) + ", is too low for an arch that comes to a point",
          .where = {},
          .expected = "at least " + both_units(least),
          .candidates = {}};
}

// ---- Constructions: clockwise as seen, from the top left where there is no better place ----

CurvedOutline one(Contour contour) {
  return {.contours = {std::move(contour)}, .rule = FillRule::even_odd};
}

ArcTo arc_to(Point from, Point to) {
  return {.radius_x = std::abs(to.x - from.x),
          .radius_y = std::abs(to.y - from.y),
          .turned = 0,
          .large = false,
          .clockwise = true,
          .to = to};
}

void add_line(Contour& contour, Point to) {
  const Point from = contour.curves.empty()
                         ? contour.start
                         : std::visit([](const auto& c) { return c.to; }, contour.curves.back());
  if (from != to) contour.curves.push_back(LineTo{to});
}

// A quarter of an ellipse whose axes lie level and upright.
void add_quarter(Contour& contour, Point to) {
  const Point from = contour.curves.empty()
                         ? contour.start
                         : std::visit([](const auto& c) { return c.to; }, contour.curves.back());
  if (from != to) contour.curves.push_back(arc_to(from, to));
}

Contour ellipse(std::int64_t left, std::int64_t top, std::int64_t width, std::int64_t height) {
  const std::int64_t x = left + width / 2, y = top + height / 2;
  Contour contour{.start = {left, y}, .curves = {}, .closed = true};
  add_quarter(contour, {x, top});
  add_quarter(contour, {left + width, y});
  add_quarter(contour, {x, top + height});
  add_quarter(contour, {left, y});
  return contour;
}

Contour rectangle(std::int64_t width, std::int64_t height) {
  Contour contour{.start = {0, 0}, .curves = {}, .closed = true};
  for (const Point corner : {Point{width, 0}, Point{width, height}, Point{0, height}, Point{0, 0}})
    add_line(contour, corner);
  return contour;
}

// Corners of the top and of the bottom on their own.
Contour with_round_corners(std::int64_t width, std::int64_t height, std::int64_t top, std::int64_t bottom) {
  Contour contour{.start = {0, top}, .curves = {}, .closed = true};
  add_quarter(contour, {top, 0});
  add_line(contour, {width - top, 0});
  add_quarter(contour, {width, top});
  add_line(contour, {width, height - bottom});
  add_quarter(contour, {width - bottom, height});
  add_line(contour, {bottom, height});
  add_quarter(contour, {0, height - bottom});
  add_line(contour, contour.start);
  return contour;
}

// The corners of the right half from the top down, then those of the left half, mirrored, upwards.
Contour polygon(const Shape& shape) {
  const std::int64_t width = shape.width.nm(), height = shape.height.nm();
  const std::vector<PolygonCorner> half = corners_of_polygon(shape.sides, shape.flat_on_top);
  std::vector<Point> right, left;
  for (const PolygonCorner& corner : half) {
    const double x = std::ldexp(static_cast<double>(corner.x.value), -near_bits);
    const double y = std::ldexp(static_cast<double>(corner.y.value), -near_bits);
    const std::int64_t in = std::llround(static_cast<double>(width) * (1 - x) / 2);
    const std::int64_t down = std::llround(static_cast<double>(height) * (1 - y) / 2);
    // A corner in the middle is one point, at half of an odd width too.
    const bool middle = 2 * in >= width - 1;
    right.push_back({middle ? width / 2 : width - in, down});
    left.push_back({middle ? width / 2 : in, down});
  }
  Contour contour{.start = right[0], .curves = {}, .closed = true};
  for (std::size_t i = 1; i < right.size(); ++i) add_line(contour, right[i]);
  for (std::size_t i = left.size(); i-- > 0;) add_line(contour, left[i]);
  add_line(contour, contour.start);
  return contour;
}

Result<Contour> arch(const Shape& shape) {
  const std::int64_t width = shape.width.nm(), height = shape.height.nm(), middle = width / 2;
  const std::int64_t rise = shape.rise ? shape.rise->nm() : middle;
  if (rise > height) return failure(figure_too_large("rise", *shape.rise, shape.height));
  Contour contour{.start = {0, rise}, .curves = {}, .closed = true};
  if (is_pointed(shape)) {
    if (2 * rise < width) return failure(rise_too_low(*shape.rise, Length::nm((width + 1) / 2)));
    // The centre lies level with the springing line: (r - w/2)² + rise² = r².
    const double half = static_cast<double>(width) / 2, up = static_cast<double>(rise);
    const std::int64_t radius = std::llround((half * half + up * up) / static_cast<double>(width));
    for (const Point to : {Point{middle, 0}, Point{width, rise}}) {
      contour.curves.push_back(ArcTo{
          .radius_x = radius, .radius_y = radius, .turned = 0, .large = false, .clockwise = true, .to = to});
    }
  } else {
    add_quarter(contour, {middle, 0});
    add_quarter(contour, {width, rise});
  }
  add_line(contour, {width, height});
  add_line(contour, {0, height});
  add_line(contour, contour.start);
  return contour;
}

// Whether a tag's hole, in the middle of its width, breaks through its cut corners. It cannot through rounded
// ones, whose centres are never farther in. Only to tell what cannot be drawn.
bool breaks_corners(const Shape& shape) {
  const double radius = static_cast<double>(shape.hole->nm()) / 2;
  const double x = static_cast<double>(shape.width.nm()) / 2,
               y = static_cast<double>(shape.hole_down->nm()) + radius;
  return (x + y - static_cast<double>(shape.corner->nm())) / std::numbers::sqrt2 < radius;
}

Result<CurvedOutline> tag(const Shape& shape) {
  const std::int64_t width = shape.width.nm(), height = shape.height.nm();
  const Length most = std::min(shape.width / 2, shape.height);
  const bool rounded = shape.corner_radius.has_value();
  const Length corner = rounded ? *shape.corner_radius : *shape.corner;
  if (corner > most) return failure(figure_too_large(rounded ? "corner radius" : "corner", corner, most));
  const std::int64_t off = corner.nm();
  Contour contour = with_round_corners(width, height, off, 0);
  if (!rounded) {
    contour = Contour{.start = {0, off}, .curves = {}, .closed = true};
    for (const Point to : {Point{off, 0}, Point{width - off, 0}, Point{width, off}, Point{width, height},
                           Point{0, height}, Point{0, off}})
      add_line(contour, to);
  }
  CurvedOutline outline = one(std::move(contour));
  if (!shape.hole || shape.hole->nm() == 0) return outline;
  if (*shape.hole >= shape.width)
    return failure(figure_too_large("hole", *shape.hole, shape.width, "less than "));
  const Length lowest = shape.height - *shape.hole;
  if (*shape.hole_down > lowest)
    return failure(figure_too_large("distance of the hole from the top", *shape.hole_down, lowest));
  if (!rounded && breaks_corners(shape))
    return failure({.what = "the hole of the tag breaks through its cut corners",
                    .expected = "a smaller hole, a smaller corner, or the hole farther down"});
  const std::int64_t across = shape.hole->nm();
  outline.contours.push_back(ellipse((width - across) / 2, shape.hole_down->nm(), across, across));
  return outline;
}

// The notch takes the whole end: its tips are the corners, its bottom lies in the middle.
Result<Contour> banner(const Shape& shape) {
  const std::int64_t width = shape.width.nm(), height = shape.height.nm(), notch = shape.notch->nm();
  const bool wide = shape.width >= shape.height;
  const NotchEnd end = *shape.notch_end;
  const bool both = end == NotchEnd::both;
  const bool level = end == NotchEnd::left || end == NotchEnd::right || (both && wide);
  const Length along = level ? shape.width : shape.height;
  const Length most = both ? along / 2 : along;
  if (*shape.notch >= most) return failure(figure_too_large("notch", *shape.notch, most, "less than "));
  Contour contour{.start = {0, 0}, .curves = {}, .closed = true};
  if (end == NotchEnd::top || (both && !wide)) add_line(contour, {width / 2, notch});
  add_line(contour, {width, 0});
  if (end == NotchEnd::right || (both && wide)) add_line(contour, {width - notch, height / 2});
  add_line(contour, {width, height});
  if (end == NotchEnd::bottom || (both && !wide)) add_line(contour, {width / 2, height - notch});
  add_line(contour, {0, height});
  if (end == NotchEnd::left || (both && wide)) add_line(contour, {notch, height / 2});
  add_line(contour, {0, 0});
  return contour;
}

// A square of side 1 on its corner reaches up to √½ on the right and left; the half circles on its upper
// sides have their centres at (±√⅛, 3·√⅛) over its lowest corner and radius ½. So the whole is 1 + √½ wide
// and ½ + 3·√⅛ high, and that is stretched to the box.
Contour heart(const Shape& shape) {
  const double half_root = std::numbers::sqrt2 / 4;  // √⅛
  const double whole_width = 1 + 2 * half_root, whole_height = 0.5 + 3 * half_root;
  const std::int64_t width = shape.width.nm(), height = shape.height.nm(), middle = width / 2;
  // x from the middle and y over the lowest corner, to the right half of the box.
  const auto right = [&](double x, double y) {
    const double in = 0.5 - x / whole_width, down = 1 - y / whole_height;
    return Point{width - std::llround(static_cast<double>(width) * in),
                 std::llround(static_cast<double>(height) * down)};
  };
  const auto left = [&](Point point) { return Point{width - point.x, point.y}; };
  const Point side = right(2 * half_root, 2 * half_root), outermost = right(half_root + 0.5, 3 * half_root);
  const Point top = right(half_root, 3 * half_root + 0.5);
  Point cleft = right(0, 4 * half_root);
  cleft.x = middle;
  const std::int64_t radius_x = outermost.x - top.x, radius_y = outermost.y - top.y;
  Contour contour{.start = {middle, height}, .curves = {}, .closed = true};
  const auto round_to = [&](Point to) {
    contour.curves.push_back(ArcTo{.radius_x = radius_x,
                                   .radius_y = radius_y,
                                   .turned = 0,
                                   .large = false,
                                   .clockwise = true,
                                   .to = to});
  };
  add_line(contour, left(side));
  for (const Point to : {left(outermost), left(top), cleft, top, outermost, side}) round_to(to);
  add_line(contour, contour.start);
  return contour;
}

Result<CurvedOutline> as_outline(Result<Contour> contour) {
  if (!contour) return failure(contour.error());
  return one(std::move(*contour));
}

bool has_construction(const Shape& shape) {
  return shape.kind <= ShapeKind::polygon || is_drawn(shape);
}

bool uses_path_data(const Shape& shape) {
  return shape.kind > ShapeKind::polygon && !shape.outline.empty();
}

FillRule filling(const Shape& shape) {
  return shape.even_odd ? FillRule::even_odd : FillRule::non_zero;
}

bool within_reach(Length length) {
  return length > Length() && length <= largest_figure;
}

}  // namespace

bool has_outline(const Shape& shape) {
  if (!within_reach(shape.width) || !within_reach(shape.height)) return false;
  return uses_path_data(shape) || (has_construction(shape) && missing_figure(shape).empty());
}

Result<CurvedOutline> outline_of(const Shape& shape) {
  const std::int64_t width = shape.width.nm(), height = shape.height.nm();
  if (!within_reach(shape.width) || !within_reach(shape.height)) return failure(size_out_of_reach());
  if (uses_path_data(shape)) return path_data_scaled_to(shape.outline, filling(shape), width, height);
  if (!has_construction(shape)) return failure(not_drawn(shape));
  if (!missing_figure(shape).empty()) return failure(figure_missing(shape));
  switch (shape.kind) {
    case ShapeKind::circle:
    case ShapeKind::oval:
      return one(ellipse(0, 0, width, height));
    case ShapeKind::square:
    case ShapeKind::rectangle:
      return one(rectangle(width, height));
    case ShapeKind::rounded_rectangle: {
      const Length most = std::min(shape.width, shape.height) / 2;
      if (*shape.corner_radius > most)
        return failure(figure_too_large("corner radius", *shape.corner_radius, most));
      return one(with_round_corners(width, height, shape.corner_radius->nm(), shape.corner_radius->nm()));
    }
    case ShapeKind::polygon:
      return one(polygon(shape));
    case ShapeKind::scalloped:
      return as_outline(scalloped_edge(shape));
    case ShapeKind::arch:
      return as_outline(arch(shape));
    case ShapeKind::tag:
      return tag(shape);
    case ShapeKind::banner:
      return as_outline(banner(shape));
    case ShapeKind::heart:
      return one(heart(shape));
    default:
      return failure(not_drawn(shape));
  }
}

std::vector<std::string> mended_in(const Shape& shape) {
  if (!has_outline(shape) || !uses_path_data(shape)) return {};
  constexpr std::int64_t close_enough = 1000;  // nm, to find what crosses
  const Result<CurvedOutline> curves = outline_of(shape);
  if (!curves) return {};
  Result<Flattened> flat = flatten(*curves, close_enough);
  return flat ? std::move(flat->mended) : std::vector<std::string>();
}

Problem figure_missing(const Shape& shape) {
  return {.what = missing_figure(shape) + " is missing",
          .where = {},
          .expected = missing_figure(shape) + " in the figures of the " +
                      std::string(shape_word(shape.kind)) + ", which are written " +
                      std::string(figures_known(shape.kind)),
          .candidates = {}};
}

}  // namespace insetbook
