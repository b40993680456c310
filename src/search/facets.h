// SPDX-License-Identifier: GPL-3.0-or-later
//
// How many of the hits have each fold, technique, colour, occasion, year and closed size, most first, twelve
// of each at most. Counted over the words as they are recorded: the question that a value offers (`asks`)
// finds the narrower terms of that value as well, and closed sizes within the usual tolerance. What the
// question asks for already is left out.
#pragma once

#include <cstdint>
#include <vector>

#include "book/book.h"
#include "language/question.h"
#include "search/search.h"

namespace insetbook {

std::vector<Facet> facets_of(const Book& book, const std::vector<std::int64_t>& samples, const Node& asked);

}  // namespace insetbook
