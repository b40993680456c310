// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/dies.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <variant>

#include "answers/estimated.h"
#include "book/names.h"
#include "language/ask_dies.h"
#include "search/size_rules.h"
#include "text/quote.h"

namespace insetbook {
namespace {

constexpr std::size_t most_nearest = 5;
constexpr std::size_t most_estimated = 40;  // lines that are looked at

// What was asked, held against one line.
class Wanted {
 public:
  Wanted(const Node& tree, const Vocabulary& vocabulary) : tree_(tree), vocabulary_(vocabulary) {
    find_sizes(tree);
  }

  bool has_size() const { return !sizes_.empty(); }
  bool met_by(const OpeningRecord& line) const { return meets(tree_, line, false); }
  bool shape_met_by(const OpeningRecord& line) const { return meets(tree_, line, true); }
  // How far the line is from the first size asked, in nanometres.
  std::int64_t distance_of(const OpeningRecord& line) const {
    if (sizes_.empty()) return 0;
    return distance(size_rule(*sizes_.front(), longest_length), sides_of(line)).value_or(0);
  }
  std::string difference_of(const OpeningRecord& line) const {
    if (sizes_.empty()) return {};
    const std::string said = difference(*sizes_.front(), sides_of(line));
    return said == "exactly that size" ? std::string() : said;
  }
  // One figure was asked, and the line has two that differ.
  bool by_one_side(const OpeningRecord& line) const {
    return !sizes_.empty() && sizes_.front()->one_figure && line.width != line.height;
  }
  // An about, an under … is no figure to compare a difference with.
  bool compares() const {
    return !sizes_.empty() &&
           (sizes_.front()->relation == Relation::exact || sizes_.front()->relation == Relation::about);
  }

 private:
  static SidesOnRecord sides_of(const OpeningRecord& line) {
    return {.width = line.width.nm(), .height = line.height.nm()};
  }
  void find_sizes(const Node& node) {
    for (const Constraint& constraint : node.constraint)
      if (const auto* size = std::get_if<SizeIs>(&constraint.says)) sizes_.push_back(size);
    if (node.kind != Node::Kind::none)
      for (const Node& child : node.children) find_sizes(child);
  }
  bool meets_one(const Says& says, const OpeningRecord& line, bool shape_only) const {
    if (const auto* size = std::get_if<SizeIs>(&says))
      return shape_only || distance(size_rule(*size), sides_of(line));
    const auto* shape = std::get_if<ShapeIs>(&says);
    if (!shape) return false;
    const std::vector<TermMatch> found = vocabulary_.find(line.shape_word, VocabularyName::shape);
    const std::string term = found.empty() ? line.shape_word : found.front().id;
    return std::ranges::find(shape->terms, term) != shape->terms.end();
  }
  bool meets(const Node& node, const OpeningRecord& line, bool shape_only) const {
    const auto met = [&](const Node& child) { return meets(child, line, shape_only); };
    for (const Constraint& constraint : node.constraint)
      if (!meets_one(constraint.says, line, shape_only)) return false;
    if (node.kind == Node::Kind::any) return std::ranges::any_of(node.children, met);
    // A size that is excluded says nothing of the shape.
    if (node.kind == Node::Kind::none) return shape_only || std::ranges::none_of(node.children, met);
    return std::ranges::all_of(node.children, met);
  }

  const Node& tree_;
  const Vocabulary& vocabulary_;
  std::vector<const SizeIs*> sizes_;
};

bool cuts(const OpeningRecord& line) {
  return line.line_kind == "cut";
}

int place_of(const OpeningRecord& line) {
  return cuts(line) ? 0 : line.line_kind == "window" ? 2 : 1;
}

void sort_by(const Wanted& wanted, std::vector<OpeningRecord>& lines) {
  const auto key = [&](const OpeningRecord& line) {
    return std::tuple(wanted.by_one_side(line), place_of(line), wanted.distance_of(line));
  };
  std::ranges::stable_sort(lines,
                           [&](const OpeningRecord& a, const OpeningRecord& b) { return key(a) < key(b); });
}

std::vector<DieOfSize> with_differences(const Wanted& wanted, std::vector<OpeningRecord> lines,
                                        std::size_t limit) {
  if (lines.size() > limit) lines.resize(limit);
  std::vector<DieOfSize> dies;
  for (OpeningRecord& line : lines) {
    std::string difference = wanted.compares() || !wanted.met_by(line) ? wanted.difference_of(line) : "";
    dies.push_back({std::move(line), std::move(difference)});
  }
  return dies;
}

// Lines that were never measured, of the shape asked, and by their sets about the size asked.
std::vector<EstimatedDie> about_that(const Book& book, const Wanted& wanted,
                                     std::optional<std::int64_t> set) {
  std::vector<std::int64_t> lines;
  Statement& rows = book.statement(
      "SELECT l.id FROM line l JOIN die d ON d.id = l.die_id LEFT JOIN measurement m ON m.line_id = l.id AND "
      "m.standing = 'current' WHERE m.id IS NULL AND l.kind = 'cut' AND (?1 IS NULL OR d.set_id = ?1) ORDER "
      "BY "
      "l.id LIMIT ?2");
  rows.bind(1, set).bind(2, static_cast<std::int64_t>(most_estimated));
  while (rows.step()) lines.push_back(rows.integer(0));
  rows.reset();
  std::vector<EstimatedDie> found;
  for (const std::int64_t id : lines) {
    const std::optional<OpeningRecord> line = opening(book, id);
    if (!line || !wanted.shape_met_by(*line)) continue;
    const std::optional<Estimate> estimate = estimated_size(book, *line);
    if (!estimate) continue;
    OpeningRecord guessed = *line;
    guessed.width = estimate->width;
    guessed.height = estimate->height;
    const bool near = wanted.met_by(guessed) || wanted.distance_of(guessed) <= estimate->spread.nm();
    if (near && !wanted.by_one_side(guessed)) found.push_back({*line, *estimate});
  }
  return found;
}

}  // namespace

Result<DiesAnswer> dies_of_size(const Book& book, const DiesAsked& asked, const ReadingContext& context) {
  const std::optional<Node> tree = size_and_shape_asked(asked.size, context);
  if (!tree)
    return failure({.what = fmt::format("{} says more than a size and a shape", in_quotes(asked.size)),
                    .expected = "a size, a shape or both, as in \"3 in circle\""});
  std::optional<std::int64_t> set;
  DiesAnswer answer{.size = asked.size, .in_set = asked.in_set};
  if (!asked.in_set.empty()) {
    const Result<NameHit> named = find_name(book, asked.in_set, RecordKind::set);
    if (!named) return failure(named.error());
    set = named->id;
  }
  const Wanted wanted(*tree, context.vocabulary);
  answer.size_asked = wanted.has_size();
  std::vector<OpeningRecord> met, near;
  bool cut = false;
  for (OpeningRecord& line : measured_openings(book, set)) {
    if (wanted.met_by(line)) {
      // Where only a shape or nothing is asked, a die is told once, by what it cuts.
      if (!answer.size_asked && !cuts(line)) continue;
      cut = cut || (cuts(line) && !wanted.by_one_side(line));
      met.push_back(std::move(line));
    } else if (answer.size_asked && cuts(line) && wanted.shape_met_by(line) && !wanted.by_one_side(line)) {
      near.push_back(std::move(line));
    }
  }
  answer.total = met.size();
  if (answer.size_asked) sort_by(wanted, met);
  sort_by(wanted, near);
  answer.dies = with_differences(wanted, std::move(met), asked.limit);
  if (!cut) answer.nearest = with_differences(wanted, std::move(near), most_nearest);
  if (answer.size_asked) answer.estimated = about_that(book, wanted, set);
  return answer;
}

}  // namespace insetbook
