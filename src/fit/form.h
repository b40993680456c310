// SPDX-License-Identifier: GPL-3.0-or-later
//
// A shape as the decisions see it: one of three kinds of outline, with whole figures in quarters of a
// nanometre ("ticks"), centred on its box. Whatever two words say the same outline, the form is the same: a
// square is a rectangle with equal sides, an oval with equal axes is a circle, a rounded rectangle without a
// radius is a rectangle. To add a kind of outline: add it to FormKind, to `form_of`, and a file of its own
// beside ellipse.cc and polygon.cc with its exact answer for a core (below); `lies_in` in inside.cc is the
// only place that chooses between them.
#pragma once

#include <cstdint>

#include "shape/shape.h"

namespace insetbook {

enum class FormKind {
  rounded,  // a box with quarter circles of radius r at its corners: rectangles (r = 0) up to circles (r =
            // half_width)
  ellipse,
  polygon,  // regular, stretched to its box
};

struct Form {
  FormKind kind = FormKind::rounded;
  std::int64_t half_width = 0, half_height = 0, radius = 0;
  int sides = 0;
  bool flat_on_top = true;

  bool operator==(const Form&) const = default;

  bool is_circle() const {
    return kind == FormKind::rounded && radius == half_width && radius == half_height;
  }
  // Unchanged when turned upside down; then, with an opening that is so too, centred is the best place
  // (inside.h).
  bool is_symmetric() const { return kind != FormKind::polygon || sides % 2 == 0; }
};

inline constexpr std::int64_t ticks_in_nm = 4;

constexpr std::int64_t ticks(Length length) {
  return length.nm() * ticks_in_nm;
}
constexpr std::int64_t half_ticks(Length length) {
  return length.nm() * (ticks_in_nm / 2);
}

// The shape is computable and its figures lie within largest_figure and are not negative.
Form form_of(const Shape& shape);

// Half of a rectangle round which a border of `border` on all sides makes the panel; for a rectangle, rounded
// rectangle and circle, of which it is the whole truth: such a panel with border b lies in an opening when
// its core lies there with border b + radius.
struct Core {
  std::int64_t half_width = 0, half_height = 0;
};

// Where a panel is with regard to the edge of an opening pulled in by a border.
enum class Where {
  outside,    // it does not fit
  undecided,  // closer than can be decided; counts as not fitting
  on,         // it touches, and fits
  inside,
};

constexpr bool holds(Where where) {
  return where == Where::on || where == Where::inside;
}

// Both conditions together.
constexpr Where both(Where a, Where b) {
  return a < b ? a : b;
}

constexpr Where where_by_sign(int sign) {
  return sign > 0 ? Where::inside : sign == 0 ? Where::on : Where::outside;
}

}  // namespace insetbook
