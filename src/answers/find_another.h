// SPDX-License-Identifier: GPL-3.0-or-later
//
// Hands a question that is not for samples to the answer it is for (question.h, Asks).
#pragma once

#include "answers/find.h"
#include "language/read_question.h"

namespace insetbook {

// Sets `answer.answer` and how the question was understood. A Problem: the name or size is none.
Result<void> answer_another(const Book& book, const Question& question, const ReadingContext& context,
                            const FindAsked& asked, FindAnswer& answer);

}  // namespace insetbook
