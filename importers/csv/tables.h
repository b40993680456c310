// SPDX-License-Identifier: GPL-3.0-or-later
//
// The five tables a person keeps and their columns: one constant table that headings are matched with, that
// says which table a file is, and that import and export both go by. A new column is one row here, a line
// where its table is read (import_*.cc) and one where it is written (export_*.cc).
//
// Headings are compared without case, spaces, punctuation and accents. A heading that ends with a unit
// ("width (mm)", "size in inches") gives it to the figures below that have none.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook {

// In the order in which they are imported, whatever order the files are given in: rows refer to earlier kinds
// only.
enum class TableKind : std::uint8_t { dies, supplies, samples, elements, tried };
inline constexpr std::size_t table_kinds = 5;
std::string_view table_word(TableKind kind);                 // "dies"
std::optional<TableKind> table_kind(std::string_view word);  // "dies", "die"

enum class Column : std::uint8_t {
  at,
  base,
  based_on,
  code,
  colour,
  colour_value,
  count,
  cut_by,
  date,
  die,
  die_set,
  element,
  envelope,
  figures,
  finished,
  fold,
  from,
  glue,
  goes,
  have,
  height,
  ink,
  instead,
  kind,
  line,
  made,
  maker,
  measured,
  method,
  name,
  note,
  occasion,
  outline,
  photo,
  price,
  read_to,
  refused,
  result,
  role,
  sample,
  scores,
  set,
  shape,
  side,
  sits_in,
  size,
  status,
  steps,
  stored_in,
  supply,
  technique,
  thickness,
  unit,
  until,
  weight,
  width,
  words
};
inline constexpr std::size_t column_count = static_cast<std::size_t>(Column::words) + 1;

// What a cell holds.
enum class Value : std::uint8_t {
  name,  // one line of text
  text,  // any text, also of several lines
  list,  // names with ';' between them
  size,  // a size or a length (a date in it was a fraction once)
  length,
  date,
  figure,  // a number, a colour value, a weight
  mark,    // said by the program to the person, never read
};

struct ColumnRow {
  TableKind table;
  Column column;
  std::string_view name;    // as export writes it
  std::string_view others;  // other headings, ';' between them
  Value value;
  bool exported = true;
};
std::span<const ColumnRow> table_columns();                // of all tables
std::span<const ColumnRow> table_columns(TableKind kind);  // in the order in which export writes them

std::string_view column_name(TableKind kind, Column column);  // as export writes it

// The form in which headings are compared: "Date made:" → "datemade".
std::string heading_key(std::string_view heading);

struct Heading {
  std::string written;
  const ColumnRow* column = nullptr;  // null: unknown, kept as a note
  std::string_view unit;              // "in", "mm", "cm" where the heading says one
};

struct Header {
  TableKind kind = TableKind::dies;
  std::vector<Heading> headings;
  std::array<std::int16_t, column_count> place{};  // of each column among the headings; -1: not there

  bool has(Column column) const { return place[static_cast<std::size_t>(column)] >= 0; }
  const Heading* heading(Column column) const;
};

// Reads a header row. `as`: the kind said outright. A Problem: no table is recognised for certain (fewer than
// half of the headings are understood, or another kind understands two more), a column that tells the rows
// apart is missing, or two headings mean the same column.
Result<Header> read_header(const std::vector<std::string>& cells, std::optional<TableKind> as);

}  // namespace insetbook
