// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/lookups.h"

#include <fmt/format.h>

#include <algorithm>

#include "book/names.h"
#include "book/records.h"
#include "importers/report/report.h"
#include "language/near_label.h"
#include "language/read_opening.h"
#include "language/read_record.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

std::string joined_keys(std::string_view a, std::string_view b) {
  return fmt::format("{}\x1f{}", a, b);
}

OpeningFound found(const OpeningRecord& record, bool with_line) {
  return {record.set_id, record.die_id, with_line ? std::optional(record.line_id) : std::nullopt};
}

Problem unknown(std::string what, std::string expected) {
  Problem problem = bad_input(std::move(what), std::move(expected));
  problem.kind = ProblemKind::unknown_name;
  return problem;
}

std::string list_of_dies(const std::vector<OpeningRecord>& lines) {
  std::vector<std::string> names;
  for (const OpeningRecord& line : lines)
    if (std::find(names.begin(), names.end(), line.die) == names.end()) names.push_back(line.die);
  std::string text;
  for (std::size_t i = 0; i < names.size() && i < 12; ++i) text += (i == 0 ? "" : ", ") + cut_short(names[i]);
  return names.size() > 12 ? text + " …" : text;
}

// The innermost line that is no window; lines come outermost first.
const OpeningRecord* innermost(const std::vector<const OpeningRecord*>& lines) {
  const auto line =
      std::find_if(lines.rbegin(), lines.rend(), [](const auto* one) { return one->line_kind != "window"; });
  return line == lines.rend() ? nullptr : *line;
}

const OpeningRecord* line_named(const std::vector<const OpeningRecord*>& lines, const LineCell& wanted) {
  const OpeningRecord* of_kind = nullptr;
  int kinds = 0;
  for (const OpeningRecord* line : lines) {
    if (line->line == wanted.name) return line;
    if (line->line_kind == wanted.kind && wanted.name == wanted.kind) of_kind = line, ++kinds;
  }
  return kinds == 1 ? of_kind : nullptr;
}

// The lines of the one die that the cell means: by its label, else by its order.
std::vector<const OpeningRecord*> lines_of_die_said(const std::vector<OpeningRecord>& lines,
                                                    const DieCell& die) {
  std::vector<const OpeningRecord*> by_label, by_rank;
  const std::string key = fold(die.label);
  for (const OpeningRecord& line : lines) {
    if (!key.empty() && fold(line.die) == key) by_label.push_back(&line);
    const int rank = die.rank                 ? *die.rank
                     : die.rank_from_smallest ? line.dies_in_set - *die.rank_from_smallest + 1
                                              : 0;
    if (rank > 0 && line.rank == rank) by_rank.push_back(&line);
  }
  if (die.rank_from_smallest) return by_rank;
  return by_label.empty() ? by_rank : by_label;
}

bool one_die(const std::vector<OpeningRecord>& lines) {
  return !lines.empty() && std::all_of(lines.begin(), lines.end(),
                                       [&](const auto& line) { return line.die_id == lines.front().die_id; });
}

}  // namespace

const std::optional<std::string>& Lookups::term(VocabularyName in, std::string_view text) {
  ByText<std::optional<std::string>>& known = terms_[in];
  std::string key(text);
  if (const auto it = known.find(key); it != known.end()) return it->second;
  std::optional<std::string> id;
  if (const auto matches = vocabulary_.find(text, in); !matches.empty()) id = matches.front().id;
  return known.emplace(std::move(key), std::move(id)).first->second;
}

std::string Lookups::perhaps(std::string_view what, std::string_view text) const {
  const std::optional<VocabularyName> in = vocabulary_name(what);
  if (in && *in != VocabularyName::colour_word) return near_label(vocabulary_, *in, text).value_or("");
  const bool colour = what == "colour";
  if (!colour && what != "supply") return {};
  const std::vector<NameHit> near =
      find_names(book_, text, colour ? RecordKind::colour : RecordKind::supply, 1);
  return near.empty() || near.front().how != NameHit::How::like ? std::string() : near.front().name;
}

std::optional<std::int64_t> Lookups::colour(std::string_view name) {
  std::string key(name);
  if (const auto it = colours_.find(key); it != colours_.end()) return it->second;
  const auto id = colour_named(book_, fold(name));
  colours_.emplace(std::move(key), id);
  return id;
}

std::optional<std::int64_t> Lookups::supply(std::string_view name) {
  std::string text(name);
  if (const auto it = supplies_asked_.find(text); it != supplies_asked_.end()) return it->second;
  if (!supplies_) supplies_.emplace(book_);
  const std::optional<std::int64_t> id = supplies_->find(name);
  supplies_asked_.emplace(std::move(text), id);
  return id;
}

const std::vector<OpeningRecord>& Lookups::lines_of_set(std::int64_t set_id) {
  const auto it = sets_.find(set_id);
  return it != sets_.end() ? it->second : sets_.emplace(set_id, openings_of_set(book_, set_id)).first->second;
}

const std::vector<OpeningRecord>& Lookups::lines_of_die(std::int64_t die_id) {
  const auto it = dies_.find(die_id);
  return it != dies_.end() ? it->second : dies_.emplace(die_id, openings_of_die(book_, die_id)).first->second;
}

const Result<OpeningFound>& Lookups::opening(std::string_view set, std::string_view die,
                                             std::string_view line, BlankLine blank) {
  std::string key = fmt::format("{}\x1f{}\x1f{}\x1f{}", set, die, line, blank == BlankLine::innermost);
  if (const auto it = openings_.find(key); it != openings_.end()) return it->second;
  return openings_.emplace(std::move(key), find(set, die, line, blank)).first->second;
}

const Result<OpeningFound>& Lookups::opening(std::string_view text) {
  std::string key(text);
  if (const auto it = openings_.find(key); it != openings_.end()) return it->second;
  return openings_.emplace(std::move(key), find(text)).first->second;
}

Result<OpeningFound> Lookups::find(std::string_view text) {
  const OpeningPhrase phrase = read_opening(text);
  const auto opening = find_opening(book_, {.name = phrase.name,
                                            .rank = phrase.rank,
                                            .rank_from_smallest = phrase.rank_from_smallest,
                                            .line = phrase.line,
                                            .text = phrase.text});
  if (!opening) return failure(opening.error());
  return found(*opening, true);
}

Result<OpeningFound> Lookups::unknown_set(std::string_view text) const {
  Problem problem = unknown(fmt::format("no die set is called {}", in_quotes(text)),
                            "the name of a set in the book or in a dies table of this import");
  for (const NameHit& hit : find_names(book_, text, RecordKind::set, 3))
    problem.candidates.push_back(hit.name);
  return failure(std::move(problem));
}

Result<OpeningFound> Lookups::find(std::string_view set, std::string_view die, std::string_view line,
                                   BlankLine blank) {
  const auto line_cell = read_line_cell(line);
  if (!line_cell) return failure(line_cell.error());
  const bool no_line = trim(line).empty();
  const DieCell die_cell = read_die_cell(die);
  const bool no_die = trim(die).empty();
  if (auto refused =
          refused_line(fold(set), fold(die_cell.label), no_line ? std::string_view() : line_cell->name);
      refused && !no_die)
    return failure(std::move(*refused));
  const auto set_id = set_named(book_, fold(set));
  if (!set_id) {
    if (!no_die) return unknown_set(set);
    auto whole = find(no_line ? std::string(set) : fmt::format("{}, {}", set, line));
    if (!whole) return unknown_set(set);
    if (no_line && blank == BlankLine::none) whole->line_id.reset();
    return whole;
  }
  const std::vector<OpeningRecord>& of_set = lines_of_set(*set_id);
  if (no_die && !(no_line && blank == BlankLine::none) && !one_die(of_set))
    return failure(bad_input(fmt::format("{} has several dies, and none is named", in_quotes(set)),
                             list_of_dies(of_set)));
  if (no_die && !one_die(of_set)) return OpeningFound{*set_id, std::nullopt, std::nullopt};
  std::vector<const OpeningRecord*> lines = lines_of_die_said(of_set, die_cell);
  if (no_die)
    for (const OpeningRecord& one : of_set) lines.push_back(&one);
  if (lines.empty())
    return failure(unknown(fmt::format("the set {} has no die {}", in_quotes(set), in_quotes(die)),
                           list_of_dies(of_set)));
  if (no_line && blank == BlankLine::none) return found(*lines.front(), false);
  const OpeningRecord* meant = no_line ? innermost(lines) : line_named(lines, *line_cell);
  if (meant != nullptr) return found(*meant, true);
  std::string there;
  for (const OpeningRecord* one : lines) there += (there.empty() ? "" : ", ") + one->line;
  return failure(unknown(fmt::format("{} {} has no line {}", cut_short(set), cut_short(die),
                                     in_quotes(no_line ? "cut" : line_cell->name)),
                         there));
}

std::optional<std::int64_t> Lookups::line_of(std::int64_t die_id, std::string_view line) {
  std::vector<const OpeningRecord*> lines;
  for (const OpeningRecord& one : lines_of_die(die_id)) lines.push_back(&one);
  const OpeningRecord* meant = nullptr;
  if (trim(line).empty()) {
    meant = innermost(lines);
  } else if (const auto cell = read_line_cell(line)) {
    meant = line_named(lines, *cell);
  }
  return meant == nullptr ? std::nullopt : std::optional(meant->line_id);
}

std::string Lookups::shape_of_die(std::string_view set_key, std::string_view die_key) const {
  Statement& row = book_.statement(
      "SELECT l.shape FROM line l JOIN die d ON d.id = l.die_id JOIN die_set s ON s.id = d.set_id "
      "WHERE s.key = ? AND d.key = ? ORDER BY l.id LIMIT 1");
  row.bind_all(set_key, die_key);
  std::string shape;
  if (row.step()) shape = row.text(0);
  row.reset();
  return shape;
}

void Lookups::refuse_line(std::string_view set_key, std::string_view die_key, std::string_view line,
                          std::string_view row) {
  refused_[joined_keys(set_key, die_key)].emplace(line, row);
}

std::optional<Problem> Lookups::refused_line(std::string_view set_key, std::string_view die_key,
                                             std::string_view line) const {
  const auto die = refused_.find(joined_keys(set_key, die_key));
  if (die == refused_.end()) return std::nullopt;
  const auto row = line.empty() ? die->second.begin() : die->second.find(std::string(line));
  if (row == die->second.end()) return std::nullopt;
  return bad_input(fmt::format("the die it names was refused: {}", row->second), "that row first");
}

}  // namespace insetbook
