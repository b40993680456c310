// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/sample_book.h"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <filesystem>
#include <optional>

#include "answers/import_tables.h"
#include "book/settings.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

// Removes the folder when the program ends.
struct Folder {
  fs::path path;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
};

Book made_book(const fs::path& folder) {
  const fs::path data = fs::path(INSETBOOK_SOURCE_DIR) / "sample-data";
  std::vector<fs::path> files;
  for (const char* table : {"dies", "supplies", "samples", "elements", "tried"})
    files.push_back(data / (std::string(table) + ".csv"));
  const Result<ImportReport> report = import_into(folder, files, {});
  EXPECT_TRUE(report) << (report ? "" : report.error().what);
  if (report)
    for (const RefusedRow& row : report->refused)
      ADD_FAILURE() << row.file << ", row " << row.row << ", " << row.column << ": " << row.what;
  Result<Book> book = Book::open(folder, Book::Use::write);
  EXPECT_TRUE(book) << (book ? "" : book.error().what);
  EXPECT_TRUE(set_setting(*book, "today", "2026-11-25"));
  return std::move(*book);
}

}  // namespace

const Book& sample_book() {
  static Folder folder;
  static std::optional<Book> book;
  if (!book) {
    std::string name = (fs::temp_directory_path() / "insetbook-test-XXXXXX").string();
    folder.path = mkdtemp(name.data());
    book.emplace(made_book(folder.path / "book"));
  }
  return *book;
}

}  // namespace insetbook
