// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/sql_text.h"

#include <algorithm>

namespace insetbook {
namespace {

template <class T>
void append_list(Sql& sql, const std::vector<T>& list) {
  // "IN ()" would make SQLite drop the whole condition, and with it the index that a statement names.
  sql.text += list.empty() ? " IN (NULL" : " IN (";
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (i > 0) sql.text += ", ";
    sql.value(list[i]);
  }
  sql.text += ")";
}

// SQLite takes 32 766 parameters in one statement; a longer list goes in as one JSON text.
constexpr std::size_t longest_list = 500;

}  // namespace

Sql& Sql::operator<<(const Sql& other) {
  text += other.text;
  values.insert(values.end(), other.values.begin(), other.values.end());
  return *this;
}

Sql& Sql::value(std::int64_t v) {
  text += '?';
  values.emplace_back(v);
  return *this;
}

Sql& Sql::value(std::string_view v) {
  text += '?';
  values.emplace_back(std::string(v));
  return *this;
}

Sql& Sql::any_of(const std::vector<std::string>& list) {
  append_list(*this, list);
  return *this;
}

Sql& Sql::any_of(const std::vector<std::int64_t>& list) {
  if (list.size() <= longest_list) {
    append_list(*this, list);
    return *this;
  }
  std::string json = "[";
  for (const std::int64_t each : list) {
    if (json.size() > 1) json += ',';
    json += std::to_string(each);
  }
  text += " IN (SELECT value FROM json_each(";
  value(json + "]");
  text += "))";
  return *this;
}

Sql joined(const std::vector<Sql>& parts, std::string_view word) {
  if (parts.empty()) return Sql(word == " AND " ? "1" : "0");
  // A row of a thousand is too deep a tree for SQLite: long ones are joined by the hundred first.
  constexpr std::size_t most_in_a_row = 100;
  if (parts.size() > most_in_a_row) {
    std::vector<Sql> rows;
    for (std::size_t from = 0; from < parts.size(); from += most_in_a_row) {
      const auto first = parts.begin() + static_cast<std::ptrdiff_t>(from);
      const auto size = static_cast<std::ptrdiff_t>(std::min(most_in_a_row, parts.size() - from));
      rows.push_back(joined(std::vector<Sql>(first, first + size), word));
    }
    return joined(rows, word);
  }
  Sql sql("(");
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) sql << word;
    sql << parts[i];
  }
  sql << ")";
  return sql;
}

Statement& bound(const Book& book, const Sql& sql) {
  Statement& statement = book.statement(sql.text);
  int index = 0;
  for (const auto& value : sql.values) {
    ++index;
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
      statement.bind(index, *number);
    } else {
      statement.bind(index, std::string_view(std::get<std::string>(value)));
    }
  }
  return statement;
}

std::string written_out(const Sql& sql) {
  std::string out;
  std::size_t next = 0;
  for (const char c : sql.text) {
    if (c != '?') {
      out += c;
      continue;
    }
    const auto& value = sql.values[next++];
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
      out += std::to_string(*number);
    } else {
      out += "'" + std::get<std::string>(value) + "'";
    }
  }
  return out;
}

}  // namespace insetbook
