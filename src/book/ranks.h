// SPDX-License-Identifier: GPL-3.0-or-later
//
// The places of dies in their sets by size (the rule stands in book/openings.h).
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct RankedDie {
  std::int64_t die_id = 0, set_id = 0;
  int rank = 0;    // 0 = not known
  int edge = 0;    // dies of one set with the same number here are ordered among each other
  int in_set = 0;  // how many dies the set has
};

// Of one set, or of all; by set, then by rank (dies without one last).
std::vector<RankedDie> ranked_dies(const Book& book, std::optional<std::int64_t> set_id);

}  // namespace insetbook
