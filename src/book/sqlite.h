// SPDX-License-Identifier: GPL-3.0-or-later
//
// A thin owner of SQLite's C API: a connection, a prepared statement, nothing more. The only place where
// sqlite3.h is known outside the store's own .cc files. SQLite's errors become StoreError here and are turned
// into Problems at the border of `Book` (book/book.h); nobody else catches them.
#pragma once

#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;

namespace insetbook {

// A failure of the store that no caller can mend (disk full, damaged file, locked too long). `code` is
// SQLite's extended result code.
class StoreError : public std::runtime_error {
 public:
  StoreError(int result, const std::string& message) : std::runtime_error(message), code(result) {}
  int code;
};

class Statement {
 public:
  Statement() = default;
  Statement(sqlite3* db, std::string_view sql);  // prepares; persistent
  Statement(Statement&& other) noexcept;
  Statement& operator=(Statement&& other) noexcept;
  ~Statement();

  // Parameters are counted from 1. Texts are copied.
  Statement& bind(int index, std::int64_t value);
  Statement& bind(int index, std::string_view value);
  // Not copied: the text must stay as it is until the statement is bound anew or reset for the last time.
  Statement& bind_kept(int index, std::string_view value);
  Statement& bind_bytes(int index, std::string_view value);  // a blob; not copied
  Statement& bind_null(int index);
  Statement& bind(int index, std::optional<std::int64_t> value);  // null when empty
  // Binds from parameter 1 on, in order.
  template <class... Values>
  Statement& bind_all(const Values&... values) {
    int i = 0;
    (bind(++i, values), ...);
    return *this;
  }

  bool step();   // true: a row is there
  void run();    // steps to the end and resets; for statements without rows
  void reset();  // to be stepped again; bindings are kept

  // Columns are counted from 0; valid until the next step.
  std::int64_t integer(int column) const;
  std::string_view text(int column) const;
  std::string_view bytes(int column) const;  // of a blob
  bool is_null(int column) const;
  std::optional<std::int64_t> maybe_integer(int column) const;
  int columns() const;

  sqlite3_stmt* handle() const { return statement_; }

 private:
  sqlite3_stmt* statement_ = nullptr;
};

class Database {
 public:
  Database() = default;
  // Opens a file; flags are SQLite's. Sets what the book's file needs on each connection: foreign keys on,
  // double-quoted strings off, busy timeout. Nothing is read from the file yet.
  static Database open(const std::string& path, int flags);
  Database(Database&& other) noexcept;
  Database& operator=(Database&& other) noexcept;
  ~Database();

  Statement prepare(std::string_view sql) const;
  void execute(std::string_view sql) const;  // one or more statements without rows
  std::int64_t last_row() const;
  std::int64_t changes() const;
  bool in_transaction() const;
  sqlite3* handle() const { return db_; }

 private:
  explicit Database(sqlite3* db) : db_(db) {}
  sqlite3* db_ = nullptr;
};

}  // namespace insetbook
