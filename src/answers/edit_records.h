// SPDX-License-Identifier: GPL-3.0-or-later
//
// `change NAME FIELD=VALUE` and `delete NAME`. Fields that hold words of the trade (folds, techniques,
// colours, supplies …) are read here by the vocabulary; the others are book/edit.h's. When a sample's base,
// scores, fold or finished size changes, its closed size follows.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/edit.h"

namespace insetbook {

struct EditAnswer {
  std::string record;                // its name, as it was found
  std::string_view kind;             // "sample"
  std::string field, value;          // change only
  bool same = false;                 // it had that value already
  std::vector<std::string> unknown;  // words of the value that are kept as text
  std::vector<std::string> perhaps;  // for each of them what was probably meant, or empty
};

// `text` is "NAME FIELD=VALUE".
Result<EditAnswer> change_record(Book& book, std::string_view text);
// By the whole name only; by a part of it, a Problem names the record it would be.
Result<EditAnswer> delete_record_named(Book& book, std::string_view name);

}  // namespace insetbook
