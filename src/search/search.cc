// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/search.h"

#include <limits>

#include "language/empty_fields.h"
#include "search/emptied.h"
#include "search/facets.h"
#include "search/finder.h"
#include "search/hits.h"
#include "search/index_moved.h"
#include "search/snapshot.h"
#include "search/suggest.h"

namespace insetbook {
namespace {

constexpr std::size_t all_of_them = std::numeric_limits<std::size_t>::max();

const HasNo* unknown_field(const Node& node) {
  for (const Constraint& constraint : node.constraint) {
    const auto* none = std::get_if<HasNo>(&constraint.says);
    if (none && empty_field_condition(none->field).empty()) return none;
  }
  for (const Node& child : node.children) {
    if (const HasNo* found = unknown_field(child)) return found;
  }
  return nullptr;
}

Problem cannot_be_empty(const std::string& field) {
  Problem problem;
  problem.what = "no sample can be looked for by having no \"" + field + "\"";
  problem.where.text = field;
  problem.expected = "a field of a sample that may be empty: " + names_of_empty_fields();
  return problem;
}

Problem index_keeps_changing() {
  Problem problem;
  problem.kind = ProblemKind::unusable_book;
  problem.what = "the index changed each time it was read";
  problem.expected = "ask again when the other program has finished";
  return problem;
}

Hits answer(const Book& book, const Node& all, const SearchOptions& options, Index& index) {
  if (has_text(all)) index.catch_up(book);
  const Snapshot snapshot(book);
  Finder finder(book, index);
  const Relaxed as_asked;
  Found found = finder.find(all, as_asked, options.order, options.facets ? all_of_them : options.limit);
  std::vector<std::int64_t> every;
  if (options.facets) {
    for (const Candidate& each : found.ranked) every.push_back(each.sample);
    if (found.ranked.size() > options.limit) found.ranked.resize(options.limit);
  }
  Hits hits{hits_of(book, found.ranked, all, as_asked), found.total, found.exact, {}, {}, {}, {}};
  if (!every.empty()) hits.facets = facets_of(book, every, all, options.vocabulary);
  if (found.total == 0) {
    Emptied emptied = why_empty(book, finder, all, options.nearest);
    hits.emptied_by = std::move(emptied.by);
    hits.nearest = std::move(emptied.nearest);
  }
  if (has_text(all)) hits.suggest = suggestions(book, index, finder.stemmer(), all, options.vocabulary);
  return hits;
}

}  // namespace

std::optional<Order> order_named(std::string_view word) {
  if (word == "best") return Order::best;
  if (word == "newest") return Order::newest;
  if (word == "oldest") return Order::oldest;
  if (word == "title") return Order::title;
  return std::nullopt;
}

Result<Hits> search(const Book& book, const Question& question, const SearchOptions& options) {
  if (const HasNo* field = unknown_field(question.tree)) return failure(cannot_be_empty(field->field));
  const Node all = normal_form(question.tree);
  Index own(book.folder());
  Index& index = options.index ? *options.index : own;
  constexpr int tries = 5;
  for (int i = 0; i < tries; ++i) {
    try {
      return answer(book, all, options, index);
    } catch (const IndexMoved&) {
      continue;
    } catch (const StoreError& error) {
      return failure(book.problem(error));
    }
  }
  return failure(index_keeps_changing());
}

}  // namespace insetbook
