// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/frames.h"

#include <algorithm>
#include <map>
#include <utility>

#include "answers/framings.h"
#include "answers/options.h"
#include "answers/thing_said.h"
#include "answers/words.h"
#include "book/names.h"
#include "book/settings.h"
#include "fit/panels_in_outline.h"
#include "language/read_opening.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// The newest result of this panel in each line where it was tried by hand.
struct TriedThere {
  std::string result, date;
};
std::map<std::int64_t, TriedThere> tried_by_hand(const Book& book, const Shape& panel) {
  std::map<std::int64_t, TriedThere> found;
  // Two drawings of one size are not the same panel, nor is a heart lying on its side.
  if (panel.kind >= ShapeKind::outline) return found;
  Statement& rows = book.statement(
      "SELECT line_id, result, tried_on FROM tried WHERE shape = ?1"
      " AND ((width_nm = ?2 AND height_nm = ?3) OR (?4 AND width_nm = ?3 AND height_nm = ?2))"
      " ORDER BY tried_on, id");
  rows.bind(1, shape_word(panel.kind)).bind(2, panel.width.nm()).bind(3, panel.height.nm());
  rows.bind(4, std::int64_t{is_outline(panel) ? 0 : 1});
  while (rows.step()) found[rows.integer(0)] = {std::string(rows.text(1)), std::string(rows.text(2))};
  rows.reset();
  return found;
}

void add_tried(const Book& book, const Shape& panel, std::vector<FramingCandidate>& candidates) {
  const std::map<std::int64_t, TriedThere> tried = tried_by_hand(book, panel);
  if (tried.empty()) return;
  for (FramingCandidate& candidate : candidates) {
    FramingOpening& found = candidate.found;
    const auto there = tried.find(found.opening.line_id);
    if (there == tried.end()) continue;
    found.tried = there->second.result;
    if (!there->second.date.empty()) found.tried += ", tried " + there->second.date;
    found.refuted = there->second.result != "fits";
  }
}

// Only lines of the shape asked, where any of them frames the panel.
void keep_shape(const Book& book, const std::string& asked, std::vector<FramingCandidate>& candidates,
                FramesAnswer& answer) {
  const Vocabulary vocabulary = vocabulary_of(book);
  const auto term = [&](std::string_view word) {
    const std::vector<TermMatch> found = vocabulary.find(word, VocabularyName::shape);
    return found.empty() ? std::string(word) : found.front().id;
  };
  const std::string wanted = term(asked);
  const auto others = std::ranges::stable_partition(candidates, [&](const FramingCandidate& candidate) {
    return term(candidate.found.opening.shape_word) == wanted;
  });
  if (others.begin() == candidates.begin()) return;
  answer.opening_shape = wanted;
  answer.other_shapes = others.size();
  candidates.erase(others.begin(), others.end());
}

std::vector<FramingCandidate> look_at_all(const Book& book, std::optional<std::int64_t> set_id,
                                          std::optional<std::int64_t> own_die, Framings& framings,
                                          int& not_computed) {
  std::vector<FramingCandidate> candidates;
  for (OpeningRecord& opening : measured_openings(book, set_id)) {
    if (opening.die_id == own_die) continue;  // no die frames itself
    Result<Shape> shape = shape_of(opening);
    if (!shape || !has_outline(*shape)) {
      ++not_computed;
      continue;
    }
    if (auto found = framings.look(std::move(opening), std::move(*shape), not_computed))
      candidates.push_back(std::move(*found));
  }
  framings.keep_rooms();
  return candidates;
}

}  // namespace

Result<FramesAnswer> what_frames(const Book& book, const FramesAsked& asked) {
  const Settings set = settings(book);
  Result<PanelSaid> panel = panel_said(book, asked.size, asked.shape);
  if (!panel) return failure(panel.error());
  FramesAnswer answer;
  answer.unit = panel->unit;
  answer.panel = std::move(panel->shape);
  answer.panel_of = std::move(panel->of);
  answer.note = std::move(panel->note);
  answer.turned_allowed = panel->may_turn;
  if (asked.border) {
    const Result<Length> border = length_option("border", *asked.border, answer.unit, true);
    if (!border) return failure(border.error());
    answer.border = *border;
  }
  std::optional<std::int64_t> set_id;
  if (asked.in_set) {
    const Result<NameHit> named = find_name(book, *asked.in_set, RecordKind::set);
    if (!named) return failure(named.error());
    set_id = named->id;
  }
  Framings framings(book, asked, answer, set.cutting_step);
  std::vector<FramingCandidate> candidates =
      look_at_all(book, set_id, panel->die_id, framings, answer.not_computed);
  if (asked.opening_shape) keep_shape(book, *asked.opening_shape, candidates, answer);
  add_tried(book, answer.panel, candidates);
  std::vector<FramingCandidate*> order = framings.in_order(candidates);
  answer.total = order.size();
  if (asked.most && order.size() > *asked.most) order.resize(*asked.most);
  for (FramingCandidate* candidate : order) answer.openings.push_back(std::move(candidate->found));
  return answer;
}

}  // namespace insetbook
