// SPDX-License-Identifier: GPL-3.0-or-later
//
// Any bytes as a table: decoded, read as rows, matched with headings, every cell read as what its column
// holds. Rows read again from where they begin are the same, and rows written and read again are the same.
#include <cstdlib>

#include "card/paper_weight.h"
#include "importers/csv/cells.h"
#include "importers/csv/encoding.h"
#include "importers/csv/reader.h"
#include "importers/csv/units.h"
#include "importers/csv/writer.h"

namespace {

using namespace insetbook;

constexpr CsvLimits limits{.cell_bytes = 4096, .cells = 256};

std::vector<std::string> cells_of(const CsvRow& row) {
  std::vector<std::string> cells;
  for (std::size_t i = 0; i < row.size(); ++i) cells.emplace_back(row.cell(i));
  return cells;
}

void read_as_columns(const Header& header, const CsvRow& row, CellRules& rules) {
  Cells cells(header, row, rules);
  for (const ColumnRow& column : table_columns(header.kind)) {
    if (!cells.has(column.column)) continue;
    switch (column.value) {
      case Value::size:
        (void)cells.size(column.column, Cells::IfNoSize::keep_text);
        break;
      case Value::length:
        (void)cells.length(column.column);
        break;
      case Value::date:
        (void)cells.date(column.column);
        break;
      case Value::list:
        (void)cells.joined(column.column);
        break;
      default:
        (void)read_paper_weight(cells.raw(column.column));
        (void)with_units(cells.text(column.column), Unit::inch, Numbers::are_lengths);
    }
  }
  (void)cells.note();
}

void check_again(std::string_view text, char delimiter, const CsvRow& row) {
  CsvReader again(text, delimiter, limits);
  again.go_to(row.begin, row.number);
  CsvRow same;
  if (!again.next(same) || cells_of(same) != cells_of(row) || same.number != row.number) std::abort();
  if (row.problem) return;
  std::string written;
  append_csv_row(written, cells_of(row));
  CsvReader reader(written, ',', limits);
  if (!reader.next(same) || same.problem || cells_of(same) != cells_of(row)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto decoded = decode_text(std::string(reinterpret_cast<const char*>(data), size));
  if (!decoded) return 0;
  const char delimiter = csv_delimiter(decoded->text);
  CsvReader reader(decoded->text, delimiter, limits);
  CsvRow row;
  CellRules rules;
  std::optional<Header> header;
  while (reader.next(row)) {
    if (!row.problem) check_again(decoded->text, delimiter, row);
    if (header) {
      read_as_columns(*header, row, rules);
    } else if (auto read = read_header(cells_of(row), std::nullopt)) {
      header = std::move(*read);
    }
  }
  return 0;
}
