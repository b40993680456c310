// SPDX-License-Identifier: GPL-3.0-or-later
//
// Questions for the dies themselves, told without an order of words: every word belongs to such a question,
// and what is left is a size and a shape, or the name of a set.
//   by size      "do I have a 3 inch circle die", "which die is 2-3/8", "what dies do I have around 2 in"
//   unmeasured   "which dies are not measured yet", "what still needs measuring in tidepool rectangles"
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/ask_phrase.h"
#include "language/question.h"
#include "language/read_question.h"

namespace insetbook {

// Empty where it is no such question, or is one for another answer ("which die frames a 2 in circle").
// `subject`: the size and shape as a question for samples says them, "about" in front where what is near is
// asked; `in_set`: the set.
std::optional<Question> dies_by_size_asked(std::string_view text, const std::vector<Piece>& pieces,
                                           const PhraseReader& reader, const ReadingContext& context);

std::optional<Question> unmeasured_asked(std::string_view text, const std::vector<Piece>& pieces,
                                         const PhraseReader& reader);

// What a text asks of one thing's size and shape, and of nothing else; empty where it asks anything else. A
// text that asks nothing is an empty `all`.
std::optional<Node> size_and_shape_asked(std::string_view text, const ReadingContext& context);

}  // namespace insetbook
