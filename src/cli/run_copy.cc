// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "answers/copy.h"
#include "answers/resize.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

void print_copy(const CopyAnswer& answer, Output& out) {
  out.headline(fmt::format("{} is recorded, based on {}.", answer.title, answer.from));
  Table table{{"", "was", "is", "of"}, {}};
  for (const CopyDifference& one : answer.differences)
    table.rows.push_back({one.what, one.was.empty() ? "nothing" : one.was, one.is,
                          one.pieces.empty() ? "the card" : fmt::format("{}", fmt::join(one.pieces, "; "))});
  if (!table.rows.empty()) out.table(table);
  for (const std::string& note : answer.notes) out.detail(note + ".");
}

std::string size_text(const std::optional<Length>& width, const std::optional<Length>& height, Unit unit) {
  return width && height ? write_size(*width, *height, unit) : "";
}

std::string scores_text(const Base& base, Unit unit) {
  std::string text;
  for (const SheetCrease& crease : base.creases)
    text += (text.empty() ? "" : ", ") + write(crease.at, unit) +
            (crease.upright ? " from the left" : " from the top");
  return text;
}

std::string remark(const ResizedPiece& piece) {
  if (piece.too_large) return "larger than what it lies on";
  if (piece.die.empty()) return "";
  return fmt::format(
      "{} no longer suits; {}", piece.die,
      piece.nearest_die.empty() ? "no other die of that shape" : "nearest: " + piece.nearest_die);
}

void print_resize(const ResizeAnswer& answer, Output& out) {
  if (!answer.instead_of.empty())
    out.warn(fmt::format("\"{}\" is taken as {}.", answer.instead_of, answer.sample));
  out.headline(fmt::format("{} on {}: closed {}.", answer.sample,
                           write_size(answer.base.width, answer.base.height, answer.unit),
                           write_size(answer.folded.width, answer.folded.height, answer.unit)));
  if (!answer.base.creases.empty())
    out.line(fmt::format("Score at {}.", scores_text(answer.base, answer.unit)));
  out.blank();
  Table table{{"piece", "was", "is", ""}, {}};
  for (const ResizedPiece& piece : answer.pieces) {
    if (piece.name.empty()) continue;
    const bool same = piece.was_width == piece.width && piece.was_height == piece.height;
    table.rows.push_back({piece.name, size_text(piece.was_width, piece.was_height, piece.unit),
                          same ? "the same" : size_text(piece.width, piece.height, answer.unit),
                          remark(piece)});
  }
  out.table(table);
  out.detail("New sides are rounded down to the cutting step.");
  for (const CardProblem& problem : answer.checked.problems) {
    const std::string name =
        problem.piece < 0 ? "the card" : answer.pieces[static_cast<std::size_t>(problem.piece)].name;
    out.line(fmt::format("{} ({}): {}. What mends it: {}.", name, problem.code, problem.why, problem.mend));
  }
}

}  // namespace

int run_copy(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  const Result<CopyAnswer> answer = copy_sample(*book, {invocation.words, invocation.value("as")});
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_copy(*answer, out);
  return 0;
}

int run_resize(const Invocation& invocation, Output& out) {
  if (!invocation.has("base")) {
    return out.problem(Problem{.what = "resize needs the new base",
                               .where = {},
                               .expected = "--base A5, or --base \"7 x 10 in\"",
                               .candidates = {}});
  }
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<ResizeAnswer> answer = resize_sample(*book, invocation.text(), invocation.value("base"));
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_resize(*answer, out);
  return 0;
}

}  // namespace insetbook::cli
