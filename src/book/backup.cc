// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/backup.h"

#include <fmt/core.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <memory>

#include "book/backup_files.h"
#include "book/book_parts.h"
#include "book/files.h"
#include "book/photos.h"
#include "book/problems.h"

namespace insetbook {

namespace fs = std::filesystem;

namespace {

bool is_there(const fs::path& path) {
  struct stat about {};
  return ::lstat(path.c_str(), &about) == 0;
}

// One file, without a log beside it.
void make_single_file(const Database& db) {
  db.execute("PRAGMA journal_mode = DELETE");
}

void add_photographs(const fs::path& folder, const Database& copy, BackupMade& made) {
  copy.execute(
      "BEGIN; CREATE TABLE backup_photo (hash TEXT PRIMARY KEY, bytes BLOB NOT NULL) STRICT, WITHOUT ROWID");
  Statement list = copy.prepare("SELECT hash, min(file_name) FROM photo GROUP BY hash");
  Statement insert = copy.prepare("INSERT INTO backup_photo (hash, bytes) VALUES (?, ?)");
  while (list.step()) {
    const Result<std::string> bytes = read_photo(folder, list.text(0));
    if (!bytes) {
      made.missing.push_back(fmt::format("{}: {}", list.text(1), bytes.error().what));
      continue;
    }
    insert.bind(1, list.text(0)).bind_bytes(2, *bytes).run();
    ++made.photographs;
  }
  copy.execute(fmt::format("PRAGMA application_id = {}; COMMIT", backup_mark));
}

}  // namespace

fs::path free_backup_name(const fs::path& folder, std::string_view beginning) {
  const std::string name = fmt::format("{}-{}", beginning, utc_now_for_file_name());
  fs::path path = folder / (name + ".db");
  for (int again = 2; is_there(path); ++again) path = folder / fmt::format("{}-{}.db", name, again);
  return path;
}

void remove_database(const fs::path& file) {
  for (const char* end : {"", "-wal", "-shm", "-journal"}) ::unlink((file.string() + end).c_str());
}

void copy_database(const Database& from, const Database& to) {
  sqlite3_backup* copy = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
  if (copy == nullptr) throw StoreError(sqlite3_extended_errcode(to.handle()), sqlite3_errmsg(to.handle()));
  sqlite3_backup_step(copy, -1);
  const int code = sqlite3_backup_finish(copy);
  if (code != SQLITE_OK) throw StoreError(code, sqlite3_errmsg(to.handle()));
}

bool has_table(const Database& db, std::string_view name) {
  Statement find = db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?");
  return find.bind(1, name).step();
}

Result<BackupMade> backup_database(const Database& db, const fs::path& folder, std::optional<fs::path> file) {
  BackupMade made;
  made.file = file ? *file : free_backup_name(folder / "backups", "book");
  if (is_there(made.file)) return failure(file_is_there(made.file));
  if (!file) {
    if (auto backups = make_folder(made.file.parent_path()); !backups) return failure(backups.error());
  }
  const fs::path temporary = made.file.string() + fmt::format(".{}.part", ::getpid());
  remove_database(temporary);
  try {
    const Database copy = Database::open(temporary.string(), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    copy_database(db, copy);
    make_single_file(copy);
    add_photographs(folder, copy, made);
  } catch (const StoreError& error) {
    remove_database(temporary);
    return failure(store_problem(made.file, error));
  }
  if (auto placed = put_in_place(temporary, made.file, IfThere::refuse); !placed)
    return failure(placed.error());
  return made;
}

Result<BackupMade> backup(const Book& book, std::optional<fs::path> file) {
  return backup_database(book.database(), book.folder(), std::move(file));
}

}  // namespace insetbook
