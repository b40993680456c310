// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a generated question means, and the plain scan that answers it: every record of the generated book is
// held against the meaning with the simplest code there is. Nothing of the reader or of the search is used;
// what a term includes is asked of the vocabulary, what a colour word includes of src/colour.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "language/question.h"
#include "question_book.h"

namespace insetbook {

struct SizeAsked {
  Relation relation = Relation::exact;
  std::int64_t low = 0, high = 0;      // high: ranges
  std::optional<std::int64_t> second;  // two figures, whichever way round
};

// One piece; what is empty is not asked.
struct PieceAsked {
  std::string shape, role, technique;  // ids of terms; narrower ones count
  bool on_the_inside = false;          // an "inside panel": or a panel whose side is inside
  std::string not_technique;
  std::string colour;  // of the paper; a name, or a basic colour word
  bool by_value = false;
  std::string ink;
  std::string side;
  std::string place;  // as it is written in the book
  std::optional<SizeAsked> size;
  int die = 0;
  int count = 1;
  std::optional<GoesHow> goes;
  std::vector<PieceAsked> other;  // the piece it goes with: one, where it goes
};

struct Asked {
  std::vector<PieceAsked> pieces;
  std::vector<PieceAsked> no_pieces;
  std::string fold, not_fold, occasion, technique, word, supply;
  std::string made_from, made_to;  // years, or empty
  std::string envelope;            // of book_envelopes: a name or a size, which mean the same
  int pieces_in_all = 0;           // at least so many, whatever they are
};

// Titles of the samples that meet it, sorted.
std::vector<std::string> plain_scan(const std::vector<SampleRecord>& samples, const Asked& asked);
bool meets(const SampleRecord& sample, const Asked& asked);

// For a failing test: what was asked, plainly.
std::string told(const Asked& asked);

}  // namespace insetbook
