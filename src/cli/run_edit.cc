// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "answers/edit_records.h"
#include "cli/json_answers.h"
#include "cli/run.h"

namespace insetbook::cli {

int run_change(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  const Result<EditAnswer> answer = change_record(*book, invocation.text());
  if (!answer) return out.problem(answer.error());
  if (out.json()) {
    out.raw(plain_json({{"record", answer->record},
                        {"kind", std::string(answer->kind)},
                        {"field", answer->field},
                        {"value", answer->value},
                        {"changed", !answer->same},
                        {"kept_as_text", answer->unknown}}));
    return 0;
  }
  if (answer->same)
    out.headline(fmt::format("{}: {} was that already.", answer->record, answer->field));
  else
    out.headline(fmt::format("{}: {} is now {}.", answer->record, answer->field,
                             answer->value.empty() ? "blank" : answer->value));
  for (std::size_t i = 0; i < answer->unknown.size(); ++i)
    out.line(fmt::format("\"{}\" is not known and is kept as text.{}", answer->unknown[i],
                         answer->perhaps[i].empty()
                             ? std::string()
                             : fmt::format(" Did you mean \"{}\"?", answer->perhaps[i])));
  return 0;
}

int run_delete(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  const Result<EditAnswer> answer = delete_record_named(*book, invocation.text());
  if (!answer) return out.problem(answer.error());
  if (out.json()) {
    out.raw(plain_json({{"deleted", answer->record}, {"kind", std::string(answer->kind)}}));
    return 0;
  }
  out.headline(fmt::format("{} ({}) is deleted.", answer->record, answer->kind));
  out.detail("insetbook undo takes it back.");
  return 0;
}

}  // namespace insetbook::cli
