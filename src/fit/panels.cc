// SPDX-License-Identifier: GPL-3.0-or-later
//
// panels_inside: which panels are looked for, and what is said of each.
#include <algorithm>

#include "fit/border.h"
#include "fit/family.h"
#include "fit/panels_in_outline.h"
#include "fit/verdict.h"

namespace insetbook {
namespace {

Problem radius_not_said() {
  return {.what = "how round the corners of a rounded rectangle should be is not said",
          .where = {},
          .expected = "a rectangle, or an opening that is a rounded rectangle",
          .candidates = {}};
}

Problem sides_not_said() {
  return {.what = "how many sides the polygon should have is not said",
          .where = {},
          .expected = "an opening that is a polygon, or another shape",
          .candidates = {}};
}

Problem no_step() {
  return {.what = "the cutting step is not more than nothing",
          .where = {},
          .expected = "a step such as 1/16 in",
          .candidates = {}};
}

bool two_figures(ShapeKind kind) {
  return kind == ShapeKind::oval || kind == ShapeKind::rectangle || kind == ShapeKind::rounded_rectangle;
}

std::vector<ShapeKind> shapes_asked(const Opening& opening, const FitQuestion& question) {
  std::vector<ShapeKind> shapes = question.shapes;
  if (shapes.empty())
    shapes = {opening.shape.kind, ShapeKind::rectangle, ShapeKind::square, ShapeKind::circle};
  std::vector<ShapeKind> once;
  for (const ShapeKind kind : shapes) {
    if (std::find(once.begin(), once.end(), kind) == once.end()) once.push_back(kind);
  }
  return once;
}

// What all panels of a shape have in common. The corners of a rounded rectangle are as round as the opening's
// pulled in by the border, so that the strip round them is as wide as elsewhere.
Result<Shape> pattern(const Opening& opening, const FitQuestion& question, ShapeKind kind) {
  Shape shape;
  shape.kind = kind;
  const bool own = kind == opening.shape.kind;
  if (own && is_outline(opening.shape)) return opening.shape;
  if (is_outline(shape)) {
    shape.width = opening.shape.width;
    shape.height = opening.shape.height;
    if (auto problem = not_computable(shape)) return failure(*problem);
    return shape;
  }
  if (kind == ShapeKind::rounded_rectangle) {
    if (!own) return failure(radius_not_said());
    shape.corner_radius = std::max(Length(), *opening.shape.corner_radius - question.border);
  }
  if (kind == ShapeKind::polygon) {
    if (!own) return failure(sides_not_said());
    shape.sides = opening.shape.sides;
    shape.flat_on_top = opening.shape.flat_on_top;
  }
  if (own) shape.name = opening.shape.name;
  return shape;
}

class Answer {
 public:
  Answer(const Opening& opening, const FitQuestion& question)
      : opening_(opening), question_(question), ground_(form_of(opening.shape)) {}

  void add_shape(const Shape& pattern) {
    const Family family(opening_, ground_, pattern, question_.border, question_.step);
    const std::size_t first = panels_.size();
    if (question_.width || question_.height) {
      add(family, PanelKind::given_side, family.given_side(question_.width, question_.height));
      return;
    }
    add(family, PanelKind::largest, family.largest());
    if (pattern.kind == opening_.shape.kind) add(family, PanelKind::even_border, family.even_border());
    if (two_figures(pattern.kind)) add(family, PanelKind::proportional, family.proportional());
    std::stable_sort(panels_.begin() + static_cast<std::ptrdiff_t>(first), panels_.end(),
                     [](const Panel& a, const Panel& b) { return area(a) > area(b); });
  }

  std::vector<Panel> take() { return std::move(panels_); }

 private:
  static Int128 area(const Panel& panel) {
    return static_cast<Int128>(panel.shape.width.nm()) * panel.shape.height.nm();
  }

  void add(const Family& family, PanelKind kind, std::optional<Sides> sides) {
    if (!sides) return;
    const Form form = family.form(*sides);
    if (std::find(forms_.begin(), forms_.end(), form) != forms_.end()) return;
    forms_.push_back(form);
    Panel panel;
    panel.kind = kind;
    panel.shape = family.shape(*sides);
    panel.verdict = verdict_inside(opening_, form);
    panel.border = greatest_border(ground_, form).value_or(question_.border);
    set_place(form, panel);
    if (family.larger_undecided(*sides)) panel.note = "one step more is too close to tell, and was not taken";
    panels_.push_back(std::move(panel));
  }

  void set_place(const Form& form, Panel& panel) const {
    const Form& opening = ground_.form();
    const std::int64_t up = height_in(ground_, form, ticks(panel.border));
    panel.left = Length::nm((opening.half_width - form.half_width) / ticks_in_nm);
    panel.top =
        Length::nm(std::max<std::int64_t>(0, opening.half_height - form.half_height - up) / ticks_in_nm);
    panel.centred = up == 0;
  }

  const Opening& opening_;
  const FitQuestion& question_;
  Ground ground_;
  std::vector<Form> forms_;
  std::vector<Panel> panels_;
};

// Nothing at all is an answer only where everything was excluded.
Result<std::vector<Panel>> found_or_left_open(std::vector<Panel> panels, Result<OutlinePanels> others) {
  if (!others) return failure(others.error());
  panels.insert(panels.end(), others->panels.begin(), others->panels.end());
  if (!panels.empty() || others->left_open.empty()) return panels;
  return failure({.what = "nothing was found to fit: " + others->left_open,
                  .where = {},
                  .expected = "a smaller border",
                  .candidates = {}});
}

}  // namespace

Result<std::vector<Panel>> panels_inside(const Opening& opening, const FitQuestion& asked) {
  if (auto problem = not_computable(opening.shape)) return failure(*problem);
  if (asked.step <= Length()) return failure(no_step());
  FitQuestion question = asked;
  question.border = std::max(question.border, Length());
  if (question.border > std::min(opening.shape.width, opening.shape.height)) return std::vector<Panel>{};
  std::vector<Shape> patterns;
  for (const ShapeKind kind : shapes_asked(opening, question)) {
    const Result<Shape> wanted = pattern(opening, question, kind);
    if (!wanted) return failure(wanted.error());
    patterns.push_back(*wanted);
  }
  if (is_outline(opening.shape))
    return found_or_left_open({}, panels_in_outline(opening, question, patterns));
  Answer answer(opening, question);
  std::vector<Shape> drawn;
  for (const Shape& wanted : patterns) {
    if (is_outline(wanted)) {
      drawn.push_back(wanted);
    } else {
      answer.add_shape(wanted);
    }
  }
  std::vector<Panel> panels = answer.take();
  if (drawn.empty()) return panels;
  return found_or_left_open(std::move(panels), panels_in_outline(opening, question, drawn));
}

}  // namespace insetbook
