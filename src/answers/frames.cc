// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/frames.h"

#include <algorithm>
#include <map>

#include "answers/options.h"
#include "answers/thing_said.h"
#include "answers/words.h"
#include "book/names.h"
#include "book/settings.h"
#include "language/read_opening.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// The newest result of this panel in each line where it was tried by hand.
struct TriedThere {
  std::string result, date;
};
std::map<std::int64_t, TriedThere> tried_by_hand(const Book& book, const Shape& panel) {
  Statement& rows = book.statement(
      "SELECT line_id, result, tried_on FROM tried WHERE shape = ?1"
      " AND ((width_nm = ?2 AND height_nm = ?3) OR (width_nm = ?3 AND height_nm = ?2)) ORDER BY tried_on, "
      "id");
  rows.bind(1, shape_word(panel.kind)).bind(2, panel.width.nm()).bind(3, panel.height.nm());
  std::map<std::int64_t, TriedThere> found;
  while (rows.step()) found[rows.integer(0)] = {std::string(rows.text(1)), std::string(rows.text(2))};
  rows.reset();
  return found;
}

void add_tried(const Book& book, FramesAnswer& answer) {
  const std::map<std::int64_t, TriedThere> tried = tried_by_hand(book, answer.panel);
  for (FramingOpening& found : answer.openings) {
    const auto there = tried.find(found.opening.line_id);
    if (there == tried.end()) continue;
    found.tried = there->second.result;
    if (!there->second.date.empty()) found.tried += ", tried " + there->second.date;
    found.refuted = there->second.result != "fits";
  }
}

// Only lines of the shape asked, where any of them frames the panel.
void keep_shape(const Book& book, const std::string& asked, FramesAnswer& answer) {
  const Vocabulary vocabulary = vocabulary_of(book);
  const auto term = [&](std::string_view word) {
    const std::vector<TermMatch> found = vocabulary.find(word, VocabularyName::shape);
    return found.empty() ? std::string(word) : found.front().id;
  };
  const std::string wanted = term(asked);
  const auto others = std::ranges::stable_partition(
      answer.openings, [&](const FramingOpening& found) { return term(found.opening.shape_word) == wanted; });
  if (others.begin() == answer.openings.begin()) return;
  answer.opening_shape = wanted;
  answer.other_shapes = others.size();
  answer.openings.erase(others.begin(), others.end());
}

// Least that is told from nothing on a ruler.
Length least_seen(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 64) : Length::nm(500'000);
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
  for (OpeningRecord& opening : measured_openings(book, set_id)) {
    if (opening.die_id == panel->die_id) continue;  // no die frames itself
    const Result<Shape> shape = shape_of(opening);
    if (!shape || !has_outline(*shape)) {
      ++answer.not_computed;
      continue;
    }
    const Result<std::optional<Framing>> framed = framing(
        {*shape, opening.give_or_take}, answer.panel, answer.border, set.cutting_step, answer.turned_allowed);
    if (!framed) {
      ++answer.not_computed;
      continue;
    }
    if (*framed) answer.openings.push_back({std::move(opening), **framed});
  }
  if (asked.opening_shape) keep_shape(book, *asked.opening_shape, answer);
  answer.total = answer.openings.size();
  add_tried(book, answer);
  const auto shows_nothing = [&](const FramingOpening& found) {
    return asked.goes_round && found.framing.greatest_border < least_seen(answer.unit);
  };
  std::stable_sort(answer.openings.begin(), answer.openings.end(),
                   [&](const FramingOpening& a, const FramingOpening& b) {
                     if (a.refuted != b.refuted) return b.refuted;
                     if (shows_nothing(a) != shows_nothing(b)) return shows_nothing(b);
                     return a.framing.greatest_border < b.framing.greatest_border;
                   });
  return answer;
}

}  // namespace insetbook
