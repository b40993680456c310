// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads a question: text → pieces (spans with what each recogniser sees in them) → tree. Nothing falls away
// in silence: every word of the question is in the tree, in `ignored` (filler), or is looked for as text.
// Stages, each printable: `split` (words and marks with their places), `recognise` (all spans offered),
// `cover` (the reading with the best cover: longest vocabulary match before names before text; the rules for
// ties stand here), `bind` (pieces and sample constraints).
#pragma once

#include <string>
#include <string_view>

#include "language/names.h"
#include "language/question.h"
#include "language/vocabulary.h"
#include "text/problem.h"

namespace insetbook {

struct ReadingContext {
  const Vocabulary& vocabulary;
  const Names& names;
  Unit unit = Unit::inch;  // the book's own
  std::string today;       // ISO date
};

// Never fails on free words. A Problem: an unfinished quote, an unknown field (the nearest are candidates), a
// field without a value, a size that cannot be, more than 64 KB, nesting over 50.
Result<Question> read_question(std::string_view text, const ReadingContext& context);

// Every stage of the reading, for `find --explain`: one line each.
std::string explain_reading(std::string_view text, const ReadingContext& context);

}  // namespace insetbook
