// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/ranks.h"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

#include "book/openings.h"

namespace insetbook {

namespace {

struct DieSize {
  std::int64_t die_id = 0, set_id = 0;
  std::optional<std::int64_t> number;
  std::string edge;  // the kinds of its lines, windows aside
  double area = 0;   // of its largest measured line; 0 = none is measured. A double: it only orders
  double longer = 0;
};

void take_line(DieSize& die, const Statement& row) {
  if (row.is_null(3)) return;
  if (die.edge.find(row.text(3)) == std::string::npos) die.edge += std::string(row.text(3)) + ' ';
  const double width = static_cast<double>(row.integer(4)), height = static_cast<double>(row.integer(5));
  if (width * height <= die.area) return;
  die.area = width * height;
  die.longer = std::max(width, height);
}

std::vector<DieSize> sizes_of_dies(const Book& book, std::optional<std::int64_t> set_id) {
  Statement& row = book.statement(
      "SELECT d.id, d.set_id, d.rank, l.kind, m.width_nm, m.height_nm FROM die d "
      "LEFT JOIN line l ON l.die_id = d.id AND l.kind <> 'window' "
      "LEFT JOIN measurement m ON m.line_id = l.id AND m.standing = 'current' "
      "WHERE ?1 IS NULL OR d.set_id = ?1 ORDER BY d.set_id, d.id, l.kind");
  row.bind(1, set_id);
  std::vector<DieSize> dies;
  while (row.step()) {
    if (dies.empty() || dies.back().die_id != row.integer(0)) {
      DieSize& die = dies.emplace_back();
      die.die_id = row.integer(0);
      die.set_id = row.integer(1);
      die.number = row.maybe_integer(2);
    }
    take_line(dies.back(), row);
  }
  return dies;
}

// A set alternates when two kinds of edge, with at least two dies each, take turns by size more than once.
bool alternates(const std::vector<DieSize>& by_size) {
  std::map<std::string, int> dies_of_edge;
  int turns = 0;
  for (std::size_t i = 0; i < by_size.size(); ++i) {
    ++dies_of_edge[by_size[i].edge];
    if (i > 0 && by_size[i].edge != by_size[i - 1].edge) ++turns;
  }
  const auto several =
      std::count_if(dies_of_edge.begin(), dies_of_edge.end(), [](const auto& e) { return e.second > 1; });
  return several > 1 && turns > 1;
}

void rank_by_number(const std::vector<DieSize>& dies, std::vector<RankedDie>& ranked) {
  for (const DieSize& die : dies) {
    ranked.push_back(
        {die.die_id, die.set_id, static_cast<int>(die.number.value_or(0)), 0, static_cast<int>(dies.size())});
  }
}

void rank_by_size(std::vector<DieSize> dies, std::vector<RankedDie>& ranked) {
  const auto count = static_cast<int>(dies.size());
  std::stable_sort(dies.begin(), dies.end(), [](const DieSize& a, const DieSize& b) {
    return std::tie(a.area, a.longer) > std::tie(b.area, b.longer);
  });
  std::vector<DieSize> measured;
  std::copy_if(dies.begin(), dies.end(), std::back_inserter(measured),
               [](const DieSize& die) { return die.area > 0; });
  const bool alternating = alternates(measured);
  std::map<std::string, std::pair<int, int>> edges;  // the edge's number and its last rank
  for (const DieSize& die : dies) {
    auto& [edge, last] =
        edges.try_emplace(alternating ? die.edge : "", static_cast<int>(edges.size()), 0).first->second;
    ranked.push_back({die.die_id, die.set_id, die.area > 0 ? ++last : 0, edge, count});
  }
}

}  // namespace

std::vector<RankedDie> ranked_dies(const Book& book, std::optional<std::int64_t> set_id) {
  const std::vector<DieSize> all = sizes_of_dies(book, set_id);
  std::vector<RankedDie> ranked;
  for (auto from = all.begin(); from != all.end();) {
    const auto to =
        std::find_if(from, all.end(), [&](const DieSize& die) { return die.set_id != from->set_id; });
    const std::vector<DieSize> set(from, to);
    const bool numbered = std::any_of(from, to, [](const DieSize& die) { return die.number.has_value(); });
    const auto begin = static_cast<std::ptrdiff_t>(ranked.size());
    numbered ? rank_by_number(set, ranked) : rank_by_size(set, ranked);
    std::stable_sort(ranked.begin() + begin, ranked.end(), [](const RankedDie& a, const RankedDie& b) {
      return std::pair(a.rank == 0, a.rank) < std::pair(b.rank == 0, b.rank);
    });
    from = to;
  }
  return ranked;
}

std::vector<std::pair<std::int64_t, int>> ranks_of_set(const Book& book, std::int64_t set_id) {
  std::vector<std::pair<std::int64_t, int>> ranks;
  for (const RankedDie& die : ranked_dies(book, set_id)) ranks.emplace_back(die.die_id, die.rank);
  return ranks;
}

}  // namespace insetbook
