// SPDX-License-Identifier: GPL-3.0-or-later
//
// The two sides of a panel's box.
#pragma once

#include <cstdint>

namespace insetbook {

struct Sides {
  std::int64_t width = 0, height = 0;  // nm
  bool operator==(const Sides&) const = default;
};

// Whether `a` is nearer the proportions of `of` than `b` is: its ratio of ratios is nearer 1; of two as near,
// the one that is not as wide.
bool nearer_proportions(Sides a, Sides b, Sides of);

}  // namespace insetbook
