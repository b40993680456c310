// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of colours on generated values.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>
#include <vector>

#include "colour/difference.h"
#include "colour/nearest.h"
#include "colour/value.h"
#include "colour/words.h"

namespace insetbook {
namespace {

std::uint32_t any_value() {
  return *rc::gen::inRange<std::uint32_t>(0, 0x1000000);
}

// Few different values, so that equal and equally near ones occur.
std::uint32_t coarse_value() {
  constexpr std::uint32_t channels[] = {0, 64, 128, 255};
  std::uint32_t value = 0;
  for (int i = 0; i < 3; ++i)
    value = value << 8 |
            *rc::gen::elementOf(std::vector<std::uint32_t>(std::begin(channels), std::end(channels)));
  return value;
}

RC_GTEST_PROP(ColourValue, IsReadAsItWasWritten, ()) {
  const std::uint32_t value = any_value();
  RC_ASSERT(read_colour_value(write_colour_value(value)) == value);
}

RC_GTEST_PROP(ColourDifference, IsTheSameBothWaysAndZeroOnlyForEqualColours, ()) {
  const std::uint32_t one = any_value();
  const std::uint32_t other = any_value();
  const double there = colour_difference(one, other);
  RC_ASSERT(std::isfinite(there));
  RC_ASSERT(std::abs(there - colour_difference(other, one)) < 1e-9);
  RC_ASSERT((there == 0) == (one == other));
  RC_ASSERT(colour_difference(one, one) == 0.0);
}

RC_GTEST_PROP(Lab, GrowsLighterWithEveryChannel, ()) {
  const std::uint32_t value = any_value();
  const int shift = *rc::gen::element(0, 8, 16);
  RC_PRE(((value >> shift) & 0xFF) != 0xFF);
  RC_ASSERT(to_lab(value).l < to_lab(value + (1U << shift)).l);
}

RC_GTEST_PROP(NearestColours, AreTheFirstOfAllSortedByDifference, ()) {
  const std::uint32_t wanted = coarse_value();
  std::vector<std::uint32_t> among(*rc::gen::inRange<std::size_t>(0, 20));
  for (std::uint32_t& value : among) value = coarse_value();
  const std::size_t limit = *rc::gen::inRange<std::size_t>(0, 22);
  std::vector<std::pair<double, std::size_t>> every;
  for (std::size_t i = 0; i < among.size(); ++i) every.emplace_back(colour_difference(wanted, among[i]), i);
  std::sort(every.begin(), every.end());
  const auto near = nearest_colours(wanted, among, limit);
  RC_ASSERT(near.size() == std::min(limit, among.size()));
  for (std::size_t i = 0; i < near.size(); ++i) {
    RC_ASSERT(near[i].place == every[i].second);
    RC_ASSERT(near[i].delta_e == every[i].first);
  }
}

RC_GTEST_PROP(BasicColours, AreTheOnesThatTheValueHas, ()) {
  const std::uint32_t value = any_value();
  const auto colours = basic_colours_of(value);
  RC_ASSERT(!colours.empty());
  RC_ASSERT(colours.size() <= 3U);
  for (std::size_t i = 0; i < basic_colour_count; ++i) {
    const auto colour = static_cast<BasicColour>(i);
    RC_ASSERT(has_basic_colour(value, colour) == (std::count(colours.begin(), colours.end(), colour) == 1));
  }
}

}  // namespace
}  // namespace insetbook
