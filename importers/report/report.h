// SPDX-License-Identifier: GPL-3.0-or-later
//
// What an import is told and what it tells: plain structs, shared by every importer. The names of the
// report's fields are those that `insetbook import --json` prints. `row` counts as a spreadsheet does: 1 is
// the header row, and a cell that runs over several lines is still one row.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

// How a date that is not ISO is read where it could be read two ways.
enum class DateOrder { not_said, day_month_year, month_day_year };

struct ClosedSize {
  Length width;
  Length height;
  bool operator==(const ClosedSize&) const = default;
};

// The closed size of a base: `folds` are terms of the vocabulary (or words as written), `scores` as written
// with ';' between them. Empty where it is not certain. Importers may not know the rules of cards, so
// `answers` hands them in.
using ClosedSizeRule = std::function<std::optional<ClosedSize>(
    const std::vector<std::string>& folds, Length width, Length height, std::string_view scores, Unit unit)>;

struct ImportOptions {
  std::string as;               // the kind of table ("dies"), or empty: recognised from its columns
  bool all_or_nothing = false;  // keep nothing if one row is refused
  bool dry_run = false;         // only tell
  DateOrder dates = DateOrder::not_said;
  std::filesystem::path
      refused_file;            // where the refused rows are written as a table to mend; empty: nowhere
  std::string drawing_set;     // of a drawing: the set's name; empty: its title or the file's name
  std::string drawing_scale;   // "1 mm", "96 = 1 in": how long its units are; empty: as it says itself
  std::string drawing_lines;   // "red = stitched; guide = pierced": what its strokes, classes and names are
  ClosedSizeRule closed_size;  // empty: closed sizes are taken from `finished` only
  // Called now and then with the rows done and the rows in all (0: not yet known).
  std::function<void(std::int64_t done, std::int64_t in_all)> progress;
};

struct ImportedFile {
  std::string file;  // as the person named it
  std::string kind;  // dies, tried, supplies, samples, elements, book, drawing
  std::int64_t added = 0, changed = 0, same = 0, refused = 0;
};

// A row that was not taken, or one cell of a row that was taken without it (`row_kept`).
struct RefusedRow {
  std::string file;
  std::int64_t row = 0;  // 0: the whole file
  std::string
      column;  // the heading as it stands in the file; empty: the whole row. JSON: the path of the value
  std::string what;
  std::string expected;
  bool row_kept = false;
};

struct ImportReport {
  std::vector<ImportedFile> files;
  std::vector<RefusedRow> refused;
  std::vector<std::string> notes;
  bool kept = true;                          // false: dry run, or all-or-nothing with something refused
  std::vector<std::string> refused_written;  // the files that `refused_file` became
};

inline Problem bad_input(std::string what, std::string expected) {
  Problem problem;
  problem.what = std::move(what);
  problem.expected = std::move(expected);
  return problem;
}

}  // namespace insetbook
