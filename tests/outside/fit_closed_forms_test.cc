// SPDX-License-Identifier: GPL-3.0-or-later
//
// What fits, against closed forms of elementary geometry. Each row says where its value is from; those marked
// "table" are rows of geometry_closed_forms.csv of the published data (whose own sources are named there),
// typed in here.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

// The unit of the table's figures here: 1 = 10 mm; panels are cut in steps of 1 µm.
constexpr double unit = 10'000'000;
constexpr Length micrometre = Length::nm(1000);

Length units(double figure) {
  return Length::nm(std::llround(figure * unit));
}

Panel largest(const Shape& opening, ShapeKind kind) {
  FitQuestion question;
  question.step = micrometre;
  question.shapes = {kind};
  const auto panels = panels_inside({opening, Length()}, question);
  EXPECT_TRUE(panels && !panels->empty());
  return panels && !panels->empty() ? panels->front() : Panel{};
}

double width_of(const Panel& panel) {
  return static_cast<double>(panel.shape.width.nm()) / unit;
}
double height_of(const Panel& panel) {
  return static_cast<double>(panel.shape.height.nm()) / unit;
}
double area_of(const Panel& panel) {
  return width_of(panel) * height_of(panel);
}

// A side rounded down to 1 µm is at most 0.0001 units short; never too long.
void expect_side(double found, double closed_form) {
  EXPECT_LE(found, closed_form + 1e-7);
  EXPECT_GE(found, closed_form - 1.01e-4);
}

void expect_area(const Panel& found, double closed_form) {
  EXPECT_LE(area_of(found), closed_form + 1e-6);
  EXPECT_GE(area_of(found), closed_form - 1.01e-4 * (width_of(found) + height_of(found)));
}

// A polygon with the given side length, in its box.
Shape regular(int sides, double side, bool flat_on_top) {
  const double pi = std::numbers::pi;
  const double circumradius = side / (2 * std::sin(pi / sides));  // handbook (table: regular n-gon)
  double left = 0, right = 0, top = 0, bottom = 0;
  for (int i = 0; i < sides; ++i) {
    const double angle = 2 * pi * i / sides + (flat_on_top ? pi / sides : 0);
    left = std::min(left, std::sin(angle));
    right = std::max(right, std::sin(angle));
    top = std::max(top, std::cos(angle));
    bottom = std::min(bottom, std::cos(angle));
  }
  return polygon(sides, units((right - left) * circumradius), units((top - bottom) * circumradius),
                 flat_on_top);
}

TEST(ClosedForms, LargestRectangleInACircleIsASquare) {  // table: circle r = 1, area 2 r²
  expect_area(largest(circle(units(2)), ShapeKind::rectangle), 2);
}

TEST(ClosedForms, SquareInACircle) {  // table: side r √2
  expect_side(width_of(largest(circle(units(2)), ShapeKind::square)), std::sqrt(2));
}

TEST(ClosedForms, LargestRectangleInAnEllipse) {  // table: 2 a b, sides a √2 and b √2; 24 and 160
  const Panel four_three = largest(oval(units(8), units(6)), ShapeKind::rectangle);
  expect_area(four_three, 24);
  EXPECT_NEAR(width_of(four_three), 4 * std::sqrt(2), 0.01);
  expect_area(largest(oval(units(20), units(16)), ShapeKind::rectangle), 160);
}

TEST(ClosedForms, SquareInAnEllipse) {  // table: 2ab/√(a² + b²) = 4.8 for a = 4, b = 3: exact, so it touches
  const Panel square = largest(oval(units(8), units(6)), ShapeKind::square);
  EXPECT_EQ(square.shape.width, units(4.8));
  EXPECT_EQ(square.border, Length());
}

// Table: a rectangle of w:h = 7:5 in a circle of r = 1 is 1.162476387 high, in an ellipse a = 4, b =
// 3 4.137931034.
TEST(ClosedForms, RectangleOfAGivenRatio) {
  for (const auto& [opening, height] :
       {std::pair{circle(units(2)), 1.162476387}, std::pair{oval(units(8), units(6)), 4.137931034}}) {
    const auto sized = [&](double more) {
      const double h = height + more;
      return rectangle(units(h * 7 / 5), units(h));
    };
    EXPECT_EQ(*verdict_of({opening, Length()}, sized(-1e-8 * 2), Length()), Verdict::fits);
    EXPECT_EQ(*verdict_of({opening, Length()}, sized(1e-8 * 20), Length()), Verdict::too_big);
  }
}

TEST(ClosedForms, RectangleInATriangle) {  // table: base 10, height 6, area b h / 4
  expect_area(largest(polygon(3, units(10), units(6), false), ShapeKind::rectangle), 15);
}

TEST(ClosedForms, SquareInATriangle) {  // table: a h/(a + h) on the side a = 13 with its height 168/13 (here
                                        // isosceles, from the same formula)
  const double a = 13, h = 168.0 / 13;
  expect_side(width_of(largest(polygon(3, units(a), units(h), false), ShapeKind::square)), a * h / (a + h));
}

TEST(ClosedForms, EquilateralTriangle) {  // table: square 2√3 - 3, rectangle √3/8
  const Shape triangle = regular(3, 1, false);
  expect_side(width_of(largest(triangle, ShapeKind::square)), 2 * std::sqrt(3) - 3);
  expect_area(largest(triangle, ShapeKind::rectangle), std::sqrt(3) / 8);
}

TEST(ClosedForms, RegularPentagon) {  // table: numeric optimum of the rectangle over all angles, 1.175570505;
                                      // it lies along a side
  expect_area(largest(regular(5, 1, false), ShapeKind::rectangle), 1.175570505);
  expect_area(largest(regular(5, 1, true), ShapeKind::rectangle), 1.175570505);
}

TEST(ClosedForms,
     RegularHexagon) {  // table: rectangle √3; the square 3 - √3 of the table is aligned with a side
  const Shape flat = regular(6, 1, true), pointed = regular(6, 1, false);
  expect_area(largest(flat, ShapeKind::rectangle), std::sqrt(3));
  expect_area(largest(pointed, ShapeKind::rectangle), std::sqrt(3));
  expect_side(width_of(largest(flat, ShapeKind::square)), 3 - std::sqrt(3));
  expect_side(width_of(largest(pointed, ShapeKind::square)), 3 - std::sqrt(3));
}

// Table: the largest square, side √(2 + √2), stands on alternate corners. It lies level in an octagon with a
// point on top.
TEST(ClosedForms, RegularOctagon) {
  const Shape pointed = regular(8, 1, false), flat = regular(8, 1, true);
  expect_side(width_of(largest(pointed, ShapeKind::square)), std::sqrt(2 + std::sqrt(2)));
  expect_area(largest(pointed, ShapeKind::rectangle), 2 + std::sqrt(2));
  EXPECT_LT(area_of(largest(flat, ShapeKind::rectangle)), 2 + std::sqrt(2));
}

TEST(ClosedForms, CircleInARegularPolygon) {  // table: incircle radius a/(2 tan (π/n))
  for (int sides = 3; sides <= 40; ++sides) {
    for (const bool flat : {false, true}) {
      const double width = 1 / std::tan(std::numbers::pi / sides);
      expect_side(width_of(largest(regular(sides, 1, flat), ShapeKind::circle)), width);
    }
  }
}

TEST(ClosedForms, CircleInARhombus) {  // table: p q/(2 √(p² + q²)) for p = 10, q = 6 is 2.572478777
  expect_side(width_of(largest(polygon(4, units(10), units(6), false), ShapeKind::circle)) / 2, 2.572478777);
}

TEST(ClosedForms, SquareInARhombus) {  // table: along the diagonals p q/(p + q) = 3.75, rectangle p q/4 = 15
  const Shape rhombus = polygon(4, units(10), units(6), false);
  EXPECT_EQ(largest(rhombus, ShapeKind::square).shape.width, units(3.75));
  expect_area(largest(rhombus, ShapeKind::rectangle), 15);
}

TEST(ClosedForms, CircleInATriangle) {  // area / half the perimeter (table: 3-4-5 gives 1); here base 6,
                                        // sides 5: 12/8, exact
  const Shape isosceles = polygon(3, units(6), units(4), false);
  EXPECT_EQ(largest(isosceles, ShapeKind::circle).shape.width, units(3));
}

}  // namespace
}  // namespace insetbook
