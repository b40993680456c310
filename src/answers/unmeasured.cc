// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/unmeasured.h"

#include <algorithm>

#include "book/names.h"
#include "book/openings.h"

namespace insetbook {
namespace {

struct SetRow {
  std::int64_t id = 0;
  std::string name;
};

std::vector<SetRow> sets_of(const Book& book, std::optional<std::int64_t> only) {
  // Only sets where something is missing: a book may have many that are whole.
  Statement& rows = book.statement(
      "SELECT s.id, s.name FROM die_set s WHERE (?1 IS NULL OR s.id = ?1) AND ("
      " NOT EXISTS (SELECT 1 FROM die d WHERE d.set_id = s.id) OR"
      " EXISTS (SELECT 1 FROM die d LEFT JOIN line l ON l.die_id = d.id"
      "  LEFT JOIN measurement m ON m.line_id = l.id AND m.standing = 'current'"
      "  WHERE d.set_id = s.id AND m.id IS NULL)) ORDER BY s.key");
  rows.bind(1, only);
  std::vector<SetRow> sets;
  while (rows.step()) sets.push_back({rows.integer(0), std::string(rows.text(1))});
  rows.reset();
  return sets;
}

std::int64_t count_of_lines(const Book& book, std::optional<std::int64_t> only) {
  Statement& count = book.statement(
      "SELECT count(*) FROM line l JOIN die d ON d.id = l.die_id WHERE ?1 IS NULL OR d.set_id = ?1");
  count.bind(1, only);
  const std::int64_t lines = count.step() ? count.integer(0) : 0;
  count.reset();
  return lines;
}

// Dies of which no line is recorded.
void add_bare_dies(const Book& book, const SetRow& set, UnmeasuredAnswer& answer) {
  Statement& rows = book.statement(
      "SELECT label, rank FROM die d WHERE set_id = ?1 AND NOT EXISTS (SELECT 1 FROM line l WHERE l.die_id = "
      "d.id) ORDER BY rank, key");
  rows.bind(1, set.id);
  while (rows.step())
    answer.dies.push_back({set.name, std::string(rows.text(0)), static_cast<int>(rows.integer(1)), {}});
  rows.reset();
}

void add_set(const Book& book, const SetRow& set, UnmeasuredAnswer& answer) {
  std::int64_t die = 0;
  const std::size_t before = answer.dies.size();
  const std::vector<OpeningRecord> openings = openings_of_set(book, set.id);
  for (const OpeningRecord& opening : openings) {
    if (opening.measured) continue;
    if (opening.die_id != die) answer.dies.push_back({set.name, opening.die, opening.rank, {}});
    die = opening.die_id;
    answer.dies.back().lines.push_back(opening.line);
    ++answer.lines;
  }
  add_bare_dies(book, set, answer);
  if (openings.empty() && answer.dies.size() == before) answer.dies.push_back({set.name, {}, 0, {}});
}

}  // namespace

Result<UnmeasuredAnswer> not_measured_yet(const Book& book, const std::string& set) {
  UnmeasuredAnswer answer;
  std::optional<std::int64_t> only;
  if (!set.empty()) {
    const Result<NameHit> named = find_name(book, set, RecordKind::set);
    if (!named) return failure(named.error());
    only = named->id;
    answer.set = named->name;
  }
  for (const SetRow& row : sets_of(book, only)) add_set(book, row, answer);
  answer.all_lines = count_of_lines(book, only);
  return answer;
}

}  // namespace insetbook
