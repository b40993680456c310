// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/nearest.h"
#include "cli/json_answers.h"
#include "cli/print_answers.h"
#include "cli/run.h"

namespace insetbook::cli {

int run_nearest(const Invocation& invocation, Output& out) {
  const Result<std::size_t> limit = limit_given(invocation, 10);
  if (!limit) return out.problem(limit.error());
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<NearestAnswer> answer = nearest_to(*book, {.colour = invocation.text(), .limit = *limit});
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_nearest(*answer, out);
  return answer->colours.empty() ? 1 : 0;
}

}  // namespace insetbook::cli
