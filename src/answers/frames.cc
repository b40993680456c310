// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/frames.h"

#include <algorithm>
#include <map>

#include "answers/options.h"
#include "book/names.h"
#include "book/settings.h"
#include "language/read_opening.h"

namespace insetbook {
namespace {

// The panel asked about. One figure without a shape is a circle: only a circle's size has one figure.
Result<Shape> panel_asked(const FramesAsked& asked, const Size& size, Unit unit) {
  std::string word = asked.shape.value_or(size.shape);
  if (word.empty()) word = size.one_figure ? "circle" : "rectangle";
  if (asked.shape)
    if (const Result<ShapeKind> kind = shape_option(word); !kind) return failure(kind.error());
  Result<Shape> shape = make_shape(word, size, "", unit);
  if (!shape) return shape;
  if (const std::string missing = missing_figure(*shape); !missing.empty())
    return failure({.what = "\"" + asked.size + "\": " + missing + " is not known",
                    .expected = "a circle, oval, square or rectangle of known size"});
  return shape;
}

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

}  // namespace

Result<FramesAnswer> what_frames(const Book& book, const FramesAsked& asked) {
  const Settings set = settings(book);
  Result<Size> size = size_option("size", asked.size, set.unit);
  if (!size) return failure(size.error());
  FramesAnswer answer;
  answer.unit = size->unit;
  Result<Shape> panel = panel_asked(asked, *size, set.unit);
  if (!panel) return failure(panel.error());
  answer.panel = *panel;
  answer.turned_allowed = size->orientation == Orientation::either;
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
    const Result<Shape> shape = shape_of(opening);
    if (!shape || !computable(*shape)) {
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
  add_tried(book, answer);
  std::stable_sort(answer.openings.begin(), answer.openings.end(),
                   [](const FramingOpening& a, const FramingOpening& b) {
                     if (a.refuted != b.refuted) return b.refuted;
                     return a.framing.greatest_border < b.framing.greatest_border;
                   });
  return answer;
}

}  // namespace insetbook
