// SPDX-License-Identifier: GPL-3.0-or-later
//
// Writes down every row that a change touches. SQLite's pre-update hook hands over the row before and after;
// a hook may not write to its own connection, so the texts are gathered and written at the next call of
// `write`. Rows of the log itself, of the look-up by name and of `book` are not logged; a row that is written
// as it was is none that was touched.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "book/sqlite.h"

struct sqlite3_value;

namespace insetbook {

bool logged_table(std::string_view table);

// The column (from 0) of a table's `sample_id`, so that the log knows whose text a row belongs to; -1 = the
// row is the sample; -2 = it belongs to none.
int sample_column(std::string_view table);

class RowLog {
 public:
  RowLog() = default;
  RowLog(const RowLog&) = delete;
  RowLog& operator=(const RowLog&) = delete;

  // From now on rows touched on `db` are logged under this change, until `end`.
  void begin(const Database& db, std::int64_t change);
  void end();
  // Writes what was gathered, where it is much (or `all`).
  void write(bool all);
  std::int64_t rows() const { return rows_; }
  bool active() const { return db_ != nullptr; }

 private:
  struct Row {
    std::string_view table;
    std::int64_t id, sample;
    std::size_t before, after, end;  // in texts_; a part of no length is null
  };
  static void touched(void* log, ::sqlite3* db, int what, const char* schema, const char* table,
                      std::int64_t old_id, std::int64_t new_id);
  void add(int what, const char* table, std::int64_t old_id, std::int64_t new_id);
  std::string_view known_table(const char* table);

  ::sqlite3* db_ = nullptr;
  std::int64_t change_ = 0;
  std::int64_t rows_ = 0;
  std::string texts_;
  std::vector<Row> gathered_;
  std::vector<std::string> tables_;  // names that Row::table points into; reserved once
  int failed_ = 0;                   // SQLite's code where a row could not be read in the hook
  Statement insert_;
};

}  // namespace insetbook
