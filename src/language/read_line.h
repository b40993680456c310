// SPDX-License-Identifier: GPL-3.0-or-later
//
// One line of a record: "sage circle 2-3/8 in, speckled, from moonrise circles 3, on the grey panel, high of
// centre". The phrases that only a record has (how the piece goes with another, its place, its glue, its
// name, scores) are taken out first (read_line_phrases.h); the rest goes through the stages of a question
// (read_question.h), so that both understand the same words. Nothing is lost: every word of the line is in a
// field of LineSaid, in `fillers` or in `not_read`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/goes.h"
#include "language/question.h"
#include "language/read_question.h"
#include "measure/size.h"

namespace insetbook {

// A word of a vocabulary, with how it was written.
struct TermSaid {
  std::string kind;  // technique, feature, material, fold, occasion: as the book's mentions call it
  std::string term;
  std::string written;
  bool operator==(const TermSaid&) const = default;
};

// A die set, or one die of it, and a line of that die where it was said.
struct DieSaidOfPiece {
  std::vector<std::int64_t> dies;  // several: all of the set
  std::string line;                // "stitched", or empty
  std::string said;                // "Moonrise Circles 3"
  bool operator==(const DieSaidOfPiece&) const = default;
};

// What a piece is, as it was said; a piece of which another one is said to go with is described so too.
struct PieceSaid {
  std::string role, shape;   // terms
  std::string head;          // the words for them, as typed: "circle frame"
  std::optional<Size> size;  // what was said; of one figure, where the shape has two, `size_text` alone
  std::string size_text;     // as typed, with its unit
  Span size_span;
  std::vector<std::string> paper, ink;  // colours as typed
  std::vector<TermSaid> terms;          // techniques, features, materials
  std::vector<std::string> supplies;    // as typed
  std::optional<DieSaidOfPiece> cut_by, lies_in;
  std::string side;  // front, inside, back
  std::optional<int> count;
  bool operator==(const PieceSaid&) const = default;

  // Whether anything is said that only a piece can have.
  bool says_a_piece() const;
};

struct GoesSaid {
  GoesHow how = GoesHow::on;
  std::string target;          // as typed, without the article: "grey panel", "front", "section 2"
  std::string side;            // where the target is a place of the card: its side, or "" for "section 2"
  bool place_of_card = false;  // front, inside left, section 2, base, flap
  std::string line;            // "in the frame, stitched": a line of its die
  PieceSaid piece;             // how the target was read
  Span span;
};

// Something that is in no field: where it stands and what would be right.
struct NotRead {
  Span span;
  std::string what, expected;
  std::vector<std::string> candidates;
  std::string words;  // folded, where they are no more than not understood: to suggest others
};

struct LineSaid {
  PieceSaid piece;
  std::string name;  // "called …"
  std::optional<GoesSaid> goes;
  std::string at, glue;
  std::vector<std::string> notes;
  std::string scores;              // "2-1/8 in; 4-1/4 in"
  std::vector<std::string> words;  // between quotes: what stands on it
  // of the sample
  std::vector<TermSaid> of_sample;  // folds, occasions
  std::optional<Size> closed;       // "A2 card", "5 x 7 in card"
  std::string closed_text;
  std::string envelope;   // as typed: "C6", "4-3/8 x 5-3/4 in"
  std::string made;       // ISO day
  std::string made_text;  // as typed, with what leads up to it: "made 2 March 2024"
  std::string based_on;   // a title
  std::vector<Ignored> fillers;
  std::vector<NotRead> not_read;  // in the order of the line
  std::vector<OtherReading> other_readings;
  std::vector<std::string> remarks;
};

inline constexpr std::size_t longest_line = 64 * 1024;

// Never fails: what cannot be read is in `not_read`. `text` is valid UTF-8 of one line.
LineSaid read_line(std::string_view text, const ReadingContext& context);

// A day as a record says it: "2024-03-02", "today", "yesterday", "made on 2 March 2024". A Problem where it
// is no whole date. Without a context only ISO days are read. Of figures with the day and the month in either
// order ("3/4/2024") the book's order is taken, as for a question (date_words.h).
struct DaySaid {
  std::string day;    // ISO
  std::string other;  // what the figures could mean as well, or empty
  bool operator==(const DaySaid&) const = default;
};
Result<DaySaid> read_day(std::string_view text, const ReadingContext* context);

// "sage circle, 2-3/8 in, from Moonrise Circles 3": for tests and --explain, one line.
std::string print(const LineSaid& line);

}  // namespace insetbook
