// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/nearest.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "answers/supply_status.h"
#include "answers/words.h"
#include "book/names.h"
#include "colour/nearest.h"
#include "colour/value.h"
#include "language/ask_thing.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

bool can_be_had(const Vocabulary& words, std::string_view status, std::string_view until,
                const std::string& today) {
  const std::vector<std::string> current = words.with_narrower(VocabularyName::status, "current");
  const std::string is = status_today(words, status, "", until, today);
  return std::ranges::find(current, is) != current.end();
}

// By colour: "current" where any supply of it can be had, "withdrawn" where none can.
std::map<std::int64_t, std::string> statuses(const Book& book, std::optional<std::int64_t> only) {
  const Vocabulary words = vocabulary_of(book);
  const std::string date = today(book);
  Statement& rows = book.statement(
      "SELECT colour_id, status, until_date FROM supply WHERE colour_id IS NOT NULL AND (?1 IS NULL OR "
      "colour_id = ?1)");
  rows.bind(1, only);
  std::map<std::int64_t, std::string> found;
  while (rows.step()) {
    std::string& status = found.try_emplace(rows.integer(0), "withdrawn").first->second;
    if (can_be_had(words, rows.text(1), rows.text(2), date)) status = "current";
  }
  rows.reset();
  return found;
}

struct ColourRow {
  std::int64_t id = 0;
  std::string name;
  std::optional<std::uint32_t> srgb;
};

std::vector<ColourRow> all_colours(const Book& book) {
  std::vector<ColourRow> colours;
  Statement& rows = book.statement("SELECT id, name, srgb FROM colour ORDER BY key");
  while (rows.step()) {
    ColourRow row{rows.integer(0), std::string(rows.text(1)), std::nullopt};
    if (const auto value = rows.maybe_integer(2)) row.srgb = static_cast<std::uint32_t>(*value);
    colours.push_back(std::move(row));
  }
  rows.reset();
  return colours;
}

std::vector<std::string> stand_ins_of(const Book& book, std::int64_t colour) {
  std::vector<std::string> found;
  Statement& rows = book.statement(
      "SELECT kind || CASE name WHEN '' THEN '' ELSE ', ' || name END, instead FROM supply "
      "WHERE colour_id = ?1 AND instead <> '' ORDER BY 1");
  rows.bind(1, colour);
  while (rows.step()) found.push_back(fmt::format("{}: {}", rows.text(0), rows.text(1)));
  rows.reset();
  return found;
}

int place_of(const std::string& status) {
  return status == "current" ? 0 : status.empty() ? 1 : 2;
}

Result<NameHit> colour_said(const Book& book, std::string_view text) {
  Result<NameHit> hit = find_name(book, text, RecordKind::colour);
  if (hit) return hit;
  const std::string bare = bare_name(text);
  if (bare != fold(text))
    if (Result<NameHit> other = find_name(book, bare, RecordKind::colour)) return other;
  return hit;
}

Problem no_value(const std::string& name) {
  return {.kind = ProblemKind::refused,
          .what = fmt::format("{} has no value, so nothing can be compared with it", name),
          .expected = "a table of supplies with its colour value, as in #9caf88; or ask for a value"};
}

// Takes the colour that is asked; where it is one of the book, its id.
Result<std::optional<std::int64_t>> take_asked(const Book& book, const std::string& text,
                                               const std::vector<ColourRow>& colours, NearestAnswer& answer) {
  if (trim(text).starts_with('#')) {
    const Result<std::uint32_t> value = read_colour_value(text);
    if (!value) return failure(value.error());
    answer.srgb = *value;
    return std::nullopt;
  }
  const Result<NameHit> hit = colour_said(book, text);
  if (!hit) {
    Problem problem = hit.error();
    if (problem.expected.empty()) problem.expected = "a colour of the book, or a value as in #a55030";
    return failure(std::move(problem));
  }
  answer.name = hit->name;
  if (hit->how == NameHit::How::like) answer.read_as = text;
  for (const ColourRow& colour : colours)
    if (colour.id == hit->id && colour.srgb) answer.srgb = *colour.srgb;
  if (std::ranges::any_of(colours, [&](const ColourRow& c) { return c.id == hit->id && !c.srgb; }))
    return failure(no_value(hit->name));
  return hit->id;
}

}  // namespace

std::string colour_status(const Book& book, std::int64_t colour_id) {
  const auto found = statuses(book, colour_id);
  const auto at = found.find(colour_id);
  return at == found.end() ? std::string() : at->second;
}

Result<NearestAnswer> nearest_to(const Book& book, const NearestAsked& asked) {
  const std::vector<ColourRow> colours = all_colours(book);
  NearestAnswer answer;
  const Result<std::optional<std::int64_t>> own = take_asked(book, asked.colour, colours, answer);
  if (!own) return failure(own.error());
  const std::map<std::int64_t, std::string> status = statuses(book, std::nullopt);
  const auto status_of = [&](std::int64_t id) {
    const auto at = status.find(id);
    return at == status.end() ? std::string() : at->second;
  };
  std::vector<std::uint32_t> values;
  std::vector<const ColourRow*> compared;
  for (const ColourRow& colour : colours) {
    if (*own && colour.id == **own) continue;
    if (!colour.srgb) {
      answer.without_value.push_back(colour.name);
      continue;
    }
    values.push_back(*colour.srgb);
    compared.push_back(&colour);
  }
  for (const NearColour& near : nearest_colours(answer.srgb, values, values.size())) {
    const ColourRow& colour = *compared[near.place];
    answer.colours.push_back({colour.name, *colour.srgb, status_of(colour.id), near.delta_e});
  }
  std::stable_sort(
      answer.colours.begin(), answer.colours.end(),
      [](const NearestColour& a, const NearestColour& b) { return place_of(a.status) < place_of(b.status); });
  if (answer.colours.size() > asked.limit) answer.colours.resize(asked.limit);
  if (*own) {
    answer.status = status_of(**own);
    answer.stand_ins = stand_ins_of(book, **own);
  }
  return answer;
}

}  // namespace insetbook
