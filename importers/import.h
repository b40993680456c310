// SPDX-License-Identifier: GPL-3.0-or-later
//
// Files → book: what kind each one is, and one change for all of them. A file that begins with { or is called
// .json is a book in JSON, as is a folder that holds a book.json (importers/json); one that begins as SVG
// does is a drawing (importers/svg); everything else is a table (importers/csv). Either all good rows are in
// the book afterwards, or, with `dry_run`, `all_or_nothing` and something refused, or a Problem, nothing is.
#pragma once

#include <filesystem>
#include <vector>

#include "book/book.h"
#include "importers/report/report.h"
#include "language/vocabulary.h"

namespace insetbook {

// A Problem: a file cannot be read, an option makes no sense, the book cannot be written. Refused rows are in
// the report.
Result<ImportReport> import_files(Book& book, const std::vector<std::filesystem::path>& paths,
                                  const ImportOptions& options, const Vocabulary& vocabulary);

}  // namespace insetbook
