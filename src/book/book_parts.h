// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a Book is made of; for the files of this folder only.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <limits>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "book/book.h"
#include "book/row_log.h"

namespace insetbook {

// "Inst" and "Insb" in ASCII: our own marks in the header of book.db and of a backup file.
inline constexpr std::int64_t book_mark = 0x496e7374;
inline constexpr std::int64_t backup_mark = 0x496e7362;

inline constexpr std::string_view book_file_name = "book.db";

struct ChangeMemory {
  // Samples that this change made, with the position of their last piece: nobody else can have added one.
  std::unordered_map<std::int64_t, int> last_position;
  // (row, field) pairs that a row of this change has spoken of: the first one stands, so that a table that
  // contradicts itself gives the same book each time it is imported.
  std::unordered_set<std::int64_t> said;
  // Colours and supplies were made or renamed: words kept as text may name them (book/link_mentions.h).
  bool new_colours = false, new_supplies = false;
  std::int64_t last_to_link = std::numeric_limits<std::int64_t>::max();
};

// Prepared statements by their text. Literals are asked for again and again under one address: that is tried
// first.
class StatementCache {
 public:
  Statement& get(const Database& db, std::string_view sql);
  void reset_all();
  void clear();

 private:
  struct Recent {
    const char* address = nullptr;
    const std::string* sql = nullptr;
    Statement* statement = nullptr;
  };
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>()(text); }
  };
  std::unordered_map<std::string, Statement, Hash, std::equal_to<>> statements_;
  std::array<Recent, 64> recent_{};
};

struct Book::Parts {
  std::filesystem::path folder;
  Database db;  // destroyed after the statements below
  StatementCache statements;
  RowLog log;
  ChangeMemory memory;
  std::int64_t change = 0;  // the entry being written, 0 = none
  std::string new_description;
  bool roomy = false;  // the larger cache for writing has been asked for

  std::filesystem::path file() const { return folder / book_file_name; }
  std::filesystem::path backups() const { return folder / "backups"; }
};

// Brings an open database up to the version of this program, each migration in a transaction of its own.
void migrate(const Database& db, std::int64_t from);
// A connection that only reads, also where nothing may be written beside the file.
Database open_to_read(const std::filesystem::path& file);
// Mark and version as the header has them.
std::int64_t header_figure(const Database& db, std::string_view pragma);

// The time in UTC as ISO 8601 ("2026-11-25T11:00:42Z"), and as it stands in a file's name
// ("2026-11-25-110042").
std::string utc_now();
std::string utc_now_for_file_name();

// Whether a file system type (statfs) is one reached over a network.
bool network_file_system(std::int64_t type);

}  // namespace insetbook
