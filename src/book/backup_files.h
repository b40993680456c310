// SPDX-License-Identifier: GPL-3.0-or-later
//
// What backup and restore share.
#pragma once

#include <filesystem>
#include <optional>
#include <string_view>

#include "book/backup.h"
#include "book/sqlite.h"

namespace insetbook {

// A name in the backups folder that no file has yet: BEGINNING-DATE-TIME.db
std::filesystem::path free_backup_name(const std::filesystem::path& folder, std::string_view beginning);
void remove_database(const std::filesystem::path& file);
// All pages as they stand at one moment; into `to` in one transaction.
void copy_database(const Database& from, const Database& to);
bool has_table(const Database& db, std::string_view name);
// The backup of an open book.db that need not be of this version.
Result<BackupMade> backup_database(const Database& db, const std::filesystem::path& folder,
                                   std::optional<std::filesystem::path> file);

}  // namespace insetbook
