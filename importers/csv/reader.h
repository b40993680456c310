// SPDX-License-Identifier: GPL-3.0-or-later
//
// A table in CSV (RFC 4180): text → rows of cells. Comma, semicolon and tab are recognised from the first
// row, as are all line ends. Text is UTF-8 without a byte order mark (importers/csv/encoding.h makes it so).
// The reader keeps no rows: a row is read where it begins and can be read again, so that memory stays that of
// the text.
//
// Beyond the standard: a quotation mark inside a cell that does not begin with one is itself (`2 3/8"`); rows
// may have fewer or more cells than the first; empty lines are skipped but counted, so that row numbers are
// those of a spreadsheet. A row that cannot be read carries a Problem, and reading goes on behind it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook {

struct CsvLimits {
  std::size_t cell_bytes = 1 << 20;  // path data of an outline can be long; nothing a person types is
  std::size_t cells = 4096;          // in one row
};

class CsvReader;

// One row. The cells point into the reader's text or into the row itself, so a row is neither copied nor
// outlives it.
class CsvRow {
 public:
  CsvRow() = default;
  CsvRow(const CsvRow&) = delete;
  CsvRow& operator=(const CsvRow&) = delete;

  std::int64_t number = 0;         // 1 = the first row of the file
  std::size_t begin = 0;           // where it begins in the text, for CsvReader::go_to
  std::optional<Problem> problem;  // it could not be read; `cells` then holds what could
  std::size_t problem_cell = 0;    // the cell meant, counted from 0
  std::size_t size() const { return cells_.size(); }
  // An empty view where the row has fewer cells.
  std::string_view cell(std::size_t i) const;

 private:
  friend class CsvReader;
  struct Cell {
    bool owned;  // in `own_`, because doubled quotation marks were made single
    std::size_t begin, end;
  };
  std::string_view text_;
  std::string own_;
  std::vector<Cell> cells_;
};

// The delimiter of a table, from its first row: what stands there most often outside quotation marks; else a
// comma.
char csv_delimiter(std::string_view text);

class CsvReader {
 public:
  // `text` must outlive the reader.
  CsvReader(std::string_view text, char delimiter, CsvLimits limits = {});

  // The next row; false at the end of the text.
  bool next(CsvRow& row);
  // The next call of `next` reads the row that begins at `begin` and has that number.
  void go_to(std::size_t begin, std::int64_t number);
  std::size_t place() const { return at_; }  // where the next row begins, or empty lines before it

 private:
  void read_row(CsvRow& row);
  void read_cell(CsvRow& row);
  void read_plain(CsvRow& row);
  void read_quoted(CsvRow& row);
  void unclosed(CsvRow& row, std::size_t opening);
  bool at_end_of_cell() const;
  void skip_line_end();

  std::string_view text_;
  char delimiter_;
  CsvLimits limits_;
  std::size_t at_ = 0;
  std::int64_t number_ = 1;
};

}  // namespace insetbook
