// SPDX-License-Identifier: GPL-3.0-or-later
//
// The migrations of schema/migrations, compiled into the program. A file is named NUMBER_name.sql
// ("0002_names.sql"); the numbers run from 1 without a gap, which the build checks. A book whose user_version
// is N has had the first N of them. A migration that a release has shipped is never edited: what changes
// afterwards is a new file.
#pragma once

#include <span>
#include <string_view>

namespace insetbook {

struct Migration {
  int number;
  std::string_view name;  // "names"
  std::string_view sql;   // the whole text of the file
};

// In the order of their numbers: migrations()[0].number == 1. The texts live as long as the program.
std::span<const Migration> migrations();

}  // namespace insetbook
