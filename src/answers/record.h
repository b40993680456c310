// SPDX-License-Identifier: GPL-3.0-or-later
//
// Recording a sample from lines as people type or paste them (language/read_record_text.h), kept at once in
// one change that `undo` takes back. What could not be read is in the note of its piece, after "not read:",
// and is told with its line and place. A piece that lies in a die's line is from then on an inset that was
// tried there: that follows from the record itself (element.in_line_id), nothing is written twice.
#pragma once

#include <string>
#include <vector>

#include "answers/show.h"
#include "book/book.h"
#include "text/problem.h"

namespace insetbook {

struct RecordAsked {
  std::string title;  // empty: the first line of the text
  std::string text;
  std::string file;  // where it was read from, as the person named it; for the places of what was not read
  // Keep nothing where something could not be read, or a date can be read two ways.
  bool strict = false;
  bool dry_run = false;  // only tell
};

struct RecordedPiece {
  ShownElement shown;
  std::string goes_to;  // the name of the piece that it goes with, or empty
  int line = 0;         // of the text
};

struct RecordAnswer {
  SampleRow sample;
  std::vector<RecordedPiece> pieces;  // in the order of their lines
  std::vector<std::string> notes;     // what a person should know of the reading
  std::vector<Problem> not_read;      // `where`: file, line, the line as typed and the place in it
  bool kept = false;
  bool same = false;  // the very same sample was in the book already
};

// A Problem: what read_record refuses, and a title that another sample has.
Result<RecordAnswer> record(Book& book, const RecordAsked& asked);

}  // namespace insetbook
