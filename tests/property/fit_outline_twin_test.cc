// SPDX-License-Identifier: GPL-3.0-or-later
//
// Plain shapes drawn as outlines: what fits in them is what their own exact checks say (inside.h), which know
// nothing of edges and searches.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "fit/outline_family.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

// Drawn with quarter arcs, so that the sides of the box are touched at the ends of arcs. Sides and radius are
// even figures, so that the arcs end at whole nanometres.
CurvedOutline drawn(const Shape& shape) {
  const std::int64_t width = shape.width.nm(), height = shape.height.nm();
  std::int64_t across = 0, along = 0;
  if (shape.kind == ShapeKind::circle || shape.kind == ShapeKind::oval) {
    across = width / 2;
    along = height / 2;
  }
  if (shape.corner_radius) across = along = shape.corner_radius->nm();
  const auto corner = [&](std::int64_t x, std::int64_t y) -> Curve {
    if (across == 0) return LineTo{{x, y}};
    return ArcTo{across, along, 0, false, true, {x, y}};
  };
  Contour contour;
  contour.start = {across, 0};
  contour.curves = {LineTo{{width - across, 0}},
                    corner(width, along),
                    LineTo{{width, height - along}},
                    corner(width - across, height),
                    LineTo{{across, height}},
                    corner(0, height - along),
                    LineTo{{0, along}},
                    corner(across, 0)};
  return {{contour}, FillRule::even_odd};
}

Length even_length(std::int64_t most) {
  const std::int64_t mark = in64(4).nm();
  const std::int64_t nm = *rc::gen::arbitrary<bool>() ? mark * *rc::gen::inRange<std::int64_t>(1, most / mark)
                                                      : *rc::gen::inRange<std::int64_t>(1'000'000, most);
  return Length::nm(nm / 2 * 2);
}

Shape any_opening() {
  const auto kind = *rc::gen::element(ShapeKind::circle, ShapeKind::oval, ShapeKind::rectangle,
                                      ShapeKind::rounded_rectangle);
  const Length width = even_length(150'000'000);
  Shape shape = plain(kind, width, kind == ShapeKind::circle ? width : even_length(150'000'000));
  if (kind == ShapeKind::rounded_rectangle)
    shape.corner_radius = std::min(even_length(20'000'000), std::min(shape.width, shape.height) / 4 * 2);
  return shape;
}

std::vector<Sides> sides_of(const std::vector<Panel>& panels, PanelKind kind) {
  std::vector<Sides> sides;
  for (const Panel& panel : panels) {
    if (panel.kind == kind) sides.push_back({panel.shape.width.nm(), panel.shape.height.nm()});
  }
  return sides;
}

void same(const FoundPlace& found, const std::vector<Sides>& wanted) {
  const std::vector<Sides> sides = found.placed ? std::vector{found.placed->sides} : std::vector<Sides>{};
  if (found.undecided) {
    RC_TAG("undecided");
    return;
  }
  RC_TAG("decided");
  RC_ASSERT(sides.size() == wanted.size());
  if (!sides.empty()) {
    RC_LOG() << sides[0].width << " x " << sides[0].height << " wanted " << wanted[0].width << " x "
             << wanted[0].height << "\n";
    RC_ASSERT(sides[0] == wanted[0]);
  }
}

RC_GTEST_PROP(FitOutlineTwin, PlainShapesAsOutlines, ()) {
  const Shape shape = any_opening();
  RC_LOG() << describe(shape, Unit::mm) << "\n";
  const Opening opening{shape, Length()};
  const Result<OutlineGround> ground = OutlineGround::of(drawn(shape));
  RC_ASSERT(ground.has_value());
  FitQuestion question;
  question.border = in64(*rc::gen::inRange(0, 16));
  question.step = *rc::gen::element(in64(4), in64(2), Length::mm(1));
  for (const ShapeKind kind : {ShapeKind::rectangle, ShapeKind::square, ShapeKind::circle}) {
    question.shapes = {kind};
    const auto plainly = panels_inside(opening, question);
    RC_ASSERT(plainly.has_value());
    const OutlineFamily family(*ground, kind, std::nullopt, question.border, question.step);
    same(family.largest(), sides_of(*plainly, PanelKind::largest));
  }
}

RC_GTEST_PROP(FitOutlineTwin, OvalsAndBorders, ()) {
  const Shape shape = any_opening();
  const Opening opening{shape, Length()};
  const Result<OutlineGround> ground = OutlineGround::of(drawn(shape));
  RC_ASSERT(ground.has_value());
  FitQuestion question;
  question.border = in64(*rc::gen::inRange(1, 16));
  question.step = in64(4);
  question.shapes = {ShapeKind::oval};
  const Shape oval = plain(ShapeKind::oval, shape.width, shape.height);
  const auto plainly = panels_inside(opening, question);
  const OutlineFamily family(*ground, ShapeKind::oval, drawn(oval), question.border, question.step);
  const FoundPlace found = family.proportional();
  const std::vector<Sides> wanted = sides_of(*plainly, PanelKind::proportional);
  if (!wanted.empty()) same(found, wanted);
  if (!found.placed) return;
  const Shape panel =
      plain(ShapeKind::oval, Length::nm(found.placed->sides.width), Length::nm(found.placed->sides.height));
  const auto framed = framing(opening, panel, Length(), question.step, false);
  RC_ASSERT(framed.has_value() && framed->has_value());
  const OutlineFamily::Shown shown = family.shown(*found.placed);
  RC_LOG() << shown.border.nm() << " " << (*framed)->greatest_border.nm() << "\n";
  RC_ASSERT(shown.border <= (*framed)->greatest_border + Length::nm(5000));
  if (shown.centred) RC_ASSERT(shown.border >= (*framed)->greatest_border - Length::nm(4010));
}

}  // namespace
}  // namespace insetbook
