// SPDX-License-Identifier: GPL-3.0-or-later
//
// The change log. Each row that a change touches is written down before and after (SQLite's pre-update hook,
// so that no writer can forget it); taking a change back puts the rows as they were, newest first. A change
// that later changes rest on is refused with their list: a row it touched was touched again, or a row it made
// is referred to.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct LoggedChange {
  std::int64_t id = 0;
  std::string made;  // UTC, ISO 8601
  std::string what;
  std::optional<std::int64_t> undoes, undone_by;
  std::int64_t rows = 0;
};

// The newest changes first.
std::vector<LoggedChange> changes(const Book& book, int limit);

// Takes back the change named, or the newest that is neither taken back nor itself a taking back. Nothing to
// take back: an empty optional. Returns what was taken back.
Result<std::optional<LoggedChange>> undo(Book& book, std::optional<std::int64_t> change);

}  // namespace insetbook
