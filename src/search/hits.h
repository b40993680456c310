// SPDX-License-Identifier: GPL-3.0-or-later
//
// From samples that were found to the hits that are shown.
#pragma once

#include <vector>

#include "search/candidates.h"
#include "search/search.h"

namespace insetbook {

// With what matched; with `relaxed` sizes also what they miss.
std::vector<Hit> hits_of(const Book& book, const std::vector<Candidate>& found, const Node& all,
                         const Relaxed& relaxed);

}  // namespace insetbook
