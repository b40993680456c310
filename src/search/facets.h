// SPDX-License-Identifier: GPL-3.0-or-later
//
// How many of the hits have each fold, technique, colour, occasion, year and closed size, most first, twelve
// of each at most: those that are recorded, each counted with its narrower terms, as the question that it
// offers (`asks`) finds them; a closed size is found within the usual tolerance as well. What the question
// asks for already is left out.
#pragma once

#include <cstdint>
#include <vector>

#include "book/book.h"
#include "language/question.h"
#include "search/search.h"

namespace insetbook {

// Without a vocabulary no term has narrower ones.
std::vector<Facet> facets_of(const Book& book, const std::vector<std::int64_t>& samples, const Node& asked,
                             const Vocabulary* vocabulary);

}  // namespace insetbook
