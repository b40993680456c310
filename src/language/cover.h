// SPDX-License-Identifier: GPL-3.0-or-later
//
// The third stage of reading a question: the offers that cover it best. The rules, each settling the ties of
// the one before:
//   1. more understood wins over less: 2 for each piece, 1 for a number that may yet come to nothing, 0 for
//      text and for marks that say nothing;
//   2. fewer offers win over more, so that the longest match is taken ("stand-up fold" over "stand", "up");
//   3. the greater sum of priorities (seen.h) wins: what was said outright before what has to be guessed;
//      field, date, side, size, small word, term, name, number in this order; a name of the book that is
//      also a word for a material or a role ("pearls") comes before the term, which is offered;
//   4. the offer that the recogniser made first (recognise.cc, `offers`) stays.
// What nothing covers is text. A field stands alone where it begins: what is said outright is never read
// otherwise. One that cannot be read, and a size that cannot be where nothing else covers it, fall away and
// are told as problems.
#pragma once

#include <vector>

#include "language/recognise.h"

namespace insetbook {

// One offer beside the other, all pieces covered but sizes that cannot be, each resolved. Adds what cannot be
// read, to most_problems in all.
std::vector<Seen> cover(const std::vector<Piece>& pieces, Recogniser& recogniser,
                        std::vector<Problem>& problems);

// The same; the first thing that cannot be read is the Problem.
Result<std::vector<Seen>> cover(const std::vector<Piece>& pieces, Recogniser& recogniser);

}  // namespace insetbook
