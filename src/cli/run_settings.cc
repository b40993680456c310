// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "book/settings.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "text/utf8.h"

namespace insetbook::cli {
namespace {

struct Shown {
  std::string name, value, help;
};

Result<std::vector<Shown>> all_settings(const Book& book) {
  std::vector<Shown> all;
  for (const SettingRow& row : setting_rows()) {
    const Result<std::string> value = setting_text(book, row.name);
    if (!value) return failure(value.error());
    all.push_back({std::string(row.name), *value, std::string(row.help)});
  }
  return all;
}

int show_all(const Book& book, Output& out) {
  const Result<std::vector<Shown>> all = all_settings(book);
  if (!all) return out.problem(all.error());
  std::vector<std::vector<std::string>> rows;
  for (const Shown& shown : *all) rows.push_back({shown.name, shown.value, shown.help});
  if (out.json())
    out.raw(rows_json("settings", {"name", "value", "help"}, rows));
  else
    out.table({{"setting", "is", "what for"}, rows});
  return 0;
}

int show_one(const Book& book, const std::string& name, Output& out) {
  const Result<std::string> value = setting_text(book, name);
  if (!value) return out.problem(value.error());
  if (out.json())
    out.raw(plain_json({{"name", name}, {"value", *value}}));
  else
    out.headline(fmt::format("{}: {}", name, *value));
  return 0;
}

}  // namespace

int run_settings(const Invocation& invocation, Output& out) {
  const std::string text = invocation.text();
  const std::size_t equals = text.find('=');
  Result<Book> book =
      open_book(invocation, equals == std::string::npos ? Book::Use::read : Book::Use::write, out);
  if (!book) return out.problem(book.error());
  if (text.empty()) return show_all(*book, out);
  const std::string name(trim(std::string_view(text).substr(0, equals)));
  if (equals != std::string::npos) {
    const Result<void> set = set_setting(*book, name, trim(std::string_view(text).substr(equals + 1)));
    if (!set) return out.problem(set.error());
  }
  return show_one(*book, name, out);
}

}  // namespace insetbook::cli
