// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/verdict.h"

#include <algorithm>

#include "fit/framing_in_outline.h"
#include "fit/panels_in_outline.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

Problem not_yet(const Shape& shape) {
  const std::string word = shape.name.empty() ? std::string(shape_word(shape.kind)) : shape.name;
  return {.what = "what fits the shape \"" + word + "\" is not computed yet",
          .where = {},
          .expected = "a shape with an outline: from its figures, or path data",
          .candidates = {}};
}

Problem out_of_reach() {
  return {.what = "a figure is too large to compute with",
          .where = {},
          .expected = "at most 1073 mm (42 in)",
          .candidates = {}};
}

bool within_reach(const Shape& shape) {
  return std::min(shape.width, shape.height) > Length() &&
         std::max(shape.width, shape.height) <= largest_figure;
}

// A corner radius stays as it is: that leaves less of the opening than a smaller one would.
Shape smaller(Shape shape, Length by) {
  shape.width -= by;
  shape.height -= by;
  return shape;
}

}  // namespace

std::optional<Problem> not_computable(const Shape& shape) {
  if (!missing_figure(shape).empty()) return figure_missing(shape);
  if (is_outline(shape) && !has_outline(shape)) return not_yet(shape);
  if (!within_reach(shape) || (!is_outline(shape) && !computable(shape))) return out_of_reach();
  return std::nullopt;
}

Verdict verdict_inside(const Opening& opening, const Form& panel) {
  if (opening.give_or_take <= Length()) return Verdict::fits;
  const Shape shrunk = smaller(opening.shape, opening.give_or_take);
  if (std::min(shrunk.width, shrunk.height) <= Length()) return Verdict::snug;
  return holds(lies_in(Ground(form_of(shrunk)), panel, 0)) ? Verdict::fits : Verdict::snug;
}

Result<Verdict> verdict_of(const Opening& opening, const Shape& panel, Length border) {
  if (auto problem = not_computable(opening.shape)) return failure(*problem);
  if (panel.width > opening.shape.width || panel.height > opening.shape.height) return Verdict::too_big;
  if (auto problem = not_computable(panel)) return failure(*problem);
  if (border > opening.shape.width) return Verdict::too_big;
  if (is_outline(opening.shape) || is_outline(panel))
    return verdict_in_outline(opening, panel, std::max(border, Length()));
  const Form form = form_of(panel);
  const Where where = lies_in(Ground(form_of(opening.shape)), form, ticks(std::max(border, Length())));
  if (where == Where::undecided) return Verdict::undecided;
  return holds(where) ? verdict_inside(opening, form) : Verdict::too_big;
}

std::string_view verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::fits:
      return "fits";
    case Verdict::snug:
      return "snug";
    case Verdict::too_big:
      return "too big";
    case Verdict::undecided:
      return "undecided";
  }
  return "";
}

std::string_view panel_kind_word(PanelKind kind) {
  switch (kind) {
    case PanelKind::largest:
      return "largest";
    case PanelKind::even_border:
      return "even-border";
    case PanelKind::proportional:
      return "proportional";
    case PanelKind::given_side:
      return "given-side";
  }
  return "";
}

}  // namespace insetbook
