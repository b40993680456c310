// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/settings.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "book/dates.h"
#include "book/problems.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

enum class Kind { unit, length, text, hemisphere, date };

struct Row {
  SettingRow shown;
  Kind kind;
};

constexpr std::array<Row, 10> rows{{
    {{"unit", "the unit of figures written without one, and of answers", "in", "mm"}, Kind::unit},
    {{"cutting step", "computed panels are rounded down to it", "1/16 in", "1 mm"}, Kind::length},
    {{"border", "the border of a computed panel where nothing else says", "1/16 in", "2 mm"}, Kind::length},
    {{"least strip", "the narrowest piece or off-cut worth keeping", "1/8 in", "3 mm"}, Kind::length},
    {{"scoring marks", "the distance between the grooves of the scoring board", "1/8 in", "5 mm"},
     Kind::length},
    {{"paper", "paper sizes at hand, \"; \" between them", "8-1/2 x 11 in; 12 x 12 in", "A4; 12 x 12 in"},
     Kind::text},
    {{"envelope slack", "the room a card needs in its envelope, all each way", "1/8 in", "3 mm"},
     Kind::length},
    {{"high of centre", "how far up that is", "half of the space above", "half of the space above"},
     Kind::text},
    {{"hemisphere", "whose seasons \"last spring\" means: northern or southern", "northern", "northern"},
     Kind::hemisphere},
    {{"today", "the date to take as today (for tests); blank = the day it is", "", ""}, Kind::date},
}};

constexpr auto shown_rows = [] {
  std::array<SettingRow, rows.size()> shown{};
  for (std::size_t i = 0; i < rows.size(); ++i) shown[i] = rows[i].shown;
  return shown;
}();

const Row* row_named(std::string_view name) {
  const std::string folded = fold(name);
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.shown.name == folded; });
  return found == rows.end() ? nullptr : &*found;
}

Problem no_such_setting(std::string_view name) {
  Problem problem;
  problem.kind = ProblemKind::unknown_name;
  problem.what = fmt::format("there is no setting {}", in_quotes(name));
  problem.where.text = name;
  problem.expected = "one of the settings";
  const std::string folded = fold(name);
  std::vector<std::pair<std::size_t, std::string>> nearest;
  for (const Row& row : rows) {
    const std::size_t distance = edit_distance(folded, row.shown.name, 3);
    if (distance <= 3 || row.shown.name.find(folded) != std::string_view::npos) {
      nearest.emplace_back(distance, std::string(row.shown.name));
    }
  }
  std::stable_sort(nearest.begin(), nearest.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [distance, text] : nearest) problem.candidates.push_back(std::move(text));
  if (problem.candidates.empty()) {
    for (const Row& row : rows) problem.candidates.emplace_back(row.shown.name);
  }
  return problem;
}

Problem bad_value(const Row& row, std::string_view value, std::string expected) {
  Problem problem;
  problem.what = fmt::format("{} is no value for {}", in_quotes(value), in_quotes(row.shown.name));
  problem.where.text = value;
  problem.expected = std::move(expected);
  return problem;
}

// The value as it is kept: lengths with their unit, so that a change of the book's unit does not change them.
Result<std::string> checked(const Row& row, std::string_view value, Unit unit) {
  const std::string_view trimmed = trim(value);
  if (trimmed.empty()) return std::string();  // back to the default
  switch (row.kind) {
    case Kind::unit: {
      const std::string folded = fold(trimmed);
      if (folded == "in" || folded == "inch" || folded == "inches") return "in";
      if (folded == "mm" || folded == "millimetre" || folded == "millimetres" || folded == "metric")
        return "mm";
      return failure(bad_value(row, value, "in or mm"));
    }
    case Kind::length: {
      const Result<ReadLength> read = read_length(trimmed, unit);
      if (!read) return failure(read.error());
      if (read->length <= Length())
        return failure(bad_value(row, value, "a length above zero, as in 1/16 in or 1 mm"));
      return write(read->length, read->unit);
    }
    case Kind::hemisphere: {
      const std::string folded = fold(trimmed);
      if (folded.empty() || folded == "northern" || folded == "southern") return folded;
      if (folded == "north" || folded == "south") return folded + "ern";
      return failure(bad_value(row, value, "northern or southern"));
    }
    case Kind::date:
      if (trimmed.empty() || is_iso_date(trimmed)) return std::string(trimmed);
      return failure(bad_value(row, value, "a date as in 2026-03-08, or nothing"));
    default:
      if (!valid_utf8(trimmed)) return failure(bad_value(row, value, "text in UTF-8"));
      if (auto control = control_character_in(trimmed, Lines::one)) return failure(std::move(*control));
      return std::string(trimmed);
  }
}

std::optional<std::string> stored(const Book& book, std::string_view name) {
  Statement& statement = book.statement("SELECT value FROM setting WHERE name = ?");
  statement.bind(1, name);
  std::optional<std::string> value;
  if (statement.step()) value = std::string(statement.text(0));
  statement.reset();
  return value;
}

// Defaults are of this table and stored values were checked, so a value that cannot be read was damaged: the
// default then.
Length length_of(std::string_view stored_value, std::string_view default_value, Unit unit) {
  if (const auto read = read_length(stored_value, unit); read && read->length > Length()) return read->length;
  const auto read = read_length(default_value, unit);
  return read ? read->length : Length();
}

}  // namespace

std::span<const SettingRow> setting_rows() {
  return shown_rows;
}

std::optional<std::string_view> setting_called(std::string_view name) {
  const Row* row = row_named(name);
  return row ? std::optional(row->shown.name) : std::nullopt;
}

Settings settings(const Book& book) {
  std::array<std::optional<std::string>, rows.size()> values;
  Statement& statement = book.statement("SELECT name, value FROM setting");
  while (statement.step()) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (rows[i].shown.name == statement.text(0)) values[i] = std::string(statement.text(1));
    }
  }
  Settings all;
  all.unit = values[0] == "mm" ? Unit::mm : Unit::inch;
  const auto text = [&](std::size_t i) {
    return values[i]
               ? *values[i]
               : std::string(all.unit == Unit::mm ? rows[i].shown.mm_default : rows[i].shown.inch_default);
  };
  const auto length = [&](std::size_t i) {
    return length_of(text(i), all.unit == Unit::mm ? rows[i].shown.mm_default : rows[i].shown.inch_default,
                     all.unit);
  };
  all.cutting_step = length(1);
  all.border = length(2);
  all.least_strip = length(3);
  all.scoring_marks = length(4);
  all.paper = text(5);
  all.envelope_slack = length(6);
  all.high_of_centre = text(7);
  all.southern = text(8) == "southern";
  all.today = text(9);
  return all;
}

Result<std::string> checked_setting(std::string_view name, std::string_view value, Unit unit) {
  const Row* row = row_named(name);
  if (row == nullptr) return failure(no_such_setting(name));
  return checked(*row, value, unit);
}

Result<void> set_setting(Book& book, std::string_view name, std::string_view value) {
  const Row* row = row_named(name);
  if (row == nullptr) return failure(no_such_setting(name));
  std::string kept;
  const auto check = [&]() -> Result<void> {
    const Result<std::string> read = checked(*row, value, settings(book).unit);
    if (!read) return failure(read.error());
    kept = *read;
    return {};
  };
  if (const auto read = book.reading(check); !read) return read;
  return book.change(
      fmt::format("set {} to {}", row->shown.name, kept.empty() ? "nothing" : kept),
      [&](Change& change) -> Result<void> {
        const Book& inside = change.book();
        if (kept.empty()) {
          inside.statement("DELETE FROM setting WHERE name = ?").bind(1, row->shown.name).run();
          return {};
        }
        inside
            .statement(
                "INSERT INTO setting (name, value) VALUES (?1, ?2) "
                "ON CONFLICT (name) DO UPDATE SET value = ?2 WHERE value <> ?2")
            .bind_all(row->shown.name, std::string_view(kept))
            .run();
        return {};
      });
}

Result<std::string> setting_text(const Book& book, std::string_view name) {
  const Row* row = row_named(name);
  if (row == nullptr) return failure(no_such_setting(name));
  if (const auto value = stored(book, row->shown.name)) return *value;
  const bool metric = stored(book, "unit") == "mm";
  return std::string(metric ? row->shown.mm_default : row->shown.inch_default);
}

}  // namespace insetbook
