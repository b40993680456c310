// SPDX-License-Identifier: GPL-3.0-or-later
//
// Suggestions for words that are nowhere: the word of the book's own texts and names and of the vocabularies'
// labels that it is most likely a slip for (text/near_word.h), where asking for that finds a sample; two
// words that the book writes as one. A word that is somewhere gets none.
#pragma once

#include <vector>

#include "search/finder.h"

namespace insetbook {

std::vector<Suggestion> suggestions(const Book& book, Index& index, Stemmer& stemmer, const Node& all,
                                    const Vocabulary* vocabulary);

}  // namespace insetbook
