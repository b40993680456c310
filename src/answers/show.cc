// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/show.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/opening_said.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

std::vector<std::string> titles(Statement& statement) {
  std::vector<std::string> found;
  while (statement.step()) found.emplace_back(statement.text(0));
  statement.reset();
  return found;
}

// Of a record, in the order of RecordKind.
std::string uuid_of(const Book& book, const NameHit& hit) {
  static constexpr std::string_view sql[] = {
      "SELECT uuid FROM die_set WHERE id = ?1", "SELECT uuid FROM die WHERE id = ?1",
      "SELECT uuid FROM supply WHERE id = ?1", "SELECT uuid FROM colour WHERE id = ?1",
      "SELECT uuid FROM sample WHERE id = ?1"};
  Statement& statement = book.statement(sql[static_cast<std::size_t>(hit.kind) - 1]);
  statement.bind(1, hit.id);
  std::string uuid = statement.step() ? std::string(statement.text(0)) : std::string();
  statement.reset();
  return uuid;
}

// Samples of which the supply or the colour is said (`mention` is that column), newest first.
std::vector<std::string> samples_that(const Book& book, std::string_view mention, std::int64_t id) {
  Statement& samples = book.statement(fmt::format(
      "SELECT DISTINCT s.title, s.made FROM sample s JOIN mention m ON m.sample_id = s.id WHERE m.{} = ?1 "
      "ORDER BY s.made DESC, s.title",
      mention));
  samples.bind(1, id);
  return titles(samples);
}

ShownLine shown_line(const Book& book, OpeningRecord opening) {
  ShownLine line;
  line.measurements = measurements_of(book, opening.line_id);
  line.tried = tried_in(book, opening.line_id);
  line.opening = std::move(opening);
  return line;
}

ShownDie shown_die(const Book& book, std::int64_t die_id) {
  ShownDie die;
  for (OpeningRecord& opening : openings_of_die(book, die_id)) {
    die.set = opening.set;
    die.label = opening.die;
    die.rank = opening.rank;
    die.lines.push_back(shown_line(book, std::move(opening)));
  }
  Statement& samples = book.statement(
      "SELECT DISTINCT s.title, s.made FROM sample s JOIN element e ON e.sample_id = s.id"
      " WHERE e.die_id = ?1 OR e.in_line_id IN (SELECT id FROM line WHERE die_id = ?1)"
      " ORDER BY s.made DESC, s.title");
  samples.bind(1, die_id);
  die.samples = titles(samples);
  return die;
}

ShownSet shown_set(const Book& book, std::int64_t id) {
  ShownSet set;
  Statement& row =
      book.statement("SELECT name, maker, code, stored_in, status, note FROM die_set WHERE id = ?1");
  row.bind(1, id);
  if (row.step()) {
    set.name = row.text(0);
    set.maker = row.text(1);
    set.code = row.text(2);
    set.stored_in = row.text(3);
    set.status = row.text(4);
    set.note = row.text(5);
  }
  row.reset();
  for (OpeningRecord& opening : openings_of_set(book, id)) {
    if (set.dies.empty() || set.dies.back().lines.front().opening.die_id != opening.die_id)
      set.dies.push_back({opening.set, opening.die, opening.rank, {}, {}});
    set.dies.back().lines.push_back(shown_line(book, std::move(opening)));
  }
  Statement& count = book.statement("SELECT count(DISTINCT sample_id) FROM element WHERE set_id = ?1");
  count.bind(1, id);
  if (count.step()) set.samples = count.integer(0);
  count.reset();
  return set;
}

ShownSupply shown_supply(const Book& book, std::int64_t id) {
  ShownSupply shown;
  if (std::optional<SupplyRow> row = supply(book, id)) shown.row = std::move(*row);
  shown.samples = samples_that(book, "supply_id", id);
  return shown;
}

ShownColour shown_colour(const Book& book, std::int64_t id) {
  ShownColour shown;
  Statement& row = book.statement("SELECT name, srgb, note FROM colour WHERE id = ?1");
  row.bind(1, id);
  if (row.step()) {
    shown.name = row.text(0);
    if (const std::optional<std::int64_t> value = row.maybe_integer(1))
      shown.srgb = static_cast<std::uint32_t>(*value);
    shown.note = row.text(2);
  }
  row.reset();
  Statement& supplies = book.statement(
      "SELECT kind || CASE set_name WHEN '' THEN '' ELSE ', ' || set_name END"
      " || CASE name WHEN '' THEN '' ELSE ', ' || name END FROM supply WHERE colour_id = ?1 ORDER BY 1");
  supplies.bind(1, id);
  shown.supplies = titles(supplies);
  shown.samples = samples_that(book, "colour_id", id);
  return shown;
}

ShownSample shown_sample(const Book& book, std::int64_t id) {
  ShownSample shown;
  if (std::optional<SampleRow> row = sample(book, id)) shown.row = std::move(*row);
  for (auto& [element_id, row] : elements_of(book, id)) {
    ShownElement element;
    if (row.line_id) {
      if (const auto line = opening(book, *row.line_id)) element.cut_by = describe(*line);
    }
    if (element.cut_by.empty() && row.die_id)
      element.cut_by = record_name(book, RecordKind::die, *row.die_id);
    else if (element.cut_by.empty() && row.set_id)
      element.cut_by = record_name(book, RecordKind::set, *row.set_id);
    if (row.in_line_id) {
      if (const auto line = opening(book, *row.in_line_id)) element.lies_in = describe(*line);
    }
    element.row = std::move(row);
    shown.elements.push_back(std::move(element));
  }
  return shown;
}

ShowAnswer shown_hit(const Book& book, const NameHit& hit) {
  ShowAnswer answer;
  answer.name = hit.name;
  answer.uuid = uuid_of(book, hit);
  switch (hit.kind) {
    case RecordKind::set:
      answer.shown = shown_set(book, hit.id);
      break;
    case RecordKind::die:
      answer.shown = shown_die(book, hit.id);
      break;
    case RecordKind::supply:
      answer.shown = shown_supply(book, hit.id);
      break;
    case RecordKind::colour:
      answer.shown = shown_colour(book, hit.id);
      break;
    case RecordKind::sample:
      answer.shown = shown_sample(book, hit.id);
      break;
  }
  return answer;
}

}  // namespace

Result<ShowAnswer> show(const Book& book, std::string_view name) {
  const Result<NameHit> found = find_name(book, name, std::nullopt);
  if (found && found->how != NameHit::How::like) return shown_hit(book, *found);
  // "second largest tidepool rectangle" is no name of a record, but it says which die.
  const OpeningWanted wanted = opening_wanted(name);
  if (wanted.rank || wanted.rank_from_smallest || !wanted.line.empty())
    if (const Result<OpeningRecord> said = find_opening(book, wanted))
      return shown_hit(book,
                       {RecordKind::die, said->die_id, said->set + " " + said->die, NameHit::How::exact});
  if (!found) return failure(found.error());
  ShowAnswer answer = shown_hit(book, *found);
  answer.instead_of = std::string(name);
  return answer;
}

}  // namespace insetbook
