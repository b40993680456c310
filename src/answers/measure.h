// SPDX-License-Identifier: GPL-3.0-or-later
//
// Measuring a line of a die: what is known of it, a new figure, a whole set in one line ("A; B; …", largest
// first), a new die. The rules for confirmation and conflict are in book/evidence.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/evidence.h"
#include "book/openings.h"

namespace insetbook {

struct MeasureAsked {
  std::string opening;  // as people say it; with `sizes`, a set (and a line)
  std::optional<std::string> size, method, read_to;
  std::optional<std::string> sizes;  // "A; B; …": the dies of the set, largest first
  bool accept = false;               // the new figure becomes the current one
  bool make_new = false;             // the die, or its set, is not in the book yet
  std::optional<std::string> shape;  // with make_new
};

struct LineMeasured {
  OpeningRecord opening;  // as it is afterwards
  MeasureOutcome outcome;
  std::vector<std::string> warnings = {};  // a new figure that suits another line of the die better
};

struct MeasureAnswer {
  bool recorded = false;        // false: only what is known was asked
  std::string line_meant = {};  // recorded without naming a line where the die has several: the one taken
  std::vector<LineMeasured> lines;
};

Result<MeasureAnswer> measure(Book& book, const MeasureAsked& asked);

// A panel tried in an opening by hand.
struct TriedAsked {
  std::string opening;
  std::string size;
  std::optional<std::string> shape, result, date, note;
};
struct TriedAnswer {
  OpeningRecord opening;
  TriedPanel tried;
  bool same = false;    // it was in the book already
  std::string warning;  // the panel is larger than the line as measured
};
Result<TriedAnswer> record_tried(Book& book, const TriedAsked& asked);

}  // namespace insetbook
