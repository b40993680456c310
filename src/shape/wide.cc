// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/wide.h"

#include <cmath>

namespace insetbook {
namespace {

long double approximate(const Wide<4>& value) {
  long double sum = 0;
  for (std::size_t i = 4; i-- > 0;) sum = std::ldexp(sum, 64) + static_cast<long double>(value.limb[i]);
  return value.negative ? -sum : sum;
}

UInt128 whole(long double value) {
  if (value <= 0) return 0;
  const long double most = std::ldexp(1.0L, 128);
  if (value >= most) return ~static_cast<UInt128>(0);
  return static_cast<UInt128>(value);
}

Wide<4> squared(UInt128 value) {
  Wide<2> narrow;
  narrow.limb = {static_cast<std::uint64_t>(value), static_cast<std::uint64_t>(value >> 64)};
  return narrow * narrow;
}

}  // namespace

// Each round of Newton's method gains the 64 bits of a long double; what decides is the exact comparison at
// the end.
Root root(const Wide<4>& square) {
  assert(!square.negative);
  UInt128 guess = whole(std::sqrt(approximate(square)));
  for (int round = 0; round < 4 && guess != 0; ++round) {
    const long double step = approximate(square - squared(guess)) / (2 * static_cast<long double>(guess));
    if (std::fabs(step) < 1) break;
    guess = step > 0 ? guess + whole(step) : guess - whole(-step);
  }
  constexpr UInt128 most = ~static_cast<UInt128>(0);
  while (compare(squared(guess), square) > 0) --guess;
  while (guess != most && compare(squared(guess + 1), square) <= 0) ++guess;
  return {guess, compare(squared(guess), square) == 0};
}

}  // namespace insetbook
