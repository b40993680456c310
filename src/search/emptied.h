// SPDX-License-Identifier: GPL-3.0-or-later
//
// Why nothing was found: the smallest set of constraints that no sample meets together, and what comes
// nearest when they are relaxed (sizes first: by a little, then by more; else by leaving one of the
// constraints out).
#pragma once

#include <string>
#include <vector>

#include "search/finder.h"

namespace insetbook {

struct Emptied {
  // Texts of the question, in its order. The smallest set, as far as 210 tries go from the small to the
  // large: each and each two of twenty constraints; else a set of which none can be left out.
  std::vector<std::string> by;
  std::vector<Hit> nearest;
};

// `all` in normal form, found to have no sample.
Emptied why_empty(const Book& book, Finder& finder, const Node& all, std::size_t nearest);

}  // namespace insetbook
