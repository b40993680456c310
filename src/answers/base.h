// SPDX-License-Identifier: GPL-3.0-or-later
//
// "How do I cut the base?" The sheet of a fold with its scores, from the finished size or from a sheet, how
// many a sheet of the paper at hand gives, and which way the grain should run.
//
// Rules: creases run across the sheet's long side where the fold has no other use for it. The grain lies
// along the crease that opens and closes the card (common practice, no source): across it heavy paper cracks.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "card/folded.h"
#include "card/scoring_marks.h"

namespace insetbook {

struct BaseQuestion {
  std::string fold;                      // as typed
  std::string finished, from;            // one of them
  std::optional<int> sections;           // of an accordion
  std::optional<std::string> gap, tuck;  // of a gate, of a letter tri-fold
};

struct BaseFromPaper {
  std::string paper;  // as the setting has it: "8-1/2 x 11 in"
  int count = 0;      // how many by straight cuts in rows, the better way round
};

struct BaseAnswer {
  std::string fold;  // its label
  Unit unit = Unit::inch;
  Unit marks_unit = Unit::inch;  // of the scoring board
  Base base;
  FoldedBase folded;
  std::vector<OffTheMark> off_marks;
  std::vector<BaseFromPaper> papers;
  std::string grain;
  std::vector<std::string> notes;
};

// `today`'s settings of the book give the unit, the paper at hand and the scoring board; without a book the
// defaults hold.
Result<BaseAnswer> base_figures(const Book& book, const BaseQuestion& question);

}  // namespace insetbook
