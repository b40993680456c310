// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/schema_check.h"

#include <fmt/core.h>
#include <sqlite3.h>

#include <map>

#include "book/book_parts.h"
#include "schema/migrations.h"

namespace insetbook {

namespace {

// "table die" and the SQL that made it.
std::map<std::string, std::string> schema_of(const Database& db) {
  std::map<std::string, std::string> schema;
  Statement row = db.prepare("SELECT type || ' ' || name, coalesce(sql, '') FROM sqlite_schema");
  while (row.step()) schema.emplace(row.text(0), row.text(1));
  // Notes that SQLite itself makes for its planner.
  for (const char* name : {"table sqlite_stat1", "table sqlite_stat4", "table sqlite_sequence"})
    schema.erase(name);
  schema.erase("table backup_photo");
  return schema;
}

std::map<std::string, std::string> schema_of_version(std::int64_t version) {
  const Database db = Database::open(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
  for (const Migration& migration : migrations()) {
    if (migration.number <= version) db.execute(migration.sql);
  }
  return schema_of(db);
}

}  // namespace

std::vector<std::string> faults_of_schema(const Database& db, std::int64_t version) {
  std::vector<std::string> faults;
  const auto right = schema_of_version(version), there = schema_of(db);
  for (const auto& [name, sql] : right) {
    const auto found = there.find(name);
    if (found == there.end()) faults.push_back(fmt::format("{} is missing", name));
    if (found != there.end() && found->second != sql)
      faults.push_back(fmt::format("{} is not as a book has it", name));
  }
  for (const auto& [name, sql] : there) {
    if (right.count(name) == 0) faults.push_back(fmt::format("{} is not part of a book", name));
  }
  return faults;
}

}  // namespace insetbook
