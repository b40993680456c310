// SPDX-License-Identifier: GPL-3.0-or-later
//
// Copies of the book, and whether it is whole. A backup is one file: the database as it stood at one moment,
// with the photographs in a table of its own (`backup_photo`). It is written whole or not at all, never over
// a file that is there. Restoring takes a backup of the present state first, brings an older copy up to this
// version, and then replaces the records in one transaction: all of them or none, also when the program is
// killed. Photographs that the copy does not know stay in their folder.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct BackupMade {
  std::filesystem::path file;
  std::int64_t photographs = 0;
  std::vector<std::string>
      missing;  // photographs that the book names and whose bytes are not there, as a person called them
};

// Without a file: backups/book-DATE-TIME.db in the book's folder.
Result<BackupMade> backup(const Book& book, std::optional<std::filesystem::path> file);

struct Restored {
  std::filesystem::path from;
  std::filesystem::path present;  // where the state before was kept
  std::int64_t samples = 0;
  std::int64_t photographs = 0;
  std::int64_t version = 0;  // of the copy, before it was brought up
};

// The book in `folder` becomes what `file` holds. Where the present book.db cannot be used, its bytes are
// kept as they are (backups/damaged-DATE-TIME.db); where there is none, one is made.
Result<Restored> restore(const std::filesystem::path& folder, const std::filesystem::path& file);

struct Verified {
  std::vector<std::string> faults;  // none: the book is whole
  std::int64_t samples = 0, pieces = 0, dies = 0, supplies = 0, photographs = 0, changes = 0;
};

// Reads all of it: the file's pages, references, tables as this version makes them, look-up by name, change
// log against the records, and each photograph against its hash. A fault is one line that a person can act
// on. A file that cannot be opened as a book at all is a Problem.
Result<Verified> verify(const std::filesystem::path& folder);

}  // namespace insetbook
