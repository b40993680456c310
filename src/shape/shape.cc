// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/shape.h"

#include <algorithm>
#include <array>

#include "measure/write.h"
#include "shape/drawn_figures.h"
#include "shape/regular_polygon.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

struct Word {
  std::string_view word;  // folded
  ShapeKind kind;
  int sides = 0;
};

// The first word of a kind is the one used in answers.
constexpr std::array words = {
    Word{"circle", ShapeKind::circle},
    Word{"round", ShapeKind::circle},
    Word{"circular", ShapeKind::circle},
    Word{"disc", ShapeKind::circle},
    Word{"disk", ShapeKind::circle},
    Word{"dot", ShapeKind::circle},
    Word{"oval", ShapeKind::oval},
    Word{"ellipse", ShapeKind::oval},
    Word{"elliptical", ShapeKind::oval},
    Word{"square", ShapeKind::square},
    Word{"rectangle", ShapeKind::rectangle},
    Word{"rectangular", ShapeKind::rectangle},
    Word{"oblong", ShapeKind::rectangle},
    Word{"rect", ShapeKind::rectangle},
    Word{"long rectangle", ShapeKind::rectangle},
    Word{"slim rectangle", ShapeKind::rectangle},
    Word{"thin rectangle", ShapeKind::rectangle},
    Word{"rounded rectangle", ShapeKind::rounded_rectangle},
    Word{"rounded rect", ShapeKind::rounded_rectangle},
    Word{"rounded square", ShapeKind::rounded_rectangle},
    Word{"rounded corners", ShapeKind::rounded_rectangle},
    Word{"rounded corner rectangle", ShapeKind::rounded_rectangle},
    Word{"rounded corner square", ShapeKind::rounded_rectangle},
    Word{"round cornered rectangle", ShapeKind::rounded_rectangle},
    Word{"rectangle with rounded corners", ShapeKind::rounded_rectangle},
    Word{"square with rounded corners", ShapeKind::rounded_rectangle},
    Word{"polygon", ShapeKind::polygon},
    Word{"regular polygon", ShapeKind::polygon},
    Word{"many sided", ShapeKind::polygon},
    Word{"triangle", ShapeKind::polygon, 3},
    Word{"triangular", ShapeKind::polygon, 3},
    Word{"three sided", ShapeKind::polygon, 3},
    Word{"diamond", ShapeKind::polygon, 4},
    Word{"rhombus", ShapeKind::polygon, 4},
    Word{"lozenge", ShapeKind::polygon, 4},
    Word{"harlequin", ShapeKind::polygon, 4},
    Word{"pentagon", ShapeKind::polygon, 5},
    Word{"pentagonal", ShapeKind::polygon, 5},
    Word{"five sided", ShapeKind::polygon, 5},
    Word{"hexagon", ShapeKind::polygon, 6},
    Word{"hexagonal", ShapeKind::polygon, 6},
    Word{"six sided", ShapeKind::polygon, 6},
    Word{"honeycomb cell", ShapeKind::polygon, 6},
    Word{"heptagon", ShapeKind::polygon, 7},
    Word{"seven sided", ShapeKind::polygon, 7},
    Word{"octagon", ShapeKind::polygon, 8},
    Word{"octagonal", ShapeKind::polygon, 8},
    Word{"eight sided", ShapeKind::polygon, 8},
    Word{"nonagon", ShapeKind::polygon, 9},
    Word{"nine sided", ShapeKind::polygon, 9},
    Word{"decagon", ShapeKind::polygon, 10},
    Word{"ten sided", ShapeKind::polygon, 10},
    Word{"dodecagon", ShapeKind::polygon, 12},
    Word{"twelve sided", ShapeKind::polygon, 12},
    Word{"scalloped", ShapeKind::scalloped},
    Word{"scalloped edge", ShapeKind::scalloped},
    Word{"scallop", ShapeKind::scalloped},
    Word{"scallop edge", ShapeKind::scalloped},
    Word{"arch", ShapeKind::arch},
    Word{"arched", ShapeKind::arch},
    Word{"arch window", ShapeKind::arch},
    Word{"arched top", ShapeKind::arch},
    Word{"cathedral", ShapeKind::arch},
    Word{"gothic arch", ShapeKind::arch},
    Word{"pointed arch", ShapeKind::arch},
    Word{"church window", ShapeKind::arch},
    Word{"tag", ShapeKind::tag},
    Word{"luggage tag", ShapeKind::tag},
    Word{"gift tag", ShapeKind::tag},
    Word{"tag with a hole", ShapeKind::tag},
    Word{"scallop top tag", ShapeKind::tag},
    Word{"scalloped tag", ShapeKind::tag},
    Word{"round tag", ShapeKind::tag},
    Word{"circle tag", ShapeKind::tag},
    Word{"banner", ShapeKind::banner},
    Word{"flag", ShapeKind::banner},
    Word{"swallowtail", ShapeKind::banner},
    Word{"fishtail", ShapeKind::banner},
    Word{"fishtail banner", ShapeKind::banner},
    Word{"pennant", ShapeKind::banner},
    Word{"ribbon banner", ShapeKind::banner},
    Word{"banner end", ShapeKind::banner},
    Word{"bunting", ShapeKind::banner},
    Word{"bunting flag", ShapeKind::banner},
    Word{"scroll", ShapeKind::banner},
    Word{"scroll banner", ShapeKind::banner},
    Word{"heart", ShapeKind::heart},
    Word{"love heart", ShapeKind::heart},
    Word{"outline", ShapeKind::outline},
    Word{"own outline", ShapeKind::outline},
    Word{"irregular", ShapeKind::outline},
    Word{"freehand outline", ShapeKind::outline},
    Word{"hand drawn outline", ShapeKind::outline},
    Word{"image outline", ShapeKind::outline},
    Word{"other", ShapeKind::other},
};

const Word* entry_of(std::string_view word) {
  const auto found =
      std::find_if(words.begin(), words.end(), [&](const Word& entry) { return entry.word == word; });
  return found == words.end() ? nullptr : &*found;
}

// Words of the table are found as they stand; only others need folding.
const Word* find_word(std::string_view word) {
  const Word* found = entry_of(word);
  return found != nullptr ? found : entry_of(fold(word));
}

// "scalloped circle", "scallop rectangle", "circle scallop": a scalloped edge round another shape.
bool is_scalloped(std::string_view folded) {
  return folded.starts_with("scalloped ") || folded.starts_with("scallop ") || folded.ends_with(" scallop");
}

bool within_reach(Length length) {
  return length > Length() && length <= largest_figure;
}

}  // namespace

std::string_view shape_word(ShapeKind kind) {
  return std::find_if(words.begin(), words.end(), [&](const Word& entry) { return entry.kind == kind; })
      ->word;
}

std::optional<ShapeKind> shape_kind(std::string_view word) {
  if (const Word* found = find_word(word)) return found->kind;
  if (is_scalloped(fold(word))) return ShapeKind::scalloped;
  return std::nullopt;
}

int polygon_sides(std::string_view word) {
  const Word* found = find_word(word);
  return found == nullptr ? 0 : found->sides;
}

std::string missing_figure(const Shape& shape) {
  if (shape.kind == ShapeKind::rounded_rectangle && !shape.corner_radius) return "the corner radius";
  if (shape.kind == ShapeKind::polygon && shape.sides == 0) return "the number of sides";
  return missing_drawn_figure(shape);
}

bool computable(const Shape& shape) {
  const bool figures_known = missing_figure(shape).empty();
  const bool sides_in_range = shape.kind != ShapeKind::polygon ||
                              (shape.sides >= fewest_polygon_sides && shape.sides <= most_polygon_sides);
  return shape.kind <= ShapeKind::polygon && figures_known && sides_in_range && within_reach(shape.width) &&
         within_reach(shape.height) && shape.corner_radius.value_or(Length()) >= Length();
}

std::string describe(const Shape& shape, Unit unit) {
  const std::string word = shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
  if (shape.kind == ShapeKind::circle) return word + " " + write(shape.width, unit);
  std::string text = word + " " + write_size(shape.width, shape.height, unit);
  if (shape.kind == ShapeKind::rounded_rectangle && shape.corner_radius) {
    text += ", radius " + write(*shape.corner_radius, unit);
  }
  if (shape.kind == ShapeKind::polygon && polygon_sides(shape.name) == 0 && shape.sides > 0) {
    text += ", " + std::to_string(shape.sides) + " sides";
  }
  return text;
}

}  // namespace insetbook
