// SPDX-License-Identifier: GPL-3.0-or-later
//
// The five tables of a book into a folder: dies.csv, supplies.csv, samples.csv, elements.csv, tried.csv, with
// their photographs under photos/by-name. Figures always have their unit. Imported into an empty book they
// make the same records, as far as the tables have columns for them; what is left out is a note
// (importers/csv/not_in_tables.h).
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct TablesExported {
  std::vector<std::string> files;
  std::vector<std::string> notes;
};

// The folder is made where it is not there. Files of the same names are replaced, others are left alone, a
// book in JSON among them. Where one of the files cannot have its place, nothing is written.
Result<TablesExported> export_csv(const Book& book, const std::filesystem::path& folder);

}  // namespace insetbook
