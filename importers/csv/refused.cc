// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/refused.h"

#include <fmt/format.h>

#include <algorithm>

#include "book/files.h"
#include "importers/csv/writer.h"

namespace insetbook {

namespace {

constexpr std::string_view why_heading = "refused because";

// The headings of all files of the kind that have refused rows, each once.
std::vector<std::string> headings_of(const Session& session, TableKind kind) {
  std::vector<std::string> headings;
  for (const TableFile& file : session.files) {
    if (file.header.kind != kind || file.refused.empty()) continue;
    for (const Heading& heading : file.header.headings) {
      const bool mark = heading.column != nullptr && heading.column->value == Value::mark;
      const bool there = std::find(headings.begin(), headings.end(), heading.written) != headings.end();
      if (!mark && !there && !heading.written.empty()) headings.push_back(heading.written);
    }
  }
  headings.emplace_back(why_heading);
  return headings;
}

void append_rows(std::string& out, const TableFile& file, const std::vector<std::string>& headings) {
  CsvReader reader(file.text, file.delimiter);
  CsvRow row;
  for (const TableFile::RefusedPlace& place : file.refused) {
    reader.go_to(place.begin, place.number);
    if (!reader.next(row)) continue;
    std::vector<std::string> cells(headings.size());
    for (std::size_t i = 0; i < file.header.headings.size(); ++i) {
      const auto column = std::find(headings.begin(), headings.end(), file.header.headings[i].written);
      if (column != headings.end()) cells[static_cast<std::size_t>(column - headings.begin())] = row.cell(i);
    }
    cells.back() = place.why;
    append_csv_row(out, cells);
  }
}

std::filesystem::path path_for(const std::filesystem::path& path, TableKind kind) {
  return path.parent_path() /
         fmt::format("{}-{}{}", path.stem().string(), table_word(kind), path.extension().string());
}

}  // namespace

Result<void> write_refused(const Session& session, const std::filesystem::path& path, ImportReport& report) {
  std::vector<TableKind> kinds;
  for (std::size_t i = 0; i < table_kinds; ++i) {
    const auto kind = static_cast<TableKind>(i);
    if (std::any_of(session.files.begin(), session.files.end(),
                    [&](const TableFile& file) { return file.header.kind == kind && !file.refused.empty(); }))
      kinds.push_back(kind);
  }
  for (const TableKind kind : kinds) {
    const std::vector<std::string> headings = headings_of(session, kind);
    std::string out;
    append_csv_row(out, headings);
    for (const TableFile& file : session.files)
      if (file.header.kind == kind) append_rows(out, file, headings);
    const std::filesystem::path target = kinds.size() == 1 ? path : path_for(path, kind);
    const Result<void> written = write_file(target, out, IfThere::replace);
    if (!written) return failure(written.error());
    report.refused_written.push_back(target.string());
  }
  return {};
}

}  // namespace insetbook
