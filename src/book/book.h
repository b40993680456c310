// SPDX-License-Identifier: GPL-3.0-or-later
//
// The book on disk: one folder with `book.db` (the only truth), `index/` (derived), `photos/`, `backups/`.
// Start here to read the store. A Book is one connection, used by one thread. Reading needs nothing more;
// everything that changes the book happens inside `Book::change`, which is one transaction with one entry in
// the change log:
//
//   auto done = book.change("measured tidepool rectangles 2", [&](Change& change) -> Result<void> { … });
//
// Either all of it is there afterwards or none of it, also when the program is killed. A function that
// returns a Problem rolls back; a change that changed no row leaves no entry. StoreErrors become Problems of
// kind unusable_book here.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/sqlite.h"
#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

// The version of book.db that this program writes: the number of the last file in schema/migrations.
extern const int book_version;

// Where the book is when nobody says: INSETBOOK, else $XDG_DATA_HOME/insetbook, else
// ~/.local/share/insetbook.
std::filesystem::path default_book_folder();

class Book;
struct ChangeMemory;  // what the functions of book/records.h remember within one change

// Handed to the function inside Book::change: the right to write. Rows are written with plain SQL through
// `database()`; the change log records each row that is touched (book/changes.h says how).
class Change {
 public:
  const Database& database() const;
  const Book& book() const { return book_; }
  std::int64_t id() const;  // the entry in the change log
  // Replaces the line that a person reads in the log ("imported 4 files").
  void describe(std::string_view what);
  ChangeMemory& memory() const;

 private:
  friend class Book;
  explicit Change(Book& book) : book_(book) {}
  Book& book_;
};

class Book {
 public:
  // Makes an empty book in `folder` (made if it is not there). Refused where a book is already.
  static Result<Book> create(const std::filesystem::path& folder);

  enum class Use { read, write };
  // Opens a book. An older version is brought up (a backup is taken first); a newer one, a file that is no
  // book, a torn one are Problems of kind unusable_book. `read` falls back to a read-only connection where
  // the folder is not writable.
  static Result<Book> open(const std::filesystem::path& folder, Use use);

  Book(Book&&) noexcept;
  Book& operator=(Book&&) noexcept;
  ~Book();

  const std::filesystem::path& folder() const;
  std::string uuid() const;
  const Database& database() const;

  Result<void> change(std::string_view what, const std::function<Result<void>(Change&)>& work);

  // The number of the last change in the log (0 in a new book): what the index compares itself with.
  std::int64_t last_change() const;
  // The samples whose searchable text may differ since `change`: those it touched and those that mention a
  // colour, a supply or a die set it touched. Deleted samples are among them. Sorted, each once.
  std::vector<std::int64_t> samples_changed_since(std::int64_t change) const;

  // A statement prepared once for each text of SQL and kept; reset before it is handed out. Valid while the
  // book lives. The same text asked for again is the same statement: finish reading one before asking anew.
  Statement& statement(std::string_view sql) const;

  // Writes gathered rows of the change log where they are many. `statement` does it too; whoever writes many
  // rows with statements of their own calls this between them.
  void keep_log_small() const;

  // Reading is not inside `change`, so a damaged or locked file shows itself as a StoreError from any
  // function that reads. Whoever runs a whole command calls it through `reading`, which turns that into the
  // Problem.
  Result<void> reading(const std::function<Result<void>()>& work) const;
  // What a person is told of a StoreError.
  Problem problem(const StoreError& error) const;

  // A warning worth showing once ("this book is on a network folder"), or empty.
  std::string warning() const;

 private:
  friend class Change;
  struct Parts;
  explicit Book(std::unique_ptr<Parts> parts);
  std::unique_ptr<Parts> parts_;
};

// A random UUID (version 4) as text.
std::string new_uuid();
// Today as an ISO date: the setting `today` where it is set (for tests), else the local date.
std::string today(const Book& book);

}  // namespace insetbook
