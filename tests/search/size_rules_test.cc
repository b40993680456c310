// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/size_rules.h"

#include <gtest/gtest.h>

#include "search/trees.h"

namespace insetbook {
namespace {

constexpr Length in(std::int64_t n, std::int64_t d = 1) {
  return Length::inch_fraction(n, d);
}
constexpr std::int64_t nm(Length length) {
  return length.nm();
}

SidesOnRecord sides(Length w, Length h, bool placed = false) {
  return {w.nm(), h.nm(), placed};
}
SidesOnRecord width_only(Length w) {
  return {w.nm(), std::nullopt, false};
}

SizeIs placed(SizeIs size, bool height = false) {
  size.placed = true;
  size.height = height;
  return size;
}
SizeIs within(SizeIs size, Length tolerance) {
  size.tolerance = tolerance;
  return size;
}
SizeIs in_mm(SizeIs size) {
  size.unit = Unit::mm;
  return size;
}
SizeIs range(Length low, Length high) {
  SizeIs size = figure(Relation::between, low);
  size.high = high;
  return size;
}

struct Case {
  const char* what;
  SizeIs asked;
  SidesOnRecord found;
  std::optional<std::int64_t> distance;
};

TEST(SizeRules, table) {
  const std::optional<std::int64_t> no;
  const Length nano = Length::nm(1);
  const SizeIs three = figure(Relation::exact, in(3));
  const Case cases[] = {
      {"exact: either side", three, sides(in(1), in(3)), 0},
      {"exact: 1/32 in is within", three, sides(in(3) + in(1, 32), in(1)), nm(in(1, 32))},
      {"exact: 1 nm more is not", three, sides(in(3) + in(1, 32) + nano, in(1)), no},
      {"exact in mm: 0.8 mm is within", in_mm(three), sides(in(3) - Length::nm(800'000), in(1)), 800'000},
      {"exact in mm: 1 nm more is not", in_mm(three), sides(in(3) - Length::nm(800'001), in(1)), no},
      {"tolerance said", within(three, in(1, 16)), sides(in(3) + in(1, 16), in(1)), nm(in(1, 16))},
      {"tolerance said: no more", within(three, in(1, 16)), sides(in(3) + in(1, 16) + nano, in(1)), no},
      {"about: 1/8 in is within", figure(Relation::about, in(3)), sides(in(3) - in(1, 8), in(9)),
       nm(in(1, 8))},
      {"about in mm: 3 mm is within", in_mm(figure(Relation::about, in(3))),
       sides(in(3) + Length::mm(3), in(9)), 3'000'000},
      {"about in mm: 1 nm more is not", in_mm(figure(Relation::about, in(3))),
       sides(in(3) + Length::nm(3'000'001), in(9)), no},
      {"the nearer side counts", figure(Relation::about, in(3)), sides(in(3) + in(1, 16), in(3) - in(1, 32)),
       nm(in(1, 32))},
      {"under: both sides", figure(Relation::under, in(3)), sides(in(2), in(3) - nano), 0},
      {"under: one side is not enough", figure(Relation::under, in(3)), sides(in(2), in(3)), no},
      {"over: both sides", figure(Relation::over, in(3)), sides(in(3) + nano, in(4)), 0},
      {"over: the figure itself is not", figure(Relation::over, in(3)), sides(in(3), in(4)), no},
      {"at least: the figure itself is", figure(Relation::at_least, in(3)), sides(in(3), in(4)), 0},
      {"at most: the figure itself is", figure(Relation::at_most, in(3)), sides(in(3), in(2)), 0},
      {"range: both ends belong to it", range(in(2), in(3)), sides(in(2), in(3)), 0},
      {"range: both sides must lie in it", range(in(2), in(3)), sides(in(2), in(4)), no},
      {"two figures: either way round", figures(Relation::exact, in(2), in(3)), sides(in(3), in(2)), 0},
      {"two figures: the worse side is the distance", figures(Relation::exact, in(2), in(3)),
       sides(in(2) + in(1, 64), in(3) + in(1, 32)), nm(in(1, 32))},
      {"two figures: both must be met", figures(Relation::exact, in(2), in(3)), sides(in(2), in(2)), no},
      {"two figures under", figures(Relation::under, in(2), in(3)), sides(in(2), in(1)), 0},
      {"placed: not the other way round", placed(figures(Relation::exact, in(2), in(3))),
       sides(in(3), in(2), true), no},
      {"placed: as it lies", placed(figures(Relation::exact, in(2), in(3))), sides(in(2), in(3), true), 0},
      {"placed: a piece that lies nohow may be turned", placed(figures(Relation::exact, in(2), in(3))),
       sides(in(3), in(2)), 0},
      {"wide", placed(three), sides(in(2), in(3), true), no},
      {"tall", placed(three, true), sides(in(2), in(3), true), 0},
      {"tall, of a piece that lies nohow", placed(three, true), sides(in(3), in(2)), 0},
      {"width alone", three, width_only(in(3)), 0},
      {"width alone is no answer to two figures", figures(Relation::exact, in(3), in(3)), width_only(in(3)),
       no},
      {"width alone, under", figure(Relation::under, in(4)), width_only(in(3)), 0},
      {"no size", three, SidesOnRecord{}, no},
  };
  for (const Case& each : cases)
    EXPECT_EQ(distance(size_rule(each.asked), each.found), each.distance) << each.what;
}

TEST(SizeRules, slack_widens_and_keeps_the_distance) {
  const SizeIs under = figure(Relation::under, in(3));
  EXPECT_EQ(distance(size_rule(under, in(1, 8)), sides(in(3) + in(1, 16), in(1))), nm(in(1, 16)) + 1);
  EXPECT_EQ(distance(size_rule(under, in(1, 8)), sides(in(4), in(1))), std::nullopt);
  const SizeIs exact = figure(Relation::exact, in(3));
  EXPECT_EQ(distance(size_rule(exact, in(1, 8)), sides(in(3) + in(1, 8), in(1))), nm(in(1, 8)));
}

TEST(SizeRules, differences_are_said) {
  struct Said {
    SizeIs asked;
    SidesOnRecord found;
    const char* text;
  };
  const Said cases[] = {
      {figure(Relation::exact, in(19, 8)), sides(in(9, 4), in(9, 4)), "1/8 in smaller"},
      {figure(Relation::exact, in(19, 8)), sides(in(5, 2), in(5, 2)), "1/8 in larger"},
      {figure(Relation::exact, in(19, 8)), sides(in(19, 8), in(1)), "exactly that size"},
      {figure(Relation::under, in(3)), sides(in(2), in(13, 4)), "1/4 in larger"},
      {figure(Relation::over, in(3)), sides(in(11, 4), in(4)), "1/4 in smaller"},
      {range(in(2), in(3)), sides(in(2), in(7, 2)), "1/2 in larger"},
      {range(in(2), in(3)), sides(in(3, 2), in(3)), "1/2 in smaller"},
      {figures(Relation::exact, in(2), in(3)), sides(in(17, 8), in(25, 8)), "1/8 in larger each way"},
      {figures(Relation::exact, in(2), in(3)), sides(in(17, 8), in(11, 4)),
       "1/8 in wider and 1/4 in shorter"},
      {figures(Relation::exact, in(3), in(2)), sides(in(2), in(7, 2)), "1/2 in taller"},
      {figure(Relation::exact, in(19, 8)), sides(in(19, 8) - Length::nm(325'000), in(1)),
       "less than 1/64 in smaller"},
      {figure(Relation::exact, in(19, 8)), sides(in(19, 8) + Length::nm(500'000), in(1)), "1/64 in larger"},
  };
  for (const Said& each : cases) EXPECT_EQ(difference(each.asked, each.found), each.text);
}

}  // namespace
}  // namespace insetbook
