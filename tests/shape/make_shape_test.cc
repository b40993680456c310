// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "measure/read.h"
#include "shape/shape.h"

namespace insetbook {
namespace {

Result<Shape> shape(std::string_view word, std::string_view size, std::string_view figures = "") {
  const Result<Size> read = read_size(size, Unit::inch);
  EXPECT_TRUE(read.has_value()) << size;
  return make_shape(word, *read, figures, Unit::inch);
}

struct Made {
  std::string word, size, figures, says;
};

// describe, then what is missing, if anything, and "not computed".
std::string said(const Result<Shape>& made) {
  if (!made) return made.error().what + " | " + made.error().expected;
  std::string text = describe(*made, Unit::inch);
  if (made->kind == ShapeKind::polygon && made->sides > 0) text += made->flat_on_top ? ", flat" : ", point";
  if (!missing_figure(*made).empty()) text += " (" + missing_figure(*made) + "?)";
  if (!computable(*made)) text += " not computed";
  return text;
}

TEST(MakeShape, FromWordsSizeAndFigures) {
  const std::vector<Made> rows = {
      {"circle", "2-3/8 in", "", "circle 2-3/8 in"},
      {"Round", "2-3/8 in", "", "Round 2-3/8 in"},
      {"", "2-3/8 in circle", "", "circle 2-3/8 in"},
      {"circle", "2 x 2 in", "", "circle 2 in"},
      {"circle", "2 x 3 in", "",
       "a circle has one figure, and \"2 x 3 in\" has two different ones | its width, or an oval"},
      {"square", "6 in square", "", "square 6 x 6 in"},
      {"square", "2 in", "", "square 2 x 2 in"},
      {"square", "2 x 3 in", "",
       "a square has one figure, and \"2 x 3 in\" has two different ones | its width, or a rectangle"},
      {"square", "2 in circle", "", "the shape is \"square\" and the size says \"circle\" | one shape"},
      {"", "2 x 3 in", "", "rectangle 2 x 3 in"},
      {"", "2 in", "",
       "the size \"2 in\" has one figure and no shape is said | a shape (\"circle\", \"square\") or two "
       "figures"},
      {"rectangle", "2 x 3 in", "", "rectangle 2 x 3 in"},
      {"rectangle", "2 in", "",
       "\"2 in\" is one figure, and the shape \"rectangle\" has two | width and height, as in \"2 x 3 in\""},
      {"ellipse", "2 x 3 in", "", "ellipse 2 x 3 in"},
      {"rounded rectangle", "2 x 3 in", "radius 1/4 in", "rounded rectangle 2 x 3 in, radius 1/4 in"},
      {"rounded rectangle", "2 x 3 in", "Corner radius: 6,5 mm",
       "rounded rectangle 2 x 3 in, radius 0.2559055 in"},
      {"Rounded-Rectangle", "2 x 3 in", "1/4 in radius", "rounded rectangle 2 x 3 in, radius 1/4 in"},
      {"rounded rectangle", "2 x 3 in", "", "rounded rectangle 2 x 3 in (the corner radius?) not computed"},
      {"rounded rectangle", "2 x 3 in", "radius 1-1/16 in",
       "the corner radius 1-1/16 in is more than half of a side | at most 1 in"},
      {"rounded square", "2 in", "radius 1/4 in", "rounded square 2 x 2 in, radius 1/4 in"},
      {"hexagon", "2 in", "", "hexagon 2 x 1.73205083 in, flat"},
      {"hexagon", "2 in", "point on top", "hexagon 2 x 2.30940106 in, point"},
      {"hexagon", "2 x 1-3/4 in", "", "hexagon 2 x 1-3/4 in, flat"},
      {"hexagon", "1-3/4 x 2 in", "", "hexagon 1-3/4 x 2 in, point"},
      {"hexagon", "2 x 2 in", "8 sides", "a hexagon has not 8 sides | 6 sides, or the shape \"polygon\""},
      {"polygon", "2 x 2 in", "8 sides, flat on top", "polygon 2 x 2 in, 8 sides, flat"},
      {"polygon", "2 x 1-3/4 in", "six-sided", "polygon 2 x 1-3/4 in, 6 sides, flat"},
      {"polygon", "2 x 2 in", "eight sides, pointed", "polygon 2 x 2 in, 8 sides, point"},
      {"polygon", "2 x 2 in", "sides 8; point on top", "polygon 2 x 2 in, 8 sides, point"},
      {"polygon", "2 x 2 in", "", "polygon 2 x 2 in (the number of sides?) not computed"},
      {"polygon", "2 x 2 in", "2 sides", "\"2 sides\" cannot be computed | a polygon of 3 to 360 sides"},
      {"triangle", "2 x 3 in", "", "triangle 2 x 3 in, point"},
      {"triangle", "2 x 2 in", "",
       "a regular triangle 2 in wide is about 1-3/4 in high, and \"2 x 2 in\" says otherwise | its width "
       "alone, "
       "\"2 x 1-3/4 in\", or path data of its outline"},
      {"diamond", "2 x 3 in", "", "diamond 2 x 3 in, point"},
      {"octagon", "2 in", "", "octagon 2 x 2 in, flat"},
      {"rectangle", "2 x 3 in", "radius 1/4 in",
       "the figure \"radius 1/4 in\" is not one of a rectangle | nothing: a rectangle has no figures but its "
       "size"},
      {"polygon", "2 x 3 in", "6 sides, wobbly",
       "the figure \"wobbly\" is not one of a polygon | \"6 sides\", \"flat on top\" or \"point on top\""},
      {"scalloped circle", "3 in", "scallops 3/8 in, depth 1/8 in", "scalloped circle 3 x 3 in not computed"},
      {"scalloped", "3 in", "scallops 3/8 in, depth 1/8 in, round a circle",
       "scalloped 3 x 3 in not computed"},
      {"scalloped", "3 in", "scallops 3/8 in, depth 1/8 in",
       "scalloped 3 x 3 in (what the scallops run round?) not computed"},
      {"scalloped square", "3 in", "depth 1/8 in",
       "scalloped square 3 x 3 in (the width of a scallop?) not computed"},
      {"scalloped square", "3 in", "3/8 in scallops",
       "scalloped square 3 x 3 in (the depth of the scallops?) not computed"},
      {"scalloped heart", "3 in", "scallops 3/8 in, depth 1/8 in",
       "scalloped heart 3 x 3 in (what the scallops run round?) not computed"},
      {"arch", "2 x 3 in", "", "arch 2 x 3 in not computed"},
      {"arch", "2 x 3 in", "rise 1/2 in", "arch 2 x 3 in not computed"},
      {"arch", "4 x 1 in", "", "arch 4 x 1 in (the rise?) not computed"},
      {"gothic arch", "2 x 3 in", "", "gothic arch 2 x 3 in (the rise of the point?) not computed"},
      {"tag", "2 x 3 in", "", "tag 2 x 3 in (the cut of the top corners?) not computed"},
      {"tag", "2 x 3 in", "corner 1/2 in", "tag 2 x 3 in not computed"},
      {"tag", "2 x 3 in", "radius 1/4 in, hole 1/4 in",
       "tag 2 x 3 in (how far down the hole is?) not computed"},
      {"tag", "2 x 3 in", "1/4 in radius, hole 1/4 in, hole down 1/8 in", "tag 2 x 3 in not computed"},
      {"tag with a hole", "2 x 3 in", "corner 1/2 in", "tag with a hole 2 x 3 in (the hole?) not computed"},
      {"tag", "2 x 3 in", "torn",
       "the figure \"torn\" is not one of a tag | \"corner 1/2 in\", \"radius 1/4 in\", "
       "\"hole 1/4 in\", \"hole down 1/8 in\""},
      {"round tag", "2 x 2 in", "torn", "round tag 2 x 2 in not computed"},
      {"banner", "4 x 1 in", "", "banner 4 x 1 in (the depth of the notch?) not computed"},
      {"banner", "4 x 1 in", "notch 1/2 in", "banner 4 x 1 in (the end at which the notch is?) not computed"},
      {"banner", "4 x 1 in", "notch 1/2 in, at the right", "banner 4 x 1 in not computed"},
      {"banner", "4 x 1 in", "Notch ½ in at both ends", "banner 4 x 1 in not computed"},
      {"banner", "4 x 1 in", "1/2 in notch, notch at the left", "banner 4 x 1 in not computed"},
      {"pennant", "4 x 1 in", "sewn", "pennant 4 x 1 in not computed"},
      {"heart", "2 x 2 in", "", "heart 2 x 2 in not computed"},
      {"heart", "2 x 2 in", "deep cleft",
       "the figure \"deep cleft\" is not one of a heart | nothing: a heart has no "
       "figures but its size"},
      {"leaf", "2 x 3 in", "", "leaf 2 x 3 in not computed"},
      {"rectangle", "2 x 43 in", "", "\"2 x 43 in\" is too large | at most 1073 mm (42 in) each way"},
  };
  for (const Made& row : rows) {
    EXPECT_EQ(said(shape(row.word, row.size, row.figures)), row.says) << row.word << " " << row.size;
  }
}

TEST(MakeShape, AFigureThatIsNoLengthIsTheReadersProblem) {
  const auto made = shape("rounded rectangle", "2 x 3 in", "radius soft");
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error(), read_length("soft", Unit::inch).error());
}

TEST(MakeShape, AnUnknownNameIsKept) {
  const auto leaf = shape("Maple Leaf", "2 x 3 in", "with a stalk");
  ASSERT_TRUE(leaf);
  EXPECT_EQ(leaf->kind, ShapeKind::other);
  EXPECT_EQ(leaf->name, "Maple Leaf");
  EXPECT_EQ(leaf->figures, "with a stalk");
}

TEST(ShapeWords, AndBack) {
  for (int kind = 0; kind <= static_cast<int>(ShapeKind::other); ++kind) {
    const auto each = static_cast<ShapeKind>(kind);
    EXPECT_EQ(shape_kind(shape_word(each)), each);
    EXPECT_FALSE(shape_word(each).empty());
  }
  EXPECT_EQ(shape_kind("Ellipse"), ShapeKind::oval);
  EXPECT_EQ(shape_kind("scallop oval"), ShapeKind::scalloped);
  EXPECT_EQ(shape_kind("leaf"), std::nullopt);
  EXPECT_EQ(polygon_sides("hexagon"), 6);
  EXPECT_EQ(polygon_sides("polygon"), 0);
  EXPECT_EQ(polygon_sides("circle"), 0);
}

}  // namespace
}  // namespace insetbook
