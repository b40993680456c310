// SPDX-License-Identifier: GPL-3.0-or-later
//
// The five tables of a book into a folder: dies.csv, supplies.csv, samples.csv, elements.csv, tried.csv, with
// their photographs under photos/. Figures always have their unit. Imported into an empty book they make the
// same records, as far as the tables have columns for them: settings, own words, notes of sets and dies, and
// the earlier figures of a line are in JSON only.
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

// The folder is made where it is not there. Files of the same names are replaced, others are left alone.
Result<TablesExported> export_csv(const Book& book, const std::filesystem::path& folder);

}  // namespace insetbook
