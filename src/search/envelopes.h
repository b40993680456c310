// SPDX-License-Identifier: GPL-3.0-or-later
//
// The envelope of a sample, as it was written ("C6", "4-3/8 x 5-3/4 in"), held against one that is asked for.
// What is read as a size or as the name of an envelope (card/envelopes.h) counts by its size: "A2" is found
// by 4-3/8 x 5-3/4 in and the other way, within the exact 1/32 in or 0.8 mm. The rest counts by its words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "language/question.h"

namespace insetbook {

// Whether it is of that size or that name, or all the words stand in it. `unit`: of figures without one.
bool envelope_says(std::string_view written, const EnvelopeIs& envelope, Unit unit);
// What of all that was ever written of envelopes says so.
std::vector<std::string> written_envelopes(const Book& book, const EnvelopeIs& envelope);
// Of a sample, as written.
std::string envelope_of(const Book& book, std::int64_t sample);

}  // namespace insetbook
