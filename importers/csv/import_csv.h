// SPDX-License-Identifier: GPL-3.0-or-later
//
// Tables a person keeps → records of the book, in one change. Start here to read the importer. Good rows go
// in; each row that cannot be understood is refused with its file, row, column and reason, and so is a row
// that refers to it. Files may be given in any order and may refer to each other. What is in the book already
// and the same is left alone; a row that differs changes its record; a column that a table does not have
// leaves that field as it is.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "book/book.h"
#include "importers/report/report.h"
#include "language/vocabulary.h"

namespace insetbook {

struct TableSource {
  std::string name;              // as the person named it
  std::filesystem::path folder;  // of the file
  std::string bytes;
};

// Adds to the report. A Problem only where nothing can be said of any file (an unknown kind in `as`). The
// caller decides what `all_or_nothing` and `dry_run` mean for the change.
Result<void> import_tables(Change& change, std::vector<TableSource> sources, const ImportOptions& options,
                           const Vocabulary& vocabulary, ImportReport& report);

}  // namespace insetbook
