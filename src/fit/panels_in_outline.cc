// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/panels_in_outline.h"

#include <algorithm>

#include "fit/outline_family.h"
#include "fit/smaller_opening.h"
#include "fit/verdict.h"
#include "measure/write.h"
#include "shape/shape_outline.h"
#include "shape/wide.h"

namespace insetbook {
namespace {

// What is scaled to be the panel: the opening's own outline, or one that is as large as the opening.
Result<CurvedOutline> drawn(const Opening& opening, const OutlineGround& ground, Shape shape) {
  if (shape.kind == opening.shape.kind) return ground.curves();
  shape.width = opening.shape.width;
  shape.height = opening.shape.height;
  return outline_of(shape);
}

// In the unit that the steps are of.
std::string size_said(Sides sides, std::int64_t step) {
  const Unit unit = step % Length::inch_fraction(1, 64).nm() == 0 ? Unit::inch : Unit::mm;
  return write_size(Length::nm(sides.width), Length::nm(sides.height), unit);
}

// What is said of larger panels that were neither found nor excluded: how large one may be at most.
std::string left_open(const FoundPlace& found, std::int64_t step) {
  if (!found.undecided) return {};
  const Sides most = *found.undecided, placed = found.placed ? found.placed->sides : Sides{};
  if (found.ended)
    return "the search was ended before a larger one was found or excluded: none larger than " +
           size_said(most, step) + " fits";
  if (most.width - placed.width <= step && most.height - placed.height <= step)
    return "one step more is too close to tell, and was not taken";
  return "larger ones, up to " + size_said(most, step) + ", are too close to tell, and were not taken";
}

class Answer {
 public:
  Answer(const Opening& opening, const FitQuestion& question, const OutlineGround& ground)
      : opening_(opening), question_(question), ground_(ground), smaller_(opening, ground) {}

  void add_shape(ShapeKind kind, std::optional<CurvedOutline> panel) {
    const bool own = kind == opening_.shape.kind && is_outline(opening_.shape);
    const OutlineFamily family(ground_, kind, std::move(panel), question_.border, question_.step,
                               own ? std::optional(opening_.shape) : std::nullopt);
    const std::size_t first = panels_.size();
    if (question_.width || question_.height) {
      add(family, kind, PanelKind::given_side, family.given_side(question_.width, question_.height));
      return;
    }
    if (kind == opening_.shape.kind) {
      add_own(family, kind);
    } else {
      add(family, kind, PanelKind::largest, family.largest());
    }
    if (kind == ShapeKind::rectangle) add(family, kind, PanelKind::proportional, family.proportional());
    std::stable_sort(panels_.begin() + static_cast<std::ptrdiff_t>(first), panels_.end(),
                     [](const Panel& a, const Panel& b) { return area(a) > area(b); });
  }

  OutlinePanels take() { return {std::move(panels_), std::move(left_open_)}; }

 private:
  static Int128 area(Sides sides) { return static_cast<Int128>(sides.width) * sides.height; }
  static Int128 area(const Panel& panel) {
    return static_cast<Int128>(panel.shape.width.nm()) * panel.shape.height.nm();
  }

  // Of the opening's own shape there are two families: in its proportions, and with its border as even as
  // whole steps leave it. The larger of the two panels is the largest.
  void add_own(const OutlineFamily& family, ShapeKind kind) {
    const FoundPlace proportional = family.proportional(), even = family.even_border();
    const bool even_is_larger =
        even.placed && (!proportional.placed || area(even.placed->sides) > area(proportional.placed->sides));
    add(family, kind, PanelKind::largest, even_is_larger ? even : proportional);
    if (even_is_larger) {
      add(family, kind, PanelKind::proportional, proportional);
    } else {
      add(family, kind, PanelKind::even_border, even);
    }
  }

  bool is_there(ShapeKind kind, Sides sides) const {
    return std::any_of(panels_.begin(), panels_.end(), [&](const Panel& panel) {
      const bool same_word = panel.shape.kind == kind ||
                             (kind == ShapeKind::rectangle && panel.shape.kind == ShapeKind::square) ||
                             (kind == ShapeKind::square && panel.shape.kind == ShapeKind::rectangle);
      return same_word && panel.shape.width.nm() == sides.width && panel.shape.height.nm() == sides.height;
    });
  }

  void add(const OutlineFamily& family, ShapeKind kind, PanelKind wanted, const FoundPlace& found) {
    if (!found.placed && left_open_.empty()) left_open_ = left_open(found, question_.step.nm());
    if (!found.placed || is_there(kind, found.placed->sides)) return;
    const Sides sides = found.placed->sides;
    Panel panel;
    panel.kind = wanted;
    if (kind == opening_.shape.kind) panel.shape = opening_.shape;
    panel.shape.kind = kind;
    panel.shape.width = Length::nm(sides.width);
    panel.shape.height = Length::nm(sides.height);
    const OutlineFamily::Shown shown = family.shown(*found.placed);
    panel.border = shown.border;
    panel.centred = shown.centred;
    panel.left = Length::nm((shown.middle.x / 2 - sides.width) / 2);
    panel.top = Length::nm((shown.middle.y / 2 - sides.height) / 2);
    panel.verdict = smaller_.verdict(family, sides);
    panel.note = left_open(found, question_.step.nm());
    panels_.push_back(std::move(panel));
  }

  const Opening& opening_;
  const FitQuestion& question_;
  const OutlineGround& ground_;
  SmallerOpening smaller_;
  std::vector<Panel> panels_;
  std::string left_open_;
};

}  // namespace

bool is_outline(const Shape& shape) {
  return shape.kind > ShapeKind::polygon;
}

Result<OutlinePanels> panels_in_outline(const Opening& opening, const FitQuestion& question,
                                        const std::vector<Shape>& shapes) {
  const Result<OutlineGround> ground = OutlineGround::of(opening.shape);
  if (!ground) return failure(ground.error());
  Answer answer(opening, question, *ground);
  for (const Shape& shape : shapes) {
    if (is_whole_figure(shape.kind)) {
      answer.add_shape(shape.kind, std::nullopt);
      continue;
    }
    Result<CurvedOutline> panel = drawn(opening, *ground, shape);
    if (!panel) return failure(panel.error());
    answer.add_shape(shape.kind, std::move(*panel));
  }
  return answer.take();
}

}  // namespace insetbook
