// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "importers/report/report.h"

namespace insetbook {

namespace {

void complain(CsvRow& row, std::size_t cell, std::string what, std::string expected) {
  if (row.problem) return;
  row.problem = bad_input(std::move(what), std::move(expected));
  row.problem_cell = cell;
}

bool is_line_end(char c) {
  return c == '\n' || c == '\r';
}

}  // namespace

std::string_view CsvRow::cell(std::size_t i) const {
  if (i >= cells_.size()) return {};
  const Cell& cell = cells_[i];
  const std::string_view from = cell.owned ? std::string_view(own_) : text_;
  return from.substr(cell.begin, cell.end - cell.begin);
}

char csv_delimiter(std::string_view text) {
  constexpr std::array<char, 3> delimiters = {',', ';', '\t'};
  std::array<std::size_t, 3> counts{};
  bool quoted = false, anything = false;
  for (const char c : text) {
    if (c == '"') quoted = !quoted;
    if (!quoted && is_line_end(c) && anything) break;
    if (!is_line_end(c)) anything = true;
    for (std::size_t i = 0; i < delimiters.size() && !quoted; ++i)
      if (c == delimiters[i]) ++counts[i];
  }
  const auto most = std::max_element(counts.begin(), counts.end());
  return delimiters[static_cast<std::size_t>(most - counts.begin())];
}

CsvReader::CsvReader(std::string_view text, char delimiter, CsvLimits limits)
    : text_(text), delimiter_(delimiter), limits_(limits) {}

void CsvReader::go_to(std::size_t begin, std::int64_t number) {
  at_ = begin;
  number_ = number;
}

bool CsvReader::next(CsvRow& row) {
  while (at_ < text_.size() && is_line_end(text_[at_])) {
    skip_line_end();
    ++number_;
  }
  if (at_ >= text_.size()) return false;
  read_row(row);
  return true;
}

void CsvReader::read_row(CsvRow& row) {
  row.number = number_++;
  row.begin = at_;
  row.problem.reset();
  row.problem_cell = 0;
  row.text_ = text_;
  row.own_.clear();
  row.cells_.clear();
  for (;;) {
    read_cell(row);
    if (at_ >= text_.size() || text_[at_] != delimiter_) break;
    ++at_;
  }
  skip_line_end();
}

bool CsvReader::at_end_of_cell() const {
  return at_ >= text_.size() || text_[at_] == delimiter_ || is_line_end(text_[at_]);
}

void CsvReader::skip_line_end() {
  if (at_ >= text_.size()) return;
  const bool two = text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n';
  at_ += two ? 2 : 1;
}

void CsvReader::read_cell(CsvRow& row) {
  const std::size_t index = row.cells_.size();
  if (index >= limits_.cells)
    complain(row, index, fmt::format("the row has more than {} cells", limits_.cells), "fewer columns");
  const std::size_t before = row.cells_.size();
  if (at_ < text_.size() && text_[at_] == '"')
    read_quoted(row);
  else
    read_plain(row);
  if (index >= limits_.cells) row.cells_.resize(before);
  const std::string_view cell = row.cell(index);
  if (cell.size() > limits_.cell_bytes)
    complain(row, index, fmt::format("the cell has {} bytes", cell.size()),
             fmt::format("at most {} bytes", limits_.cell_bytes));
}

void CsvReader::read_plain(CsvRow& row) {
  const std::size_t begin = at_;
  while (!at_end_of_cell()) ++at_;
  row.cells_.push_back({false, begin, at_});
}

void CsvReader::read_quoted(CsvRow& row) {
  const std::size_t opening = at_++;
  std::size_t begin = at_;
  const std::size_t own_begin = row.own_.size();
  bool owned = false;
  for (;;) {
    const std::size_t mark = text_.find('"', at_);
    if (mark == std::string_view::npos) return unclosed(row, opening);
    at_ = mark + 1;
    if (at_ < text_.size() && text_[at_] == '"') {  // doubled: one mark of the text
      row.own_.append(text_.substr(begin, at_ - begin));
      owned = true;
      begin = ++at_;
      continue;
    }
    if (owned) {
      row.own_.append(text_.substr(begin, mark - begin));
      row.cells_.push_back({true, own_begin, row.own_.size()});
    } else {
      row.cells_.push_back({false, begin, mark});
    }
    break;
  }
  if (at_end_of_cell()) return;
  complain(row, row.cells_.size() - 1, "text stands behind the closing quotation mark of the cell",
           "a quotation mark inside a quoted cell is written twice");
  while (!at_end_of_cell()) ++at_;
}

void CsvReader::unclosed(CsvRow& row, std::size_t opening) {
  const std::string_view rest = text_.substr(opening);
  const auto lines = static_cast<std::size_t>(std::count(rest.begin(), rest.end(), '\n'));
  complain(
      row, row.cells_.size(),
      lines == 0
          ? std::string("the quotation mark that opens the cell is never closed")
          : fmt::format("the quotation mark that opens the cell is never closed; it takes in {} more line{}",
                        lines, lines == 1 ? "" : "s"),
      "a closing quotation mark");
  row.cells_.push_back({false, opening, std::min(text_.size(), opening + 80)});
  at_ = text_.size();
}

}  // namespace insetbook
