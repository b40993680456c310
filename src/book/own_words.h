// SPDX-License-Identifier: GPL-3.0-or-later
//
// A person's own words: terms of their own, and labels added to the terms of schema/vocabularies. Kept as
// plain rows; what they mean is the language's business (`answers` makes its Vocabulary from them). One row a
// term; told apart by vocabulary and folded term.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "book/records.h"

namespace insetbook {

struct OwnWord {
  std::string vocabulary;           // "technique", "fold", …
  std::string term;                 // as it is shown
  std::vector<std::string> labels;  // other words for it
  std::string broader;              // the broader term, or empty
  std::string stands;               // folds: "built to stand", "part-open", "no", or empty
  bool operator==(const OwnWord&) const = default;
};

// A Problem where a word of it has no letters, holds a semicolon or a control character, or is no UTF-8.
Result<void> check_own_word(const OwnWord& word);
// A term that is there already gains the labels it lacks; broader and stands are replaced where they are
// said.
Result<PutResult> put_own_word(Change& change, const OwnWord& word);
// Labels as a row keeps them, "; " between them.
std::vector<std::string> split_labels(std::string_view text);
// By vocabulary, then term.
std::vector<OwnWord> own_words(const Book& book);
// Removes a term, or with a label only that label. Unknown: the terms there are.
Result<void> remove_own_word(Change& change, std::string_view vocabulary, std::string_view term,
                             std::string_view label);

}  // namespace insetbook
