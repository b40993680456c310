// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/opening_said.h"

#include "language/read_opening.h"

namespace insetbook {

OpeningWanted opening_wanted(std::string_view text) {
  OpeningPhrase phrase = read_opening(text);
  return {.name = std::move(phrase.name),
          .rank = phrase.rank,
          .rank_from_smallest = phrase.rank_from_smallest,
          .line = std::move(phrase.line),
          .text = std::move(phrase.text)};
}

Result<OpeningRecord> opening_said(const Book& book, std::string_view text) {
  return find_opening(book, opening_wanted(text));
}

}  // namespace insetbook
