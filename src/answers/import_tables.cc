// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/import_tables.h"

#include <stdlib.h>

#include <optional>
#include <string>

#include "answers/words.h"
#include "card/closed_size.h"
#include "importers/import.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

// A folder that was not there before and goes away again unless it is kept: for a dry run, and for an import
// into a new book that keeps nothing.
class NewFolder {
 public:
  explicit NewFolder(fs::path path) : path_(std::move(path)) {}
  NewFolder(const NewFolder&) = delete;
  NewFolder& operator=(const NewFolder&) = delete;
  ~NewFolder() {
    std::error_code ignored;  // what cannot be removed is an empty book: nothing of the person's is in it
    if (!kept_) fs::remove_all(path_, ignored);
  }
  void keep() { kept_ = true; }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
  bool kept_ = false;
};

std::optional<ClosedSize> closed_size_rule(const std::vector<std::string>& folds, Length width, Length height,
                                           std::string_view scores, Unit unit) {
  const std::optional<ClosedBase> closed = closed_size(folds, width, height, scores, unit);
  return closed ? std::optional(ClosedSize{closed->width, closed->height}) : std::nullopt;
}

Result<ImportReport> import_with(Book& book, const std::vector<fs::path>& files, ImportOptions options) {
  options.closed_size = closed_size_rule;
  return import_files(book, files, options, vocabulary_of(book));
}

// Into a book that is made for it, in `folder`; `keep` false: only to tell.
Result<ImportReport> import_into_new(NewFolder& folder, const std::vector<fs::path>& files,
                                     const ImportOptions& options, bool keep) {
  Result<ImportReport> report = [&]() -> Result<ImportReport> {
    Result<Book> book = Book::create(folder.path());
    if (!book) return failure(book.error());
    return import_with(*book, files, options);
  }();
  if (keep && report && report->kept) folder.keep();
  return report;
}

}  // namespace

Result<ImportReport> import_into(const fs::path& book_folder, const std::vector<fs::path>& files,
                                 ImportOptions options) {
  std::error_code none;
  if (fs::exists(book_folder / "book.db", none)) {
    Result<Book> book = Book::open(book_folder, Book::Use::write);
    if (!book) return failure(book.error());
    return import_with(*book, files, std::move(options));
  }
  if (options.dry_run) {
    std::string name = (fs::temp_directory_path() / "insetbook-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr)
      return failure({.kind = ProblemKind::unusable_book,
                      .what = "no temporary folder can be made for the dry run",
                      .expected = "a place to write, named by TMPDIR"});
    NewFolder folder{fs::path(name)};
    return import_into_new(folder, files, options, false);
  }
  if (fs::exists(book_folder, none)) {
    // A folder of the person's own: only an empty book is left in it when nothing is kept.
    Result<Book> book = Book::create(book_folder);
    if (!book) return failure(book.error());
    return import_with(*book, files, std::move(options));
  }
  NewFolder folder(book_folder);
  return import_into_new(folder, files, options, true);
}

}  // namespace insetbook
