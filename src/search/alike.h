// SPDX-License-Identifier: GPL-3.0-or-later
//
// What two samples have in common: "more like SAMPLE". A sample is taken as a list of things: pieces (the
// shape, with both sides within 1/8 in, either way up), colours of paper and of ink, techniques, folds,
// features, occasions, materials, supplies, dies, and the words of its title, saying and note. A sample is
// alike when it holds at least a tenth of the whole list by weight. The weight of a thing is how rare it is,
// log2((samples + 1) / holders) in thousandths, half of it for a word; what no other sample holds is left
// out. Bounded: things are followed from the rarest on until a thousand samples are met, none of them to more
// than 5 000, and holders are counted to 20 000.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "search/facts.h"
#include "search/index.h"
#include "search/size_rules.h"
#include "search/words.h"

namespace insetbook {

struct Thing {
  enum class Kind { term, colour, supply, die, piece, word } kind = Kind::term;
  std::string_view mention;  // term: "fold", "technique" …; colour: "paper" or "ink"
  std::string word;          // term: the vocabulary's; word: the stem; piece: the shape
  std::int64_t id = 0;       // colour, supply, die
  std::int64_t width = 0, height = 0;
  std::string said;                      // "easel fold", "navy ink", "circle 2-3/8 in"
  std::vector<std::int64_t> of_colours;  // piece: its papers
  std::vector<std::string> colour_names;
};

// In the order in which they are said; each once.
std::vector<Thing> things_of(const Book& book, std::int64_t sample, Stemmer& stemmer);
bool holds(const Thing& piece, const ElementFacts& element);
// How far the further side of such an element is from the piece's, in nanometres.
std::int64_t off_by(const Thing& piece, const ElementFacts& element);
// All but words, which only the text can tell.
bool holds(const Thing& thing, const SampleFacts& sample);

struct Alike {
  std::int64_t sample = 0;
  std::int64_t score = 0;
};
// By their id; never the sample itself. The index must be ready.
std::vector<Alike> alike(const Book& book, Index& index, Stemmer& stemmer, std::int64_t sample);

}  // namespace insetbook
