// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dates of a table as ISO 8601 (2026-03-02). ISO is read as it is, a time behind it falls away. Other orders
// are read where only one reading is a date ("25/12/2026", "2 March 2026"); where both are, the order must be
// said. Years have four digits.
#pragma once

#include <string>
#include <string_view>

#include "importers/report/report.h"
#include "text/problem.h"

namespace insetbook {

// Blank is blank.
Result<std::string> read_date(std::string_view text, DateOrder order);

}  // namespace insetbook
