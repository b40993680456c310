// SPDX-License-Identifier: GPL-3.0-or-later
//
// The words of the trade and a person's own: the vocabulary of a book, listing it, adding to it. The terms of
// schema/vocabularies and the rows of `own_term` meet here and nowhere else.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "language/vocabulary.h"

namespace insetbook {

Vocabulary vocabulary_of(const Book& book);

struct WordCount {
  VocabularyName vocabulary;
  std::size_t terms = 0;
};
std::vector<WordCount> vocabularies_of(const Book& book);

// The terms of one vocabulary. Unknown: the Problem names those there are.
Result<std::vector<Term>> words_in(const Book& book, std::string_view vocabulary);

// Every term that a word means, likeliest first, with its broader terms and the narrower ones.
struct WordShown {
  Term term;
  std::vector<std::string> broader;  // from the nearest upwards
  std::vector<std::string> narrower;
};
Result<std::vector<WordShown>> show_word(const Book& book, std::string_view word);

struct WordAdded {
  std::string vocabulary, word;
  std::optional<std::string> means;  // another label of this term
  std::optional<std::string> broader;
  std::optional<std::string> stands;  // folds
};
// The term as it is afterwards. Refused: an unknown vocabulary or term, a broader term that would lead back
// to itself.
Result<Term> add_word(Book& book, const WordAdded& added);

}  // namespace insetbook
