// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/kept_answers.h"

#include <sqlite3.h>

#include <memory>

#include "book/sqlite.h"

namespace insetbook {

namespace fs = std::filesystem;

namespace {

// Of the table below: another number, and the file is made anew.
constexpr std::int64_t format = 1;

// Nothing is lost when the machine stops while it is written: `synchronous` is off.
constexpr std::string_view make_tables =
    "PRAGMA synchronous = OFF;"
    "CREATE TABLE kept (line_id INTEGER NOT NULL, opening TEXT NOT NULL, question TEXT NOT NULL, "
    "answer TEXT NOT NULL, PRIMARY KEY (line_id, opening, question)) STRICT, WITHOUT ROWID;"
    "PRAGMA user_version = 1;";

std::int64_t version_of(const Database& db) {
  Statement row = db.prepare("PRAGMA user_version");
  return row.step() ? row.integer(0) : 0;
}

bool is_damage(const StoreError& error) {
  const int code = error.code & 0xff;
  return code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_ERROR;
}

}  // namespace

KeptAnswers::KeptAnswers(const fs::path& book_folder) : path_(book_folder / "derived.db") {}
KeptAnswers::~KeptAnswers() = default;

bool KeptAnswers::open(bool make) {
  if (db_) return true;
  std::error_code none;
  if (!make && !fs::exists(path_, none)) return false;
  for (int again = 0; again < 2; ++again) {
    try {
      Database db = Database::open(path_.string(), SQLITE_OPEN_READWRITE | (make ? SQLITE_OPEN_CREATE : 0));
      const std::int64_t version = version_of(db);
      if (version == 0 && make) db.execute(make_tables);
      if (version == format || (version == 0 && make)) {
        db_ = std::make_unique<Database>(std::move(db));
        return true;
      }
    } catch (const StoreError& error) {
      if (!is_damage(error)) return false;
    }
    // Damaged, or of another format: made anew once.
    if (!make) return false;
    fs::remove(path_, none);
    fs::remove(path_.string() + "-journal", none);
  }
  return false;
}

std::optional<std::string> KeptAnswers::find(std::int64_t line_id, const KeptKey& key) {
  if (!open(false)) return std::nullopt;
  try {
    Statement row =
        db_->prepare("SELECT answer FROM kept WHERE line_id = ? AND opening = ? AND question = ?");
    row.bind_all(line_id, std::string_view(key.opening), std::string_view(key.question));
    if (row.step()) return std::string(row.text(0));
  } catch (const StoreError&) {
    db_.reset();  // as if it were not there; the next answer that is kept mends it
  }
  return std::nullopt;
}

void KeptAnswers::keep(std::int64_t line_id, const KeptKey& key, std::string_view answer) {
  for (int again = 0; again < 2 && open(true); ++again) {
    try {
      db_->execute("BEGIN IMMEDIATE");
      Statement old = db_->prepare("DELETE FROM kept WHERE line_id = ? AND opening <> ?");
      old.bind_all(line_id, std::string_view(key.opening)).run();
      Statement row = db_->prepare("INSERT OR REPLACE INTO kept VALUES (?, ?, ?, ?)");
      row.bind_all(line_id, std::string_view(key.opening), std::string_view(key.question), answer).run();
      db_->execute("COMMIT");
      return;
    } catch (const StoreError& error) {
      db_.reset();
      if (!is_damage(error)) return;
      std::error_code none;
      fs::remove(path_, none);
    }
  }
}

}  // namespace insetbook
