// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/core.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include "book/backup.h"
#include "book/backup_files.h"
#include "book/book_parts.h"
#include "book/files.h"
#include "book/photos.h"
#include "book/problems.h"
#include "book/schema_check.h"
#include "book/sha256.h"

namespace insetbook {

namespace fs = std::filesystem;

namespace {

constexpr std::uint64_t largest_book = std::uint64_t{1} << 40;

Problem no_backup(const fs::path& file, std::string why) {
  Problem problem;
  problem.what = fmt::format("\"{}\" is no copy of a book: {}", file.string(), why);
  problem.where.file = file.string();
  problem.expected = "a file that \"insetbook backup\" wrote, whole; the book is as it was";
  return problem;
}

Problem backup_too_new(const fs::path& file, std::int64_t its_version) {
  Problem problem = book_too_new(file, its_version, book_version);
  problem.expected = "use the newer program that wrote it; the book here is as it was";
  return problem;
}

// What the copy is, read without writing to it.
Result<std::int64_t> version_of_copy(const fs::path& file) {
  const Database copy = open_to_read(file);
  const std::int64_t mark = header_figure(copy, "PRAGMA application_id");
  if (mark != backup_mark && mark != book_mark) return failure(no_backup(file, "it is another kind of file"));
  const std::int64_t version = header_figure(copy, "PRAGMA user_version");
  if (version > book_version) return failure(backup_too_new(file, version));
  if (version < 1) return failure(no_backup(file, "it has no version"));
  if (const auto faults = faults_of_schema(copy, version); !faults.empty()) {
    return failure(no_backup(file, faults.front()));
  }
  Statement check = copy.prepare("PRAGMA integrity_check(1)");
  if (check.step() && check.text(0) != "ok") return failure(no_backup(file, std::string(check.text(0))));
  return version;
}

// The copy made ready beside the book: photographs taken out, brought up to this version.
void make_ready(const Database& ready, const fs::path& file, std::int64_t version) {
  const Database copy = open_to_read(file);
  copy_database(copy, ready);
  ready.execute("PRAGMA journal_mode = DELETE; DROP TABLE IF EXISTS backup_photo");
  ready.execute(fmt::format("PRAGMA application_id = {}", book_mark));
  migrate(ready, version);
}

Result<std::int64_t> take_photographs(const fs::path& folder, const fs::path& file) {
  const Database copy = open_to_read(file);
  std::int64_t taken = 0;
  if (!has_table(copy, "backup_photo")) return taken;
  if (auto made = make_folder(folder / "photos"); !made) return failure(made.error());
  Statement row = copy.prepare("SELECT hash, bytes FROM backup_photo");
  for (; row.step(); ++taken) {
    if (!is_photo_hash(row.text(0)) || sha256(row.bytes(1)) != row.text(0)) {
      return failure(no_backup(file, "a photograph in it is damaged"));
    }
    const fs::path path = folder / "photos" / row.text(0);
    if (read_photo(folder, row.text(0))) continue;  // whole as it is
    if (auto written = write_file(path, row.bytes(1), IfThere::replace); !written)
      return failure(written.error());
  }
  return taken;
}

// The present book.db is used as a book where it is one, so that whoever has it open sees the new records
// next.
std::optional<Database> present_book(const fs::path& file) {
  try {
    Database db = Database::open(file.string(), SQLITE_OPEN_READWRITE);
    if (header_figure(db, "PRAGMA application_id") != book_mark) return std::nullopt;
    Statement check = db.prepare("PRAGMA integrity_check(1)");
    if (!check.step() || check.text(0) != "ok") return std::nullopt;
    return db;
  } catch (const StoreError& error) {
    if ((error.code & 0xff) != SQLITE_NOTADB && (error.code & 0xff) != SQLITE_CORRUPT) throw;
    return std::nullopt;
  }
}

Result<fs::path> keep_damaged(const fs::path& folder, const fs::path& file) {
  const fs::path kept = free_backup_name(folder / "backups", "damaged");
  for (const std::string end : {"", "-wal"}) {
    struct stat about {};
    const fs::path part = file.string() + end;
    if (::stat(part.c_str(), &about) != 0) continue;
    const Result<std::string> bytes = read_file(part, largest_book);
    if (!bytes) return failure(bytes.error());
    if (auto written = write_file(kept.string() + end, *bytes, IfThere::refuse); !written) {
      return failure(written.error());
    }
  }
  return kept;
}

Result<void> replace_file(const fs::path& ready, const fs::path& file) {
  // A log of the file that goes away must not be read into the one that comes.
  for (const char* end : {"-wal", "-shm"}) {
    if (auto removed = remove_file(file.string() + end); !removed) return removed;
  }
  return put_in_place(ready, file, IfThere::replace);
}

// The index counts by the change log, which goes back here: one that was in step with the other records could
// seem to be in step again. It is made anew when it is next needed. Twice: before, in case this program is
// killed; after, in case another made it in between.
Result<void> remove_index(const fs::path& folder) {
  std::error_code error;
  fs::remove_all(folder / "index", error);
  if (error) return failure(file_not_written(folder / "index", error.value()));
  return {};
}

std::int64_t count_of_samples(const Database& db) {
  Statement count = db.prepare("SELECT count(*) FROM sample");
  return count.step() ? count.integer(0) : 0;
}

Result<void> put_in(const fs::path& folder, const fs::path& ready_file, Restored& restored) {
  const fs::path file = folder / book_file_name;
  struct stat about {};
  const bool there = ::stat(file.c_str(), &about) == 0;
  std::optional<Database> present = there ? present_book(file) : std::nullopt;
  if (present) {
    const std::int64_t version = header_figure(*present, "PRAGMA user_version");
    if (version > book_version) return failure(book_too_new(file, version, book_version));
    const Result<BackupMade> kept = backup_database(*present, folder, std::nullopt);
    if (!kept) return failure(kept.error());
    restored.present = kept->file;
    const Database ready = Database::open(ready_file.string(), SQLITE_OPEN_READONLY);
    if (auto removed = remove_index(folder); !removed) return removed;
    copy_database(ready, *present);
    return remove_index(folder);
  }
  if (there) {
    const Result<fs::path> kept = keep_damaged(folder, file);
    if (!kept) return failure(kept.error());
    restored.present = *kept;
  }
  if (auto removed = remove_index(folder); !removed) return removed;
  return replace_file(ready_file, file);
}

Result<Restored> restore_checked(const fs::path& folder, const fs::path& file) {
  Restored restored;
  restored.from = file;
  const Result<std::int64_t> version = version_of_copy(file);
  if (!version) return failure(version.error());
  restored.version = *version;
  const fs::path ready = (folder / book_file_name).string() + fmt::format(".{}.restore.part", ::getpid());
  remove_database(ready);
  {
    const Database db = Database::open(ready.string(), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    make_ready(db, file, *version);
    restored.samples = count_of_samples(db);
    // The copy of a file in WAL mode is one: so that the file keeps its mode wherever the pages go.
    db.execute("PRAGMA journal_mode = WAL; PRAGMA wal_checkpoint(TRUNCATE)");
  }
  const Result<std::int64_t> photographs = take_photographs(folder, file);
  Result<void> done =
      photographs ? put_in(folder, ready, restored) : Result<void>(failure(photographs.error()));
  remove_database(ready);
  if (!done) return failure(done.error());
  restored.photographs = *photographs;
  return restored;
}

}  // namespace

Result<Restored> restore(const fs::path& folder, const fs::path& file) {
  struct stat about {};
  if (::stat(file.c_str(), &about) != 0) return failure(file_not_read(file, errno));
  if (!S_ISREG(about.st_mode)) return failure(no_backup(file, "it is a folder"));
  if (::stat(folder.c_str(), &about) == 0 && !S_ISDIR(about.st_mode)) return failure(not_a_folder(folder));
  for (const char* part : {"photos", "backups"}) {
    if (auto made = make_folder(folder / part); !made) return failure(made.error());
  }
  try {
    return restore_checked(folder, file);
  } catch (const StoreError& error) {
    const int code = error.code & 0xff;
    if (code == SQLITE_NOTADB || code == SQLITE_CORRUPT)
      return failure(no_backup(file, "it is another kind of file, or damaged"));
    return failure(store_problem(folder / book_file_name, error));
  }
}

}  // namespace insetbook
