// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/evidence.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "book/units.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

Measured read_measured(const Statement& row) {
  Measured measured;
  measured.id = row.integer(0);
  measured.line_id = row.integer(1);
  measured.standing = row.text(2);
  measured.width = Length::nm(row.integer(3));
  measured.height = Length::nm(row.integer(4));
  measured.unit = unit_of(row.text(5));
  measured.method = row.text(6);
  measured.mark = maybe_length(row.maybe_integer(7));
  measured.give_or_take = Length::nm(row.integer(8));
  measured.date = row.text(9);
  measured.note = row.text(10);
  return measured;
}

bool same_measurement(const Measured& a, const Measured& b) {
  return a.width == b.width && a.height == b.height && a.method == b.method && a.mark == b.mark &&
         a.date == b.date;
}

bool within(Length a, Length b, Length allowed) {
  return a - b <= allowed && b - a <= allowed;
}

// A die can lie on the table either way round, so figures that agree when turned agree.
bool agrees(const Measured& a, const Measured& b) {
  const Length allowed = a.give_or_take + b.give_or_take;
  return (within(a.width, b.width, allowed) && within(a.height, b.height, allowed)) ||
         (within(a.width, b.height, allowed) && within(a.height, b.width, allowed));
}

void insert_measurement(const Book& book, const Measured& measured, std::string_view standing) {
  book.statement(
          "INSERT INTO measurement (line_id, standing, width_nm, height_nm, unit, method, mark_nm, give_nm, "
          "measured, "
          "note) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .bind_all(measured.line_id, standing, measured.width.nm(), measured.height.nm(),
                unit_word(measured.unit), std::string_view(measured.method), nm_of(measured.mark),
                measured.give_or_take.nm(), std::string_view(measured.date), std::string_view(measured.note))
      .run();
}

void set_standing(const Book& book, std::int64_t id, std::string_view standing) {
  book.statement("UPDATE measurement SET standing = ? WHERE id = ?").bind_all(standing, id).run();
}

// Once a person has said which figure stands, nothing is in conflict with it any more.
void settle_on(const Book& book, const Measured& accepted) {
  for (const Measured& one : measurements_of(book, accepted.line_id)) {
    if (one.standing == "current" || one.standing == "earlier") continue;
    const std::string_view standing = agrees(one, accepted) ? "confirmation" : "earlier";
    if (one.standing != standing) set_standing(book, one.id, standing);
  }
}

std::vector<std::string> samples_that_used(const Book& book, std::int64_t line_id) {
  Statement& statement = book.statement(
      "SELECT title FROM sample WHERE id IN ("
      "SELECT sample_id FROM element WHERE line_id = ?1 UNION SELECT sample_id FROM element WHERE in_line_id "
      "= ?1 "
      "UNION SELECT sample_id FROM tried WHERE line_id = ?1 AND sample_id IS NOT NULL) ORDER BY made DESC, "
      "title");
  statement.bind(1, line_id);
  std::vector<std::string> titles;
  while (statement.step()) titles.emplace_back(statement.text(0));
  return titles;
}

}  // namespace

Length give_or_take(std::string_view method, std::optional<Length> mark, Unit) {
  if (mark) return *mark / 2;
  if (method == "drawing" || method == "maker's figure") return Length();
  // Callipers and a scan with no mark stated: 0.1 mm (common practice, no source).
  if (method == "callipers" || method == "scan") return Length::nm(100'000) / 2;
  return Length::inch_fraction(1, 16) / 2;
}

std::string measuring_method(std::string_view word) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 24> words{{
      {"ruler", "ruler"},
      {"rule", "ruler"},
      {"tape", "ruler"},
      {"tape measure", "ruler"},
      {"by ruler", "ruler"},
      {"callipers", "callipers"},
      {"calliper", "callipers"},
      {"calipers", "callipers"},
      {"caliper", "callipers"},
      {"vernier", "callipers"},
      {"scan", "scan"},
      {"scanned", "scan"},
      {"scanner", "scan"},
      {"drawing", "drawing"},
      {"drawn", "drawing"},
      {"svg", "drawing"},
      {"makers figure", "maker's figure"},
      {"maker figure", "maker's figure"},
      {"maker", "maker's figure"},
      {"makers", "maker's figure"},
      {"estimated", "estimated"},
      {"estimate", "estimated"},
      {"guess", "estimated"},
      {"guessed", "estimated"},
  }};
  const std::string folded = fold(word);
  for (const auto& [said, method] : words) {
    if (said == folded) return std::string(method);
  }
  return {};
}

Result<MeasureOutcome> record_measurement(Change& change, Measured measured, bool accept) {
  const Book& book = change.book();
  if (measured.method.empty()) measured.method = "ruler";
  measured.give_or_take = give_or_take(measured.method, measured.mark, measured.unit);
  const std::vector<Measured> known = measurements_of(book, measured.line_id);
  const bool has_current = !known.empty() && known.front().standing == "current";
  const auto same = std::find_if(known.begin(), known.end(),
                                 [&](const Measured& one) { return same_measurement(one, measured); });

  MeasureOutcome outcome;
  if (accept) settle_on(book, measured);
  if (same != known.end() && (!accept || same->standing == "current")) {
    // Said again it is no less of a conflict.
    const bool unsettled = same->standing == "conflict";
    outcome.result = unsettled ? MeasureResult::conflict : MeasureResult::same;
    if (unsettled) outcome.used_by = samples_that_used(book, measured.line_id);
  } else if (!has_current || accept) {
    if (has_current) set_standing(book, known.front().id, "earlier");
    same != known.end() ? set_standing(book, same->id, "current")
                        : insert_measurement(book, measured, "current");
    outcome.result = MeasureResult::added;
  } else if (agrees(measured, known.front())) {
    insert_measurement(book, measured, "confirmation");
    outcome.result = MeasureResult::confirmed;
  } else {
    insert_measurement(book, measured, "conflict");
    outcome.result = MeasureResult::conflict;
    outcome.used_by = samples_that_used(book, measured.line_id);
  }
  outcome.known = measurements_of(book, measured.line_id);
  return outcome;
}

std::vector<Measured> measurements_of(const Book& book, std::int64_t line_id) {
  Statement& statement = book.statement(
      "SELECT id, line_id, standing, width_nm, height_nm, unit, method, mark_nm, give_nm, measured, note "
      "FROM measurement WHERE line_id = ? ORDER BY standing <> 'current', measured DESC, id DESC");
  statement.bind(1, line_id);
  std::vector<Measured> all;
  while (statement.step()) all.push_back(read_measured(statement));
  return all;
}

}  // namespace insetbook
