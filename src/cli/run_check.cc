// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "answers/check.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

std::string size_text(const CheckAnswer& answer) {
  return write_size(*answer.closed_width, *answer.closed_height, answer.card.unit);
}

std::string about(Length length, Unit unit) {
  return write_at_most(length, unit == Unit::mm ? Length::nm(100'000) : Length::inch_fraction(1, 64), unit);
}

std::string grams(std::int64_t mg) {
  return fmt::format("{} g", (mg + 500) / 1000);
}

std::string element_name(const CheckAnswer& answer, int piece) {
  return piece < 0 ? "the card" : answer.card.pieces[static_cast<std::size_t>(piece)].name;
}

std::string verdict_line(const CheckAnswer& answer) {
  const std::size_t problems = answer.checked.problems.size();
  if (problems > 0) return problems == 1 ? "One problem" : fmt::format("{} problems", problems);
  return answer.checked.not_checked.empty() ? "Nothing stands against it"
                                            : "Nothing was found against it, but not all was checked";
}

void print_problems(const CheckAnswer& answer, Output& out) {
  for (const CardProblem& problem : answer.checked.problems) {
    out.line(fmt::format("{} ({}): {}.", element_name(answer, problem.piece), problem.code, problem.why));
    if (!problem.mend.empty()) out.detail(fmt::format("  What mends it: {}.", problem.mend));
  }
  for (const CardProblem& problem : answer.checked.meant)
    out.detail(fmt::format("{} ({}): meant.", element_name(answer, problem.piece), problem.code));
  for (const std::string& text : answer.checked.not_checked) out.line(text + ".");
}

std::string envelope_text(const CheckAnswer& answer) {
  if (!answer.envelope) return "";
  const EnvelopeAnswer& envelope = *answer.envelope;
  if (envelope.name.empty()) return "none of the table takes it";
  if (!envelope.fits) return envelope.name + ": too small";
  return envelope.recorded ? envelope.name + ": it goes in"
                           : envelope.name + " is the smallest that takes it";
}

void print_places(const CheckAnswer& answer, Output& out) {
  Table table{{"piece", "where", "figures to mark", "goes round"}, {}};
  bool around = false;
  for (std::size_t i = 0; i < answer.checked.seats.size(); ++i) {
    if (!answer.checked.seats[i]) continue;
    const SeatedPiece& seat = *answer.checked.seats[i];
    const auto& one = answer.card.elements[i];
    table.rows.push_back({one.name, one.goes.empty() ? "on front" : one.goes, seat.figures,
                          seat.around ? "at least " + about(*seat.around, answer.card.unit) : ""});
    around = around || seat.around.has_value();
  }
  if (table.rows.empty()) return;
  out.blank();
  out.table(table);
}

void print_post(const CheckAnswer& answer, Output& out) {
  if (answer.post.empty()) return;
  out.blank();
  Table table{{"post", "it"}, {}};
  for (const PostAnswer& service : answer.post) table.rows.push_back({service.service, service.verdict});
  out.table(table);
  out.detail(fmt::format("Postal limits change: {}. Sources:", post_advice));
  for (const PostAnswer& service : answer.post)
    out.detail(fmt::format("  {}: {}.", service.service, fmt::join(service.sources, "; ")));
}

void print_check(const CheckAnswer& answer, Output& out) {
  if (!answer.instead_of.empty())
    out.warn(fmt::format("\"{}\" is taken as {}.", answer.instead_of, answer.card.row.title));
  const std::string closed = answer.closed_width ? fmt::format("; closed {}", size_text(answer)) : "";
  out.headline(fmt::format("{}: {}{}.", answer.card.row.title, verdict_line(answer), closed));
  print_problems(answer, out);
  out.blank();
  const std::string_view stands = stands_word(answer.stands);
  out.line(fmt::format("Stands: {}; {}.", stands.empty() ? "not known" : stands, answer.stands_why));
  out.line(fmt::format("Thickness: about {}. Mass: about {}, with its envelope {}.",
                       about(answer.thickness, answer.card.unit), grams(answer.card_mg),
                       grams(answer.with_envelope_mg)));
  if (answer.envelope) out.line(fmt::format("Envelope: {}.", envelope_text(answer)));
  for (const std::string& text : answer.said) out.detail(text + ".");
  for (const std::string& text : answer.typical) out.detail(text + ".");
  print_places(answer, out);
  print_post(answer, out);
}

int run_meant(const Invocation& invocation, Output& out) {
  Result<Book> book = open_book(invocation, Book::Use::write, out);
  if (!book) return out.problem(book.error());
  const Result<MeantAnswer> answer = answer_meant(*book, invocation.text(), invocation.value("meant"));
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(plain_json({{"sample", answer->sample}, {"piece", answer->piece}, {"meant", answer->codes}}));
  else
    out.line(fmt::format("{}: {} of {} is meant, and stays quiet. Undo takes that back.", answer->sample,
                         fmt::join(answer->codes, ", "), answer->piece));
  return 0;
}

}  // namespace

int run_check(const Invocation& invocation, Output& out) {
  if (invocation.has("meant")) return run_meant(invocation, out);
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<CheckAnswer> answer = check(*book, invocation.text());
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_check(*answer, out);
  return answer->checked.problems.empty() ? 0 : 1;
}

}  // namespace insetbook::cli
