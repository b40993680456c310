// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <string>

#include "fit/fit.h"
#include "fit/shapes.h"

namespace insetbook {
namespace {

using namespace testing_shapes;

// Sizes of a set in 64ths, largest first; 0 = not measured. The estimates as "width x height ± spread".
struct Row {
  std::vector<std::pair<int, int>> set;
  int give_or_take;
  std::vector<std::string> estimated;
};

std::vector<std::string> said(const Row& row) {
  std::vector<std::optional<Ranked>> known;
  for (const auto& [width, height] : row.set) {
    known.push_back(width == 0 ? std::nullopt
                               : std::optional(Ranked{in64(width), in64(height), in64(row.give_or_take)}));
  }
  std::vector<std::string> lines;
  const auto marks = [](Length length) { return std::to_string(length / in64(1)); };
  for (const auto& one : estimates(known)) {
    lines.push_back(one ? marks(one->width) + " x " + marks(one->height) + " ± " + marks(one->spread) : "-");
  }
  return lines;
}

TEST(Estimates, BetweenMeasuredSizesByOrder) {
  const std::vector<Row> rows = {
      {{}, 2, {}},
      {{{0, 0}, {0, 0}}, 2, {"-", "-"}},
      {{{320, 400}, {0, 0}, {0, 0}}, 2, {"-", "-", "-"}},                   // nothing beyond
      {{{320, 400}, {0, 0}, {256, 336}}, 2, {"-", "288 x 368 ± 16", "-"}},  // two dies: half a step of 32
      {{{320, 400}, {0, 0}, {256, 336}, {224, 304}}, 2, {"-", "288 x 368 ± 2", "-", "-"}},  // even: u
      // Steps 32, 32 a rank, then 16: an even step is 80/3; the greatest departure 32/3, half of it 16/3.
      {{{320, 400}, {0, 0}, {256, 336}, {240, 320}}, 2, {"-", "288 x 368 ± 5", "-", "-"}},
      // Width and height each on its own; the wider spread holds for both.
      {{{320, 400}, {0, 0}, {256, 340}, {0, 0}, {192, 200}},
       2,
       {"-", "288 x 370 ± 10", "-", "224 x 270 ± 10", "-"}},
      {{{0, 0}, {320, 400}, {0, 0}, {0, 0}, {224, 304}, {0, 0}},
       2,
       {"-", "-", "288 x 368 ± 16", "256 x 336 ± 16", "-", "-"}},
      {{{320, 400}, {300, 380}, {280, 360}}, 2, {"-", "-", "-"}},  // all measured
  };
  for (const Row& row : rows) EXPECT_EQ(said(row), row.estimated);
}

TEST(Estimates, RoundToTheNearestNanometreAndTheSpreadUp) {
  const std::vector<std::optional<Ranked>> known = {Ranked{Length::nm(105), Length::nm(100), Length()},
                                                    std::nullopt,
                                                    Ranked{Length::nm(100), Length::nm(100), Length()}};
  const auto found = estimates(known);
  ASSERT_TRUE(found[1]);
  EXPECT_EQ(found[1]->width, Length::nm(102));  // 105 - 2.5, halves away from zero: 3 less
  EXPECT_EQ(found[1]->height, Length::nm(100));
  EXPECT_EQ(found[1]->spread, Length::nm(2));  // half of 2.5, up
}

}  // namespace
}  // namespace insetbook
