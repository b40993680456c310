// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/json/records.h"

#include <fmt/format.h>

namespace insetbook {

RecordFields& RecordFields::text(std::string_view column, std::string value) {
  fields_.push_back({column, true, std::move(value), std::nullopt});
  return *this;
}

RecordFields& RecordFields::number(std::string_view column, std::optional<std::int64_t> value) {
  fields_.push_back({column, false, {}, value});
  return *this;
}

void RecordFields::bind(Statement& statement) const {
  for (std::size_t i = 0; i < fields_.size(); ++i) {
    const int index = static_cast<int>(i) + 1;
    if (fields_[i].is_text)
      statement.bind(index, std::string_view(fields_[i].text));
    else
      statement.bind(index, fields_[i].number);
  }
}

std::int64_t RecordFields::insert(const Book& book) const {
  std::string columns, marks;
  for (std::size_t i = 0; i < fields_.size(); ++i) {
    columns += fmt::format("{}{}", i == 0 ? "" : ", ", fields_[i].column);
    marks += fmt::format("{}?{}", i == 0 ? "" : ", ", i + 1);
  }
  Statement& statement =
      book.statement(fmt::format("INSERT INTO {} ({}) VALUES ({})", table_, columns, marks));
  bind(statement);
  statement.run();
  return book.database().last_row();
}

bool RecordFields::update(const Book& book, std::int64_t id) const {
  std::string sets, differs;
  for (std::size_t i = 0; i < fields_.size(); ++i) {
    sets += fmt::format("{}{} = ?{}", i == 0 ? "" : ", ", fields_[i].column, i + 1);
    differs += fmt::format("{}{} IS NOT ?{}", i == 0 ? "" : " OR ", fields_[i].column, i + 1);
  }
  Statement& statement = book.statement(
      fmt::format("UPDATE {} SET {} WHERE id = ?{} AND ({})", table_, sets, fields_.size() + 1, differs));
  bind(statement);
  statement.bind(static_cast<int>(fields_.size()) + 1, id).run();
  return book.database().changes() > 0;
}

bool RecordFields::fill(const Book& book, std::int64_t id) const {
  std::string sets, blanks;
  for (std::size_t i = 0; i < fields_.size(); ++i) {
    const std::string_view column = fields_[i].column;
    const std::string blank =
        fields_[i].is_text ? fmt::format("{} = ''", column) : fmt::format("{} IS NULL", column);
    const std::string said =
        fields_[i].is_text ? fmt::format("?{} <> ''", i + 1) : fmt::format("?{} IS NOT NULL", i + 1);
    sets += fmt::format("{}{} = iif({}, ?{}, {})", i == 0 ? "" : ", ", column, blank, i + 1, column);
    blanks += fmt::format("{}({} AND {})", i == 0 ? "" : " OR ", blank, said);
  }
  Statement& statement = book.statement(
      fmt::format("UPDATE {} SET {} WHERE id = ?{} AND ({})", table_, sets, fields_.size() + 1, blanks));
  bind(statement);
  statement.bind(static_cast<int>(fields_.size()) + 1, id).run();
  return book.database().changes() > 0;
}

}  // namespace insetbook
