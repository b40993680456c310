// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads a question: text → pieces → offers → cover → items → tree. Nothing falls away in silence: every word
// of the question is in the tree, in `ignored`, or is looked for as text. Stages, each in a file of its own
// and printed by `explain_reading`:
//   pieces.h     words, marks and quoted phrases with their places
//   recognise.h  all that could begin at each piece: sizes, terms, names, dates, dies, fields, small words
//   cover.h      the offers that cover the question best, and how ties are settled
//   items.h      neighbours that say something of each other: "navy ink", "circle or square"
//   bind.h       pieces of a sample and what is said of the sample: the rules of binding
// Questions for other answers ("what fits inside …") are told before that (hand_over.h).
#pragma once

#include <cstddef>
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
  bool southern = false;   // seasons of the southern hemisphere
};

// What cannot be read falls away and is in `Question::problems`, in the order of their places and to
// most_problems (pieces.h): an unfinished quote, a bracket without its other half, an unknown field (the
// nearest are candidates), a field without a value or with one that cannot be, a size that cannot be; the
// rest is read. What contradicts itself stays in the tree and is said in `notes`. A Problem: more than 64 KB,
// nesting over 50, more asked at once than is looked for.
inline constexpr std::size_t most_things_asked = 40;
inline constexpr std::size_t most_words_asked = 200;
Result<Question> read_question(std::string_view text, const ReadingContext& context);

// Every stage of the reading, for `find --explain`: one line each.
std::string explain_reading(std::string_view text, const ReadingContext& context);

}  // namespace insetbook
