// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/kept_answers.h"

#include <sqlite3.h>

#include <memory>

#include "book/sha256.h"
#include "book/sqlite.h"

namespace insetbook {

namespace fs = std::filesystem;

namespace {

// Of the table below: another number, and the file is made anew.
constexpr std::int64_t format = 2;

constexpr std::string_view make_tables =
    "CREATE TABLE kept (line_id INTEGER NOT NULL, opening TEXT NOT NULL, question TEXT NOT NULL, "
    "answer TEXT NOT NULL, PRIMARY KEY (line_id, opening, question)) STRICT, WITHOUT ROWID;"
    "PRAGMA user_version = 2;";

std::int64_t version_of(const Database& db) {
  Statement row = db.prepare("PRAGMA user_version");
  return row.step() ? row.integer(0) : 0;
}

// Two programs may make the file at once: the second finds it made.
std::int64_t version_made(Database& db) {
  db.execute("BEGIN IMMEDIATE");
  const std::int64_t version = version_of(db);
  if (version == 0) db.execute(make_tables);
  db.execute("COMMIT");
  return version == 0 ? format : version;
}

bool is_damage(const StoreError& error) {
  const int code = error.code & 0xff;
  return code == SQLITE_CORRUPT || code == SQLITE_NOTADB;
}

// Before an answer stands its sum: text that was damaged and can still be read is no answer.
constexpr std::size_t sum_length = 16;
std::string sum_of(std::string_view answer) {
  return sha256(answer).substr(0, sum_length);
}
std::optional<std::string> answer_in(std::string_view kept) {
  if (kept.size() < sum_length) return std::nullopt;
  const std::string_view answer = kept.substr(sum_length);
  if (kept.substr(0, sum_length) != sum_of(answer)) return std::nullopt;
  return std::string(answer);
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
      const std::int64_t before = version_of(db);
      if ((before == 0 && make ? version_made(db) : before) == format) {
        db_ = std::make_unique<Database>(std::move(db));
        return true;
      }
    } catch (const StoreError& error) {
      if (!is_damage(error)) return false;
    }
    // Damaged, or of another format: made anew once.
    if (!make) return false;
    make_anew();
  }
  return false;
}

void KeptAnswers::make_anew() {
  std::error_code none;
  fs::remove(path_, none);
  fs::remove(path_.string() + "-journal", none);
}

void KeptAnswers::close() {
  find_.reset();
  db_.reset();
}

std::optional<std::string> KeptAnswers::find(std::int64_t line_id, const KeptKey& key) {
  if (!open(false)) return std::nullopt;
  try {
    if (!find_)
      find_ = std::make_unique<Statement>(
          db_->prepare("SELECT answer FROM kept WHERE line_id = ? AND opening = ? AND question = ?"));
    find_->bind_all(line_id, std::string_view(key.opening), std::string_view(key.question));
    std::optional<std::string> answer;
    if (find_->step()) answer = answer_in(find_->text(0));
    find_->reset();
    return answer;
  } catch (const StoreError&) {
    close();  // as if it were not there; the next answer that is kept mends it
  }
  return std::nullopt;
}

void KeptAnswers::write(std::span<const AnswerToKeep> answers) {
  db_->execute("BEGIN IMMEDIATE");
  Statement old = db_->prepare("DELETE FROM kept WHERE line_id = ? AND opening <> ?");
  Statement row = db_->prepare("INSERT OR REPLACE INTO kept VALUES (?, ?, ?, ?)");
  for (const AnswerToKeep& one : answers) {
    old.bind_all(one.line_id, std::string_view(one.key.opening)).run();
    const std::string kept = sum_of(one.answer) + one.answer;
    row.bind_all(one.line_id, std::string_view(one.key.opening), std::string_view(one.key.question),
                 std::string_view(kept))
        .run();
  }
  db_->execute("COMMIT");
}

void KeptAnswers::keep(std::int64_t line_id, const KeptKey& key, std::string_view answer) {
  const AnswerToKeep one{line_id, key, std::string(answer)};
  keep({&one, 1});
}

void KeptAnswers::keep(std::span<const AnswerToKeep> answers) {
  for (int again = 0; again < 2 && !answers.empty() && open(true); ++again) {
    try {
      write(answers);
      return;
    } catch (const StoreError& error) {
      close();
      if (!is_damage(error)) return;
      make_anew();
    }
  }
}

}  // namespace insetbook
