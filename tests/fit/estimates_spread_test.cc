// SPDX-License-Identifier: GPL-3.0-or-later
//
// How often the spread that an estimate states holds: seeded sets of eight dies whose sizes leave even steps
// of 1/4 in by a stated jitter, read to a stated mark, of which some are measured. The rates stand in
// DEVELOPERS.md; the floors here are a little under them, so that a spread that became narrower is found.
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

#include "fit/fit.h"

namespace insetbook {
namespace {

constexpr int dies = 8, sets = 4000;
constexpr double inch = 25.4e6;

struct Case {
  double jitter;             // in, evenly spread to both sides of each true size
  double mark;               // in, what sizes are read to; half of it is the give-or-take
  std::vector<int> unknown;  // dies that nobody measured, 0 the largest
  double floor;              // of the estimates, so many have both true sides within the spread
};

// Halves are drawn by hand: the library's distributions differ from one standard library to the next.
double even_spread(std::mt19937_64& random, double reach) {
  return reach * (static_cast<double>(random() >> 11) / 4503599627370496.0 - 1);
}

Length read_to(double nm, double mark) {
  return Length::nm(std::llround(std::round(nm / mark) * mark));
}

struct Held {
  int held = 0, all = 0;
  double rate() const { return static_cast<double>(held) / all; }
};

Held how_often(const Case& one) {
  std::mt19937_64 random(2024);
  Held held;
  const double mark = one.mark * inch;
  for (int set = 0; set < sets; ++set) {
    std::vector<std::pair<double, double>> truth;
    std::vector<std::optional<Ranked>> known;
    for (int die = 0; die < dies; ++die) {
      const double step = die * inch / 4;
      truth.push_back({4 * inch - step + even_spread(random, one.jitter * inch),
                       5 * inch - step + even_spread(random, one.jitter * inch)});
      known.push_back(Ranked{read_to(truth.back().first, mark), read_to(truth.back().second, mark),
                             Length::nm(std::llround(mark / 2))});
    }
    for (const int die : one.unknown) known[static_cast<std::size_t>(die)].reset();
    const auto found = estimates(known);
    for (const int die : one.unknown) {
      const auto at = static_cast<std::size_t>(die);
      EXPECT_TRUE(found[at]);
      if (!found[at]) continue;
      const auto spread = static_cast<double>(found[at]->spread.nm());
      ++held.all;
      held.held += std::abs(static_cast<double>(found[at]->width.nm()) - truth[at].first) <= spread &&
                   std::abs(static_cast<double>(found[at]->height.nm()) - truth[at].second) <= spread;
    }
  }
  return held;
}

TEST(EstimateSpread, HoldsAsOftenAsIsSaid) {
  const std::vector<Case> cases = {
      {0, 1.0 / 16, {1}, 1},
      {0, 1.0 / 64, {2, 5}, 1},
      {1.0 / 64, 1.0 / 16, {3}, 1},
      {1.0 / 32, 1.0 / 16, {1, 3, 5}, 1},
      {3.0 / 64, 1.0 / 16, {3}, 0.50},
      {3.0 / 64, 1.0 / 16, {1, 3, 5}, 0.34},
      {1.0 / 16, 1.0 / 16, {3}, 0.50},
      {1.0 / 16, 1.0 / 16, {1, 3, 5}, 0.28},
      {1.0 / 16, 1.0 / 64, {3}, 0.39},
      {1.0 / 16, 1.0 / 64, {1, 3, 5}, 0.20},
      {1.0 / 16, 1.0 / 16, {1, 2, 3, 4, 5, 6}, 1},  // two dies: half a step
  };
  for (const Case& one : cases) {
    const Held held = how_often(one);
    ASSERT_EQ(held.all, sets * static_cast<int>(one.unknown.size()));
    EXPECT_GE(held.rate(), one.floor) << "jitter " << one.jitter << " in, read to " << one.mark << " in, "
                                      << one.unknown.size() << " not measured";
  }
}

}  // namespace
}  // namespace insetbook
