// SPDX-License-Identifier: GPL-3.0-or-later
//
// The first stage of reading a question: its text as pieces, the words and marks with their places. A hyphen
// between letters parts two words ("stand-up" is "stand", "up") and is remembered; one before a word is the
// mark "-", which excludes. A text between quotes is one piece. Quotes behind a figure are inches.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "language/question.h"
#include "text/problem.h"

namespace insetbook {

struct Piece {
  enum class Kind { word, phrase, mark } kind = Kind::word;
  Span span;            // in the whole text
  Span inner;           // phrase: what stands between the quotes
  std::string folded;   // word, phrase: folded (text/utf8.h); mark: the mark, in one spelling for each
  bool glued = false;   // nothing stands between it and the piece before
  bool hyphen = false;  // only a hyphen stands between it and the word before
};

// The pieces of text[range.begin, range.end). The one Problem is a quote that does not end.
Result<std::vector<Piece>> split(std::string_view text, Span range);

// The same, read on behind a quote that does not end: what stands behind it are words. At most most_problems
// are told.
inline constexpr std::size_t most_problems = 32;
std::vector<Piece> split(std::string_view text, Span range, std::vector<Problem>& problems);

// "designs | using | a | 2 | 3/8 | in": one piece beside the other; marks as they are, phrases in quotes.
std::string print(const std::vector<Piece>& pieces);

// A Problem about a part of the question: the place in characters, in the text; of a long one in what stands
// round the place.
Problem problem_at(std::string_view text, Span span, std::string what, std::string expected);

}  // namespace insetbook
