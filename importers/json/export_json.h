// SPDX-License-Identifier: GPL-3.0-or-later
//
// The whole book into a folder, in the exchange format (importers/json/format.h). Exported, imported into an
// empty book and exported again it is the same, byte for byte, photographs included.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct ExportReport {
  std::vector<std::string> files;  // what was written
  std::vector<std::string> notes;  // a photograph whose bytes are missing, and the like
};

// The folder is made where it is not there. Files of the same names are replaced, others are left alone, the
// five tables among them. Where one of the files cannot have its place, nothing is written.
Result<ExportReport> export_json(const Book& book, const std::filesystem::path& folder);

}  // namespace insetbook
