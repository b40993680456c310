// SPDX-License-Identifier: GPL-3.0-or-later
//
// One row of a table, seen through its headings: cells by column, read as what the column holds. What is
// wrong is collected, so that a row is refused with everything that is wrong in it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "importers/csv/reader.h"
#include "importers/csv/tables.h"
#include "importers/report/report.h"
#include "measure/size.h"

namespace insetbook {

struct Complaint {
  std::string column;  // the heading as it stands in the file; empty: the whole row
  std::string what;
  std::string expected;
};

// How cells of one import are read, and what was read already: the same figures come again and again.
struct CellRules {
  Unit unit = Unit::inch;  // of a figure that says none
  DateOrder dates = DateOrder::not_said;
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>()(text); }
  };
  std::unordered_map<std::string, Result<Size>, Hash, std::equal_to<>> sizes;
};

// A size as a row gives it: figures where they could be read, and the text.
struct SizeCell {
  std::optional<Size> size;
  std::string text;  // as written; "W 2 x H 3 in" where it came from two columns
  Column column = Column::size;
  bool kept_as_text = false;
};

class Cells {
 public:
  Cells(const Header& header, const CsvRow& row, CellRules& rules)
      : header_(header), row_(row), rules_(rules) {}

  bool has(Column column) const { return header_.has(column); }
  bool blank() const;                                  // every cell of the row is
  std::string_view raw(Column column) const;           // trimmed
  std::string name(Column column) const;               // one line: runs of space and line ends are one space
  std::string text(Column column) const;               // lines end with \n
  std::vector<std::string> list(Column column) const;  // cut at ';', blanks left out
  std::string joined(Column column) const;             // list, '; ' between
  std::string date(Column column);
  // The same, but a date without its day or month is left out of the row, and `field` stays as it is.
  void take_date(Column column, std::string& field);
  std::optional<ReadLength> length(Column column);

  // Where a cell is no size: refused; kept as text where it is words only ("scrap"); kept where it begins
  // with no figure that was surely meant as a size ("3 rolls").
  enum class IfNoSize { refuse, keep_words, keep_text };
  SizeCell size(Column column, IfNoSize if_no_size);  // this column alone
  SizeCell size_or_sides(IfNoSize if_no_size);        // `size`, else `width` and `height`

  // The note and a line "heading: cell" for each column that the table does not know.
  std::string note() const;

  void complain(Column column, std::string what, std::string expected);
  void complain(Column column, const Problem& problem);
  const std::vector<Complaint>& complaints() const { return complaints_; }

  // Of a cell that the row is taken without.
  void leave_out(Column column, std::string what, std::string expected);
  const std::vector<Complaint>& left_out() const { return left_out_; }

 private:
  Result<Size> read(std::string_view text, std::string_view unit);
  Complaint complaint(Column column, std::string what, std::string expected) const;
  bool refuse_date(Column column, std::string_view text);
  SizeCell from_sides();
  bool may_be_text(std::string_view text, IfNoSize if_no_size) const;

  const Header& header_;
  const CsvRow& row_;
  CellRules& rules_;
  std::vector<Complaint> complaints_, left_out_;
};

// What a cell's text is in one line.
std::string one_line(std::string_view text);
std::vector<std::string> cut_list(std::string_view text);
std::string join_list(const std::vector<std::string>& parts);

}  // namespace insetbook
