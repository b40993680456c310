// SPDX-License-Identifier: GPL-3.0-or-later
//
// "Do I have a 3 inch circle die?" The dies of the book by size and shape, as a question for samples says
// them: exact is within 1/32 in or 0.8 mm, one figure is met by either side. Those that cut it come before
// those that stitch, pierce or emboss it; a window is cut too, and comes last. Where no die cuts it, the
// nearest that do are told with the difference, and dies that were never measured but should be about as
// large.
#pragma once

#include <string>
#include <vector>

#include "book/openings.h"
#include "fit/fit.h"
#include "language/read_question.h"

namespace insetbook {

struct DiesAsked {
  std::string size;  // "3 inch circle", "about 2 in", "circle"; empty: every die
  std::string in_set;
  std::size_t limit = 20;
};

struct DieOfSize {
  OpeningRecord opening;
  std::string
      difference;  // from the size asked: "1/8 in larger"; empty: none was asked, or it is exactly that
};

struct EstimatedDie {
  OpeningRecord opening;
  Estimate estimate;
};

struct DiesAnswer {
  std::string size, in_set;             // as asked
  std::vector<DieOfSize> dies;          // that have it
  std::size_t total = 0;                // of them, also where only the first are kept
  std::vector<DieOfSize> nearest;       // that cut what is nearest, where none cuts what was asked
  std::vector<EstimatedDie> estimated;  // not measured, but by the sizes of their sets about that
  bool size_asked = false;
};

Result<DiesAnswer> dies_of_size(const Book& book, const DiesAsked& asked, const ReadingContext& context);

}  // namespace insetbook
