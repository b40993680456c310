// SPDX-License-Identifier: GPL-3.0-or-later
//
// The one search: a condition that holds up to some whole number and not beyond it. It starts from a guess
// and doubles its stride away from it, so that a good guess costs two or three checks; the guess decides
// nothing.
#pragma once

#include <algorithm>
#include <cstdint>

namespace insetbook {

// The last number in [low, high] for which `condition` holds; low is taken to hold. low ≤ high.
template <class Condition>
std::int64_t last_that_holds(std::int64_t low, std::int64_t high, std::int64_t guess,
                             const Condition& condition) {
  guess = std::clamp(guess, low, high);
  std::int64_t holds = low, fails = high + 1, stride = 1;
  if (guess == low || condition(guess)) {
    holds = guess;
    for (std::int64_t next = holds + 1; next < fails; next = holds + stride) {
      if (!condition(next)) {
        fails = next;
        break;
      }
      holds = next;
      stride *= 2;
    }
  } else {
    fails = guess;
    for (std::int64_t next = fails - 1; next > holds; next = fails - stride) {
      if (condition(next)) {
        holds = next;
        break;
      }
      fails = next;
      stride *= 2;
    }
  }
  while (fails - holds > 1) {
    const std::int64_t middle = holds + (fails - holds) / 2;
    (condition(middle) ? holds : fails) = middle;
  }
  return holds;
}

}  // namespace insetbook
