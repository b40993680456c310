// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/cells.h"

#include <fmt/format.h>

#include <algorithm>

#include "importers/csv/dates.h"
#include "importers/csv/units.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

// Most cells have plain letters at both ends.
std::string_view trimmed(std::string_view text) {
  const auto plain = [](char c) { return static_cast<unsigned char>(c) < 0x80 && !is_space(c); };
  if (text.empty() || (plain(text.front()) && plain(text.back()))) return text;
  return trim(text);
}

}  // namespace

std::string one_line(std::string_view text) {
  std::string line;
  line.reserve(text.size());
  for (const char c : text) {
    if (!is_space(c)) {
      line += c;
    } else if (!line.empty() && line.back() != ' ') {
      line += ' ';
    }
  }
  if (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

std::vector<std::string> cut_list(std::string_view text) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(';'), text.size());
    std::string part = one_line(trimmed(text.substr(0, end)));
    if (!part.empty()) parts.push_back(std::move(part));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

std::string join_list(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text;
}

bool Cells::blank() const {
  for (std::size_t i = 0; i < row_.size(); ++i)
    if (!trimmed(row_.cell(i)).empty()) return false;
  return true;
}

std::string_view Cells::raw(Column column) const {
  const std::int16_t i = header_.place[static_cast<std::size_t>(column)];
  return i < 0 ? std::string_view() : trimmed(row_.cell(static_cast<std::size_t>(i)));
}

std::string Cells::name(Column column) const {
  return one_line(raw(column));
}

std::string Cells::text(Column column) const {
  std::string text;
  const std::string_view from = raw(column);
  for (std::size_t i = 0; i < from.size(); ++i) {
    if (from[i] != '\r')
      text += from[i];
    else if (i + 1 >= from.size() || from[i + 1] != '\n')
      text += '\n';
  }
  return text;
}

std::vector<std::string> Cells::list(Column column) const {
  return cut_list(raw(column));
}
std::string Cells::joined(Column column) const {
  return join_list(list(column));
}

Complaint Cells::complaint(Column column, std::string what, std::string expected) const {
  const Heading* heading = header_.heading(column);
  return {heading == nullptr ? std::string() : heading->written, std::move(what), std::move(expected)};
}

void Cells::complain(Column column, std::string what, std::string expected) {
  complaints_.push_back(complaint(column, std::move(what), std::move(expected)));
}

void Cells::leave_out(Column column, std::string what, std::string expected) {
  left_out_.push_back(complaint(column, std::move(what), std::move(expected)));
}

void Cells::complain(Column column, const Problem& problem) {
  std::string expected = problem.expected;
  for (const std::string& candidate : problem.candidates)
    expected += fmt::format("{}{}",
                            expected.empty()                            ? ""
                            : &candidate == &problem.candidates.front() ? ": "
                                                                        : ", ",
                            candidate);
  complain(column, problem.what, std::move(expected));
}

std::string Cells::date(Column column) {
  const std::string_view text = raw(column);
  if (text.empty()) return {};
  const auto date = read_date(text, rules_.dates);
  if (date) return *date;
  complain(column, date.error());
  return {};
}

void Cells::take_date(Column column, std::string& field) {
  if (!has(column)) return;
  const std::string_view text = raw(column);
  if (const auto whole = incomplete_date(text))
    leave_out(column, fmt::format("{} is no whole date", in_quotes(text)),
              fmt::format("the whole date, {}", *whole));
  else
    field = date(column);
}

bool Cells::refuse_date(Column column, std::string_view text) {
  const auto fraction = fraction_made_a_date(text);
  if (!fraction) return false;
  complain(column, fmt::format("{} is a date; it was probably typed as {}", in_quotes(text), *fraction),
           fmt::format("{} in, in a cell that the spreadsheet keeps as text", *fraction));
  return true;
}

std::optional<ReadLength> Cells::length(Column column) {
  const std::string_view text = raw(column);
  if (text.empty()) return std::nullopt;
  const std::string_view unit = header_.heading(column)->unit;
  const auto length = read_length(unit.empty() ? std::string(text) : size_with_unit(text, unit), rules_.unit);
  if (length) return *length;
  if (!refuse_date(column, text)) complain(column, length.error());
  return std::nullopt;
}

Result<Size> Cells::read(std::string_view text, std::string_view unit) {
  if (const auto known = rules_.sizes.find(text); known != rules_.sizes.end() && unit.empty())
    return known->second;
  std::string with_unit(text);
  if (!unit.empty() && !says_unit(text)) with_unit += fmt::format(" {}", unit);
  Result<Size> size = read_size(with_unit, rules_.unit);
  constexpr std::size_t remembered = 20'000;
  if (unit.empty() && rules_.sizes.size() < remembered) rules_.sizes.emplace(std::string(text), size);
  return size;
}

// Words instead of a size ("scrap", "3 rolls"), as against a figure that was mistyped.
bool Cells::may_be_text(std::string_view text, IfNoSize if_no_size) const {
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  if (if_no_size == IfNoSize::keep_words) return std::none_of(text.begin(), text.end(), digit);
  const auto meant = scan_measurement(text, 0, rules_.unit);
  if (!meant) return true;
  return meant->has_value() && (**meant).found.end < text.size();
}

SizeCell Cells::size(Column column, IfNoSize if_no_size) {
  SizeCell cell{.size = std::nullopt, .text = name(column), .column = column};
  if (cell.text.empty()) return cell;
  Result<Size> size = read(cell.text, header_.heading(column)->unit);
  if (size) {
    const std::string_view unit = header_.heading(column)->unit;
    const bool metric = rules_.unit == Unit::mm;
    const std::string said = size_with_unit(cell.text, !unit.empty() ? unit : metric ? "mm" : "in");
    // "2-3/8 x 60" of a metric book is not "2-3/8 x 60 mm".
    cell.text = !metric || said == cell.text || read_size(said, rules_.unit) ? said : write_said(*size);
    cell.size = std::move(*size);
    return cell;
  }
  if (refuse_date(column, cell.text)) return cell;
  if (if_no_size == IfNoSize::refuse || !may_be_text(cell.text, if_no_size)) {
    complain(column, size.error());
    return cell;
  }
  cell.kept_as_text = true;
  return cell;
}

SizeCell Cells::from_sides() {
  SizeCell cell{.size = std::nullopt, .text = {}, .column = Column::width};
  const std::size_t before = complaints_.size();
  const auto width = length(Column::width), height = length(Column::height);
  if (complaints_.size() > before || (!width && !height)) return cell;
  Size size;
  size.width = width ? width->length : height->length;
  size.height = height ? height->length : width->length;
  size.unit = width ? width->unit : height->unit;
  size.one_figure = !width || !height;
  if (!size.one_figure) size.orientation = Orientation::said;
  cell.text = write_said(size);
  cell.size = size;
  if (!width) cell.column = Column::height;
  return cell;
}

SizeCell Cells::size_or_sides(IfNoSize if_no_size) {
  SizeCell cell = size(Column::size, if_no_size);
  if (!has(Column::width) && !has(Column::height)) return cell;
  SizeCell sides = from_sides();
  if (!sides.size) return cell;
  if (cell.text.empty()) return sides;
  const bool same =
      cell.size && cell.size->width == sides.size->width && cell.size->height == sides.size->height;
  if (!same)
    complain(Column::size,
             fmt::format("the size {} is not the width and height beside it", in_quotes(cell.text)),
             "one of them, or both the same");
  return sides;
}

std::string Cells::note() const {
  std::string note = text(Column::note);
  for (std::size_t i = 0; i < row_.size(); ++i) {
    const bool known = i < header_.headings.size() && header_.headings[i].column != nullptr;
    const std::string_view cell = trimmed(row_.cell(i));
    if (known || cell.empty()) continue;
    const std::string heading = i < header_.headings.size() && !header_.headings[i].written.empty()
                                    ? header_.headings[i].written
                                    : fmt::format("column {}", i + 1);
    note += fmt::format("{}{}: {}", note.empty() ? "" : "\n", heading, one_line(cell));
  }
  return note;
}

}  // namespace insetbook
