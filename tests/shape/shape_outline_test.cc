// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/shape_outline.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "measure/read.h"
#include "shape/path_data.h"

namespace insetbook {
namespace {

Shape made(std::string_view word, std::string_view size, std::string_view figures = "") {
  const auto read = read_size(size, Unit::mm);
  EXPECT_TRUE(read) << size;
  const auto shape = make_shape(word, *read, figures, Unit::mm);
  EXPECT_TRUE(shape) << word << " " << figures << ": " << shape.error().what;
  return shape ? *shape : Shape{};
}

double area_of(const Ring& ring) {
  double sum = 0;
  const Point origin = ring.points[0];
  for (std::size_t i = 0; i < ring.points.size(); ++i) {
    const Point a = ring.points[i], b = ring.points[(i + 1) % ring.points.size()];
    sum += static_cast<double>(a.x - origin.x) * static_cast<double>(b.y - origin.y) -
           static_cast<double>(b.x - origin.x) * static_cast<double>(a.y - origin.y);
  }
  return std::fabs(sum) / 2;
}

// In mm²; the first ring less the others, which are holes in it.
double area_of(const Outline& outline) {
  double sum = 0;
  for (std::size_t i = 0; i < outline.rings.size(); ++i) sum += area_of(outline.rings[i]) * (i == 0 ? 1 : -1);
  return sum / 1e12;
}

struct Row {
  std::string word, size, figures;
  double area;  // mm², by closed form
  std::size_t rings = 1;
};

constexpr double pi = std::numbers::pi;

// A segment of a circle over a chord, so high.
double segment(double chord, double height) {
  const double radius = (chord * chord / 4 + height * height) / (2 * height);
  const double angle = 2 * std::asin(chord / 2 / radius);
  return radius * radius / 2 * (angle - std::sin(angle));
}

// The pointed arch above the springing line: two segments of a circle of that radius over a triangle.
double pointed(double width, double rise) {
  const double radius = (width * width / 4 + rise * rise) / width;
  const double chord = std::hypot(width / 2, rise);
  const double angle = 2 * std::asin(chord / 2 / radius);
  return width * rise / 2 + radius * radius * (angle - std::sin(angle));
}

const std::vector<Row>& rows() {
  // The heart's square of side 1 and two half circles of radius ½, in its box of (1 + √½) × (½ + 3·√⅛).
  static const double heart = (1 + pi / 4) / ((1 + std::sqrt(0.5)) * (0.5 + 3 * std::sqrt(0.125)));
  // 20 scallops 5 mm wide round a square of 25 mm, 2 mm deep.
  static const double square_scallops = 625 + 20 * segment(5, 2);
  // Round a circle: a polygon of 32 notches on radius 23, and a segment over each of its sides.
  static const double side = 2 * 23 * std::sin(pi / 32);
  static const double circle_scallops =
      16 * 23 * 23 * std::sin(2 * pi / 32) + 32 * segment(side, 25 - 23 * std::cos(pi / 32));
  static const std::vector<Row> all = {
      {"circle", "60 mm", "", pi * 900},
      {"circle", "60.000001 mm", "", pi * 900},
      {"oval", "60 x 90 mm", "", pi * 30 * 45},
      {"square", "60 mm", "", 3600},
      {"rectangle", "60 x 90 mm", "", 5400},
      {"rounded rectangle", "60 x 90 mm", "radius 10 mm", 5400 - (4 - pi) * 100},
      {"rounded rectangle", "60 x 90 mm", "radius 0 mm", 5400},
      {"rounded rectangle", "60 x 90 mm", "radius 30 mm", 60 * 30 + pi * 900},
      {"triangle", "60 x 90 mm", "", 2700},
      {"hexagon", "60 mm", "flat on top", 3 * std::sqrt(3) / 2 * 900},
      {"hexagon", "60 x 70 mm", "point on top", 60 * 70 * 0.75},
      {"diamond", "60 x 90 mm", "", 2700},
      {"scalloped square", "29 mm", "scallops 5 mm, depth 2 mm", square_scallops},
      {"scalloped", "29 mm", "scallops 4.9 mm, depth 2 mm, round a square", square_scallops},
      {"scalloped circle", "50 mm", "scallops 4.5 mm, depth 2 mm", circle_scallops},
      {"scalloped rectangle", "29 x 14 mm", "scallops 5 mm, depth 2 mm", 250 + 14 * segment(5, 2)},
      {"arch", "60 x 90 mm", "", 60 * 60 + pi * 450},
      {"arch", "60 x 90 mm", "rise 20 mm", 60 * 70 + pi * 300},
      {"arch", "60 x 30 mm", "rise 30 mm", pi * 450},
      {"gothic arch", "60 x 90 mm", "rise 30 mm", 60 * 60 + pi * 450},
      {"gothic arch", "60 x 90 mm", "rise 40 mm", 60 * 50 + pointed(60, 40)},
      {"tag", "50 x 80 mm", "corner 10 mm", 4000 - 100},
      {"tag", "50 x 80 mm", "corner 25 mm", 4000 - 625},
      {"tag", "50 x 80 mm", "radius 10 mm", 4000 - (2 - pi / 2) * 100},
      {"tag", "50 x 80 mm", "corner 10 mm, hole 6 mm, hole down 5 mm", 4000 - 100 - pi * 9, 2},
      {"banner", "100 x 30 mm", "notch 10 mm at the right", 3000 - 150},
      {"banner", "100 x 30 mm", "notch 10 mm, both ends", 3000 - 300},
      {"banner", "30 x 100 mm", "notch 10 mm, both ends", 3000 - 300},
      {"banner", "30 x 100 mm", "notch 10 mm, bottom end", 3000 - 150},
      {"heart", "66 x 60 mm", "", 66 * 60 * heart},
  };
  return all;
}

// A hole that breaks through the cut corners is no hole in a tag; one that touches them is.
TEST(ShapeOutline, AHoleStaysInItsTag) {
  const auto drawn = [](const char* figures) {
    const Result<Size> size = read_size("40 x 60 mm", Unit::mm);
    const Result<Shape> shape = make_shape("tag", *size, figures, Unit::mm);
    return shape && outline_of(*shape).has_value();
  };
  EXPECT_TRUE(drawn("corner 10 mm, hole 6 mm, hole down 4 mm"));
  EXPECT_TRUE(drawn("corner 18 mm, hole 6 mm, hole down 0 mm"));   // (20 + 3 - 18) / sqrt 2 = 3.54
  EXPECT_FALSE(drawn("corner 19 mm, hole 6 mm, hole down 0 mm"));  // 2.83 of the 3 it needs
  EXPECT_TRUE(drawn("radius 20 mm, hole 6 mm, hole down 1 mm"));   // a round top: 16 + 3 of 20
}

TEST(ShapeOutline, AreasAndBoxesByClosedForms) {
  for (const Row& row : rows()) {
    const Shape shape = made(row.word, row.size, row.figures);
    EXPECT_TRUE(has_outline(shape));
    const auto curves = outline_of(shape);
    ASSERT_TRUE(curves) << row.word << ": " << curves.error().what;
    for (const std::int64_t error : {1, 1000}) {
      const auto flat = flatten(*curves, error);
      ASSERT_TRUE(flat) << row.word << ": " << flat.error().what;
      EXPECT_TRUE(flat->mended.empty()) << row.word << ": " << flat->mended[0];
      EXPECT_LE(flat->outline.error, error);
      EXPECT_EQ(flat->outline.rings.size(), row.rings) << row.word;
      const Box box = box_of(flat->outline);
      EXPECT_EQ(box.least, (Point{0, 0})) << row.word << " " << row.figures;
      EXPECT_EQ(box.width(), shape.width.nm()) << row.word << " " << row.figures;
      EXPECT_EQ(box.height(), shape.height.nm()) << row.word << " " << row.figures;
      // The edge of the longest of them is under 400 mm, and its points lie within two errors of the forms'.
      EXPECT_NEAR(area_of(flat->outline), row.area, 400 * 2e-6 * static_cast<double>(error + 1))
          << row.word << " " << row.figures;
    }
  }
}

// Left and right alike, to the nanometres that rounding takes.
TEST(ShapeOutline, MirroredWhereTheShapeIs) {
  for (const Row& row : rows()) {
    if (row.word == "banner" && row.figures.find("right") != std::string::npos) continue;
    const auto flat = flatten(*outline_of(made(row.word, row.size, row.figures)), 1000);
    ASSERT_TRUE(flat);
    const Box box = box_of(flat->outline);
    for (int i = 0; i < 2000; ++i) {
      const Point point{(i * 7919LL) % 2003 * box.width() / 2003,
                        (i * 104729LL) % 2011 * box.height() / 2011};
      const auto in = [&](std::int64_t x) { return side_of(flat->outline, {x, point.y}); };
      // Points within 5 µm of an edge may differ.
      const bool near = in(point.x - 5000) != in(point.x + 5000) || in(point.x) != in(point.x + 5000) ||
                        side_of(flat->outline, {point.x, point.y + 5000}) != in(point.x);
      if (near) continue;
      EXPECT_EQ(in(point.x), in(box.width() - point.x)) << row.word << " " << row.figures;
    }
  }
}

// Sizes of any whole number of nanometres, from a hundredth of a millimetre to the largest, and figures that
// go with them: the box is the size, nothing crosses, and the outline lies within its error.
TEST(ShapeOutline, AnySizeHasItsBox) {
  std::mt19937_64 random(20261125);
  const auto between = [&](std::int64_t least, std::int64_t most) {
    return least + static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(most - least + 1));
  };
  for (int round = 0; round < 3000; ++round) {
    Shape shape;
    shape.kind = static_cast<ShapeKind>(between(0, static_cast<std::int64_t>(ShapeKind::heart)));
    const std::int64_t most = round % 3 == 0 ? largest_figure.nm() : round % 3 == 1 ? 200'000'000 : 20'000;
    const std::int64_t width = between(10'000, most), height = between(10'000, most);
    const std::int64_t less = std::min(width, height);
    shape.width = Length::nm(width);
    shape.height = Length::nm(height);
    shape.sides = static_cast<int>(between(3, 20));
    shape.flat_on_top = random() % 2 == 0;
    if (shape.kind != ShapeKind::tag || random() % 2 == 0)
      shape.corner_radius = Length::nm(between(0, less / 2));
    shape.corner = Length::nm(between(0, less / 2));
    shape.scallops_round = static_cast<ShapeKind>(between(0, 3));
    shape.scallop_depth = Length::nm(between(1, less / 20));
    shape.scallop_width = *shape.scallop_depth * 3 + Length::nm(between(less / 100, less / 2));
    if (random() % 2 == 0) shape.name = shape.kind == ShapeKind::arch ? "cathedral" : "";
    shape.rise = Length::nm(between(std::min(height, (width + 1) / 2), height));
    shape.notch = Length::nm(between(0, less / 2 - 1));
    shape.notch_end = static_cast<NotchEnd>(between(0, 4));
    const auto curves = outline_of(shape);
    if (!curves) {
      // What has no room: scallops on a narrow oval, a point on a flat arch.
      EXPECT_TRUE(shape.kind == ShapeKind::scalloped || shape.kind == ShapeKind::arch) << curves.error().what;
      continue;
    }
    const std::int64_t error = round % 7 == 0 ? 1 : less / 1000 + 1;
    const auto flat = flatten(*curves, error);
    ASSERT_TRUE(flat) << shape_word(shape.kind) << " " << width << " " << height << " " << flat.error().what;
    EXPECT_TRUE(flat->mended.empty() || shape.kind == ShapeKind::scalloped)
        << shape_word(shape.kind) << " " << width << " x " << height << ": " << flat->mended[0];
    const Box box = box_of(flat->outline);
    const std::int64_t off = shape.kind == ShapeKind::scalloped ? 2 : 0;
    EXPECT_LE(std::abs(box.least.x), off) << shape_word(shape.kind);
    EXPECT_LE(std::abs(box.least.y), off) << shape_word(shape.kind);
    EXPECT_LE(std::abs(box.most.x - width), off) << shape_word(shape.kind) << " " << width << " " << height;
    EXPECT_LE(std::abs(box.most.y - height), off) << shape_word(shape.kind) << " " << width << " " << height;
    if (shape.kind > ShapeKind::oval) continue;
    for (const Point point : flat->outline.rings[0].points) {
      const double x = 2 * static_cast<double>(point.x) / static_cast<double>(width) - 1;
      const double y = 2 * static_cast<double>(point.y) / static_cast<double>(height) - 1;
      // Off the ellipse by no more than 2 nm, across the shorter way.
      EXPECT_NEAR(std::hypot(x, y), 1, 4.0 / static_cast<double>(less));
    }
  }
}

struct Refused {
  std::string word, size, figures, says;
};

TEST(ShapeOutline, FiguresThatCannotBe) {
  const std::vector<Refused> table = {
      {"leaf", "2 x 3 in", "", "the outline of the shape \"leaf\" is not known | path data of its outline"},
      {"round tag", "2 in", "",
       "the outline of the shape \"round tag\" is not known | path data of its outline"},
      {"tag", "2 x 3 in", "",
       "the cut of the top corners is missing | the cut of the top corners in the figures of the tag, which "
       "are "
       "written \"corner 1/2 in\", \"radius 1/4 in\", \"hole 1/4 in\", \"hole down 1/8 in\""},
      {"tag", "2 x 3 in", "corner 1-1/2 in",
       "the corner, 1-1/2 in (38.1 mm), is too large for the shape | at most 1 in (25.4 mm)"},
      {"tag", "2 x 3 in", "corner 1/2 in, hole 2 in, hole down 1/8 in",
       "the hole, 2 in (50.8 mm), is too large for the shape | less than 2 in (50.8 mm)"},
      {"tag", "2 x 3 in", "corner 1/2 in, hole 1 in, hole down 2-1/2 in",
       "the distance of the hole from the top, 2-1/2 in (63.5 mm), is too large for the shape | at most 2 in "
       "(50.8 mm)"},
      {"arch", "2 x 3 in", "rise 4 in",
       "the rise, 4 in (101.6 mm), is too large for the shape | at most 3 in (76.2 mm)"},
      {"cathedral", "2 x 3 in", "rise 1/2 in",
       "the rise, 1/2 in (12.7 mm), is too low for an arch that comes to a point | at least 1 in (25.4 mm)"},
      {"banner", "3 x 1 in", "notch 3 in at the left",
       "the notch, 3 in (76.2 mm), is too large for the shape | less than 3 in (76.2 mm)"},
      {"scalloped circle", "3 in", "scallops 3/8 in, depth 1 in",
       "scallops that are 1 in (25.4 mm) deep cannot be drawn | above zero and at most a quarter of the "
       "shorter "
       "side, 3/4 in (19.05 mm)"},
      {"scalloped circle", "3 in", "scallops 3/8 in, depth 1/4 in",
       "scallops that are 1/4 in (6.35 mm) deep cannot be drawn | scallops at most half as deep as they are "
       "wide, 3/16 in (4.7625 mm) here"},
      {"scalloped oval", "1 x 4 in", "scallops 3/4 in, depth 3/16 in",
       "scallops that are 3/16 in (4.7625 mm) deep cannot be drawn | scallops that are at most half circles "
       "at "
       "the ends of the shape: less deep ones, or of another width"},
      {"scalloped square", "3 in", "scallops 1/2 in, depth 0.1 mm",
       "scallops that are 0.003937 in (0.1 mm) deep cannot be drawn | at least a fiftieth of the width of "
       "a "
       "scallop"},
      {"scalloped circle", "3 in", "scallops 0.001 mm, depth 1/8 in",
       "scallops that are 0.00003937 in (0.001 mm) wide cannot be drawn | at most 4000 of them round the "
       "edge"},
  };
  for (const Refused& row : table) {
    const auto outline = outline_of(made(row.word, row.size, row.figures));
    ASSERT_FALSE(outline) << row.word << " " << row.figures;
    EXPECT_EQ(outline.error().what + " | " + outline.error().expected, row.says);
  }
}

TEST(ShapeOutline, PathDataAreScaledToTheSize) {
  for (const std::string_view path :
       {"M5 5h10v20h-10z", "M0.005 0.005h.01v.02h-.01z", "M500000 500000h1000000v2000000h-1000000z"}) {
    Shape leaf = made("leaf", "30 x 40 mm");
    leaf.outline = path;
    EXPECT_TRUE(has_outline(leaf));
    const auto curves = outline_of(leaf);
    ASSERT_TRUE(curves) << curves.error().what;
    const auto flat = flatten(*curves, 1);
    ASSERT_TRUE(flat);
    EXPECT_EQ(flat->outline.rings,
              (std::vector{Ring{{{0, 0}, {30'000'000, 0}, {30'000'000, 40'000'000}, {0, 40'000'000}}}}));
  }
  Shape bad = made("leaf", "30 x 40 mm");
  bad.outline = "M5 5h10v20h-10";
  const auto open = flatten(*outline_of(bad), 1);
  ASSERT_FALSE(open);
  EXPECT_EQ(open.error().what, "the line that starts at 0, 0 mm ends at 0, 40 mm and is not closed");
  bad.outline = "M5 5h10z";
  EXPECT_EQ(outline_of(bad).error().what, "the outline is as thin as a line and cannot be scaled");
  bad.outline = "5 5";
  EXPECT_EQ(outline_of(bad).error().where.at, 0u);
}

// An arc of an ellipse that is turned, in a box of other proportions: still the same points, scaled.
TEST(ShapeOutline, StretchedArcs) {
  const auto read = read_path_data("M0 0A40 20 30 1 1 30 10z", 1e6, FillRule::even_odd);
  ASSERT_TRUE(read);
  const auto as_drawn = flatten(*read, 10);
  ASSERT_TRUE(as_drawn);
  const Box box = box_of(as_drawn->outline);
  const auto stretched = scaled_to(*read, 2 * box.width(), box.height());
  ASSERT_TRUE(stretched);
  const auto flat = flatten(*stretched, 10);
  ASSERT_TRUE(flat);
  EXPECT_NEAR(area_of(flat->outline), 2 * area_of(as_drawn->outline), 1e-2);
  EXPECT_NEAR(static_cast<double>(box_of(flat->outline).width()), 2 * static_cast<double>(box.width()), 20);
  EXPECT_NEAR(static_cast<double>(box_of(flat->outline).height()), static_cast<double>(box.height()), 20);
  for (const Point point : as_drawn->outline.rings[0].points) {
    const Point there{2 * (point.x - box.least.x), point.y - box.least.y};
    bool inside = false, outside = false;
    for (const Point step : {Point{200, 0}, Point{-200, 0}, Point{0, 200}, Point{0, -200}}) {
      const PointSide side = side_of(flat->outline, {there.x + step.x, there.y + step.y});
      inside = inside || side == PointSide::inside;
      outside = outside || side == PointSide::outside;
    }
    EXPECT_TRUE(inside && outside) << there.x << ", " << there.y;
  }
}

}  // namespace
}  // namespace insetbook
