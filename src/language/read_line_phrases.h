// SPDX-License-Identifier: GPL-3.0-or-later
//
// The phrases of a record's line that no question has: "on the grey panel", "glue left 2 in", "high of
// centre", "called boat round", "scored at 4-1/4 in", "note: …", "x3". Each takes as little as it needs: a
// phrase ends at a comma, at the next phrase, or behind the shape or role of the piece it names.
#pragma once

#include <string_view>
#include <vector>

#include "language/goes.h"
#include "language/pieces.h"
#include "language/read_question.h"

namespace insetbook {

struct LinePhrase {
  enum class Kind { goes, glue, place, name, note, count, scores, filler } kind = Kind::filler;
  Span span;   // all of it, the word that leads it too
  Span inner;  // what it says: the other piece, where the glue is, the place, the name
  GoesHow how = GoesHow::on;
  int number = 0;              // count
  bool place_of_card = false;  // goes: the inner text is a place of the card, no piece
};

// In the order of the line; they do not overlap. `pieces` are those of the whole text.
std::vector<LinePhrase> line_phrases(std::string_view text, const std::vector<Piece>& pieces,
                                     const ReadingContext& context);

}  // namespace insetbook
