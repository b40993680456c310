// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/sqlite.h"

#include <sqlite3.h>

#include <utility>

namespace insetbook {

namespace {

constexpr int busy_milliseconds = 5000;

[[noreturn]] void fail(sqlite3* db, int code) {
  const int extended = db != nullptr ? sqlite3_extended_errcode(db) : code;
  throw StoreError(extended != SQLITE_OK ? extended : code,
                   db != nullptr ? sqlite3_errmsg(db) : sqlite3_errstr(code));
}

void check(sqlite3_stmt* statement, int code) {
  if (code != SQLITE_OK) fail(sqlite3_db_handle(statement), code);
}

}  // namespace

Statement::Statement(sqlite3* db, std::string_view sql) {
  const int code = sqlite3_prepare_v3(db, sql.data(), static_cast<int>(sql.size()), SQLITE_PREPARE_PERSISTENT,
                                      &statement_, nullptr);
  if (code != SQLITE_OK) fail(db, code);
}

Statement::Statement(Statement&& other) noexcept : statement_(std::exchange(other.statement_, nullptr)) {}

Statement& Statement::operator=(Statement&& other) noexcept {
  std::swap(statement_, other.statement_);
  return *this;
}

Statement::~Statement() {
  sqlite3_finalize(statement_);
}

Statement& Statement::bind(int index, std::int64_t value) {
  check(statement_, sqlite3_bind_int64(statement_, index, value));
  return *this;
}

Statement& Statement::bind(int index, std::string_view value) {
  const char* bytes = value.data() != nullptr ? value.data() : "";
  check(statement_,
        sqlite3_bind_text(statement_, index, bytes, static_cast<int>(value.size()), SQLITE_TRANSIENT));
  return *this;
}

Statement& Statement::bind_kept(int index, std::string_view value) {
  const char* bytes = value.data() != nullptr ? value.data() : "";
  check(statement_,
        sqlite3_bind_text(statement_, index, bytes, static_cast<int>(value.size()), SQLITE_STATIC));
  return *this;
}

Statement& Statement::bind_bytes(int index, std::string_view value) {
  const char* bytes = value.data() != nullptr ? value.data() : "";
  check(statement_, sqlite3_bind_blob64(statement_, index, bytes, value.size(), SQLITE_STATIC));
  return *this;
}

Statement& Statement::bind_null(int index) {
  check(statement_, sqlite3_bind_null(statement_, index));
  return *this;
}

Statement& Statement::bind(int index, std::optional<std::int64_t> value) {
  return value ? bind(index, *value) : bind_null(index);
}

bool Statement::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  sqlite3* db = sqlite3_db_handle(statement_);
  const StoreError error(sqlite3_extended_errcode(db), sqlite3_errmsg(db));
  sqlite3_reset(statement_);
  throw error;
}

void Statement::run() {
  while (step()) {
  }
  sqlite3_reset(statement_);
}

// The code of a failed step is given again by the reset; step() has already thrown it.
void Statement::reset() {
  sqlite3_reset(statement_);
}

std::int64_t Statement::integer(int column) const {
  return sqlite3_column_int64(statement_, column);
}

std::string_view Statement::text(int column) const {
  const void* bytes = sqlite3_column_text(statement_, column);
  if (bytes == nullptr) return {};
  return {static_cast<const char*>(bytes),
          static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::string_view Statement::bytes(int column) const {
  const void* bytes = sqlite3_column_blob(statement_, column);
  if (bytes == nullptr) return {};
  return {static_cast<const char*>(bytes),
          static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

bool Statement::is_null(int column) const {
  return sqlite3_column_type(statement_, column) == SQLITE_NULL;
}

std::optional<std::int64_t> Statement::maybe_integer(int column) const {
  if (is_null(column)) return std::nullopt;
  return integer(column);
}

int Statement::columns() const {
  return sqlite3_column_count(statement_);
}

Database Database::open(const std::string& path, int flags) {
  sqlite3* db = nullptr;
  const int code =
      sqlite3_open_v2(path.c_str(), &db, flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, nullptr);
  Database opened(db);
  if (code != SQLITE_OK) fail(db, code);
  // Calls of the library, not statements: nothing is read from the file here.
  sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_FKEY, 1, nullptr);
  sqlite3_db_config(db, SQLITE_DBCONFIG_DQS_DML, 0, nullptr);
  sqlite3_db_config(db, SQLITE_DBCONFIG_DQS_DDL, 0, nullptr);
  sqlite3_busy_timeout(db, busy_milliseconds);
  return opened;
}

Database::Database(Database&& other) noexcept : db_(std::exchange(other.db_, nullptr)) {}

Database& Database::operator=(Database&& other) noexcept {
  std::swap(db_, other.db_);
  return *this;
}

Database::~Database() {
  sqlite3_close_v2(db_);
}

Statement Database::prepare(std::string_view sql) const {
  return Statement(db_, sql);
}

void Database::execute(std::string_view sql) const {
  const std::string ended(sql);
  const int code = sqlite3_exec(db_, ended.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) fail(db_, code);
}

std::int64_t Database::last_row() const {
  return sqlite3_last_insert_rowid(db_);
}

std::int64_t Database::changes() const {
  return sqlite3_changes64(db_);
}

bool Database::in_transaction() const {
  return sqlite3_get_autocommit(db_) == 0;
}

}  // namespace insetbook
