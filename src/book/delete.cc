// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/core.h>

#include <algorithm>

#include "book/edit.h"
#include "book/upsert.h"
#include "text/quote.h"

namespace insetbook {

namespace {

constexpr std::size_t most_listed = 20;

Problem referred_to(const Editable& record, const std::vector<std::string>& by, std::string_view one,
                    std::string_view several) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what = fmt::format(
      "{} {} {} and would lose it: nothing was deleted",
      by.size() == 1 ? fmt::format("1 {} refers to", one) : fmt::format("{} {} refer to", by.size(), several),
      edit_kind_word(record.kind), in_quotes(record.name));
  problem.where.text = record.name;
  problem.expected = "change or delete those first";
  problem.candidates.assign(by.begin(),
                            by.begin() + static_cast<std::ptrdiff_t>(std::min(by.size(), most_listed)));
  return problem;
}

std::vector<std::string> texts(const Book& book, std::string_view sql, std::int64_t id) {
  Statement& statement = book.statement(sql);
  statement.bind(1, id);
  std::vector<std::string> all;
  while (statement.step()) all.emplace_back(statement.text(0));
  return all;
}

void run(const Book& book, std::string_view sql, std::int64_t id) {
  book.statement(sql).bind(1, id).run();
}

Result<void> delete_set(const Book& book, const Editable& set) {
  const auto samples =
      texts(book,
            "SELECT title FROM sample WHERE id IN (SELECT sample_id FROM element WHERE set_id = ?1 "
            "UNION SELECT e.sample_id FROM die d JOIN element e ON e.die_id = d.id WHERE d.set_id = ?1 "
            "UNION SELECT e.sample_id FROM die d JOIN line l ON l.die_id = d.id JOIN element e ON "
            "e.line_id = l.id WHERE d.set_id = ?1 "
            "UNION SELECT e.sample_id FROM die d JOIN line l ON l.die_id = d.id JOIN element e ON "
            "e.in_line_id = l.id WHERE d.set_id = ?1) ORDER BY key",
            set.id);
  if (!samples.empty()) return failure(referred_to(set, samples, "sample", "samples"));
  run(book,
      "DELETE FROM tried WHERE line_id IN (SELECT l.id FROM die d JOIN line l ON l.die_id = d.id WHERE "
      "d.set_id = ?)",
      set.id);
  run(book,
      "DELETE FROM measurement WHERE line_id IN (SELECT l.id FROM die d JOIN line l ON l.die_id = d.id WHERE "
      "d.set_id = ?)",
      set.id);
  run(book, "DELETE FROM line WHERE die_id IN (SELECT id FROM die WHERE set_id = ?)", set.id);
  run(book, "DELETE FROM die WHERE set_id = ?", set.id);
  run(book, "DELETE FROM die_set WHERE id = ?", set.id);
  return {};
}

Result<void> delete_die(const Book& book, const Editable& die) {
  const auto samples =
      texts(book,
            "SELECT title FROM sample WHERE id IN (SELECT sample_id FROM element WHERE die_id = ?1 "
            "UNION SELECT e.sample_id FROM line l JOIN element e ON e.line_id = l.id WHERE l.die_id = ?1 "
            "UNION SELECT e.sample_id FROM line l JOIN element e ON e.in_line_id = l.id WHERE l.die_id = "
            "?1) ORDER BY key",
            die.id);
  if (!samples.empty()) return failure(referred_to(die, samples, "sample", "samples"));
  run(book, "DELETE FROM tried WHERE line_id IN (SELECT id FROM line WHERE die_id = ?)", die.id);
  run(book, "DELETE FROM measurement WHERE line_id IN (SELECT id FROM line WHERE die_id = ?)", die.id);
  run(book, "DELETE FROM line WHERE die_id = ?", die.id);
  run(book, "DELETE FROM die WHERE id = ?", die.id);
  return {};
}

Result<void> delete_line(const Book& book, const Editable& line) {
  const auto samples =
      texts(book,
            "SELECT title FROM sample WHERE id IN (SELECT sample_id FROM element WHERE line_id = ?1 "
            "UNION SELECT sample_id FROM element WHERE in_line_id = ?1) ORDER BY key",
            line.id);
  if (!samples.empty()) return failure(referred_to(line, samples, "sample", "samples"));
  run(book, "DELETE FROM tried WHERE line_id = ?", line.id);
  run(book, "DELETE FROM measurement WHERE line_id = ?", line.id);
  run(book, "DELETE FROM line WHERE id = ?", line.id);
  return {};
}

Result<void> delete_supply(const Book& book, const Editable& supply) {
  const auto samples =
      texts(book,
            "SELECT title FROM sample WHERE id IN (SELECT sample_id FROM mention WHERE supply_id = ?) "
            "ORDER BY key",
            supply.id);
  if (!samples.empty()) return failure(referred_to(supply, samples, "sample", "samples"));
  run(book, "DELETE FROM supply WHERE id = ?", supply.id);
  return {};
}

Result<void> delete_colour(const Book& book, const Editable& colour) {
  const auto samples =
      texts(book,
            "SELECT title FROM sample WHERE id IN (SELECT sample_id FROM mention WHERE colour_id = ?) "
            "ORDER BY key",
            colour.id);
  if (!samples.empty()) return failure(referred_to(colour, samples, "sample", "samples"));
  const auto supplies =
      texts(book,
            "SELECT kind || iif(set_name = '', '', ', ' || set_name) || iif(name = '', '', ', ' || name) "
            "FROM supply WHERE colour_id = ? ORDER BY key",
            colour.id);
  if (!supplies.empty()) return failure(referred_to(colour, supplies, "supply", "supplies"));
  run(book, "DELETE FROM colour WHERE id = ?", colour.id);
  return {};
}

// What was tried by hand stays evidence when the card it was tried for goes.
Result<void> delete_sample(const Book& book, const Editable& sample) {
  run(book, "UPDATE tried SET sample_id = NULL WHERE sample_id = ?", sample.id);
  run(book, "DELETE FROM mention WHERE sample_id = ?", sample.id);
  run(book, "DELETE FROM photo WHERE sample_id = ?", sample.id);
  run(book, "DELETE FROM element WHERE sample_id = ?", sample.id);
  run(book, "DELETE FROM sample WHERE id = ?", sample.id);
  return {};
}

Result<void> delete_piece(const Book& book, const Editable& piece) {
  const auto pieces = texts(book, "SELECT name FROM element WHERE goes_to = ? ORDER BY position", piece.id);
  if (!pieces.empty()) return failure(referred_to(piece, pieces, "piece", "pieces"));
  run(book, "DELETE FROM mention WHERE element_id = ?", piece.id);
  run(book, "DELETE FROM element WHERE id = ?", piece.id);
  return {};
}

}  // namespace

Result<void> delete_record(Change& change, const Editable& record) {
  const Book& book = change.book();
  switch (record.kind) {
    case EditKind::set:
      return delete_set(book, record);
    case EditKind::die:
      return delete_die(book, record);
    case EditKind::line:
      return delete_line(book, record);
    case EditKind::supply:
      return delete_supply(book, record);
    case EditKind::colour:
      return delete_colour(book, record);
    case EditKind::sample:
      return delete_sample(book, record);
    case EditKind::piece:
      return delete_piece(book, record);
  }
  return {};
}

}  // namespace insetbook
