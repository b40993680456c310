// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/facets.h"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "language/says.h"
#include "measure/write.h"
#include "search/sql_text.h"

namespace insetbook {
namespace {

constexpr std::size_t most_values = 12;

void collect_fields(const Node& node, std::set<std::string>& out) {
  for (const Constraint& constraint : node.constraint) out.insert(as_field(constraint.says));
  for (const Node& child : node.children) collect_fields(child, out);
}

class Counter {
 public:
  Counter(const Book& book, const std::vector<std::int64_t>& samples, const Node& asked,
          const Vocabulary* vocabulary)
      : book_(book), vocabulary_(vocabulary) {
    for (const std::int64_t id : samples) ids_ += (ids_.size() > 1 ? "," : "") + std::to_string(id);
    ids_ += ']';
    collect_fields(asked, asked_);
  }

  std::vector<Facet> run() {
    terms(VocabularyName::fold, [](std::string term) { return Says(FoldIs{{term}, term}); });
    terms(VocabularyName::technique, [](std::string term) { return Says(TechniqueIs{{std::move(term)}}); });
    colours();
    terms(VocabularyName::occasion, [](std::string term) { return Says(OccasionIs{{std::move(term)}}); });
    years();
    closed_sizes();
    return std::move(facets_);
  }

 private:
  // `sql` ends where the ids of the samples stand.
  Statement& counted(std::string_view sql, std::string_view rest) {
    Statement& rows =
        book_.statement(std::string(sql) + " IN (SELECT value FROM json_each(?)) " + std::string(rest));
    rows.bind(1, ids_);
    return rows;
  }

  void add(Facet& facet, std::string label, const Says& says, std::int64_t count) const {
    std::string field = as_field(says);
    if (facet.values.size() >= most_values || asked_.contains(field)) return;
    // In a bracket a technique or a colour is said of no piece that stands before it.
    const FieldName of = field_of(says);
    if (of == FieldName::technique || of == FieldName::colour) field = "(" + field + ")";
    facet.values.push_back({std::move(label), std::move(field), static_cast<std::size_t>(count)});
  }

  void keep(Facet facet) {
    if (!facet.values.empty()) facets_.push_back(std::move(facet));
  }

  struct Counted {
    std::string term;
    std::int64_t samples = 0;
  };

  void terms(VocabularyName kind, Says (*says)(std::string)) {
    Facet facet{.name = std::string(vocabulary_word(kind)), .values = {}};
    Statement& rows = counted("SELECT m.term, count(DISTINCT m.sample_id) FROM mention m WHERE m.kind = '" +
                                  facet.name + "' AND m.term IS NOT NULL AND m.sample_id",
                              "GROUP BY m.term ORDER BY 2 DESC, 1");
    std::vector<Counted> found;
    while (rows.step()) found.push_back({std::string(rows.text(0)), rows.integer(1)});
    rows.reset();
    if (vocabulary_) count_narrower(kind, facet.name, found);
    for (const Counted& each : found) add(facet, each.term, says(each.term), each.samples);
    keep(std::move(facet));
  }

  // Only where a narrower term is recorded too there is something to count again.
  void count_narrower(VocabularyName in, const std::string& kind, std::vector<Counted>& found) {
    std::set<std::string> recorded;
    for (const Counted& each : found) recorded.insert(each.term);
    bool changed = false;
    for (Counted& each : found) {
      std::vector<std::string> terms = vocabulary_->with_narrower(in, each.term);
      std::erase_if(terms, [&](const std::string& term) { return !recorded.contains(term); });
      if (terms.size() < 2) continue;
      each.samples = count_any(kind, terms);
      changed = true;
    }
    if (!changed) return;
    std::stable_sort(found.begin(), found.end(), [](const Counted& a, const Counted& b) {
      return a.samples != b.samples ? a.samples > b.samples : a.term < b.term;
    });
  }

  std::int64_t count_any(const std::string& kind, const std::vector<std::string>& terms) {
    Sql sql("SELECT count(DISTINCT m.sample_id) FROM mention m WHERE m.kind = ");
    sql.value(kind) << " AND m.sample_id IN (SELECT value FROM json_each(";
    sql.value(ids_) << ")) AND m.term";
    sql.any_of(terms);
    Statement& row = bound(book_, sql);
    const std::int64_t samples = row.step() ? row.integer(0) : 0;
    row.reset();
    return samples;
  }

  void colours() {
    Facet facet{.name = "colour", .values = {}};
    Statement& rows = counted(
        "SELECT c.name, c.id, count(DISTINCT m.sample_id) FROM mention m JOIN colour c ON c.id = m.colour_id"
        " WHERE m.kind IN ('paper', 'ink') AND m.sample_id",
        "GROUP BY c.id ORDER BY 3 DESC, c.key");
    while (rows.step()) {
      const std::string name(rows.text(0));
      add(facet, name, ColourIs{ColourUse::either, {rows.integer(1)}, name}, rows.integer(2));
    }
    rows.reset();
    keep(std::move(facet));
  }

  void years() {
    Facet facet{.name = "year", .values = {}};
    Statement& rows =
        counted("SELECT substr(s.made, 1, 4), count(*) FROM sample s WHERE s.made <> '' AND s.id",
                "GROUP BY 1 ORDER BY 2 DESC, 1 DESC");
    while (rows.step()) {
      const std::string year(rows.text(0));
      add(facet, year, MadeIn{year + "-01-01", year + "-12-31"}, rows.integer(1));
    }
    rows.reset();
    keep(std::move(facet));
  }

  void closed_sizes() {
    Facet facet{.name = "closed size", .values = {}};
    Statement& rows = counted(
        "SELECT s.closed_width_nm, s.closed_height_nm, s.closed_unit, count(*) FROM sample s"
        " WHERE s.closed_width_nm IS NOT NULL AND s.id",
        "GROUP BY 1, 2 ORDER BY 4 DESC, 1, 2");
    while (rows.step()) {
      SizeIs size;
      size.one_figure = false;
      size.low = Length::nm(rows.integer(0));
      size.second = Length::nm(rows.integer(1));
      size.placed = true;
      size.unit = rows.text(2) == "mm" ? Unit::mm : Unit::inch;
      ClosedSizeIs closed;
      closed.size = size;
      add(facet, write(size.low, size.unit) + " x " + write(size.second, size.unit), closed, rows.integer(3));
    }
    rows.reset();
    keep(std::move(facet));
  }

  const Book& book_;
  const Vocabulary* vocabulary_;
  std::string ids_ = "[";
  std::set<std::string> asked_;
  std::vector<Facet> facets_;
};

}  // namespace

std::vector<Facet> facets_of(const Book& book, const std::vector<std::int64_t>& samples, const Node& asked,
                             const Vocabulary* vocabulary) {
  return Counter(book, samples, asked, vocabulary).run();
}

}  // namespace insetbook
