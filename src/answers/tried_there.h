// SPDX-License-Identifier: GPL-3.0-or-later
//
// "What did I try in tidepool 2?", "what was too tight?" The panels tried by hand in the lines of the dies
// that are meant, newest first; where a die is said, the pieces of samples that lie in its lines too.
#pragma once

#include <string>
#include <vector>

#include "book/openings.h"

namespace insetbook {

struct TriedThereAsked {
  std::string opening;  // as people say it; empty: in every die
  std::string result;   // fits, too tight, too loose; empty: each
  std::size_t limit = 20;
};

struct TriedThere {
  OpeningRecord opening;
  TriedPanel tried;
};

struct TriedThereAnswer {
  std::string opening, result;  // as asked
  std::vector<TriedThere> tried;
  std::size_t total = 0;  // of them, also where only the first are kept
};

Result<TriedThereAnswer> tried_there(const Book& book, const TriedThereAsked& asked);

}  // namespace insetbook
