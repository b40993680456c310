// SPDX-License-Identifier: GPL-3.0-or-later
//
// Readers for single cells of the tables a person keeps and of lines typed while making: how a piece goes
// with another, its glue, the die it was cut by, the line of a die, a side, a count. They look at words only;
// which die, line or piece is meant is for the caller to find. Nothing is lost: what is not understood stays
// in `text`.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "language/goes.h"
#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

// "on front", "in the frame", "behind label", "around front", "on section 2"; a bare name means on. Blank:
// `target` is empty and `how` is on (the foremost section).
struct Goes {
  GoesHow how = GoesHow::on;
  std::string target;  // the name as typed, without "the": a piece, or a place such as "front", "inside left"
  std::optional<int> section;  // "section 2"
  std::string side;  // front, inside, back, where the target begins with one ("inside left" → inside)
};
Goes read_goes(std::string_view cell);

// The words that say how, folded, longer ones first.
struct GoesWords {
  std::string_view words;
  GoesHow how;
};
std::span<const GoesWords> goes_words();

// "whole", "left 2 in", "foam, left 2 in", "none". Blank: nothing is said.
struct Glue {
  enum class Where { not_said, whole, none, part } where = Where::not_said;
  std::string edge;              // part: left, right, top, bottom, middle, edges
  std::optional<Length> length;  // part: how far from that edge
  std::string with;              // what it is stuck with, as typed ("foam")
  std::string text;              // the cell as typed
};
// A Problem where a length in the cell cannot be.
Result<Glue> read_glue(std::string_view cell, Unit no_unit);

// The `die` cell: "2" and "second largest" are orders, any other text is a label.
struct DieCell {
  std::string label;        // what the die is called: "2" for any order from the largest, else as typed
  std::optional<int> rank;  // 1 = the largest
  std::optional<int> rank_from_smallest;  // "smallest" → 1: the label is then known only with the set
};
DieCell read_die_cell(std::string_view cell);

// The `line` cell: "stitched", "Stitched line", "window 2". Blank: cut. A Problem names the kinds there are.
struct LineCell {
  std::string kind;  // cut, stitched, pierced, scored, embossed, window
  std::string name;  // "stitched", "window 2"
};
Result<LineCell> read_line_cell(std::string_view cell);

// front, inside or back for any word of it ("on the inside", "outside", "reverse"); empty when it is none.
std::string side_word(std::string_view folded);

// "3", "x3", "3x", "three", "a pair"; blank is 1. A Problem when it is no whole number from 1 to 999.
Result<int> read_count(std::string_view cell);

}  // namespace insetbook
