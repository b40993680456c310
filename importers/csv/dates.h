// SPDX-License-Identifier: GPL-3.0-or-later
//
// Dates of a table as ISO 8601 (2026-03-02). ISO is read as it is, a time behind it falls away. Other orders
// are read where only one reading is a date ("25/12/2026", "2 March 2026"); where both are, the order must be
// said. Years have four digits.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "importers/report/report.h"
#include "text/problem.h"

namespace insetbook {

// Blank is blank.
Result<std::string> read_date(std::string_view text, DateOrder order);

// A year alone or a month of a year ("2024", "May 2023", "2024-06"): how the whole date begins, with letters
// for what is missing ("2023-05-DD"). Empty for anything else.
std::optional<std::string> incomplete_date(std::string_view text);

}  // namespace insetbook
