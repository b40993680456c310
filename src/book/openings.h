// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dies and their lines: finding the opening that a person means, and what is known of its size.
// The rank of a die is its number where the set is numbered, else its place by size among the set's measured
// dies (by the outermost line that is measured, area of the box; within one edge where a set alternates plain
// and stitched).
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "shape/shape.h"

namespace insetbook {

struct OpeningWanted {
  std::string name;                       // folded: set and die label, in any order ("tidepool rectangle")
  std::optional<int> rank;                // 1 = the largest
  std::optional<int> rank_from_smallest;  // 1 = the smallest
  std::string line;                       // "stitched"; empty: the innermost line that is no window
  std::string text;                       // as typed, for messages
};

// One line of one die, with its current size.
struct OpeningRecord {
  std::int64_t line_id = 0, die_id = 0, set_id = 0;
  std::string set, die;  // names as recorded
  int rank = 0;          // 0 = not known
  int dies_in_set = 0;
  std::string line;  // the line's name: "stitched", "window 2"
  std::string line_kind;
  std::string shape_word, figures, outline, outline_unit;
  bool measured = false;
  Length width, height;  // of the current measurement
  Unit unit = Unit::inch;
  Length give_or_take;
  std::string read_as;  // where the name was misspelt: the name it was taken for; else empty
};

// The one opening meant. Unknown: the nearest names are candidates. Several: all of them are candidates, as
// texts that name each one ("Tidepool Rectangles 2, stitched").
Result<OpeningRecord> find_opening(const Book& book, const OpeningWanted& wanted);
// The dies that answer to the name, of the rank where one is said, largest first within a set; a misspelt
// name has none.
std::vector<std::int64_t> dies_wanted(const Book& book, const OpeningWanted& wanted);
std::optional<OpeningRecord> opening(const Book& book, std::int64_t line_id);
std::vector<OpeningRecord> openings_of_die(const Book& book, std::int64_t die_id);  // outermost first
std::vector<OpeningRecord> openings_of_set(const Book& book,
                                           std::int64_t set_id);  // by rank, outermost line first
// Every measured opening of the book, or of one set; for `frames`. Not built one by one: one statement.
std::vector<OpeningRecord> measured_openings(const Book& book, std::optional<std::int64_t> set_id);
// Ranks of all dies of a set, by die id.
std::vector<std::pair<std::int64_t, int>> ranks_of_set(const Book& book, std::int64_t set_id);

// The shape of an opening's line at its current size; a Problem where figures cannot be read.
Result<Shape> shape_of(const OpeningRecord& opening);

// "Tidepool Rectangles 2 (second largest), stitched"
std::string describe(const OpeningRecord& opening);

// Panels tried by hand in a line, newest first.
struct TriedPanel {
  std::int64_t id = 0;
  std::string shape;
  Length width, height;
  Unit unit = Unit::inch;
  std::string result;  // fits, too tight, too loose
  std::string date;
  std::string sample;  // title, or empty
  std::string note;
  bool from_sample = false;  // not a row of `tried`: a piece of a sample that lies in that line
  std::string element;       // then: the piece's name
};
// The same panels counted: one for each shape and size that fits, from rows of `tried` and pieces of samples
// alike. A line that a thousand cards were made with has a handful of these; `fits` and the habit of a set
// need no more.
struct TriedCount {
  std::int64_t line_id = 0;
  std::string shape;
  Length width, height;
  Unit unit = Unit::inch;
  std::string result;                 // fits, too tight, too loose
  std::int64_t by_hand = 0;           // rows of `tried`
  std::int64_t pieces = 0;            // pieces of samples
  std::vector<std::int64_t> samples;  // the newest few of them, by id
};
std::vector<TriedCount> tried_counts_in(const Book& book, std::int64_t line_id);
// Of the rows of `tried` in a line, one that fits; nullopt where there is none.
std::optional<TriedCount> fits_by_hand_in(const Book& book, std::int64_t line_id);
// In all lines of a set, in no order; rows of `tried` and pieces apart, without their samples.
std::vector<TriedCount> tried_counts_in_set(const Book& book, std::int64_t set_id);

// Whether a piece that lies in a line is wanted; asked with its shape, size and unit, before its sample is
// looked up.
using PieceWanted = std::function<bool(const TriedPanel&)>;
// Rows of `tried`, then pieces of samples that lie in the line; without a condition all of them.
std::vector<TriedPanel> tried_in(const Book& book, std::int64_t line_id, const PieceWanted& wanted = {});

}  // namespace insetbook
