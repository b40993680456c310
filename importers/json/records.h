// SPDX-License-Identifier: GPL-3.0-or-later
//
// A record on its way into a table, column by column, and the three ways in which an import writes it: as a
// new row, as what the row now is, or into what the row leaves blank.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"

namespace insetbook {

class RecordFields {
 public:
  explicit RecordFields(std::string_view table) : table_(table) {}

  RecordFields& text(std::string_view column, std::string value);
  RecordFields& number(std::string_view column, std::optional<std::int64_t> value);

  std::int64_t insert(const Book& book) const;
  bool update(const Book& book, std::int64_t id) const;  // whether anything differed
  bool fill(const Book& book, std::int64_t id) const;    // whether anything was blank that is not any more

 private:
  struct Field {
    std::string_view column;
    bool is_text;
    std::string text;
    std::optional<std::int64_t> number;
  };
  void bind(Statement& statement) const;

  std::string_view table_;
  std::vector<Field> fields_;
};

}  // namespace insetbook
