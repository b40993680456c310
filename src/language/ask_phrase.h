// SPDX-License-Identifier: GPL-3.0-or-later
//
// How the other questions of the box are put, written as phrases and compared with the pieces of a text:
//   what|which      one of these words          [the|a]     one of them, or none
//   [the|a]*        any number of them          !in|round   none of them stands here (nothing is taken)
//   @in             a list of words by name     +shape, +set   a word for a shape, a set of the book: kept
//   +x              one piece or more, as few as will do: the subject        +end   nothing more
//   +y              as many as will do, of what is said with the subject: the panel of "does a 3 x 4 in panel
//   fit …"
// `+shape`, `+set` and `@…` may stand among the words of a list. A comparison takes a bounded number of
// steps, whatever the text.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "language/names.h"
#include "language/pieces.h"
#include "language/vocabulary.h"

namespace insetbook {

struct PhraseMatch {
  std::size_t begin = 0, end = 0;  // the subject: places in the pieces, half-open; none: begin == end
  std::size_t beside_begin = 0, beside_end = 0;  // +y
  std::string shape;                             // the term of +shape, or empty
  std::string set;                               // the set's name as recorded, or empty
};

class PhraseReader {
 public:
  PhraseReader(const std::vector<Piece>& pieces, const Vocabulary& vocabulary, const Names& names)
      : pieces_(pieces),
        vocabulary_(vocabulary),
        names_(names),
        shapes_(pieces.size()),
        sets_(pieces.size()) {}

  // Whether the pieces from `at` on are the phrase, to its end.
  bool matches(std::string_view phrase, std::size_t at, PhraseMatch& found);

  bool is_any(std::size_t at, std::string_view words) const;  // "what|which", "@in"
  // Where the longest name of a set that begins at `at` ends; `at` where none does.
  std::size_t set_at(std::size_t at, std::string& name) const;

 private:
  bool match(std::string_view phrase, std::size_t at);
  // Where one of the list that begins at `at` ends, `at` when none does.
  std::size_t one_of(std::string_view words, std::size_t at);
  std::size_t shape_at(std::size_t at);
  // A shape or a set that begins at a piece, looked for once.
  struct Seen {
    bool looked = false;
    std::size_t end = 0;
    std::string name;
  };
  Seen look_for_shape(std::size_t at) const;
  Seen look_for_set(std::size_t at) const;

  const std::vector<Piece>& pieces_;
  const Vocabulary& vocabulary_;
  const Names& names_;
  std::vector<Seen> shapes_;
  mutable std::vector<Seen> sets_;
  PhraseMatch match_;
  int steps_ = 0;
};

}  // namespace insetbook
