// SPDX-License-Identifier: GPL-3.0-or-later
//
// The third stage of reading a question: the offers that cover it best. More understood wins over less; of
// equal covers the one with fewer offers, so that the longest match is taken; of those the one that was said
// more outright (priority_of). What nothing covers is text.
#pragma once

#include <vector>

#include "language/recognise.h"

namespace insetbook {

// One offer beside the other, all pieces covered, each resolved. Problems: a field that cannot be read, a
// size that cannot be.
Result<std::vector<Seen>> cover(const std::vector<Piece>& pieces, Recogniser& recogniser);

}  // namespace insetbook
