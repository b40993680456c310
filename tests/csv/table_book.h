// SPDX-License-Identifier: GPL-3.0-or-later
//
// An empty book in a folder of its own, and tables imported into it from text.
#pragma once

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "book/book.h"
#include "importers/csv/import_csv.h"

namespace insetbook {

struct Table {
  std::string name, text;
};

inline std::filesystem::path new_folder() {
  std::string name = (std::filesystem::temp_directory_path() / "insetbook-tables-XXXXXX").string();
  return mkdtemp(name.data());
}

inline std::string contents(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

struct TableBook {
  std::filesystem::path folder = new_folder();
  Book book = *Book::create(folder / "book");
  ImportOptions options;

  TableBook() = default;
  TableBook(const TableBook&) = delete;
  TableBook& operator=(const TableBook&) = delete;
  ~TableBook() { std::filesystem::remove_all(folder); }

  ImportReport import(const std::vector<Table>& tables) {
    std::vector<TableSource> sources;
    for (const Table& table : tables) sources.push_back({table.name, folder, table.text});
    ImportReport report;
    const Result<void> done = book.change("imported tables", [&](Change& change) {
      return import_tables(change, sources, options, Vocabulary(), report);
    });
    EXPECT_TRUE(done) << done.error().what;
    return report;
  }
};

// "dies.csv dies +added ~changed =same !refused", in the order of the files.
inline std::vector<std::string> counts(const ImportReport& report) {
  std::vector<std::string> lines;
  for (const ImportedFile& file : report.files)
    lines.push_back(fmt::format("{} {} +{} ~{} ={} !{}", file.file, file.kind, file.added, file.changed,
                                file.same, file.refused));
  return lines;
}

inline std::vector<std::string> refused(const ImportReport& report) {
  std::vector<std::string> lines;
  for (const RefusedRow& row : report.refused)
    lines.push_back(fmt::format("{} {}: {} / {}", row.row, row.column, row.what, row.expected));
  return lines;
}

}  // namespace insetbook
