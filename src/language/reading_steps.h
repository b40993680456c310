// SPDX-License-Identifier: GPL-3.0-or-later
//
// How much work a question is. The reader looks a bounded number of words ahead wherever it stands, so that
// its steps stay below a constant times the length of the question: the tests and the fuzz target hold it to
// that.
#pragma once

#include <cstddef>
#include <string_view>

#include "language/read_question.h"

namespace insetbook {

// For each byte of the question no more than so many steps, and some at the beginning.
inline constexpr std::size_t most_steps_a_byte = 150;
inline constexpr std::size_t steps_allowed_at_once = 500;

// Words compared with the tables of the language, look-ups in the vocabularies and names, and measurements
// that were tried, until the cover is found.
std::size_t reading_steps(std::string_view text, const ReadingContext& context);

}  // namespace insetbook
