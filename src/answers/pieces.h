// SPDX-License-Identifier: GPL-3.0-or-later
//
// "How big was the circle on Kettle's On?" Pieces of one sample by words for them: their names, roles,
// shapes, colours and techniques, under any label of the vocabularies.
#pragma once

#include <string>
#include <vector>

#include "answers/show.h"
#include "language/vocabulary.h"

namespace insetbook {

struct PiecesAnswer {
  std::string sample;   // its title
  std::string piece;    // the words that were asked
  bool colour = false;  // its colour was asked, not its size
  std::vector<ShownElement> pieces;
  bool all = false;  // no piece is meant by the words: these are all of the sample
};

Result<PiecesAnswer> pieces_of_sample(const Book& book, const std::string& piece, std::int64_t sample_id,
                                      const Vocabulary& vocabulary);

}  // namespace insetbook
