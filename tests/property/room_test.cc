// SPDX-License-Identifier: GPL-3.0-or-later
//
// The room in an outline (fit/room.h) against the searches that it spares: no bound ever says otherwise.
#include "fit/room.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>
#include <string>

#include "shape/shape_outline.h"

namespace insetbook {
namespace {

constexpr Length step = Length::nm(1'587'500);

Shape sized(std::string_view word, std::int64_t width, std::int64_t height, std::string_view figures = "") {
  Size size;
  size.width = Length::nm(width);
  size.height = Length::nm(height);
  size.unit = Unit::mm;
  size.one_figure = width == height;
  size.orientation = Orientation::said;
  const Result<Shape> shape = make_shape(word, size, figures, Unit::mm);
  RC_PRE(shape.has_value());  // an arch may be too wide for its height
  return *shape;
}

std::int64_t any_side() {
  return *rc::gen::inRange<std::int64_t>(8, 90) * 1'000'000;
}

Shape regular(std::string_view word) {
  const std::int64_t side = any_side();
  return sized(word, side, side);
}

// A star round a middle as path data, or a shape of the trade that is drawn.
Shape any_drawn_opening() {
  switch (*rc::gen::inRange(0, 4)) {
    case 0:
      return sized("heart", any_side(), any_side());
    case 1:
      return sized("arch", any_side(), any_side());
    default:
      break;
  }
  const int corners = *rc::gen::inRange(3, 14);
  std::string path;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / corners;
    const double radius = static_cast<double>(*rc::gen::inRange(300, 1000));
    path += (i == 0 ? "M" : "L") + std::to_string(std::llround(1000 + radius * std::cos(angle))) + " " +
            std::to_string(std::llround(1000 + radius * std::sin(angle)));
  }
  Shape shape = sized("rectangle", any_side(), any_side());
  shape.kind = ShapeKind::outline;
  shape.outline = path + "Z";
  return shape;
}

Shape any_plain_opening() {
  switch (*rc::gen::inRange(0, 7)) {
    case 0: {
      const std::int64_t side = any_side();
      return sized("circle", side, side);
    }
    case 1:
      return sized("oval", any_side(), any_side());
    case 2:
      return sized("rectangle", any_side(), any_side());
    case 3:
      return regular("triangle");
    case 4:
      return regular("pentagon");
    case 5:
      return regular("hexagon");
    default:
      return sized("rounded rectangle", any_side(), any_side(), "radius 3 mm");
  }
}

Shape any_panel(bool drawn_only) {
  const std::int64_t side = any_side();
  switch (*rc::gen::inRange(drawn_only ? 3 : 0, 5)) {
    case 0:
      return sized("circle", side, side);
    case 1:
      return sized("rectangle", any_side(), any_side());
    case 2:
      return sized("square", side, side);
    case 3:
      return sized("heart", any_side(), any_side());
    default:
      return sized("arch", any_side(), any_side());
  }
}

void bounds_hold(const BorderBounds& bounds, const Opening& opening, const Shape& panel, bool may_turn) {
  const std::optional<Length> in_middle = border_in_the_middle(opening, panel, Length(), may_turn);
  const Result<std::optional<Framing>> framed = framing(opening, panel, Length(), step, may_turn);
  RC_ASSERT(framed.has_value());
  RC_TAG(framed->has_value() ? "fits" : "does not fit");
  if (bounds.in_middle >= 0) {
    RC_ASSERT(in_middle.has_value());
    RC_ASSERT(in_middle->nm() + 2000 >= bounds.in_middle);  // curved edges stand 1 µm from the truth
  }
  if (std::max(bounds.in_middle, bounds.somewhere) >= 0) RC_ASSERT(framed->has_value());
  if (in_middle) {
    RC_ASSERT(framed->has_value());
    RC_ASSERT((*framed)->greatest_border >= *in_middle);  // it may keep more elsewhere
  }
  if (*framed) RC_ASSERT((*framed)->greatest_border.nm() <= bounds.most + 6000);
  if (bounds.most < 0) RC_ASSERT(!framed->has_value());
}

RC_GTEST_PROP(Room, NoBoundOfADrawnOpeningSaysOtherThanTheSearch, ()) {
  const Opening opening{any_drawn_opening(), Length()};
  const Shape panel = any_panel(false);
  const bool may_turn = *rc::gen::arbitrary<bool>();
  const Result<Room> room = room_in(opening.shape);
  RC_PRE(room.has_value());  // a star may cross itself
  const Result<PanelReach> reach = reach_of(panel);
  RC_PRE(reach.has_value());  // an arch may be too wide for its height
  bounds_hold(border_bounds(*room, {opening.shape.width.nm(), opening.shape.height.nm()}, *reach, may_turn),
              opening, panel, may_turn);
}

RC_GTEST_PROP(Room, NoBoundOfADrawnPanelInAPlainOpeningSaysOtherThanTheSearch, ()) {
  const Opening opening{any_plain_opening(), Length()};
  const Shape panel = any_panel(true);
  const Result<PanelReach> reach = reach_of(panel);
  RC_PRE(reach.has_value());  // an arch may be too wide for its height
  bounds_hold(border_bounds(opening.shape, *reach), opening, panel, false);
}

// In an L of 80 x 80 with arms 30 wide nothing 31 x 31 lies, nor in the middle anything.
TEST(Room, OfAnAngle) {
  Shape angle;
  angle.kind = ShapeKind::outline;
  angle.width = angle.height = Length::nm(80'000'000);
  angle.outline = "M0 0H30V50H80V80H0Z";
  const Result<Room> room = room_in(angle);
  ASSERT_TRUE(room) << room.error().what;
  ASSERT_EQ(room->rectangles.size(), 16u);
  EXPECT_EQ(room->rectangles[0].wide, 5'000'000);
  EXPECT_GT(room->rectangles[0].high, 79'900'000);
  EXPECT_EQ(room->rectangles[0].high_in_middle, 0);
  EXPECT_LE(room->rectangles[15].high, 30'000'000);
  EXPECT_GT(room->rectangles[15].too_high, 30'000'000);
  EXPECT_EQ(room->circle_in_middle, 0);
  // The circle in the corner touches both outer sides and the inner corner: 30 (2 - √2) 2 … in closed form,
  // d/2 (1 + √2/2) = 30 √2 / √2 along the diagonal gives d = 60 / (1 + √2/2) = 35.147 mm.
  EXPECT_LE(room->circle, 35'147'187);
  EXPECT_GT(room->too_large_a_circle, 35'147'186);
  EXPECT_LT(room->too_large_a_circle - room->circle, 100'000);
}

}  // namespace
}  // namespace insetbook
