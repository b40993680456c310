// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/thing_said.h"

#include <fmt/format.h>

#include "answers/opening_said.h"
#include "answers/options.h"
#include "answers/words.h"
#include "book/names.h"
#include "book/records.h"
#include "book/settings.h"
#include "language/ask_thing.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

std::string note_of(const ThingSaid& thing) {
  if (thing.means.empty()) return {};
  return fmt::format("Read as {}{}.", thing.means,
                     thing.other.empty() ? "" : fmt::format("; it can also mean {}", thing.other));
}

// One figure without a shape is a circle's: only a circle and a square have one.
std::string shape_of_thing(const ThingSaid& thing, const std::optional<std::string>& asked) {
  if (asked) return *asked;
  if (!thing.shape.empty()) return thing.shape;
  return thing.size.one_figure ? "circle" : "rectangle";
}

Result<Shape> shape_said(const ThingSaid& thing, const std::optional<std::string>& asked, Unit unit,
                         std::string_view text) {
  if (asked)
    if (const Result<ShapeKind> kind = shape_option(*asked); !kind) return failure(kind.error());
  Result<Shape> shape = make_shape(shape_of_thing(thing, asked), thing.size, "", unit);
  if (!shape) return shape;
  if (const std::string missing = missing_figure(*shape); !missing.empty())
    return failure({.what = fmt::format("\"{}\": {} is not known", text, missing),
                    .expected = "a circle, oval, square or rectangle of known size"});
  return shape;
}

Problem no_opening_named(std::string_view text) {
  return {.kind = ProblemKind::unknown_name,
          .what = fmt::format("\"{}\" does not say which opening", text),
          .expected =
              "a die of the book, as in \"second largest tidepool rectangle\", or a size, as in "
              "\"3 x 4 in frame\""};
}

Problem no_panel_named(std::string_view text, std::vector<std::string> candidates) {
  return {.kind = ProblemKind::unknown_name,
          .what = fmt::format("\"{}\" is no size, and nothing in the book that has one", text),
          .where = {},
          .expected = "a size, as in \"2-3/8 in circle\", or the name of a die or a stamp",
          .candidates = std::move(candidates)};
}

bool begins_with_figure(std::string_view text) {
  const std::string_view trimmed = trim(text);
  return !trimmed.empty() && trimmed.front() >= '0' && trimmed.front() <= '9';
}

// What is wrong with a text as a size; where nothing is, as a name.
Problem size_problem(std::string_view text, Unit unit, const Problem& as_name) {
  const Result<Size> size = size_option("size", text, unit);
  return size ? as_name : size.error();
}

// "this frame", "the die": words for the thing, and no name.
bool says_nothing(std::string_view text) {
  const std::string folded = fold(text);
  for (const std::string_view one :
       {"it", "this", "that", "frame", "die", "opening", "window", "this frame", "this die", "this opening",
        "this window", "that frame", "that die", "that opening", "the frame", "the die", "a frame", "a die"})
    if (folded == one) return true;
  return false;
}

// "window 2", "die 3": a whole number without a unit behind words is an order, not a size.
bool ends_in_order(std::string_view text, const ThingSaid& thing) {
  const std::string_view trimmed = trim(text);
  if (!thing.shape.empty() || !thing.size.one_figure || begins_with_figure(trimmed)) return false;
  const std::size_t figure = trimmed.find_last_not_of("0123456789");
  return figure != std::string_view::npos && figure + 1 < trimmed.size() && trimmed[figure] == ' ';
}

// The outermost line of a die, which is what it cuts.
Result<PanelSaid> panel_of_die(const Book& book, const OpeningRecord& said, bool line_said) {
  OpeningRecord cut = said;
  if (!line_said)
    if (std::vector<OpeningRecord> lines = openings_of_die(book, said.die_id); !lines.empty())
      cut = std::move(lines.front());
  Result<Shape> shape = shape_of(cut);
  if (!shape) return failure(shape.error());
  return PanelSaid{std::move(*shape), cut.unit, true, describe(cut), cut.die_id, {}};
}

// A stamp, or another supply that has a size.
std::optional<PanelSaid> panel_of_supply(const Book& book, std::string_view text,
                                         const std::optional<std::string>& asked) {
  for (const std::string& name : {std::string(text), bare_name(text)}) {
    const Result<NameHit> hit = find_name(book, name, RecordKind::supply);
    if (!hit) continue;
    const std::optional<SupplyRow> row = supply(book, hit->id);
    if (!row || !row->size.width) continue;
    const Length height = row->size.height.value_or(*row->size.width);
    Size size{.width = *row->size.width, .height = height, .unit = row->size.unit};
    size.one_figure = !row->size.height || *row->size.height == *row->size.width;
    const bool round = row->size.text.find("circle") != std::string::npos;
    const std::string word = asked.value_or(round ? "circle" : size.one_figure ? "square" : "rectangle");
    if (Result<Shape> shape = make_shape(word, size, "", size.unit))
      return PanelSaid{std::move(*shape), size.unit, true, hit->name, 0, {}};
  }
  return std::nullopt;
}

}  // namespace

Result<OpeningSaid> opening_or_size_said(const Book& book, std::string_view text) {
  Result<OpeningRecord> named = opening_said(book, text);
  if (named && named->read_as.empty()) return OpeningSaid{std::move(*named), false, {}};
  if (!named && named.error().kind == ProblemKind::ambiguous) return failure(named.error());
  const Unit unit = settings(book).unit;
  const std::optional<ThingSaid> thing = read_thing(text, vocabulary_of(book), unit);
  if (!thing || ends_in_order(text, *thing)) {
    if (named) return OpeningSaid{std::move(*named), false, {}};
    if (begins_with_figure(text)) return failure(size_problem(text, unit, named.error()));
    return failure(says_nothing(text) ? no_opening_named(text) : named.error());
  }
  const Result<Shape> shape = shape_said(*thing, std::nullopt, unit, text);
  if (!shape) return failure(shape.error());
  OpeningSaid said{.opening = {}, .invented = true, .note = note_of(*thing)};
  said.opening.shape_word = shape_of_thing(*thing, std::nullopt);
  said.opening.width = shape->width;
  said.opening.height = shape->height;
  said.opening.unit = thing->size.unit;
  said.opening.measured = true;
  return said;
}

Result<PanelSaid> panel_said(const Book& book, std::string_view text,
                             const std::optional<std::string>& shape) {
  const Unit unit = settings(book).unit;
  if (const std::optional<ThingSaid> thing = read_thing(text, vocabulary_of(book), unit)) {
    Result<Shape> made = shape_said(*thing, shape, unit, text);
    if (!made) return failure(made.error());
    return PanelSaid{
        std::move(*made), thing->size.unit, thing->size.orientation == Orientation::either, {}, 0,
        note_of(*thing)};
  }
  const Result<OpeningRecord> named = opening_said(book, text);
  if (named && named->read_as.empty()) return panel_of_die(book, *named, !opening_wanted(text).line.empty());
  if (std::optional<PanelSaid> panel = panel_of_supply(book, text, shape)) return std::move(*panel);
  if (!named && named.error().kind == ProblemKind::ambiguous) return failure(named.error());
  if (named) {
    Result<PanelSaid> panel = panel_of_die(book, *named, !opening_wanted(text).line.empty());
    if (panel) panel->note = read_as_note(*named);
    return panel;
  }
  return failure(begins_with_figure(text) ? size_problem(text, unit, named.error())
                                          : no_panel_named(text, named.error().candidates));
}

std::string opening_name(const OpeningRecord& opening) {
  if (opening.line_id != 0) return describe(opening);
  if (const Result<Shape> shape = shape_of(opening))
    return fmt::format("An opening as you say it, {}", describe(*shape, opening.unit));
  return "An opening as you say it";
}

std::string read_as_note(const OpeningRecord& opening) {
  return opening.read_as.empty() ? std::string() : fmt::format("Read as {}.", opening.read_as);
}

}  // namespace insetbook
