// SPDX-License-Identifier: GPL-3.0-or-later
//
// What another question is about: a thing said by its size and shape ("a 3 x 4 in frame", "circle of 2-3/8
// in", "A6 card"), or one that the book has by name ("the second largest tidepool rectangle", "the teapot
// stamp").
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/names.h"
#include "language/vocabulary.h"
#include "measure/size.h"

namespace insetbook {

struct ThingSaid {
  Size size;
  std::string shape;  // a term of the shapes, or empty: not said
  std::string means;  // of a named size: "ISO A6, 105 x 148 mm", else empty
  std::string other;  // what else that name could be, or empty
};

// The whole text says a size, with or without a shape and what the thing is (frame, panel, window …). Empty
// where it says anything else, or more than one size.
std::optional<ThingSaid> read_thing(std::string_view text, const Vocabulary& vocabulary, Unit no_unit);

// The records that the whole text names, exactly: a set or a die however it is said (order, line, label), a
// supply, a colour, a sample; words for the kind of thing may stand beside ("the teapot stamp").
std::vector<NamedRecord> things_named(std::string_view text, const Names& names);
// The same, or what is nearest to a misspelt name.
std::vector<NamedRecord> things_like(std::string_view text, const Names& names);
// "The circle on Kettle's On": the words for a piece, and the sample, by its whole title.
struct PieceOfSample {
  std::string piece;
  NamedRecord sample;
};
std::optional<PieceOfSample> piece_of_sample(std::string_view text, const Names& names);
// The name without the words that only say what kind of thing it is: "my sage ink" → "sage".
std::string bare_name(std::string_view text);

}  // namespace insetbook
