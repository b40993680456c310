// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/openings.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <tuple>
#include <unordered_map>

#include "book/ranks.h"
#include "book/units.h"

namespace insetbook {

namespace {

OpeningRecord read_opening_record(const Statement& row) {
  OpeningRecord record;
  record.line_id = row.integer(0);
  record.die_id = row.integer(1);
  record.set_id = row.integer(2);
  record.set = row.text(3);
  record.die = row.text(4);
  record.line = row.text(5);
  record.line_kind = row.text(6);
  record.shape_word = row.text(7);
  record.figures = row.text(8);
  record.outline = row.text(9);
  record.outline_unit = row.text(10);
  record.measured = !row.is_null(11);
  record.width = Length::nm(row.integer(11));
  record.height = Length::nm(row.integer(12));
  record.unit = unit_of(row.text(13));
  record.give_or_take = Length::nm(row.integer(14));
  return record;
}

// What read_opening_record reads, of lines measured or not.
constexpr std::string_view select_lines =
    "SELECT l.id, d.id, s.id, s.name, d.label, l.name, l.kind, l.shape, l.figures, l.outline, "
    "l.outline_unit, "
    "m.width_nm, m.height_nm, m.unit, m.give_nm FROM line l JOIN die d ON d.id = l.die_id JOIN die_set s ON "
    "s.id = d.set_id LEFT JOIN measurement m ON m.line_id = l.id AND m.standing = 'current' WHERE ";

std::string lines_where(std::string_view condition) {
  return std::string(select_lines) + std::string(condition);
}

std::vector<OpeningRecord> read_all(Statement& statement) {
  std::vector<OpeningRecord> all;
  while (statement.step()) all.push_back(read_opening_record(statement));
  return all;
}

void set_ranks(std::vector<OpeningRecord>& openings, const std::vector<RankedDie>& ranks) {
  std::unordered_map<std::int64_t, const RankedDie*> by_die;
  for (const RankedDie& die : ranks) by_die.emplace(die.die_id, &die);
  for (OpeningRecord& opening : openings) {
    const auto found = by_die.find(opening.die_id);
    if (found == by_die.end()) continue;
    opening.rank = found->second->rank;
    opening.dies_in_set = found->second->in_set;
  }
}

int kind_order(std::string_view kind) {
  return kind == "cut" ? 0 : kind == "window" ? 2 : 1;
}

double area(const OpeningRecord& opening) {
  return opening.measured ? static_cast<double>(opening.width.nm()) * static_cast<double>(opening.height.nm())
                          : 0;
}

// By size where all of them are measured; else the cut edge is outermost. Windows last.
void sort_outermost_first(std::vector<OpeningRecord>::iterator from,
                          std::vector<OpeningRecord>::iterator to) {
  const bool by_size =
      std::all_of(from, to, [](const OpeningRecord& o) { return o.measured || o.line_kind == "window"; });
  std::stable_sort(from, to, [&](const OpeningRecord& a, const OpeningRecord& b) {
    const bool a_window = a.line_kind == "window", b_window = b.line_kind == "window";
    if (a_window != b_window) return b_window;
    if (by_size && area(a) != area(b)) return area(a) > area(b);
    if (kind_order(a.line_kind) != kind_order(b.line_kind))
      return kind_order(a.line_kind) < kind_order(b.line_kind);
    return area(a) > area(b);
  });
}

}  // namespace

std::optional<OpeningRecord> opening(const Book& book, std::int64_t line_id) {
  static const std::string sql = lines_where("l.id = ?");
  Statement& statement = book.statement(sql);
  statement.bind(1, line_id);
  std::vector<OpeningRecord> found = read_all(statement);
  if (found.empty()) return std::nullopt;
  set_ranks(found, ranked_dies(book, found.front().set_id));
  return found.front();
}

std::vector<OpeningRecord> openings_of_die(const Book& book, std::int64_t die_id) {
  static const std::string sql = lines_where("d.id = ? ORDER BY l.id");
  Statement& statement = book.statement(sql);
  statement.bind(1, die_id);
  std::vector<OpeningRecord> found = read_all(statement);
  if (found.empty()) return found;
  set_ranks(found, ranked_dies(book, found.front().set_id));
  sort_outermost_first(found.begin(), found.end());
  return found;
}

std::vector<OpeningRecord> openings_of_set(const Book& book, std::int64_t set_id) {
  static const std::string sql = lines_where("d.set_id = ? ORDER BY d.id, l.id");
  Statement& statement = book.statement(sql);
  statement.bind(1, set_id);
  std::vector<OpeningRecord> found = read_all(statement);
  set_ranks(found, ranked_dies(book, set_id));
  for (auto from = found.begin(); from != found.end();) {
    const auto to =
        std::find_if(from, found.end(), [&](const OpeningRecord& o) { return o.die_id != from->die_id; });
    sort_outermost_first(from, to);
    from = to;
  }
  std::stable_sort(found.begin(), found.end(), [](const OpeningRecord& a, const OpeningRecord& b) {
    return std::pair(a.rank == 0, a.rank) < std::pair(b.rank == 0, b.rank);
  });
  return found;
}

std::vector<OpeningRecord> measured_openings(const Book& book, std::optional<std::int64_t> set_id) {
  static const std::string sql =
      lines_where("m.id IS NOT NULL AND (?1 IS NULL OR d.set_id = ?1) ORDER BY l.id");
  Statement& statement = book.statement(sql);
  statement.bind(1, set_id);
  std::vector<OpeningRecord> found = read_all(statement);
  set_ranks(found, ranked_dies(book, set_id));
  return found;
}

namespace {

Problem not_measured(const OpeningRecord& opening) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what = fmt::format("{} is not measured yet", describe(opening));
  problem.expected = fmt::format("its size: insetbook measure \"{} {}, {}\" --size SIZE", opening.set,
                                 opening.die, opening.line);
  return problem;
}

std::string order_word(int rank) {
  static constexpr std::array<std::string_view, 13> words{
      "",         "",        "second ", "third ", "fourth ",   "fifth ",  "sixth ",
      "seventh ", "eighth ", "ninth ",  "tenth ", "eleventh ", "twelfth "};
  if (rank < static_cast<int>(words.size())) return std::string(words[static_cast<std::size_t>(rank)]);
  const int last = rank % 10;
  const bool teen = rank % 100 >= 11 && rank % 100 <= 13;
  return fmt::format("{}{} ", rank,
                     teen        ? "th"
                     : last == 1 ? "st"
                     : last == 2 ? "nd"
                     : last == 3 ? "rd"
                                 : "th");
}

}  // namespace

Result<Shape> shape_of(const OpeningRecord& opening) {
  if (!opening.measured) return failure(not_measured(opening));
  Size size;
  size.width = opening.width;
  size.height = opening.height;
  size.unit = opening.unit;
  // A regular polygon alone takes its height from its width; of others two equal figures are two figures.
  size.one_figure = opening.width == opening.height && shape_kind(opening.shape_word) == ShapeKind::polygon;
  size.orientation = Orientation::said;
  Result<Shape> shape = make_shape(opening.shape_word, size, opening.figures, opening.unit);
  if (shape && !opening.outline.empty()) shape->outline = opening.outline;
  return shape;
}

std::string describe(const OpeningRecord& opening) {
  std::string text = opening.set + " " + opening.die;
  if (opening.rank > 0) text += fmt::format(" ({}largest)", order_word(opening.rank));
  return text + ", " + opening.line;
}

// ---- what was tried

namespace {

// Columns: id, shape, width, height, unit.
TriedPanel read_panel(const Statement& row) {
  TriedPanel panel;
  panel.id = row.integer(0);
  panel.shape = row.text(1);
  panel.width = Length::nm(row.integer(2));
  panel.height = Length::nm(row.integer(3));
  panel.unit = unit_of(row.text(4));
  return panel;
}

std::vector<TriedPanel> tried_by_hand_in(const Book& book, std::int64_t line_id) {
  std::vector<TriedPanel> panels;
  Statement& row = book.statement(
      "SELECT t.id, t.shape, t.width_nm, t.height_nm, t.unit, t.result, t.tried_on, s.title, t.note "
      "FROM tried t LEFT JOIN sample s ON s.id = t.sample_id WHERE t.line_id = ? "
      "ORDER BY t.tried_on DESC, t.id DESC");
  row.bind(1, line_id);
  while (row.step()) {
    TriedPanel& panel = panels.emplace_back(read_panel(row));
    panel.result = row.text(5);
    panel.date = row.text(6);
    panel.sample = row.text(7);
    panel.note = row.text(8);
  }
  return panels;
}

// From the index alone: the piece's name, its note and its sample are not known yet.
std::vector<TriedPanel> pieces_in(const Book& book, std::int64_t line_id) {
  std::vector<TriedPanel> panels;
  Statement& row = book.statement(
      "SELECT id, shape, width_nm, height_nm, unit FROM element "
      "WHERE in_line_id = ? AND width_nm IS NOT NULL AND height_nm IS NOT NULL");
  row.bind(1, line_id);
  while (row.step()) {
    TriedPanel& panel = panels.emplace_back(read_panel(row));
    panel.result = "fits";
    panel.from_sample = true;
  }
  return panels;
}

void add_sample(const Book& book, TriedPanel& panel) {
  Statement& row = book.statement(
      "SELECT s.made, s.title, e.note, e.name FROM element e JOIN sample s ON s.id = e.sample_id "
      "WHERE e.id = ?");
  row.bind(1, panel.id);
  if (row.step()) {
    panel.date = row.text(0);
    panel.sample = row.text(1);
    panel.note = row.text(2);
    panel.element = row.text(3);
  }
  row.reset();
}

}  // namespace

std::vector<TriedPanel> tried_in(const Book& book, std::int64_t line_id, const PieceWanted& wanted) {
  std::vector<TriedPanel> panels = tried_by_hand_in(book, line_id);
  std::vector<TriedPanel> pieces = pieces_in(book, line_id);
  if (wanted) std::erase_if(pieces, [&](const TriedPanel& piece) { return !wanted(piece); });
  for (TriedPanel& piece : pieces) add_sample(book, piece);
  std::sort(pieces.begin(), pieces.end(), [](const TriedPanel& a, const TriedPanel& b) {
    return std::tie(a.date, a.id) > std::tie(b.date, b.id);
  });
  panels.insert(panels.end(), std::make_move_iterator(pieces.begin()), std::make_move_iterator(pieces.end()));
  return panels;
}

namespace {

// The rows come in order of line, shape, size and result; the newest sample of each is known.
std::vector<TriedCount> count_rows(Statement& row) {
  std::vector<TriedCount> counts;
  while (row.step()) {
    TriedCount next;
    next.line_id = row.integer(0);
    next.shape = row.text(1);
    next.width = Length::nm(row.integer(2));
    next.height = Length::nm(row.integer(3));
    next.result = row.text(5);
    TriedCount* last = counts.empty() ? nullptr : &counts.back();
    const bool same = last != nullptr && last->line_id == next.line_id && last->shape == next.shape &&
                      last->width == next.width && last->height == next.height && last->result == next.result;
    if (!same) {
      next.unit = unit_of(row.text(4));
      last = &counts.emplace_back(std::move(next));
    }
    (row.integer(7) != 0 ? last->by_hand : last->pieces) += row.integer(8);
    const auto sample = row.maybe_integer(6);
    if (sample && std::find(last->samples.begin(), last->samples.end(), *sample) == last->samples.end()) {
      last->samples.push_back(*sample);
    }
  }
  for (TriedCount& count : counts) std::sort(count.samples.rbegin(), count.samples.rend());
  return counts;
}

void add_newest_samples(const Book& book, TriedCount& count) {
  constexpr std::size_t samples_named = 5;
  Statement& row = book.statement(
      "SELECT DISTINCT sample_id FROM element WHERE in_line_id = ? AND shape = ? AND width_nm = ? AND "
      "height_nm = ? "
      "ORDER BY sample_id DESC LIMIT 5");
  row.bind_all(count.line_id, std::string_view(count.shape), count.width.nm(), count.height.nm());
  while (row.step()) {
    if (std::find(count.samples.begin(), count.samples.end(), row.integer(0)) == count.samples.end()) {
      count.samples.push_back(row.integer(0));
    }
  }
  std::sort(count.samples.rbegin(), count.samples.rend());
  if (count.samples.size() > samples_named) count.samples.resize(samples_named);
}

}  // namespace

std::vector<TriedCount> tried_counts_in(const Book& book, std::int64_t line_id) {
  Statement& statement = book.statement(
      "SELECT line_id, shape, width_nm, height_nm, unit, result, sample_id, 1, 1 FROM tried WHERE line_id = "
      "?1 "
      "UNION ALL SELECT in_line_id, shape, width_nm, height_nm, unit, 'fits', max(sample_id), 0, count(*) "
      "FROM element "
      "WHERE in_line_id = ?1 AND width_nm IS NOT NULL AND height_nm IS NOT NULL "
      "GROUP BY in_line_id, shape, width_nm, height_nm ORDER BY 1, 2, 3, 4, 6, 7 DESC");
  statement.bind(1, line_id);
  std::vector<TriedCount> counts = count_rows(statement);
  for (TriedCount& count : counts) {
    if (count.pieces > 0) add_newest_samples(book, count);
  }
  return counts;
}

std::optional<TriedCount> fits_by_hand_in(const Book& book, std::int64_t line_id) {
  Statement& row = book.statement(
      "SELECT line_id, shape, width_nm, height_nm, unit, result, sample_id, 1, 1 FROM tried WHERE line_id = "
      "? "
      "AND result = 'fits' ORDER BY shape, width_nm, height_nm LIMIT 1");
  row.bind(1, line_id);
  std::vector<TriedCount> counts = count_rows(row);
  row.reset();
  if (counts.empty()) return std::nullopt;
  return std::move(counts.front());
}

// Two plain walks over indexes: no sorting, and no look at the samples.
std::vector<TriedCount> tried_counts_in_set(const Book& book, std::int64_t set_id) {
  std::vector<TriedCount> counts;
  const auto add = [&](Statement& row, std::int64_t TriedCount::*many) {
    row.bind(1, set_id);
    while (row.step()) {
      TriedCount& count = counts.emplace_back();
      count.line_id = row.integer(0);
      count.shape = row.text(1);
      count.width = Length::nm(row.integer(2));
      count.height = Length::nm(row.integer(3));
      count.unit = unit_of(row.text(4));
      count.result = row.text(5);
      count.*many = row.integer(6);
    }
    row.reset();
  };
  add(book.statement(
          "SELECT line_id, shape, width_nm, height_nm, unit, result, 1 FROM tried WHERE line_id IN "
          "(SELECT l.id FROM line l JOIN die d ON d.id = l.die_id WHERE d.set_id = ?1)"),
      &TriedCount::by_hand);
  add(book.statement("SELECT in_line_id, shape, width_nm, height_nm, unit, 'fits', count(*) FROM element "
                     "WHERE in_line_id IN "
                     "(SELECT l.id FROM line l JOIN die d ON d.id = l.die_id WHERE d.set_id = ?1) "
                     "AND width_nm IS NOT NULL AND height_nm IS NOT NULL GROUP BY in_line_id, shape, "
                     "width_nm, height_nm"),
      &TriedCount::pieces);
  return counts;
}

}  // namespace insetbook
