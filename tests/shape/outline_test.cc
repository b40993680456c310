// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/outline.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

struct Row {
  const char* what;
  Point point;
  PointSide side;
};

void check(const Outline& outline, const std::vector<Row>& rows) {
  for (const Row& row : rows) EXPECT_EQ(side_of(outline, row.point), row.side) << row.what;
}

TEST(OutlineSide, OfASquare) {
  const Outline square{{Ring{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}}}, 0};
  check(square, {
                    {"the middle", {5, 5}, PointSide::inside},
                    {"a corner", {0, 0}, PointSide::on_edge},
                    {"the corner across", {10, 10}, PointSide::on_edge},
                    {"a level edge", {5, 10}, PointSide::on_edge},
                    {"an upright edge", {10, 5}, PointSide::on_edge},
                    {"just inside", {1, 9}, PointSide::inside},
                    {"left, level with an edge", {-1, 0}, PointSide::outside},
                    {"right, level with an edge", {11, 10}, PointSide::outside},
                    {"above", {5, -1}, PointSide::outside},
                });
}

TEST(OutlineSide, LevelWithCorners) {
  // A diamond, and a W whose middle corner points up.
  const Outline diamond{{Ring{{{0, 0}, {5, -5}, {10, 0}, {5, 5}}}}, 0};
  check(diamond, {
                     {"level with the left and right corner", {-3, 0}, PointSide::outside},
                     {"between them", {5, 0}, PointSide::inside},
                     {"level with the top corner", {0, -5}, PointSide::outside},
                     {"level with the bottom corner", {0, 5}, PointSide::outside},
                     {"on a slanted edge", {1, 1}, PointSide::on_edge},
                     {"one farther", {1, 2}, PointSide::outside},
                 });
  const Outline w{{Ring{{{0, 0}, {3, 10}, {5, 4}, {7, 10}, {10, 0}}}}, 0};
  check(w, {
               {"level with the middle corner, left of it", {3, 4}, PointSide::inside},
               {"the middle corner", {5, 4}, PointSide::on_edge},
               {"below the middle corner", {5, 5}, PointSide::outside},
               {"left of all, level with it", {-1, 4}, PointSide::outside},
           });
}

TEST(OutlineSide, WithAHoleAndAnIslandInIt) {
  const Outline frame{{Ring{{{0, 0}, {30, 0}, {30, 30}, {0, 30}}}, Ring{{{5, 5}, {5, 25}, {25, 25}, {25, 5}}},
                       Ring{{{10, 10}, {20, 10}, {20, 20}, {10, 20}}}},
                      0};
  check(frame, {
                   {"the frame", {2, 2}, PointSide::inside},
                   {"the edge of the hole", {5, 9}, PointSide::on_edge},
                   {"the hole", {7, 7}, PointSide::outside},
                   {"the island", {15, 15}, PointSide::inside},
               });
}

// A needle as long as coordinates allow and one nanometre thick: products leave 64 bits.
TEST(OutlineSide, AtTheLimit) {
  constexpr std::int64_t limit = std::int64_t{1} << 30;
  const Outline needle{{Ring{{{-limit, -limit}, {limit, limit - 1}, {limit, limit}}}}, 0};
  check(needle,
        {
            {"the diagonal", {0, 0}, PointSide::on_edge},
            {"one above it", {0, -1}, PointSide::outside},
            {"one below it", {0, 1}, PointSide::outside},
            {"between, near the thick end", {limit - 1, limit - 1}, PointSide::on_edge},
            {"a point far off", {std::int64_t{1} << 60, -(std::int64_t{1} << 60)}, PointSide::outside},
        });
}

TEST(OutlineSide, OfNothing) {
  EXPECT_EQ(side_of(Outline{}, {0, 0}), PointSide::outside);
  const Box box = box_of(Outline{});
  EXPECT_EQ(box.least, (Point{0, 0}));
  EXPECT_EQ(box.most, (Point{0, 0}));
}

TEST(OutlineBox, OverAllRings) {
  const Box box =
      box_of(Outline{{Ring{{{-3, 2}, {5, 2}, {5, 9}}}, Ring{{{100, -7}, {101, -7}, {101, -6}}}}, 0});
  EXPECT_EQ(box.least, (Point{-3, -7}));
  EXPECT_EQ(box.most, (Point{101, 9}));
  EXPECT_EQ(box.width(), 104);
  EXPECT_EQ(box.height(), 16);
}

}  // namespace
}  // namespace insetbook
