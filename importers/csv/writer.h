// SPDX-License-Identifier: GPL-3.0-or-later
//
// Writes a table in CSV as RFC 4180 says: UTF-8, commas, CRLF at the end of each row, cells quoted where they
// must be.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace insetbook {

// A quoted cell is one that holds a comma, a quotation mark or a line end, or begins or ends with a space; a
// row of one empty cell is written `""`, because an empty line is no row.
void append_csv_row(std::string& out, std::span<const std::string> cells);

}  // namespace insetbook
