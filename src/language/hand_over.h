// SPDX-License-Identifier: GPL-3.0-or-later
//
// Questions in the same box that are not about samples: what fits, what frames, how big is, what is not
// measured, where is, nearest to, a length in another unit, show a record. They are told by how they are put
// (the table in ask_phrases.h); a phrase that could also be said of samples counts only where what
// it asks about is in the book, or is a size. What cannot be told apart stays a question for samples, and the
// other reading is offered. A text that is a sample's whole title asks for that sample.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/pieces.h"
#include "language/question.h"
#include "language/read_question.h"

namespace insetbook {

struct HandedOver {
  std::optional<Question> question;   // for another answer: `asks`, `subject` and what else was said with it
  std::vector<OtherReading> offered;  // where it stays with the samples: what it could have been
};

// A question for another answer in words that are read back as the same: "what frames 2 in circle, 1/8 in
// border".
std::string print_other(const Question& question);

HandedOver hand_over(std::string_view text, const std::vector<Piece>& pieces, const ReadingContext& context);

}  // namespace insetbook
