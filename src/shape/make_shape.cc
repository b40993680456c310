// SPDX-License-Identifier: GPL-3.0-or-later
//
// From the words, the size and the figures of a row to a shape.
#include <algorithm>
#include <array>
#include <charconv>
#include <vector>

#include "measure/read.h"
#include "measure/write.h"
#include "shape/drawn_figures.h"
#include "shape/regular_polygon.h"
#include "shape/shape.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// ---- What is said to the person ----

Problem no_shape_said(std::string_view size) {
  return {.what = "the size \"" + std::string(size) + "\" has one figure and no shape is said",
          .where = {},
          .expected = "a shape (\"circle\", \"square\") or two figures",
          .candidates = {}};
}

Problem two_shapes_said(std::string_view word, std::string_view in_size) {
  return {
      .what = "the shape is \"" + std::string(word) + "\" and the size says \"" + std::string(in_size) + "\"",
      .where = {},
      .expected = "one shape",
      .candidates = {}};
}

Problem sides_differ(std::string_view word, const Size& size) {
  return {.what = "a " + std::string(word) + " has one figure, and \"" + write(size) +
                  "\" has two different ones",
          .where = {},
          .expected = word == "circle" ? "its width, or an oval" : "its width, or a rectangle",
          .candidates = {}};
}

Problem second_side_missing(std::string_view word, const Size& size) {
  return {
      .what = "\"" + write(size) + "\" is one figure, and the shape \"" + std::string(word) + "\" has two",
      .where = {},
      .expected = "width and height, as in \"2 x 3 in\"",
      .candidates = {}};
}

Problem too_large(const Size& size) {
  return {.what = "\"" + write(size) + "\" is too large",
          .where = {},
          .expected = "at most 1073 mm (42 in) each way",
          .candidates = {}};
}

Problem figure_unknown(std::string_view part, std::string_view figures, ShapeKind kind) {
  const std::string_view known = figures_known(kind);
  const std::string word(shape_word(kind));
  return {
      .what = "the figure \"" + std::string(part) + "\" is not one of a " + word,
      .where = {.file = {}, .column = {}, .text = std::string(figures), .at = {}},
      .expected = known.empty() ? "nothing: a " + word + " has no figures but its size" : std::string(known),
      .candidates = {}};
}

Problem too_many_sides(std::string_view part) {
  return {.what = "\"" + std::string(part) + "\" cannot be computed",
          .where = {},
          .expected = "a polygon of " + std::to_string(fewest_polygon_sides) + " to " +
                      std::to_string(most_polygon_sides) + " sides",
          .candidates = {}};
}

Problem word_contradicts_sides(std::string_view word, int sides) {
  return {.what = "a " + std::string(word) + " has not " + std::to_string(sides) + " sides",
          .where = {},
          .expected = std::to_string(polygon_sides(word)) + " sides, or the shape \"polygon\"",
          .candidates = {}};
}

Problem radius_too_large(Length radius, Length most, Unit unit) {
  return {.what = "the corner radius " + write(radius, unit) + " is more than half of a side",
          .where = {},
          .expected = "at most " + write(most, unit),
          .candidates = {}};
}

Length nearest(Length length, Length mark) {
  return round_down(length + mark / 2, mark);
}

Problem not_regular(const Shape& shape, const Size& size, Length height) {
  const std::string word = shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
  const Length mark = size.unit == Unit::inch ? Length::inch_fraction(1, 16) : Length::nm(500'000);
  return {.what = "a regular " + word + " " + write(size.width, size.unit) + " wide is about " +
                  write(nearest(height, mark), size.unit) + " high, and \"" + write(size) +
                  "\" says otherwise",
          .where = {},
          .expected = "its width alone, \"" + write_size(size.width, nearest(height, mark), size.unit) +
                      "\", or path data of its outline",
          .candidates = {}};
}

// ---- The figures cell ----

// "radius 1/4 in, flat on top" in its parts. A comma between two digits is a decimal comma ("6,5 mm").
std::vector<std::string_view> parts_of(std::string_view figures) {
  const auto digit = [&](std::size_t at) {
    return at < figures.size() && figures[at] >= '0' && figures[at] <= '9';
  };
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= figures.size(); ++i) {
    const bool decimal = i > 0 && i < figures.size() && figures[i] == ',' && digit(i - 1) && digit(i + 1);
    if (i < figures.size() && (decimal || (figures[i] != ',' && figures[i] != ';'))) continue;
    const std::string_view part = trim(figures.substr(begin, i - begin));
    if (!part.empty()) parts.push_back(part);
    begin = i + 1;
  }
  return parts;
}

// "6" and "six".
std::optional<int> number_of_sides(std::string_view text) {
  if (const int said = polygon_sides(std::string(text) + " sided")) return said;
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

// How path data goes round an area, which any shape that has no exact form may be recorded with.
bool said_of_filling(std::string_view part, Shape& shape) {
  if (shape.kind <= ShapeKind::polygon) return false;
  const std::string folded = fold(part);
  const bool odd = folded == "even odd" || folded == "evenodd";
  if (!odd && folded != "non zero" && folded != "nonzero") return false;
  shape.even_odd = odd;
  return true;
}

bool said_of_top(std::string_view folded, Shape& shape, bool& top_said) {
  constexpr std::array flat = {"flat on top", "flat top",    "flat topped",
                               "flat",        "side on top", "level on top"};
  constexpr std::array point = {"point on top", "pointy top",       "point up",
                                "pointed",      "point at the top", "corner on top"};
  const bool is_flat = std::find(flat.begin(), flat.end(), folded) != flat.end();
  if (!is_flat && std::find(point.begin(), point.end(), folded) == point.end()) return false;
  shape.flat_on_top = is_flat;
  top_said = true;
  return true;
}

// One part of the figures, into the shape.
std::optional<Problem> take_figure(std::string_view part, std::string_view figures, Unit no_unit,
                                   Shape& shape, bool& top_said) {
  if (shape.kind == ShapeKind::rounded_rectangle) {
    if (const auto named = named_figure(part, {"corner radius", "radius", "corners", "corner"})) {
      const Result<ReadLength> radius = read_length(named->value, no_unit);
      if (!radius) return radius.error();
      shape.corner_radius = radius->length;
      return std::nullopt;
    }
  }
  if (shape.kind == ShapeKind::polygon) {
    if (said_of_top(fold(part), shape, top_said)) return std::nullopt;
    const auto named = named_figure(part, {"sides", "sided"});
    const std::optional<int> sides = named ? number_of_sides(named->value) : std::nullopt;
    if (sides) {
      if (*sides < fewest_polygon_sides || *sides > most_polygon_sides) return too_many_sides(part);
      if (shape.sides != 0 && shape.sides != *sides) return word_contradicts_sides(shape.name, *sides);
      shape.sides = *sides;
      return std::nullopt;
    }
  }
  if (said_of_filling(part, shape)) return std::nullopt;
  const Result<bool> taken = take_drawn_figure(part, no_unit, shape);
  if (!taken) return taken.error();
  if (*taken) return std::nullopt;
  return figure_unknown(part, figures, shape.kind);
}

// What a word for a polygon and its box say of how it lies, where the figures do not: a diamond, a triangle
// and any odd number stand with a point on top; of six, ten … sides the longer way of the box runs from
// corner to corner.
bool lies_flat(const Shape& shape) {
  if (shape.sides == 4) return polygon_sides(shape.name) != 4;
  if (shape.sides % 2 == 1) return false;
  return shape.sides % 4 == 0 || shape.width >= shape.height;
}

// Whether two lengths lie within half a mark of a ruler.
bool a_ruler_gives_both(Length a, Length b) {
  return std::max(a, b) - std::min(a, b) <= Length::inch_fraction(1, 32);
}

// One figure of a polygon is the width of its box, two are its box, which may be stretched. Equal ones are
// kept as one is, so they must be what a ruler gives of the regular polygon.
std::optional<Problem> take_figures(std::string_view figures, Unit no_unit, Shape& shape, const Size& size) {
  bool top_said = false;
  // What nobody draws from figures keeps them as they were written.
  const bool drawn = shape.kind <= ShapeKind::polygon || is_drawn(shape);
  for (const std::string_view part : parts_of(figures)) {
    if (!drawn)
      said_of_filling(part, shape);
    else if (auto problem = take_figure(part, figures, no_unit, shape, top_said))
      return problem;
  }
  if (shape.kind != ShapeKind::polygon || shape.sides == 0) return std::nullopt;
  if (!top_said) shape.flat_on_top = lies_flat(shape);
  const Length height = regular_height(shape.sides, shape.flat_on_top, shape.width);
  if (!size.one_figure && size.width != size.height) return std::nullopt;
  if (!size.one_figure && !a_ruler_gives_both(size.width, height)) return not_regular(shape, size, height);
  shape.height = height;
  return std::nullopt;
}

// ---- The size ----

bool has_one_figure(ShapeKind kind) {
  return kind == ShapeKind::circle || kind == ShapeKind::square;
}

// One figure is enough for what is as wide as it is high, for a regular polygon (the height follows), and for
// what nobody computes.
bool needs_two_figures(ShapeKind kind, std::string_view word) {
  if (kind == ShapeKind::rounded_rectangle) return fold(word).find("square") == std::string::npos;
  return kind == ShapeKind::oval || kind == ShapeKind::rectangle;
}

Result<std::string> chosen_word(std::string_view word, const Size& size) {
  const std::string said(trim(word));
  if (said.empty() && size.shape.empty()) {
    if (size.one_figure) return failure(no_shape_said(write(size)));
    return std::string(shape_word(ShapeKind::rectangle));
  }
  if (said.empty()) return size.shape;
  if (!size.shape.empty() && shape_kind(said) != shape_kind(size.shape)) {
    return failure(two_shapes_said(said, size.shape));
  }
  return said;
}

}  // namespace

std::string_view figures_known(ShapeKind kind) {
  switch (kind) {
    case ShapeKind::rounded_rectangle:
      return "\"radius 1/4 in\"";
    case ShapeKind::polygon:
      return "\"6 sides\", \"flat on top\" or \"point on top\"";
    default:
      return drawn_figures_known(kind);
  }
}

Result<Shape> make_shape(std::string_view word, const Size& size, std::string_view figures, Unit no_unit) {
  const Result<std::string> said = chosen_word(word, size);
  if (!said) return failure(said.error());
  Shape shape;
  shape.kind = shape_kind(*said).value_or(ShapeKind::other);
  if (fold(*said) != shape_word(shape.kind)) shape.name = *said;
  shape.width = size.width;
  shape.height = size.height;
  shape.sides = polygon_sides(*said);
  shape.scallops_round = base_of_scallops(*said);
  shape.figures = std::string(trim(figures));
  if (size.width.nm() > largest_figure.nm() || size.height.nm() > largest_figure.nm())
    return failure(too_large(size));
  if (has_one_figure(shape.kind) && size.width != size.height) {
    return failure(sides_differ(shape_word(shape.kind), size));
  }
  if (size.one_figure && needs_two_figures(shape.kind, *said))
    return failure(second_side_missing(*said, size));
  if (auto problem = take_figures(figures, no_unit, shape, size)) return failure(*problem);
  const Length most = std::min(shape.width, shape.height) / 2;
  if (shape.corner_radius && *shape.corner_radius > most) {
    return failure(radius_too_large(*shape.corner_radius, most, size.unit));
  }
  return shape;
}

}  // namespace insetbook
