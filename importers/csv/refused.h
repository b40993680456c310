// SPDX-License-Identifier: GPL-3.0-or-later
//
// The refused rows of an import as a table to mend: their cells as they stood, and a last column that says
// why. It is imported as it is once it is mended; the last column is then left out.
#pragma once

#include <filesystem>

#include "importers/csv/session.h"
#include "text/problem.h"

namespace insetbook {

// One file where all refused rows are of one kind; else FILE-dies.csv, FILE-elements.csv … Nothing refused:
// no file.
Result<void> write_refused(const Session& session, const std::filesystem::path& path, ImportReport& report);

}  // namespace insetbook
