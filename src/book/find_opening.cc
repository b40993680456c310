// SPDX-License-Identifier: GPL-3.0-or-later
//
// Which opening a person means: first the dies that answer to the name, then those of the rank asked for,
// then one line of each. One line left is the answer.
#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "book/names.h"
#include "book/openings.h"
#include "book/plural.h"
#include "book/ranks.h"
#include "book/records.h"
#include "book/upsert.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

struct DiesMeant {
  std::vector<std::int64_t> dies;
  std::string read_as;  // where the name was misspelt and is one set's or one die's
  bool misspelt = false;
};

std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
  std::string text;
  for (std::size_t i = from; i < to; ++i) text += (text.empty() ? "" : " ") + words[i];
  return text;
}

std::vector<std::string> split(std::string_view folded) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < folded.size();) {
    const std::size_t end = std::min(folded.find(' ', at), folded.size());
    if (end > at) words.emplace_back(folded.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

std::vector<std::int64_t> dies_of_set(const Book& book, std::int64_t set_id) {
  std::vector<std::int64_t> dies;
  for (const RankedDie& die : ranked_dies(book, set_id)) dies.push_back(die.die_id);
  return dies;
}

// A label, or the die's number where it is labelled by something else.
std::optional<std::int64_t> die_of_set(const Book& book, std::int64_t set_id, std::string_view label) {
  Statement& by_label = book.statement("SELECT id FROM die WHERE set_id = ? AND key = ?");
  by_label.bind_all(set_id, label);
  if (const auto id = first_integer(by_label)) return id;
  if (label.empty() || label.size() > 3 || label.find_first_not_of("0123456789") != std::string_view::npos)
    return {};
  for (const RankedDie& die : ranked_dies(book, set_id)) {
    if (std::to_string(die.rank) == label) return die.die_id;
  }
  return std::nullopt;
}

// "tidepool rectangles 2", "2 tidepool rectangles", "tidepool rectangle": by the indexes of names.
std::vector<std::int64_t> dies_named(const Book& book, const std::vector<std::string>& words) {
  std::set<std::int64_t> found;
  for (std::size_t cut = 1; cut < words.size(); ++cut) {
    const std::string first = joined(words, 0, cut), second = joined(words, cut, words.size());
    for (const auto& [set, label] : {std::pair(first, second), std::pair(second, first)}) {
      const auto set_id = set_named(book, set);
      if (!set_id) continue;
      if (const auto die = die_of_set(book, *set_id, label)) found.insert(*die);
    }
  }
  if (!found.empty()) return {found.begin(), found.end()};
  const std::string whole = joined(words, 0, words.size());
  Statement& by_label = book.statement("SELECT id FROM die WHERE key = ?");
  for (const std::string& form : number_forms(whole)) {
    by_label.reset();
    by_label.bind(1, std::string_view(form));
    while (by_label.step()) found.insert(by_label.integer(0));
    if (!found.empty()) return {found.begin(), found.end()};
  }
  if (const auto set_id = set_named(book, whole)) return dies_of_set(book, *set_id);
  return {};
}

bool all_among(const std::vector<std::string>& asked, const std::vector<std::string>& words) {
  return std::all_of(asked.begin(), asked.end(), [&](const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
  });
}

// Every word is one of the set's name, of the die's label, or its number. Where the set's name alone has all
// of them, all its dies are meant; but a die that needed its label is meant more closely.
std::vector<std::int64_t> dies_with_words(const Book& book, const std::vector<std::string>& asked) {
  Statement& row =
      book.statement("SELECT d.id, s.key, d.key, d.rank FROM die d JOIN die_set s ON s.id = d.set_id");
  std::vector<std::int64_t> by_label, by_set;
  while (row.step()) {
    std::vector<std::string> words = singular_words(row.text(1));
    if (all_among(asked, words)) {
      by_set.push_back(row.integer(0));
      continue;
    }
    for (std::string& word : singular_words(row.text(2))) words.push_back(std::move(word));
    if (!row.is_null(3)) words.push_back(std::to_string(row.integer(3)));
    if (all_among(asked, words)) by_label.push_back(row.integer(0));
  }
  return by_label.empty() ? by_set : by_label;
}

DiesMeant dies_like(const Book& book, const std::string& name) {
  constexpr std::size_t most_listed = 10;
  DiesMeant meant;
  meant.misspelt = true;
  for (const RecordKind kind : {RecordKind::set, RecordKind::die}) {
    const std::vector<NameHit> hits = find_names(book, name, kind, most_listed);
    for (const NameHit& hit : hits) {
      const auto dies = kind == RecordKind::set ? dies_of_set(book, hit.id) : std::vector{hit.id};
      meant.dies.insert(meant.dies.end(), dies.begin(), dies.end());
    }
    if (hits.size() == 1) meant.read_as = hits.front().name;
    if (!hits.empty()) break;
  }
  return meant;
}

DiesMeant dies_meant(const Book& book, const std::string& name) {
  const std::vector<std::string> words = split(name);
  DiesMeant meant;
  if (words.empty()) return meant;
  meant.dies = dies_named(book, words);
  if (meant.dies.empty()) meant.dies = dies_with_words(book, singular_words(name));
  if (meant.dies.empty()) meant = dies_like(book, name);
  return meant;
}

// ---- ranks

std::int64_t set_of_die(const Book& book, std::int64_t die_id) {
  Statement& statement = book.statement("SELECT set_id FROM die WHERE id = ?");
  statement.bind(1, die_id);
  return first_integer(statement).value_or(0);
}

std::vector<RankedDie> ranked(const Book& book, const std::vector<std::int64_t>& dies) {
  std::set<std::int64_t> sets;
  for (const std::int64_t die : dies) sets.insert(set_of_die(book, die));
  std::vector<RankedDie> all;
  for (const std::int64_t set : sets) {
    for (const RankedDie& die : ranked_dies(book, set)) {
      if (std::find(dies.begin(), dies.end(), die.die_id) != dies.end()) all.push_back(die);
    }
  }
  return all;
}

std::vector<std::int64_t> of_rank(const std::vector<RankedDie>& dies, const OpeningWanted& wanted) {
  std::vector<std::int64_t> found;
  for (const RankedDie& die : dies) {
    if (wanted.rank && die.rank == *wanted.rank) found.push_back(die.die_id);
    if (!wanted.rank_from_smallest || die.rank == 0) continue;
    const auto smaller = std::count_if(dies.begin(), dies.end(), [&](const RankedDie& other) {
      return other.set_id == die.set_id && other.edge == die.edge && other.rank > die.rank;
    });
    if (smaller + 1 == *wanted.rank_from_smallest) found.push_back(die.die_id);
  }
  return found;
}

// ---- lines

bool is_line(const OpeningRecord& opening, std::string_view line) {
  return fold(opening.line) == line || opening.line_kind == line;
}

// The lines of a die that answer: the one named; else the innermost that is no window; else its windows.
std::vector<OpeningRecord> lines_meant(const Book& book, std::int64_t die_id, const std::string& line) {
  const std::vector<OpeningRecord> all = openings_of_die(book, die_id);
  std::vector<OpeningRecord> found;
  for (const OpeningRecord& one : all) {
    if (line.empty() ? one.line_kind == "window" : is_line(one, line)) found.push_back(one);
  }
  if (line.empty()) {
    const auto innermost = std::find_if(all.rbegin(), all.rend(),
                                        [](const OpeningRecord& one) { return one.line_kind != "window"; });
    return innermost != all.rend() ? std::vector{*innermost} : found;
  }
  const auto named = std::find_if(found.begin(), found.end(),
                                  [&](const OpeningRecord& one) { return fold(one.line) == line; });
  // "window" is the kind of all windows, and the name of one: the others are told beside the answer.
  if (named != found.end()) return {*named};
  return found;
}

std::string typed_name(const OpeningRecord& opening) {
  return fmt::format("{} {}, {}", opening.set, opening.die, opening.line);
}

void list(Problem& problem, const std::vector<OpeningRecord>& openings) {
  for (const OpeningRecord& one : openings) problem.candidates.push_back(typed_name(one));
}

std::vector<std::string> names_of_sets(const Book& book, std::int64_t limit) {
  Statement& statement = book.statement("SELECT name FROM die_set ORDER BY key LIMIT ?");
  statement.bind(1, limit);
  std::vector<std::string> names;
  while (statement.step()) names.emplace_back(statement.text(0));
  return names;
}

// The dies of the set that the name begins with ("tidepool rectangles 9"), else the sets that are like it,
// else all sets.
std::vector<std::string> near_names(const Book& book, const std::string& name) {
  constexpr std::size_t most_like = 5;
  constexpr std::int64_t most_sets = 20;
  std::vector<std::string> near;
  for (std::size_t end = name.size(); end != std::string::npos && end > 0; end = name.rfind(' ', end - 1)) {
    const std::vector<NameHit> sets = find_names(book, name.substr(0, end), RecordKind::set, most_like);
    if (sets.size() == 1) {
      for (const auto& [die, rank] : ranks_of_set(book, sets.front().id))
        near.push_back(record_name(book, RecordKind::die, die));
      return near;
    }
    for (const NameHit& set : sets) near.push_back(set.name);
    if (!near.empty()) return near;
    if (end == 0) break;
  }
  return names_of_sets(book, most_sets);
}

Problem no_such_die(const Book& book, const OpeningWanted& wanted) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = fmt::format("no die answers to {}", in_quotes(wanted.text));
  problem.where.text = wanted.text;
  problem.candidates = near_names(book, wanted.name);
  problem.expected = problem.candidates.empty()
                         ? "the book has no dies yet: \"insetbook import\" takes a table of them"
                         : "the name of a set and the die's label or order";
  return problem;
}

Problem no_such_rank(const Book& book, const OpeningWanted& wanted, const std::vector<RankedDie>& dies) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  const auto known =
      std::count_if(dies.begin(), dies.end(), [](const RankedDie& die) { return die.rank > 0; });
  problem.what = known == 0
                     ? fmt::format("the order of the dies in {} is not known: none is numbered or measured",
                                   in_quotes(wanted.text))
                     : fmt::format("{}: there are {} dies in order, and none has that place",
                                   in_quotes(wanted.text), known);
  problem.where.text = wanted.text;
  problem.expected = "one of these dies";
  for (const RankedDie& die : dies)
    problem.candidates.push_back(record_name(book, RecordKind::die, die.die_id));
  return problem;
}

Problem no_such_line(const Book& book, const OpeningWanted& wanted, const std::vector<std::int64_t>& dies) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = dies.size() == 1 ? fmt::format("{} has no {} line",
                                                record_name(book, RecordKind::die, dies.front()), wanted.line)
                                  : fmt::format("none of the dies that answer to {} has a {} line",
                                                in_quotes(wanted.text), wanted.line);
  if (wanted.line.empty())
    problem.what = fmt::format("{}: no line of it is in the book", in_quotes(wanted.text));
  problem.where.text = wanted.text;
  problem.expected = "one of the lines it has";
  for (const std::int64_t die : dies) list(problem, openings_of_die(book, die));
  if (problem.candidates.empty())
    problem.expected = "\"insetbook measure\" or a table of dies adds its lines";
  return problem;
}

Problem several_openings(const OpeningWanted& wanted, const std::vector<OpeningRecord>& found) {
  Problem problem;
  problem.kind = ProblemKind::ambiguous;
  const bool one_die = std::all_of(found.begin(), found.end(), [&](const OpeningRecord& one) {
    return one.die_id == found.front().die_id;
  });
  problem.what =
      fmt::format("{} {} answer to {}", found.size(), one_die ? "lines" : "dies", in_quotes(wanted.text));
  problem.where.text = wanted.text;
  problem.expected = "one of these";
  list(problem, found);
  return problem;
}

}  // namespace

std::vector<std::int64_t> dies_wanted(const Book& book, const OpeningWanted& wanted) {
  const DiesMeant meant = dies_meant(book, wanted.name);
  if (meant.misspelt) return {};
  const std::vector<RankedDie> dies = ranked(book, meant.dies);
  if (wanted.rank || wanted.rank_from_smallest) return of_rank(dies, wanted);
  std::vector<std::int64_t> ids;
  for (const RankedDie& die : dies) ids.push_back(die.die_id);
  return ids;
}

Result<OpeningRecord> find_opening(const Book& book, const OpeningWanted& wanted) {
  DiesMeant meant = dies_meant(book, wanted.name);
  if (meant.dies.empty()) return failure(no_such_die(book, wanted));
  if (wanted.rank || wanted.rank_from_smallest) {
    const std::vector<RankedDie> dies = ranked(book, meant.dies);
    meant.dies = of_rank(dies, wanted);
    if (meant.dies.empty()) return failure(no_such_rank(book, wanted, dies));
  }
  const std::string line = fold(wanted.line);
  std::vector<OpeningRecord> found;
  for (const std::int64_t die : meant.dies) {
    for (OpeningRecord& one : lines_meant(book, die, line)) found.push_back(std::move(one));
  }
  if (found.empty()) return failure(no_such_line(book, wanted, meant.dies));
  if (found.size() > 1) return failure(several_openings(wanted, found));
  found.front().read_as = meant.read_as;
  return found.front();
}

}  // namespace insetbook
