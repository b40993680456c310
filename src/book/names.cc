// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/names.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <set>
#include <tuple>
#include <unordered_map>

#include "book/plural.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// More than a person reads; a name that many others resemble is not found by looking further.
constexpr std::int64_t most_candidates = 200;

NameHit hit_of_row(const Book& book, std::int64_t row, NameHit::How how) {
  NameHit hit;
  hit.kind = static_cast<RecordKind>(row % 8);
  hit.id = row / 8;
  hit.name = record_name(book, hit.kind, hit.id);
  hit.how = how;
  return hit;
}

std::vector<std::int64_t> matching_rows(const Book& book, std::string_view sql, const std::string& match,
                                        std::int64_t limit) {
  Statement& statement = book.statement(sql);
  statement.bind_all(std::string_view(match), limit);
  std::vector<std::int64_t> rows;
  while (statement.step()) rows.push_back(statement.integer(0));
  return rows;
}

// A word in FTS5's own quotes, so that no sign in it is read as its syntax.
std::string quoted_for_fts(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string all_words(const std::vector<std::string>& words) {
  std::string match;
  for (const std::string& word : words) match += (match.empty() ? "" : " AND ") + quoted_for_fts(word) + "*";
  return match;
}

std::vector<std::string> trigrams_of(std::string_view word) {
  std::vector<std::string> trigrams;
  const std::vector<Character> letters = characters(word);
  for (std::size_t i = 0; i + 3 <= letters.size(); ++i) {
    trigrams.emplace_back(word.substr(letters[i].begin, letters[i + 2].end - letters[i].begin));
  }
  return trigrams;
}

// How many mistyped letters a word may have: none in figures and short words, where another word is as near.
std::size_t allowed_mistakes(std::string_view word) {
  const bool figure = word.find_first_of("0123456789") != std::string_view::npos;
  const std::size_t length = characters(word).size();
  if (figure || length < 4) return 0;
  return length < 6 ? 1 : 2;
}

// The sum of mistakes when each word of the question is read as the word of the name nearest to it; empty
// where one is like none of them.
std::optional<std::size_t> mistakes(const std::vector<std::string>& asked,
                                    const std::vector<std::string>& name) {
  std::size_t sum = 0;
  for (const std::string& word : asked) {
    const std::size_t allowed = allowed_mistakes(word);
    std::size_t least = allowed + 1;
    for (const std::string& other : name) {
      least = std::min(least, edit_distance(word, other, allowed));
    }
    if (least > allowed) return std::nullopt;
    sum += least;
  }
  return sum;
}

void keep_kind(std::vector<NameHit>& hits, std::optional<RecordKind> kind) {
  if (kind) std::erase_if(hits, [&](const NameHit& hit) { return hit.kind != *kind; });
}

std::string folded_name(const NameHit& hit) {
  return fold(hit.name);
}

std::vector<NameHit> by_words(const Book& book, const std::vector<std::string>& words,
                              std::optional<RecordKind> kind) {
  if (words.empty()) return {};
  std::vector<NameHit> hits;
  for (const std::int64_t row :
       matching_rows(book, "SELECT rowid FROM name_word WHERE name_word MATCH ? LIMIT ?", all_words(words),
                     most_candidates)) {
    hits.push_back(hit_of_row(book, row, NameHit::How::words));
  }
  keep_kind(hits, kind);
  // Whole words before beginnings of words, short names before long ones.
  std::vector<std::tuple<std::size_t, std::size_t, std::size_t>> order;
  for (std::size_t i = 0; i < hits.size(); ++i) {
    const std::vector<std::string> name = singular_words(folded_name(hits[i]));
    std::size_t beginnings = 0;
    for (const std::string& word : words)
      beginnings += std::find(name.begin(), name.end(), word) == name.end();
    order.emplace_back(beginnings, name.size(), i);
  }
  std::sort(order.begin(), order.end());
  std::vector<NameHit> sorted;
  for (const auto& [beginnings, size, i] : order) sorted.push_back(std::move(hits[i]));
  return sorted;
}

// The names that share most trigrams with a word. A trigram that very many names have says little about any
// of them, so only the first of those are counted.
std::vector<std::int64_t> rows_like(const Book& book, std::string_view word) {
  constexpr std::int64_t most_counted = 2000;
  constexpr std::size_t most_read = 50;
  std::unordered_map<std::int64_t, int> shared;
  for (const std::string& trigram : trigrams_of(word)) {
    for (const std::int64_t row :
         matching_rows(book, "SELECT rowid FROM name_trigram WHERE name_trigram MATCH ? LIMIT ?",
                       quoted_for_fts(trigram), most_counted)) {
      ++shared[row];
    }
  }
  std::vector<std::pair<int, std::int64_t>> order;
  for (const auto& [row, count] : shared) order.emplace_back(-count, row);
  const std::size_t read = std::min(most_read, order.size());
  std::partial_sort(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(read), order.end());
  std::vector<std::int64_t> rows;
  for (std::size_t i = 0; i < read; ++i) rows.push_back(order[i].second);
  return rows;
}

// The words of names that a misspelt word may have been meant as; the word itself where it may not be
// misspelt.
std::set<std::string> words_like(const Book& book, const std::string& word) {
  std::set<std::string> near{word};
  const std::size_t allowed = allowed_mistakes(word);
  if (allowed == 0) return near;
  for (const std::int64_t row : rows_like(book, word)) {
    const std::string name = record_name(book, static_cast<RecordKind>(row % 8), row / 8);
    for (std::string& other : singular_words(fold(name))) {
      if (edit_distance(word, other, allowed) <= allowed) near.insert(std::move(other));
    }
  }
  return near;
}

std::vector<NameHit> misspelt(const Book& book, const std::vector<std::string>& words,
                              std::optional<RecordKind> kind) {
  std::string match;
  for (const std::string& word : words) {
    std::string any;
    for (const std::string& one : words_like(book, word))
      any += (any.empty() ? "" : " OR ") + quoted_for_fts(one) + "*";
    match += (match.empty() ? "(" : " AND (") + any + ")";
  }
  if (match.empty()) return {};
  std::vector<std::tuple<std::size_t, std::size_t, std::int64_t>> near;
  for (const std::int64_t row : matching_rows(
           book, "SELECT rowid FROM name_word WHERE name_word MATCH ? LIMIT ?", match, most_candidates)) {
    if (kind && static_cast<RecordKind>(row % 8) != *kind) continue;
    const NameHit hit = hit_of_row(book, row, NameHit::How::like);
    const std::vector<std::string> name = singular_words(folded_name(hit));
    if (const auto sum = mistakes(words, name)) near.emplace_back(*sum, name.size(), row);
  }
  std::sort(near.begin(), near.end());
  std::vector<NameHit> hits;
  for (const auto& [sum, size, row] : near) hits.push_back(hit_of_row(book, row, NameHit::How::like));
  return hits;
}

void add_exact(const Book& book, std::string_view sql, std::string_view key, RecordKind kind,
               std::vector<NameHit>& hits) {
  Statement& statement = book.statement(sql);
  statement.bind(1, key);
  std::vector<std::int64_t> ids;
  while (statement.step()) ids.push_back(statement.integer(0));
  for (const std::int64_t id : ids) {
    const auto same = [&](const NameHit& hit) { return hit.kind == kind && hit.id == id; };
    if (std::none_of(hits.begin(), hits.end(), same))
      hits.push_back(hit_of_row(book, id * 8 + static_cast<int>(kind), NameHit::How::exact));
  }
}

// "Tidepool Rectangles 2" in full, and "ink, Harbour Inks, kelp" as answers write it.
void add_names_in_full(const Book& book, std::string_view folded, const std::vector<std::string>& words,
                       std::vector<NameHit>& hits) {
  for (NameHit& hit : by_words(book, words, std::nullopt)) {
    const bool several = hit.kind == RecordKind::die || hit.kind == RecordKind::supply;
    if (!several || (folded_name(hit) != folded && singular_words(folded_name(hit)) != words)) continue;
    const auto same = [&](const NameHit& other) { return other.kind == hit.kind && other.id == hit.id; };
    if (std::any_of(hits.begin(), hits.end(), same)) continue;
    hit.how = NameHit::How::exact;
    hits.push_back(std::move(hit));
  }
}

std::vector<std::string> names_of(const std::vector<NameHit>& hits) {
  std::vector<std::string> names;
  for (const NameHit& hit : hits) names.push_back(hit.name);
  return names;
}

Problem no_such_name(std::string_view text, std::optional<RecordKind> kind,
                     const std::vector<NameHit>& nearest) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = fmt::format("there is no {} {} in the book", kind ? record_kind_word(*kind) : "record",
                             in_quotes(text));
  problem.where.text = text;
  problem.candidates = names_of(nearest);
  problem.expected = nearest.empty() ? "a name that is in the book" : "one of the names like it";
  return problem;
}

Problem several_names(std::string_view text, const std::vector<NameHit>& hits) {
  Problem problem;
  problem.kind = ProblemKind::ambiguous;
  problem.what = fmt::format("{} names {} records", in_quotes(text), hits.size());
  problem.where.text = text;
  problem.expected = "more of the name of the one that is meant";
  for (const NameHit& hit : hits) problem.candidates.push_back(hit.name);
  // Where two kinds have the same name, only the kind tells them apart.
  for (std::size_t i = 0; i < hits.size(); ++i) {
    const auto same = std::count(problem.candidates.begin(), problem.candidates.end(), hits[i].name);
    if (same > 1) problem.candidates[i] = fmt::format("{} {}", record_kind_word(hits[i].kind), hits[i].name);
  }
  return problem;
}

// Who names a set by a word of it does not mean each of its dies.
void leave_dies_to_their_sets(const Book& book, std::vector<NameHit>& hits) {
  std::set<std::int64_t> sets;
  for (const NameHit& hit : hits) {
    if (hit.kind == RecordKind::set) sets.insert(hit.id);
  }
  std::erase_if(hits, [&](const NameHit& hit) {
    if (hit.kind != RecordKind::die || sets.empty()) return false;
    Statement& statement = book.statement("SELECT set_id FROM die WHERE id = ?");
    statement.bind(1, hit.id);
    const bool part = statement.step() && sets.count(statement.integer(0)) > 0;
    statement.reset();
    return part;
  });
}

// "set tidepool": the kind said before the name.
std::optional<RecordKind> kind_said(std::string_view folded, std::string_view& rest) {
  for (const RecordKind kind :
       {RecordKind::set, RecordKind::die, RecordKind::supply, RecordKind::colour, RecordKind::sample}) {
    const std::string_view word = record_kind_word(kind);
    if (folded.size() > word.size() + 1 && folded.starts_with(word) && folded[word.size()] == ' ') {
      rest = folded.substr(word.size() + 1);
      return kind;
    }
  }
  return std::nullopt;
}

}  // namespace

std::string_view record_kind_word(RecordKind kind) {
  static constexpr std::array<std::string_view, 6> words{"", "set", "die", "supply", "colour", "sample"};
  return words[static_cast<std::size_t>(kind)];
}

std::string record_name(const Book& book, RecordKind kind, std::int64_t id) {
  static constexpr std::array<std::string_view, 6> sql{
      "",
      "SELECT name FROM die_set WHERE id = ?",
      "SELECT s.name || ' ' || d.label FROM die d JOIN die_set s ON s.id = d.set_id WHERE d.id = ?",
      "SELECT kind || iif(set_name = '', '', ', ' || set_name) || iif(u.name = '', '', ', ' || u.name) || "
      "iif(c.name IS NULL, '', ', ' || c.name) FROM supply u LEFT JOIN colour c ON c.id = u.colour_id WHERE "
      "u.id = ?",
      "SELECT name FROM colour WHERE id = ?",
      "SELECT title FROM sample WHERE id = ?"};
  Statement& statement = book.statement(sql[static_cast<std::size_t>(kind)]);
  statement.bind(1, id);
  std::string name = statement.step() ? std::string(statement.text(0)) : std::string();
  statement.reset();
  return name;
}

std::vector<NameHit> names_exactly(const Book& book, std::string_view folded) {
  std::vector<NameHit> hits;
  for (const std::string& form : number_forms(folded)) {
    add_exact(book, "SELECT id FROM die_set WHERE key = ?", form, RecordKind::set, hits);
  }
  // A die's number is no name without its set.
  if (folded.find_first_not_of("0123456789") != std::string_view::npos) {
    add_exact(book, "SELECT id FROM die WHERE key = ?", folded, RecordKind::die, hits);
  }
  add_exact(book, "SELECT id FROM supply WHERE name_key = ?", folded, RecordKind::supply, hits);
  add_exact(book, "SELECT id FROM supply WHERE full_key = ?", folded, RecordKind::supply, hits);
  add_exact(book, "SELECT id FROM colour WHERE key = ?", folded, RecordKind::colour, hits);
  add_exact(book, "SELECT id FROM sample WHERE key = ?", folded, RecordKind::sample, hits);
  return hits;
}

bool names_begin(const Book& book, std::string_view folded) {
  Statement& statement = book.statement(
      "SELECT EXISTS (SELECT 1 FROM die_set WHERE key >= ?1 AND key < ?2) "
      "OR EXISTS (SELECT 1 FROM die WHERE key >= ?1 AND key < ?2) "
      "OR EXISTS (SELECT 1 FROM supply WHERE name_key >= ?1 AND name_key < ?2) "
      "OR EXISTS (SELECT 1 FROM supply WHERE full_key >= ?1 AND full_key < ?2) "
      "OR EXISTS (SELECT 1 FROM colour WHERE key >= ?1 AND key < ?2) "
      "OR EXISTS (SELECT 1 FROM sample WHERE key >= ?1 AND key < ?2)");
  // A set may stand in the plural where one of it is asked for, so the end of the last word is left open.
  std::string low(folded);
  const std::size_t last = low.rfind(' ') == std::string::npos ? 0 : low.rfind(' ') + 1;
  low = low.substr(0, last) + singular_word(std::string_view(low).substr(last));
  if (low.ends_with('y')) low.pop_back();
  statement.bind_all(std::string_view(low), std::string_view(low + "\xff"));
  const bool any = statement.step() && statement.integer(0) != 0;
  statement.reset();
  return any;
}

std::vector<NameHit> find_names(const Book& book, std::string_view text, std::optional<RecordKind> kind,
                                std::size_t limit) {
  const std::string folded = fold(text);
  const std::vector<std::string> words = singular_words(folded);
  if (words.empty()) return {};
  std::vector<NameHit> hits = names_exactly(book, folded);
  add_names_in_full(book, folded, words, hits);
  keep_kind(hits, kind);
  std::string_view rest;
  if (const auto said = kind_said(folded, rest); hits.empty() && !kind && said) {
    hits = find_names(book, rest, said, limit);
  }
  if (hits.empty()) hits = by_words(book, words, kind);
  if (hits.empty()) hits = misspelt(book, words, kind);
  if (hits.size() > limit) hits.resize(limit);
  return hits;
}

Result<NameHit> find_name(const Book& book, std::string_view text, std::optional<RecordKind> kind) {
  constexpr std::size_t most_listed = 20;
  std::vector<NameHit> hits = find_names(book, text, kind, most_listed);
  leave_dies_to_their_sets(book, hits);
  if (hits.empty()) return failure(no_such_name(text, kind, {}));
  // A name that is only like what was said is not taken for it: records could be changed by mistake.
  if (hits.front().how == NameHit::How::like) return failure(no_such_name(text, kind, hits));
  if (hits.size() > 1) return failure(several_names(text, hits));
  return hits.front();
}

namespace {

// Names that begin so, by the indexes of their keys: a few steps each, however large the book is.
std::vector<std::int64_t> rows_beginning(const Book& book, std::string_view folded, std::int64_t limit) {
  Statement& statement = book.statement(
      "SELECT row FROM (SELECT id * 8 + 1 AS row FROM die_set WHERE key >= ?1 AND key < ?2 ORDER BY key "
      "LIMIT ?3) "
      "UNION ALL SELECT row FROM (SELECT id * 8 + 4 AS row FROM colour WHERE key >= ?1 AND key < ?2 ORDER BY "
      "key LIMIT ?3) "
      "UNION ALL SELECT row FROM (SELECT id * 8 + 3 AS row FROM supply WHERE full_key >= ?1 AND full_key < "
      "?2 "
      "  ORDER BY full_key LIMIT ?3) "
      "UNION ALL SELECT row FROM (SELECT id * 8 + 5 AS row FROM sample WHERE key >= ?1 AND key < ?2 ORDER BY "
      "key LIMIT ?3)");
  statement.bind_all(folded, std::string_view(std::string(folded) + "\xff"), limit);
  std::vector<std::int64_t> rows;
  while (statement.step()) rows.push_back(statement.integer(0));
  return rows;
}

}  // namespace

std::vector<NameHit> complete(const Book& book, std::string_view beginning, std::size_t limit) {
  const std::string folded = fold(beginning);
  if (folded.empty()) return {};
  const auto most = static_cast<std::int64_t>(limit);
  std::vector<std::int64_t> rows = rows_beginning(book, folded, most);
  if (rows.size() < limit) {
    std::vector<std::string> words = singular_words(folded);
    // The last word is still being typed: as it stands.
    if (!words.empty() && folded.ends_with(words.back() + "s")) words.back() += 's';
    if (!words.empty()) {
      for (const std::int64_t row :
           matching_rows(book, "SELECT rowid FROM name_word WHERE name_word MATCH ? LIMIT ?",
                         all_words(words), 2 * most)) {
        if (std::find(rows.begin(), rows.end(), row) == rows.end()) rows.push_back(row);
      }
    }
  }
  if (rows.size() > limit) rows.resize(limit);
  std::vector<NameHit> hits;
  for (const std::int64_t row : rows) hits.push_back(hit_of_row(book, row, NameHit::How::words));
  return hits;
}

}  // namespace insetbook
