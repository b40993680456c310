// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/row_log.h"

#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include <sqlite3.h>

#include <array>
#include <cstring>
#include <utility>

#include "book/row_text.h"

namespace insetbook {

namespace {

constexpr std::size_t much_text = std::size_t{1} << 20;

void append_value(std::string& out, sqlite3_value* value) {
  switch (sqlite3_value_type(value)) {
    case SQLITE_INTEGER:
      append_row_integer(out, sqlite3_value_int64(value));
      return;
    case SQLITE_TEXT: {
      // Length first and bytes as a blob: asking for text would copy it to end it with a zero.
      const int length = sqlite3_value_bytes(value);
      const void* bytes = sqlite3_value_blob(value);
      append_row_text(out, length == 0 ? std::string_view()
                                       : std::string_view(static_cast<const char*>(bytes),
                                                          static_cast<std::size_t>(length)));
      return;
    }
    default:
      out += "null";
  }
}

using Getter = int (*)(sqlite3*, int, sqlite3_value**);

int append_row(std::string& out, sqlite3* db, Getter get, int sample_at, std::int64_t& sample) {
  const int columns = sqlite3_preupdate_count(db);
  for (int i = 0; i < columns; ++i) {
    sqlite3_value* value = nullptr;
    const int code = get(db, i, &value);
    if (code != SQLITE_OK) return code;
    out += i == 0 ? '[' : ',';
    append_value(out, value);
    if (i == sample_at && sqlite3_value_type(value) == SQLITE_INTEGER) sample = sqlite3_value_int64(value);
  }
  out += ']';
  return SQLITE_OK;
}

}  // namespace

bool logged_table(std::string_view table) {
  return !table.starts_with("name_") && !table.starts_with("sqlite_") && table != "change" &&
         table != "change_row" && table != "book";
}

int sample_column(std::string_view table) {
  static constexpr std::array<std::pair<std::string_view, int>, 5> columns{
      {{"sample", -1}, {"element", 1}, {"mention", 1}, {"photo", 1}, {"tried", 8}}};
  for (const auto& [name, column] : columns) {
    if (name == table) return column;
  }
  return -2;
}

void RowLog::begin(const Database& db, std::int64_t change) {
  db_ = db.handle();
  change_ = change;
  rows_ = 0;
  failed_ = 0;
  texts_.clear();
  gathered_.clear();
  tables_.reserve(64);  // more tables than the book has: the names must not move
  if (insert_.handle() == nullptr) {
    insert_ = db.prepare(
        "INSERT INTO change_row (change_id, tbl, row_id, sample_id, before, after) VALUES (?, ?, ?, ?, ?, "
        "?)");
  }
  sqlite3_preupdate_hook(
      db_,
      [](void* log, sqlite3* handle, int what, const char* schema, const char* table, sqlite3_int64 old_id,
         sqlite3_int64 new_id) { touched(log, handle, what, schema, table, old_id, new_id); },
      this);
}

void RowLog::end() {
  if (db_ != nullptr) sqlite3_preupdate_hook(db_, nullptr, nullptr);
  db_ = nullptr;
}

void RowLog::touched(void* log, sqlite3*, int what, const char*, const char* table, std::int64_t old_id,
                     std::int64_t new_id) {
  static_cast<RowLog*>(log)->add(what, table, old_id, new_id);
}

std::string_view RowLog::known_table(const char* table) {
  if (!gathered_.empty() && gathered_.back().table == table) return gathered_.back().table;
  for (const std::string& known : tables_) {
    if (known == table) return known;
  }
  return tables_.emplace_back(table);
}

void RowLog::add(int what, const char* table, std::int64_t old_id, std::int64_t new_id) {
  if (std::strncmp(table, "name_", 5) == 0 || !logged_table(table)) return;
  Row row{known_table(table), what == SQLITE_INSERT ? new_id : old_id, 0, texts_.size(), 0, 0};
  const int sample_at = sample_column(row.table);
  if (sample_at == -1) row.sample = row.id;
  int code = SQLITE_OK;
  if (what != SQLITE_INSERT) code = append_row(texts_, db_, sqlite3_preupdate_old, sample_at, row.sample);
  row.after = texts_.size();
  if (code == SQLITE_OK && what != SQLITE_DELETE) {
    code = append_row(texts_, db_, sqlite3_preupdate_new, sample_at, row.sample);
  }
  row.end = texts_.size();
  const std::string_view all = texts_;
  const std::string_view before = all.substr(row.before, row.after - row.before);
  if (code != SQLITE_OK) failed_ = code;
  if (code != SQLITE_OK || before == all.substr(row.after)) {
    texts_.resize(row.before);
    return;
  }
  gathered_.push_back(row);
  ++rows_;
}

void RowLog::write(bool all) {
  if (failed_ != SQLITE_OK) throw StoreError(failed_, "a row could not be written to the change log");
  if (gathered_.empty() || (!all && texts_.size() < much_text)) return;
  // Whoever inserted a row may still ask for its number.
  const std::int64_t last_row = sqlite3_last_insert_rowid(db_);
  for (const Row& row : gathered_) {
    const std::string_view before = std::string_view(texts_).substr(row.before, row.after - row.before);
    const std::string_view after = std::string_view(texts_).substr(row.after, row.end - row.after);
    insert_.bind(1, change_).bind_kept(2, row.table).bind(3, row.id);
    row.sample != 0 ? insert_.bind(4, row.sample) : insert_.bind_null(4);
    before.empty() ? insert_.bind_null(5) : insert_.bind_kept(5, before);
    after.empty() ? insert_.bind_null(6) : insert_.bind_kept(6, after);
    insert_.run();
  }
  sqlite3_set_last_insert_rowid(db_, last_row);
  gathered_.clear();
  texts_.clear();
}

}  // namespace insetbook
