// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the index holds of one sample: the stems of its text with their places, and the key by which samples
// of equal relevance are put in order. Fields are kept so far apart that a phrase never runs from one into
// the next.
#pragma once

#include "book/book.h"
#include "search/words.h"

namespace Xapian {
class Document;
}

namespace insetbook {

inline constexpr unsigned newest_first_slot = 0;

// Fills an empty document; false where there is no such sample.
bool fill_document(const Book& book, std::int64_t sample, Stemmer& stemmer, Xapian::Document& document);

}  // namespace insetbook
