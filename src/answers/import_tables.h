// SPDX-License-Identifier: GPL-3.0-or-later
//
// Taking in a person's tables or an exported book, with the words of the book's vocabulary and the rules of
// cards.
#pragma once

#include <filesystem>
#include <vector>

#include "book/book.h"
#include "importers/report/report.h"

namespace insetbook {

// `options.closed_size` is filled in here. A book is made where there is none: `import` is how most books
// begin.
Result<ImportReport> import_into(const std::filesystem::path& book_folder,
                                 const std::vector<std::filesystem::path>& files, ImportOptions options);

}  // namespace insetbook
