// SPDX-License-Identifier: GPL-3.0-or-later
//
// The curve at a border inside an ellipse, point by point: x = (a + b k/s) cos t, y = (b + a k/s) sin t, s =
// √(a² sin² t + b² cos² t) (MathWorld, "Ellipse Parallel Curves"), from ellipse_offset_points.csv of the
// published data.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

#include "fit/fit.h"
#include "fit/shapes.h"
#include "outside/outside_data.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

struct Row {
  double a, b, outward, x, y;
};

std::vector<Row> read_rows(const std::filesystem::path& file) {
  std::vector<Row> rows;
  std::ifstream in(file);
  std::string text;
  std::getline(in, text);
  while (std::getline(in, text)) {
    std::istringstream cells(text);
    cells.imbue(std::locale::classic());
    std::array<double, 7> figures{};
    char comma = 0;
    for (double& figure : figures) {
      cells >> figure;
      cells >> comma;
    }
    rows.push_back({figures[0], figures[1], figures[2], figures[4], figures[5]});
  }
  return rows;
}

// The table's figures are millimetres here, to 9 places: a thousandth of a nanometre.
Length twice(double half, std::int64_t more) {
  return Length::nm(2 * (std::llround(half * 1e6) + more));
}

TEST(EllipseOffset, PointsOfTheInnerCurveAreJustAtTheBorder) {
  const auto file = outside_data("ellipse_offset_points.csv");
  if (!file) GTEST_SKIP() << "ellipse_offset_points.csv is not there";
  int checked = 0;
  for (const Row& row : read_rows(*file)) {
    // Inwards the border is the table's; outwards the point lies outside, and the table's ellipse is the
    // opening less a border only where its own curve is: not a case here.
    if (row.outward >= 0 || row.x < 0.001 || row.y < 0.001) continue;
    const Opening opening{oval(twice(row.a, 0), twice(row.b, 0)), Length()};
    const Length border = Length::nm(std::llround(-row.outward * 1e6));
    const auto at = [&](std::int64_t more) {
      return *verdict_of(opening, rectangle(twice(row.x, more), twice(row.y, more)), border);
    };
    EXPECT_EQ(at(-1), Verdict::fits) << row.x << " " << row.y;
    EXPECT_EQ(at(2), Verdict::too_big) << row.x << " " << row.y;
    ++checked;
  }
  EXPECT_EQ(checked, 5);
}

// The inner curve's axes are a - k and b - k, but an ellipse of these axes crosses it: it is no panel with
// that border.
TEST(EllipseOffset, TheInnerCurveIsNoEllipse) {
  const Opening opening{oval(twice(50, 0), twice(30, 0)), Length()};
  EXPECT_EQ(*verdict_of(opening, oval(twice(45, 0), twice(25, 0)), Length::mm(5)), Verdict::too_big);
  // Inside it by 0.18188 mm at most (the source's own computation): that much less border holds.
  EXPECT_EQ(*verdict_of(opening, oval(twice(45, 0), twice(25, 0)), Length::nm(5'000'000 - 181'880 - 10)),
            Verdict::fits);
  EXPECT_EQ(*verdict_of(opening, oval(twice(45, 0), twice(25, 0)), Length::nm(5'000'000 - 181'000)),
            Verdict::too_big);
}

}  // namespace
}  // namespace insetbook
