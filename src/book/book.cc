// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/book.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <pwd.h>
#include <sqlite3.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <sys/vfs.h>
#include <unistd.h>

#include <array>
#include <cassert>
#include <cerrno>
#include <cstdlib>
#include <ctime>

#include "book/backup.h"
#include "book/book_parts.h"
#include "book/files.h"
#include "book/link_mentions.h"
#include "book/piece_names.h"
#include "book/problems.h"
#include "schema/migrations.h"

namespace insetbook {

namespace fs = std::filesystem;

const int book_version = 8;

namespace {

std::string formatted_time(const char* format, bool local) {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  local ? ::localtime_r(&now, &parts) : ::gmtime_r(&now, &parts);
  char text[32];
  return std::string(text, std::strftime(text, sizeof text, format, &parts));
}

bool can_write(const fs::path& file) {
  return ::access(file.c_str(), W_OK) == 0 &&
         ::access(file.has_parent_path() ? file.parent_path().c_str() : ".", W_OK) == 0;
}

std::optional<Problem> missing_file(const fs::path& folder) {
  struct stat about {};
  if (::stat((folder / book_file_name).c_str(), &about) == 0 && S_ISREG(about.st_mode)) return std::nullopt;
  if (::stat(folder.c_str(), &about) == 0 && !S_ISDIR(about.st_mode)) return not_a_folder(folder);
  return no_book_here(folder);
}

// Both figures stand in the first page: one small read each, and the page stays in the cache.
Result<std::int64_t> version_of(const Database& db, const fs::path& file) {
  if (header_figure(db, "PRAGMA application_id") != book_mark) return failure(no_book_file(file));
  const std::int64_t version = header_figure(db, "PRAGMA user_version");
  if (version > book_version) return failure(book_too_new(file, version, book_version));
  if (version < 1) return failure(no_book_file(file));
  return version;
}

}  // namespace

// A folder that cannot be written: SQLite can still read the file as it stands, as long as no log of a writer
// lies beside it.
Database open_to_read(const fs::path& file) {
  if (can_write(file)) return Database::open(file.string(), SQLITE_OPEN_READONLY);
  struct stat log {};
  const bool log_there = ::stat((file.string() + "-wal").c_str(), &log) == 0 && log.st_size > 0;
  std::string uri = "file:";
  for (const char c : file.string()) {
    if (c == '?' || c == '#' || c == '%') {
      uri += fmt::format("%{:02x}", static_cast<unsigned char>(c));
    } else {
      uri += c;
    }
  }
  if (!log_there) uri += "?immutable=1";
  return Database::open(uri, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI);
}

std::int64_t header_figure(const Database& db, std::string_view pragma) {
  Statement statement = db.prepare(pragma);
  return statement.step() ? statement.integer(0) : 0;
}

std::string utc_now() {
  return formatted_time("%Y-%m-%dT%H:%M:%SZ", false);
}
std::string utc_now_for_file_name() {
  return formatted_time("%Y-%m-%d-%H%M%S", false);
}

bool network_file_system(std::int64_t type) {
  // From linux/magic.h and the statfs manual page: NFS, SMB, CIFS, SMB2, AFS, Coda, 9P, Ceph.
  static constexpr std::array<std::int64_t, 8> network{0x6969,     0x517B,     0xFF534D42, 0xFE534D42,
                                                       0x5346414F, 0x73757245, 0x01021997, 0x00C36400};
  for (const std::int64_t one : network) {
    if ((type & 0xFFFFFFFF) == one) return true;
  }
  return false;
}

void migrate(const Database& db, std::int64_t from) {
  for (const Migration& migration : migrations()) {
    if (migration.number <= from) continue;
    db.execute("BEGIN IMMEDIATE");
    try {
      // Another program may have done it while this one waited.
      if (header_figure(db, "PRAGMA user_version") < migration.number) {
        db.execute(migration.sql);
        db.execute(fmt::format("PRAGMA user_version = {}", migration.number));
      }
      db.execute("COMMIT");
    } catch (const StoreError&) {
      if (db.in_transaction()) db.execute("ROLLBACK");
      throw;
    }
  }
}

fs::path default_book_folder() {
  if (const char* named = std::getenv("INSETBOOK"); named != nullptr && *named != '\0') return named;
  // The base directory rules: a relative path there is to be ignored.
  if (const char* data = std::getenv("XDG_DATA_HOME"); data != nullptr && *data == '/') {
    return fs::path(data) / "insetbook";
  }
  const char* home = std::getenv("HOME");
  if (home == nullptr || *home == '\0') {
    const passwd* person = ::getpwuid(::geteuid());
    home = person != nullptr ? person->pw_dir : ".";
  }
  return fs::path(home) / ".local" / "share" / "insetbook";
}

std::string new_uuid() {
  std::array<unsigned char, 16> bytes{};
  std::size_t got = 0;
  while (got < bytes.size()) {
    const ssize_t more = ::getrandom(bytes.data() + got, bytes.size() - got, 0);
    if (more > 0) got += static_cast<std::size_t>(more);
  }
  bytes[6] = static_cast<unsigned char>((bytes[6] & 0x0f) | 0x40);  // version 4, RFC 9562
  bytes[8] = static_cast<unsigned char>((bytes[8] & 0x3f) | 0x80);
  static constexpr char digits[] = "0123456789abcdef";
  std::string text;
  text.reserve(36);
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (i == 4 || i == 6 || i == 8 || i == 10) text += '-';
    text += digits[bytes[i] >> 4];
    text += digits[bytes[i] & 15];
  }
  return text;
}

std::string today(const Book& book) {
  Statement& statement = book.statement("SELECT value FROM setting WHERE name = 'today'");
  std::string day = statement.step() ? std::string(statement.text(0)) : std::string();
  statement.reset();
  return day.empty() ? formatted_time("%Y-%m-%d", true) : day;
}

Statement& StatementCache::get(const Database& db, std::string_view sql) {
  Recent& recent = recent_[(reinterpret_cast<std::uintptr_t>(sql.data()) >> 4) % recent_.size()];
  if (recent.address == sql.data() && *recent.sql == sql) {
    recent.statement->reset();
    return *recent.statement;
  }
  auto found = statements_.find(sql);
  if (found == statements_.end()) found = statements_.emplace(std::string(sql), db.prepare(sql)).first;
  recent = {sql.data(), &found->first, &found->second};
  found->second.reset();
  return found->second;
}

void StatementCache::reset_all() {
  for (auto& [sql, statement] : statements_) statement.reset();
}

void StatementCache::clear() {
  recent_ = {};
  statements_.clear();
}

// ---- Change

const Database& Change::database() const {
  return book_.parts_->db;
}
std::int64_t Change::id() const {
  return book_.parts_->change;
}
void Change::describe(std::string_view what) {
  book_.parts_->new_description = what;
}
ChangeMemory& Change::memory() const {
  return book_.parts_->memory;
}

// ---- Book

Book::Book(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {
  know_piece_names(database());
}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

const fs::path& Book::folder() const {
  return parts_->folder;
}
const Database& Book::database() const {
  return parts_->db;
}

std::string Book::uuid() const {
  Statement& statement = this->statement("SELECT uuid FROM book");
  std::string uuid = statement.step() ? std::string(statement.text(0)) : std::string();
  statement.reset();
  return uuid;
}

void Book::keep_log_small() const {
  if (parts_->log.active()) parts_->log.write(false);
}

Statement& Book::statement(std::string_view sql) const {
  keep_log_small();
  return parts_->statements.get(parts_->db, sql);
}

Problem Book::problem(const StoreError& error) const {
  return store_problem(parts_->file(), error);
}

Result<void> Book::reading(const std::function<Result<void>()>& work) const {
  try {
    return work();
  } catch (const StoreError& error) {
    parts_->statements.reset_all();
    return failure(problem(error));
  }
}

// The file is finished under another name first: a book that is there is always a whole one.
Result<Book> Book::create(const fs::path& folder) {
  const fs::path file = folder / book_file_name;
  struct stat about {};
  if (::lstat(file.c_str(), &about) == 0) return failure(book_is_there(folder));
  if (::stat(folder.c_str(), &about) == 0 && !S_ISDIR(about.st_mode)) return failure(not_a_folder(folder));
  for (const char* part : {"photos", "backups"}) {
    if (auto made = make_folder(folder / part); !made) return failure(made.error());
  }
  const fs::path temporary = file.string() + fmt::format(".{}.part", ::getpid());
  ::unlink(temporary.c_str());
  try {
    const Database db = Database::open(temporary.string(), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    db.execute(fmt::format("PRAGMA journal_mode = WAL; PRAGMA application_id = {}", book_mark));
    migrate(db, 0);
    Statement insert = db.prepare("INSERT INTO book (id, uuid, made) VALUES (1, ?, ?)");
    insert.bind_all(std::string_view(new_uuid()), std::string_view(utc_now())).run();
    db.execute("PRAGMA wal_checkpoint(TRUNCATE)");
  } catch (const StoreError& error) {
    for (const char* end : {"", "-wal", "-shm"}) ::unlink((temporary.string() + end).c_str());
    return failure(store_problem(file, error));
  }
  if (auto placed = put_in_place(temporary, file, IfThere::refuse); !placed) {
    return failure(placed.error().kind == ProblemKind::refused ? book_is_there(folder) : placed.error());
  }
  return open(folder, Use::write);
}

Result<Book> Book::open(const fs::path& folder, Use use) {
  if (std::optional<Problem> missing = missing_file(folder)) return failure(std::move(*missing));
  auto parts = std::make_unique<Parts>();
  parts->folder = folder;
  const fs::path file = parts->file();
  try {
    const bool writable = can_write(file);
    if (!writable && use == Use::write) return failure(store_problem(file, StoreError(SQLITE_READONLY, "")));
    parts->db = writable ? Database::open(file.string(), SQLITE_OPEN_READWRITE) : open_to_read(file);
    // Before anything that reads the tables: a newer book may hold what this SQLite cannot read.
    const Result<std::int64_t> version = version_of(parts->db, file);
    if (!version) return failure(version.error());
    if (writable) parts->db.execute("PRAGMA synchronous = FULL");
    Book book(std::move(parts));
    if (*version == book_version) return book;
    if (!writable) return failure(book_too_old_to_read(file, *version, book_version));
    if (auto kept = backup(book, std::nullopt); !kept) return failure(kept.error());
    migrate(book.database(), *version);
    return book;
  } catch (const StoreError& error) {
    return failure(store_problem(file, error));
  }
}

Result<void> Book::change(std::string_view what, const std::function<Result<void>(Change&)>& work) {
  Parts& parts = *parts_;
  assert(parts.change == 0 && "a change inside a change");
  Change change(*this);
  const auto give_up = [&] {
    parts.log.end();
    parts.change = 0;
    parts.statements.reset_all();
    // Where even this fails, the connection's end rolls back.
    if (parts.db.in_transaction()) sqlite3_exec(parts.db.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
  };
  try {
    parts.statements.reset_all();  // a read left open would hold this connection to an older state
    if (!parts.roomy) parts.db.execute("PRAGMA cache_size = -65536");
    parts.roomy = true;
    parts.db.execute("BEGIN IMMEDIATE");
    statement("INSERT INTO change (made, what) VALUES (?, ?)")
        .bind_all(std::string_view(utc_now()), what)
        .run();
    parts.change = parts.db.last_row();
    parts.new_description.clear();
    parts.memory = {};
    parts.log.begin(parts.db, parts.change);
    if (Result<void> done = work(change); !done) {
      give_up();
      return done;
    }
    if (parts.log.rows() == 0) {
      give_up();
      return {};
    }
    link_mentions(change);
    parts.log.write(true);
    if (!parts.new_description.empty()) {
      statement("UPDATE change SET what = ? WHERE id = ?")
          .bind_all(std::string_view(parts.new_description), parts.change)
          .run();
    }
    parts.log.end();
    parts.db.execute("COMMIT");
    parts.change = 0;
    return {};
  } catch (const StoreError& error) {
    give_up();
    return failure(problem(error));
  } catch (...) {
    give_up();
    throw;
  }
}

std::int64_t Book::last_change() const {
  Statement& statement = this->statement("SELECT max(id) FROM change");
  const std::int64_t last = statement.step() ? statement.integer(0) : 0;
  statement.reset();
  return last;
}

std::string Book::warning() const {
  struct statfs about {};
  if (::statfs(parts_->folder.c_str(), &about) == 0 && network_file_system(about.f_type)) {
    return fmt::format(
        "\"{}\" is on a network folder: two computers that write to the book at the same time can damage it; "
        "keep the "
        "book on this computer and its backups there",
        parts_->folder.string());
  }
  return {};
}

}  // namespace insetbook
