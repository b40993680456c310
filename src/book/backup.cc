// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/backup.h"

#include <fmt/core.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <memory>

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

// A name in the backups folder that no file has yet.
fs::path free_name(const fs::path& folder, std::string_view beginning) {
  const std::string name = fmt::format("{}-{}", beginning, utc_now_for_file_name());
  fs::path path = folder / (name + ".db");
  for (int again = 2; is_there(path); ++again) path = folder / fmt::format("{}-{}.db", name, again);
  return path;
}

void remove_database(const fs::path& file) {
  for (const char* end : {"", "-wal", "-shm", "-journal"}) ::unlink((file.string() + end).c_str());
}

// All pages as they stand at one moment, into a database of one transaction.
void copy_database(const Database& from, const Database& to) {
  sqlite3_backup* copy = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
  if (copy == nullptr) throw StoreError(sqlite3_extended_errcode(to.handle()), sqlite3_errmsg(to.handle()));
  sqlite3_backup_step(copy, -1);
  const int code = sqlite3_backup_finish(copy);
  if (code != SQLITE_OK) throw StoreError(code, sqlite3_errmsg(to.handle()));
}

// One file, without a log beside it.
void make_single_file(const Database& db) {
  db.execute("PRAGMA journal_mode = DELETE");
}

void add_photographs(const Book& book, const Database& copy, BackupMade& made) {
  copy.execute(
      "BEGIN; CREATE TABLE backup_photo (hash TEXT PRIMARY KEY, bytes BLOB NOT NULL) STRICT, WITHOUT ROWID");
  Statement list = copy.prepare("SELECT hash, min(file_name) FROM photo GROUP BY hash");
  Statement insert = copy.prepare("INSERT INTO backup_photo (hash, bytes) VALUES (?, ?)");
  while (list.step()) {
    const Result<std::string> bytes = read_photo(book, list.text(0));
    if (!bytes) {
      made.missing.emplace_back(list.text(1));
      continue;
    }
    insert.bind(1, list.text(0)).bind_bytes(2, *bytes).run();
    ++made.photographs;
  }
  copy.execute(fmt::format("PRAGMA application_id = {}; COMMIT", backup_mark));
}

}  // namespace

Result<BackupMade> backup(const Book& book, std::optional<fs::path> file) {
  BackupMade made;
  made.file = file ? *file : free_name(book.folder() / "backups", "book");
  if (is_there(made.file)) return failure(file_is_there(made.file));
  if (!file) {
    if (auto folder = make_folder(made.file.parent_path()); !folder) return failure(folder.error());
  }
  const fs::path temporary = made.file.string() + fmt::format(".{}.part", ::getpid());
  remove_database(temporary);
  try {
    const Database copy = Database::open(temporary.string(), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    copy_database(book.database(), copy);
    make_single_file(copy);
    add_photographs(book, copy, made);
  } catch (const StoreError& error) {
    remove_database(temporary);
    return failure(store_problem(made.file, error));
  }
  if (auto placed = put_in_place(temporary, made.file, IfThere::refuse); !placed)
    return failure(placed.error());
  return made;
}

}  // namespace insetbook
