// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether a database has the tables that the migrations make, and no others: so that a file from elsewhere,
// with triggers or views of its own, is never taken for a book.
#pragma once

#include <string>
#include <vector>

#include "book/sqlite.h"

namespace insetbook {

// One line for each thing that is missing, different, or not ours.
std::vector<std::string> faults_of_schema(const Database& db, std::int64_t version);

}  // namespace insetbook
