// SPDX-License-Identifier: GPL-3.0-or-later
//
// Envelopes by name in a question: "C6", "A2 envelope" (schema/papers/envelopes.json). A sample answers whose
// envelope was written by that name, by another of the same size, or by the size itself; so the answer says
// what size was meant, and where a name has two meanings offers the other.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "language/question.h"
#include "language/seen.h"
#include "schema/papers.h"

namespace insetbook {

// Of the longest name, in words.
inline constexpr std::size_t longest_envelope_name = 4;

// "C6, 114 x 162 mm (size second hand)": the name, its size, and how surely it is known where that is not
// read.
std::string means(const EnvelopeSize& envelope);

// Makes `it` ask for that envelope, which was called `said`; the other envelope of that name is offered.
void say_envelope(const EnvelopeSize& envelope, std::string_view said, Seen& it);

// Names of envelopes of that size, each side within `within`, whichever way round.
std::vector<std::string_view> names_of_envelope(Length one, Length other, Length within);

}  // namespace insetbook
