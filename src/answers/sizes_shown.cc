// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/sizes_shown.h"

#include "measure/write.h"
#include "shape/shape.h"

namespace insetbook {
namespace {

Length finest_mark(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 64) : Length::nm(500'000);
}

std::size_t decimals(Length length, Unit unit) {
  const std::string figure = write_figure(length, unit);
  const std::size_t point = figure.find('.');
  return point == std::string::npos ? 0 : figure.size() - point - 1;
}

std::size_t most_decimals(Unit unit) {
  return unit == Unit::inch ? 3 : 2;
}

}  // namespace

std::string shaped_size_text(std::string_view shape_word, Length width, Length height, Unit unit) {
  const std::optional<ShapeKind> kind = shape_kind(shape_word);
  const bool one_figure = width == height && (kind == ShapeKind::circle || kind == ShapeKind::square ||
                                              kind == ShapeKind::polygon);
  return one_figure ? write(width, unit) : write_size(width, height, unit);
}

std::string recorded_size_text(std::string_view shape_word, Length width, Length height, Unit unit) {
  if (decimals(width, unit) <= most_decimals(unit) && decimals(height, unit) <= most_decimals(unit))
    return shaped_size_text(shape_word, width, height, unit);
  const Length mark = unit == Unit::inch ? finest_mark(unit) : Length::nm(100'000);
  const auto nearest = [&](Length length) { return round_down(length + mark / 2, mark); };
  return "about " + shaped_size_text(shape_word, nearest(width), nearest(height), unit);
}

std::string shape_text(const Shape& shape, Unit unit) {
  const std::string word = shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
  return word + " " + shaped_size_text(word, shape.width, shape.height, unit);
}

std::string border_text(Length border, Unit unit) {
  if (border < Length()) return "none";
  const Length mark = finest_mark(unit);
  return round_down(border, mark) == border ? write(border, unit)
                                            : "just over " + write_at_most(border, mark, unit);
}

std::string give_text(Length give, Unit unit) {
  const Length mark = unit == Unit::inch ? finest_mark(unit) : Length::nm(50'000);
  return write(round_down(give + mark - Length::nm(1), mark), unit);
}

Length nearest_mark(Length length, Unit unit) {
  const Length mark = finest_mark(unit);
  return round_down(length + mark / 2, mark);
}

Length mark_above(Length length, Unit unit) {
  const Length mark = finest_mark(unit);
  return round_down(length + mark - Length::nm(1), mark);
}

}  // namespace insetbook
