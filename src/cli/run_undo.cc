// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <charconv>

#include "book/changes.h"
#include "cli/json_answers.h"
#include "cli/run.h"

namespace insetbook::cli {
namespace {

constexpr int most_listed = 20;

int list_changes(const Book& book, Output& out) {
  std::vector<std::vector<std::string>> rows;
  for (const LoggedChange& change : changes(book, most_listed))
    rows.push_back({fmt::format("{}", change.id), change.made, change.what,
                    change.undone_by ? fmt::format("taken back by {}", *change.undone_by) : std::string()});
  if (out.json())
    out.raw(rows_json("changes", {"change", "made", "what", "state"}, rows));
  else if (rows.empty())
    out.headline("Nothing was changed yet.");
  else
    out.table({{"change", "made (UTC)", "what", ""}, rows});
  return 0;
}

}  // namespace

int run_undo(const Invocation& invocation, Output& out) {
  const std::string text = invocation.text();
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  if (text == "list") return list_changes(*book, out);
  std::optional<std::int64_t> change;
  if (!text.empty()) {
    std::int64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size() || number < 1)
      return out.problem({.what = fmt::format("\"{}\" is no number of a change", text),
                          .expected = "insetbook undo list shows the last changes with their numbers"});
    change = number;
  }
  const Result<std::optional<LoggedChange>> undone = undo(*book, change);
  if (!undone) return out.problem(undone.error());
  if (!*undone) {
    if (out.json())
      out.raw(plain_json({{"undone", false}}));
    else
      out.headline("There is nothing to take back.");
    return 1;
  }
  if (out.json())
    out.raw(plain_json(
        {{"undone", true}, {"change", (*undone)->id}, {"what", (*undone)->what}, {"rows", (*undone)->rows}}));
  else
    out.headline(fmt::format("Change {} is taken back: {}.", (*undone)->id, (*undone)->what));
  return 0;
}

}  // namespace insetbook::cli
