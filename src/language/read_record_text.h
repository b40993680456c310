// SPDX-License-Identifier: GPL-3.0-or-later
//
// A whole record as it is typed or pasted: a sample, one line a piece (read_line.h), with lines of the sample
// itself between them:
//
//   easel fold
//   base white 8-1/2 x 5-1/2 in, scored at 4-1/4 in
//   Front:
//   grey panel 4 x 5-1/4 in
//   sage circle 2-3/8 in, speckled, from moonrise circles 3, on the grey panel, high of centre
//   words: happy birthday
//   1. Score the base at 4-1/4 in.
//
// Headings set the side for the lines after them, or say that steps, supplies or notes follow. Bullets and
// numbers of a list fall away; a numbered line that begins with what is to be done is a step. Where no title
// is given, the first line is it. Each piece gets a name that no other has, and the piece it goes with is
// found by name, role, shape and colour: the nearest one before it, else the first one behind it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/read_line.h"

namespace insetbook {

struct PieceOfRecord {
  LineSaid said;
  int line = 0;                        // 1 = the first line of the text
  std::string name;                    // no other piece of the record has it
  std::optional<std::size_t> goes_to;  // a place in RecordSaid::pieces
  std::vector<std::string> left_over;  // what was not read, as typed: for its note
};

struct SampleOfRecord {
  std::string title;
  std::optional<Size> base;
  std::string base_text, scores;
  std::optional<Size> closed;
  std::string closed_text;
  std::string made, envelope, based_on;
  std::vector<std::string> words, steps, notes, supplies;
  std::vector<TermSaid> terms;  // folds, occasions, techniques, features, materials
  std::vector<std::string> left_over;
};

// Something that is in no field. `problem.where` has the line as typed and the place in it; `row` is its
// number.
struct LeftOver {
  Problem problem;
  std::optional<std::size_t> piece;  // whose note it is in; else the sample's
};

struct RecordSaid {
  SampleOfRecord sample;
  std::vector<PieceOfRecord> pieces;  // in the order of their lines
  std::vector<LeftOver> not_read;     // in the order of their lines
  std::vector<Problem> doubtful;      // what was read one way and can be read another, as a remark tells
  std::vector<std::string> remarks;   // what a person should know of the reading
};

inline constexpr std::size_t longest_record = 64 * 1024 * 1024;

// A Problem: bytes that are no UTF-8 (with the place), no title, nothing but blank lines.
Result<RecordSaid> read_record(std::string_view title, std::string_view text, const ReadingContext& context);

}  // namespace insetbook
