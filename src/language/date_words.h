// SPDX-License-Identifier: GPL-3.0-or-later
//
// The pieces of a text as the words that a date is made of (dates.h).
#pragma once

#include <cstddef>
#include <vector>

#include "language/dates.h"
#include "language/pieces.h"
#include "language/read_question.h"

namespace insetbook {

// The words of dates that begin at `at`, commas and the points of short months among them; at most
// longest_dates. They look into the text of the pieces.
std::vector<DateWord> date_words(const std::vector<Piece>& pieces, std::size_t at);

// How a book reads dates: where its lengths are inches, the month comes first in 3/4/2024 (common practice,
// no source). `outright`: it was said that a date follows.
DateReading date_reading(const ReadingContext& context, bool outright);

}  // namespace insetbook
