// SPDX-License-Identifier: GPL-3.0-or-later
//
// A piece of SQL with the values of its parameters, put together from parts. Values are bound, never written
// into the text, so that questions of one form share one prepared statement.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct Sql {
  std::string text;
  std::vector<std::variant<std::int64_t, std::string>> values;

  Sql() = default;
  explicit Sql(std::string_view sql) : text(sql) {}
  Sql& operator<<(std::string_view sql) {
    text += sql;
    return *this;
  }
  Sql& operator<<(const Sql& other);
  Sql& value(std::int64_t v);                         // "?"
  Sql& value(std::string_view v);                     // "?"
  Sql& any_of(const std::vector<std::string>& list);  // " IN (?, ?)"; an empty list holds nothing
  Sql& any_of(const std::vector<std::int64_t>& list);
};

// "(a AND b)"; nothing to join: "1" for AND, "0" for OR.
Sql joined(const std::vector<Sql>& parts, std::string_view word);

// The book's statement for it, bound and ready to be stepped.
Statement& bound(const Book& book, const Sql& sql);

// With the values in place of the question marks, for `find --explain`.
std::string written_out(const Sql& sql);

}  // namespace insetbook
