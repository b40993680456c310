// SPDX-License-Identifier: GPL-3.0-or-later
//
// One way to write a record: insert it, or update it where a column differs. The SQL is made once for each
// table from the list of its columns.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "book/book.h"

namespace insetbook {

// The columns are bound in their order, from parameter 1. After them comes, in the update, `id`; in the
// insert, the column that is written once and never changed (a UUID), where there is one.
class TableSql {
 public:
  template <std::size_t N>
  TableSql(std::string_view table, const std::array<std::string_view, N>& columns,
           std::string_view once = {}) {
    std::string names, marks, sets, differs;
    for (std::size_t i = 0; i < N; ++i) {
      const std::string mark = "?" + std::to_string(i + 1);
      const std::string name(columns[i]);
      const std::string comma = i == 0 ? "" : ", ";
      names += comma + name;
      marks += comma + mark;
      sets += comma + name + " = " + mark;
      differs += (i == 0 ? "" : " OR ") + name + " IS NOT " + mark;
    }
    if (!once.empty()) {
      names += ", " + std::string(once);
      marks += ", ?" + std::to_string(N + 1);
    }
    insert = "INSERT INTO " + std::string(table) + " (" + names + ") VALUES (" + marks + ")";
    update = "UPDATE " + std::string(table) + " SET " + sets + " WHERE id = ?" + std::to_string(N + 1) +
             " AND (" + differs + ")";
  }

  std::string insert, update;
};

// Texts are not copied: they must live until the statement has run.
inline void bind_field(Statement& statement, int index, std::string_view text) {
  statement.bind_kept(index, text);
}
inline void bind_field(Statement& statement, int index, const std::string& text) {
  statement.bind_kept(index, text);
}
inline void bind_field(Statement& statement, int index, std::int64_t value) {
  statement.bind(index, value);
}
inline void bind_field(Statement& statement, int index, std::optional<std::int64_t> value) {
  statement.bind(index, value);
}

template <class... Values>
void bind_fields(Statement& statement, const Values&... values) {
  int index = 0;
  (bind_field(statement, ++index, values), ...);
}

// Whether a row was written; one that is as it should be is left alone.
template <class... Values>
bool update_row(const Book& book, const TableSql& sql, std::int64_t id, const Values&... values) {
  Statement& statement = book.statement(sql.update);
  bind_fields(statement, values..., id);
  statement.run();
  return book.database().changes() > 0;
}

template <class... Values>
std::int64_t insert_row(const Book& book, const TableSql& sql, const Values&... values) {
  Statement& statement = book.statement(sql.insert);
  bind_fields(statement, values...);
  statement.run();
  return book.database().last_row();
}

// The first column of the first row, or nothing.
std::optional<std::int64_t> first_integer(Statement& statement);
// The same for a statement with one text to bind.
std::optional<std::int64_t> id_by_key(const Book& book, std::string_view sql, std::string_view key);

}  // namespace insetbook
