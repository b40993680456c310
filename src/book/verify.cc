// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/core.h>
#include <sqlite3.h>
#include <sys/stat.h>

#include "book/backup.h"
#include "book/backup_files.h"
#include "book/book_parts.h"
#include "book/photos.h"
#include "book/problems.h"
#include "book/row_text.h"
#include "book/schema_check.h"
#include "book/upsert.h"

namespace insetbook {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_of_a_kind = 100;

using Faults = std::vector<std::string>;

void check_pages(const Database& db, Faults& faults) {
  Statement check = db.prepare(fmt::format("PRAGMA integrity_check({})", most_of_a_kind));
  while (check.step()) {
    if (check.text(0) != "ok") faults.push_back(fmt::format("book.db: {}", check.text(0)));
  }
}

void check_references(const Database& db, Faults& faults) {
  Statement check = db.prepare("SELECT \"table\", rowid, parent FROM pragma_foreign_key_check LIMIT 100");
  while (check.step()) {
    faults.push_back(fmt::format("{} {} refers to a {} that is not there", check.text(0), check.integer(1),
                                 check.text(2)));
  }
}

bool in_step(const Database& db, std::string_view table) {
  try {
    db.execute(fmt::format("INSERT INTO {0} ({0}, rank) VALUES ('integrity-check', 1)", table));
    return true;
  } catch (const StoreError& error) {
    if ((error.code & 0xff) != SQLITE_CORRUPT) throw;
    return false;
  }
}

void check_names(const Database& db, Faults& faults) {
  // The check is an INSERT to SQLite, which a connection that only reads refuses: there a copy is asked.
  Database copy;
  if (sqlite3_db_readonly(db.handle(), "main") == 1) {
    copy = Database::open(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    copy_database(db, copy);
  }
  for (const char* table : {"name_word", "name_trigram", "name_piece"}) {
    if (in_step(copy.handle() != nullptr ? copy : db, table)) continue;
    faults.push_back(fmt::format("the look-up by name ({}) is out of step with the records", table));
  }
}

// A row of a table as the log writes it.
std::string row_text(const Statement& row, int from) {
  std::string text;
  for (int i = from; i < row.columns(); ++i) {
    text += i == from ? '[' : ',';
    if (row.is_null(i)) {
      text += "null";
    } else if (sqlite3_column_type(row.handle(), i) == SQLITE_INTEGER) {
      append_row_integer(text, row.integer(i));
    } else {
      append_row_text(text, row.text(i));
    }
  }
  return text + ']';
}

std::vector<std::string> logged_tables(const Database& db) {
  std::vector<std::string> tables;
  Statement row = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name");
  while (row.step()) {
    if (logged_table(row.text(0))) tables.emplace_back(row.text(0));
  }
  return tables;
}

// Columns that a later version added at the end are not in older entries.
bool begins_with_row(std::string_view there, std::string_view logged) {
  return there == logged || (!logged.empty() && there.starts_with(logged.substr(0, logged.size() - 1)) &&
                             there[logged.size() - 1] == ',');
}

// Each row is as the newest entry of the log left it, and what the log left is there.
void check_log_of(const Database& db, const std::string& table, Faults& faults) {
  Statement row =
      db.prepare(fmt::format("SELECT (SELECT after FROM change_row c WHERE c.tbl = '{0}' AND c.row_id = t.id "
                             "ORDER BY c.id DESC LIMIT 1), t.* "
                             "FROM \"{0}\" t",
                             table));
  std::size_t found = 0;
  while (row.step() && found < most_of_a_kind) {
    if (begins_with_row(row_text(row, 1), row.text(0))) continue;
    faults.push_back(fmt::format("{} {} is not as the change log has it", table, row.integer(1)));
    ++found;
  }
  Statement lost = db.prepare(fmt::format(
      "SELECT row_id FROM (SELECT row_id, max(id), after FROM change_row WHERE tbl = '{0}' GROUP BY row_id) "
      "WHERE after IS NOT NULL AND row_id NOT IN (SELECT id FROM \"{0}\") LIMIT 100",
      table));
  while (lost.step()) {
    faults.push_back(fmt::format("{} {} is in the change log and not in the book", table, lost.integer(0)));
  }
}

void check_log(const Database& db, Faults& faults) {
  const std::vector<std::string> tables = logged_tables(db);
  for (const std::string& table : tables) check_log_of(db, table, faults);
  Statement row = db.prepare(
      "SELECT id, tbl, before, after FROM change_row WHERE before IS NOT NULL OR after IS NOT NULL");
  std::size_t found = 0;
  while (row.step() && found < most_of_a_kind) {
    const bool good =
        (row.is_null(2) || read_row_text(row.text(2))) && (row.is_null(3) || read_row_text(row.text(3)));
    if (good) continue;
    faults.push_back(fmt::format("entry {} of the change log cannot be read", row.integer(0)));
    ++found;
  }
  Statement pairs = db.prepare(
      "SELECT c.id FROM change c JOIN change u ON u.id = c.undone_by WHERE u.undoes IS NOT c.id LIMIT 100");
  while (pairs.step()) {
    faults.push_back(fmt::format("change {} names a taking back that is none of it", pairs.integer(0)));
  }
}

void check_photographs(const Book& book, Faults& faults) {
  Statement row = book.database().prepare(
      "SELECT p.hash, p.file_name, s.title FROM photo p LEFT JOIN sample s ON s.id = p.sample_id GROUP BY "
      "p.hash "
      "ORDER BY s.title");
  while (row.step()) {
    struct stat about {};
    const fs::path path = photo_path(book, row.text(0));
    if (!is_photo_hash(row.text(0)) || ::stat(path.c_str(), &about) != 0) {
      faults.push_back(fmt::format("the photograph \"{}\" of \"{}\" is missing: {}", row.text(1), row.text(2),
                                   path.string()));
    } else if (!read_photo(book, row.text(0))) {
      faults.push_back(fmt::format("the photograph \"{}\" of \"{}\" is damaged: {}", row.text(1), row.text(2),
                                   path.string()));
    }
  }
}

std::int64_t count(const Database& db, std::string_view table) {
  Statement row = db.prepare(fmt::format("SELECT count(*) FROM \"{}\"", table));
  return row.step() ? row.integer(0) : 0;
}

void count_records(const Database& db, Verified& verified) {
  verified.samples = count(db, "sample");
  verified.pieces = count(db, "element");
  verified.dies = count(db, "die");
  verified.supplies = count(db, "supply");
  verified.photographs = count(db, "photo");
  verified.changes = count(db, "change");
}

}  // namespace

Result<Verified> verify(const fs::path& folder) {
  const Result<Book> book = Book::open(folder, Book::Use::read);
  if (!book) return failure(book.error());
  const Database& db = book->database();
  Verified verified;
  try {
    check_pages(db, verified.faults);
    for (std::string& fault : faults_of_schema(db, book_version))
      verified.faults.push_back("book.db: " + fault);
    // What follows reads what these would have found broken.
    if (!verified.faults.empty()) return verified;
    check_references(db, verified.faults);
    check_names(db, verified.faults);
    check_log(db, verified.faults);
    check_photographs(*book, verified.faults);
    count_records(db, verified);
  } catch (const StoreError& error) {
    if ((error.code & 0xff) != SQLITE_CORRUPT) return failure(book->problem(error));
    verified.faults.push_back(fmt::format("book.db: {}", error.what()));
  }
  return verified;
}

}  // namespace insetbook
