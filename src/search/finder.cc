// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/finder.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "search/facts.h"

namespace insetbook {
namespace {

constexpr std::size_t all_of_them = std::numeric_limits<std::size_t>::max();

std::string_view order_by(Order order) {
  switch (order) {
    case Order::oldest:
      return "s.made = '', s.made, s.key";
    case Order::title:
      return "s.key";
    default:
      return "s.made DESC, s.key";
  }
}

bool newest_first(Order order) {
  return order == Order::best || order == Order::newest;
}

// The table to walk in that order; the index is named because SQLite would rather sort everything.
std::string_view walk(Order order) {
  return newest_first(order) ? "sample s INDEXED BY sample_made" : "sample s";
}

// What orders candidates before date and title do.
bool closer(const Candidate& a, const Candidate& b, Order order) {
  if (order != Order::best) return false;
  if ((a.beyond > 0) != (b.beyond > 0)) return b.beyond > 0;
  if (a.alike != b.alike) return a.alike > b.alike;
  if (a.weight != b.weight) return a.weight > b.weight;
  return a.distance < b.distance;
}

struct Dated {
  Candidate candidate;
  std::string made, key;
};

bool comes_before(const Dated& a, const Dated& b, Order order) {
  if (closer(a.candidate, b.candidate, order)) return true;
  if (closer(b.candidate, a.candidate, order)) return false;
  if (order != Order::title && a.made != b.made) {
    if (order != Order::oldest) return a.made > b.made;
    return !a.made.empty() && (b.made.empty() || a.made < b.made);
  }
  return a.key < b.key;
}

std::vector<Candidate> dated_and_sorted(const Book& book, const std::vector<Candidate>& all, Order order,
                                        std::size_t limit) {
  Statement& row = book.statement("SELECT made, key FROM sample WHERE id = ?");
  std::vector<Dated> dated;
  dated.reserve(all.size());
  for (const Candidate& candidate : all) {
    row.reset();
    row.bind(1, candidate.sample);
    if (row.step()) dated.push_back({candidate, std::string(row.text(0)), std::string(row.text(1))});
  }
  row.reset();
  const std::size_t kept = std::min(limit, dated.size());
  std::partial_sort(dated.begin(), dated.begin() + static_cast<std::ptrdiff_t>(kept), dated.end(),
                    [&](const Dated& a, const Dated& b) { return comes_before(a, b, order); });
  std::vector<Candidate> sorted;
  for (std::size_t i = 0; i < kept; ++i) sorted.push_back(dated[i].candidate);
  return sorted;
}

std::int64_t largest_id(const Book& book) {
  Statement& row = book.statement("SELECT max(id) FROM sample");
  const std::int64_t id = row.step() ? row.integer(0) : 0;
  row.reset();
  return id;
}

// All are equally close: the first of them in the walk's order. Many of them are met soon, unless they stand
// at its other end: it is given up when putting all of them in order would have been done by then.
std::optional<std::vector<Candidate>> walked(const Book& book, std::vector<Candidate>& all, Order order,
                                             std::size_t limit) {
  const auto by_sample = [](const Candidate& a, const Candidate& b) { return a.sample < b.sample; };
  if (!std::is_sorted(all.begin(), all.end(), by_sample)) std::sort(all.begin(), all.end(), by_sample);
  Sql sql("SELECT s.id FROM ");
  sql << walk(order) << " ORDER BY " << order_by(order);
  Statement& rows = bound(book, sql);
  std::vector<Candidate> first;
  bool more = true;
  for (std::size_t looked = 0; first.size() < limit && looked < all.size() && more; ++looked) {
    more = rows.step();
    const Candidate wanted{more ? rows.integer(0) : 0, 0, 0, 0};
    const auto at = std::lower_bound(all.begin(), all.end(), wanted, by_sample);
    if (more && at != all.end() && at->sample == wanted.sample) first.push_back(*at);
  }
  rows.reset();
  if (first.size() < limit && more) return std::nullopt;
  return first;
}

}  // namespace

Divided divided(const Node& all, Stemmer& stemmer) {
  Divided parts;
  parts.structured.kind = Node::Kind::all;
  for (const Node& child : all.children) {
    if (is_alike(child)) {
      parts.alike.push_back(&child);
    } else if (is_text(child)) {
      parts.text.children.push_back(text_asked(child, stemmer));
      parts.asks_text = true;
    } else {
      parts.structured.children.push_back(child);
    }
  }
  return parts;
}

const std::vector<Alike>& Finder::alike_to(const Node& node) {
  const std::int64_t sample = std::get<AlikeTo>(node.constraint.front().says).sample;
  const auto [place, added] = alike_.try_emplace(sample);
  if (added) place->second = alike(book_, index_, stemmer_, sample);
  return place->second;
}

std::vector<std::int64_t> Finder::text_ids(const Node& node) {
  std::vector<std::int64_t> ids;
  if (is_alike(node)) {
    for (const Alike& each : alike_to(node)) ids.push_back(each.sample);
    return ids;
  }
  for (const TextHit& hit : index_.find(book_, text_asked(node, stemmer_), {}).hits)
    ids.push_back(hit.sample);
  std::sort(ids.begin(), ids.end());
  return ids;
}

// Puts the first `limit` in order. Dates and titles are only fetched for those that could be among them.
Found Finder::ranked(std::vector<Candidate> all, Order order, std::size_t limit) {
  Found found;
  found.exact = all.size() <= counted_to;
  found.total = std::min(all.size(), counted_to);
  const auto before = [&](const Candidate& a, const Candidate& b) { return closer(a, b, order); };
  if (all.size() > limit && limit > 0) {
    const auto last = all.begin() + static_cast<std::ptrdiff_t>(limit - 1);
    std::nth_element(all.begin(), last, all.end(), before);
    const Candidate farthest = *last;
    std::erase_if(all, [&](const Candidate& each) { return before(farthest, each); });
    const bool equal =
        std::none_of(all.begin(), all.end(), [&](const Candidate& each) { return before(each, farthest); });
    const double expected_walk = static_cast<double>(largest_id(book_)) * static_cast<double>(limit);
    const auto many = static_cast<double>(all.size());
    if (equal && newest_first(order) && many * many > expected_walk) {
      if (auto first = walked(book_, all, order, limit)) {
        found.ranked = std::move(*first);
        return found;
      }
    }
  }
  found.ranked = dated_and_sorted(book_, all, order, limit);
  return found;
}

std::vector<Candidate> Finder::told_apart(std::vector<Candidate> all, const Node& structured,
                                          const Relaxed& relaxed) {
  Judge judge(book_, structured, relaxed);
  judge.ids_of([this](const Node& node) { return text_ids(node); });
  const FactsNeeded needed = facts_needed(structured);
  std::erase_if(all, [&](const Candidate& each) {
    const auto facts = facts_of(book_, each.sample, needed);
    return !facts || !judge.meets(*facts);
  });
  return all;
}

Found Finder::find_text_only(const Divided& asked, Order order, std::size_t limit) {
  Index::Wanted wanted;
  wanted.count = counted_to;
  if (order == Order::best) wanted.limit = limit;
  const TextHits hits = index_.find(book_, asked.text, wanted);
  std::vector<Candidate> all;
  for (const TextHit& hit : hits.hits) all.push_back({hit.sample, 0, 0, hit.weight});
  if (order != Order::best) return ranked(std::move(all), order, limit);
  return {std::move(all), hits.total, hits.exact};
}

Found Finder::find_structured(const Divided& asked, const Relaxed& relaxed, Order order, std::size_t limit) {
  Structure structure(book_, asked.structured, relaxed, [this](const Node& node) { return text_ids(node); });
  const bool by_closeness = structure.ranks() && order == Order::best;
  const bool all_needed = by_closeness || structure.telling_apart_left();
  std::vector<Candidate> all = structure.find(all_needed ? all_of_them : counted_to + 1);
  if (structure.telling_apart_left()) all = told_apart(std::move(all), asked.structured, relaxed);
  if (all_needed || all.size() <= counted_to) return ranked(std::move(all), order, limit);
  return {structure.first(walk(order), order_by(order), limit), counted_to, false};
}

std::size_t Finder::about_how_many(const Book& book, const TextAsked& asked) {
  using Kind = TextAsked::Kind;
  std::size_t fewest = all_of_them;
  if (asked.kind == Kind::phrase) {
    for (const std::string& word : asked.words) fewest = std::min(fewest, index_.samples_with(book, word));
    return fewest;
  }
  if (asked.kind == Kind::none) return fewest;
  std::size_t sum = 0;
  for (const TextAsked& child : asked.children) {
    const std::size_t each = about_how_many(book, child);
    fewest = std::min(fewest, each);
    sum = each == all_of_them || sum == all_of_them ? all_of_them : sum + each;
  }
  return asked.kind == Kind::any ? sum : fewest;
}

// Of these, sorted by their ids, what the text finds.
std::vector<Candidate> Finder::found_by_text(const Divided& asked, const std::vector<Candidate>& candidates) {
  std::vector<std::int64_t> ids;
  for (const Candidate& each : candidates) ids.push_back(each.sample);
  Index::Wanted wanted;
  wanted.among = &ids;
  std::vector<Candidate> found;
  for (const TextHit& hit : index_.find(book_, asked.text, wanted).hits) {
    const auto at = std::lower_bound(ids.begin(), ids.end(), hit.sample) - ids.begin();
    found.push_back(candidates[static_cast<std::size_t>(at)]);
    found.back().weight = hit.weight;
  }
  return found;
}

// What is alike is few: it goes first, and everything else is asked of it.
Found Finder::find_alike(const Divided& asked, const Relaxed& relaxed, Order order, std::size_t limit) {
  std::map<std::int64_t, std::pair<std::size_t, std::int64_t>> scores;  // by how many asked, and the sum
  for (const Node* node : asked.alike) {
    for (const Alike& each : alike_to(*node)) {
      ++scores[each.sample].first;
      scores[each.sample].second += each.score;
    }
  }
  std::vector<Candidate> all;
  for (const auto& [sample, score] : scores) {
    if (score.first == asked.alike.size()) all.push_back({sample, 0, 0, 0, score.second});
  }
  if (!asked.structured.children.empty()) {
    Structure structure(book_, asked.structured, relaxed,
                        [this](const Node& node) { return text_ids(node); });
    all = structure.check(all);
    if (structure.telling_apart_left()) all = told_apart(std::move(all), asked.structured, relaxed);
  }
  if (asked.asks_text) all = found_by_text(asked, all);
  return ranked(std::move(all), order, limit);
}

Found Finder::find_both(const Divided& asked, const Relaxed& relaxed, Order order, std::size_t limit) {
  Structure structure(book_, asked.structured, relaxed, [this](const Node& node) { return text_ids(node); });
  const std::size_t by_text = about_how_many(book_, asked.text);
  // To look whether a sample of the text meets everything costs as much as a walk over some rows.
  constexpr std::size_t rows_for_a_look = 8;
  constexpr std::size_t most_looked_at = 100'000;
  const std::size_t looks =
      std::min(by_text, most_looked_at) * (structure.rows_are_all() ? rows_for_a_look : 1);
  const auto by_structure = static_cast<std::size_t>(structure.rows(static_cast<std::int64_t>(looks) + 1));
  std::vector<Candidate> all;
  if (looks <= by_structure) {
    for (const TextHit& hit : index_.find(book_, asked.text, {}).hits)
      all.push_back({hit.sample, 0, 0, hit.weight});
    all = structure.check(all);
  } else {
    all = found_by_text(asked, structure.find(all_of_them));
  }
  if (structure.telling_apart_left()) all = told_apart(std::move(all), asked.structured, relaxed);
  return ranked(std::move(all), order, limit);
}

Found Finder::find(const Node& all, const Relaxed& relaxed, Order order, std::size_t limit) {
  const Divided asked = divided(all, stemmer_);
  if (!asked.alike.empty()) return find_alike(asked, relaxed, order, limit);
  if (!asked.asks_text) return find_structured(asked, relaxed, order, limit);
  if (asked.structured.children.empty()) return find_text_only(asked, order, limit);
  return find_both(asked, relaxed, order, limit);
}

bool Finder::any(const Node& all) {
  const Divided asked = divided(all, stemmer_);
  const Relaxed as_asked;
  if (asked.asks_text || !asked.alike.empty()) return find(all, as_asked, Order::best, 1).total > 0;
  Structure structure(book_, asked.structured, as_asked, [this](const Node& node) { return text_ids(node); });
  if (!structure.telling_apart_left()) return !structure.find(1).empty();
  return !told_apart(structure.find(all_of_them), asked.structured, as_asked).empty();
}

}  // namespace insetbook
