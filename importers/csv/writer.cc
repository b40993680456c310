// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/writer.h"

namespace insetbook {

namespace {

bool needs_quotes(std::string_view cell) {
  if (cell.empty()) return false;
  // A semicolon or a tab would mislead a reader that looks for the delimiter.
  return cell.find_first_of(",;\t\"\r\n") != std::string_view::npos || cell.front() == ' ' ||
         cell.back() == ' ';
}

void append_cell(std::string& out, std::string_view cell) {
  if (!needs_quotes(cell)) {
    out += cell;
    return;
  }
  out += '"';
  for (const char c : cell) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
}

}  // namespace

void append_csv_row(std::string& out, std::span<const std::string> cells) {
  if (cells.size() == 1 && cells.front().empty()) out += "\"\"";
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) out += ',';
    append_cell(out, cells[i]);
  }
  out += "\r\n";
}

}  // namespace insetbook
