// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/piece_names.h"

#include <sqlite3.h>

#include <algorithm>

#include "text/place_words.h"

namespace insetbook {
namespace {

constexpr char between = ';';  // no label has one

bool holds_words(std::string_view name, std::string_view label) {
  for (std::size_t at = name.find(label); at != std::string_view::npos; at = name.find(label, at + 1)) {
    const std::size_t end = at + label.size();
    if ((at == 0 || name[at - 1] == ' ') && (end == name.size() || name[end] == ' ')) return true;
  }
  return false;
}

std::string_view text_of(sqlite3_value* value) {
  const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(value));
  return text ? std::string_view(text, static_cast<std::size_t>(sqlite3_value_bytes(value)))
              : std::string_view();
}

void called(sqlite3_context* context, int, sqlite3_value** values) {
  sqlite3_result_int(context, is_called(text_of(values[0]), text_of(values[1])) ? 1 : 0);
}

void placed(sqlite3_context* context, int, sqlite3_value** values) {
  std::vector<std::string> words;
  for (std::string_view rest = text_of(values[1]); !rest.empty();) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    words.emplace_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  sqlite3_result_int(context, says_place(text_of(values[0]), words) ? 1 : 0);
}

}  // namespace

std::string called_one_of(const std::vector<std::string>& labels) {
  std::string joined;
  for (const std::string& label : labels) {
    if (!joined.empty()) joined += between;
    joined += label;
  }
  return joined;
}

bool is_called(std::string_view name, std::string_view one_of) {
  while (!one_of.empty()) {
    const std::size_t end = std::min(one_of.find(between), one_of.size());
    if (end > 0 && holds_words(name, one_of.substr(0, end))) return true;
    one_of.remove_prefix(std::min(end + 1, one_of.size()));
  }
  return false;
}

void know_piece_names(const Database& db) {
  constexpr int columns = 2;
  sqlite3_create_function_v2(db.handle(), "called", columns,
                             SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_DIRECTONLY, nullptr, called, nullptr,
                             nullptr, nullptr);
  sqlite3_create_function_v2(db.handle(), "placed", columns,
                             SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_DIRECTONLY, nullptr, placed, nullptr,
                             nullptr, nullptr);
}

}  // namespace insetbook
