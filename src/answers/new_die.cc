// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/new_die.h"

#include <fmt/format.h>

#include <optional>

#include "book/records.h"
#include "language/read_opening.h"
#include "language/read_record.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::string_view example =
    "the set, the die's order or label, and the line: \"Moonrise Circles 4, stitched\"";

// The kind of line that a misspelt word was meant as, or nothing.
std::string_view nearest_line(std::string_view folded) {
  constexpr std::size_t limit = 2;
  std::string_view nearest;
  std::size_t least = limit + 1;
  for (const std::string_view kind : {"cut", "stitched", "pierced", "scored", "embossed", "window"}) {
    const std::size_t distance = edit_distance(folded, kind, limit);
    if (distance < least && distance < kind.size() - 1) least = distance, nearest = kind;
  }
  return nearest;
}

Problem no_line(std::string_view word) {
  Problem problem{.kind = ProblemKind::unknown_name,
                  .what = fmt::format("{} is no line of a die", in_quotes(word)),
                  .where = {},
                  .expected = "cut, stitched, pierced, scored, embossed or window",
                  .candidates = {}};
  problem.where.text = word;
  if (const std::string_view nearest = nearest_line(fold(word)); !nearest.empty())
    problem.candidates.emplace_back(nearest);
  return problem;
}

// What stands before the line: a set and one of its dies. Empty where it is not both.
std::optional<NewDie> set_and_die(const Book& book, std::string_view words) {
  NewDie made;
  // The longest beginning that names a set of the book is the set; the rest is the die.
  for (std::size_t end = words.find_last_of(' '); end != std::string_view::npos && end > 0;
       end = words.find_last_of(' ', end - 1)) {
    if (!set_named(book, fold(words.substr(0, end)))) continue;
    made.set = trim(words.substr(0, end));
    made.die = trim(words.substr(end));
    return made;
  }
  if (const OpeningPhrase phrase = read_opening(words); phrase.rank && !phrase.name.empty()) {
    made.set = phrase.name;
    made.die = std::to_string(*phrase.rank);
    return made;
  }
  const std::size_t space = words.find_last_of(' ');
  if (space == std::string_view::npos) return std::nullopt;
  made.set = trim(words.substr(0, space));
  made.die = trim(words.substr(space));
  return made;
}

bool ends_with_order(std::string_view words) {
  const std::size_t space = words.find_last_of(' ');
  return space != std::string_view::npos && read_rank(fold(words.substr(space))).has_value();
}

struct Parts {
  std::string_view die, line;
};

// Without a comma the line is known by standing behind the die's number, or behind a set of the book and
// something more: "cut" may end the name of a set as well.
Parts parts_of(const Book& book, std::string_view text) {
  if (const std::size_t comma = text.find(','); comma != std::string_view::npos)
    return {trim(text.substr(0, comma)), trim(text.substr(comma + 1))};
  std::size_t end = text.size();
  Parts found{text, {}};
  for (int words = 0; words < 3; ++words) {
    end = text.find_last_of(' ', end - 1);
    if (end == std::string_view::npos || end == 0) break;
    const Parts parts{trim(text.substr(0, end)), trim(text.substr(end))};
    const bool known_set =
        set_named(book, fold(parts.die.substr(0, parts.die.find_last_of(' ')))).has_value() &&
        !set_named(book, fold(parts.die)) && parts.die.find(' ') != std::string_view::npos;
    if (!ends_with_order(parts.die) && !known_set) continue;
    if (read_line_cell(parts.line) || (words == 0 && !nearest_line(fold(parts.line)).empty())) found = parts;
  }
  return found;
}

}  // namespace

Result<NewDie> new_die_said(const Book& book, std::string_view text) {
  const Parts parts = parts_of(book, trim(text));
  const auto line = read_line_cell(parts.line);
  if (!line) return failure(no_line(parts.line));
  std::optional<NewDie> made = set_and_die(book, parts.die);
  if (!made || fold(made->set).empty() || fold(made->die).empty())
    return failure({.what = fmt::format("{} does not say which set and which die", in_quotes(text)),
                    .expected = std::string(example)});
  made->line = line->name;
  made->line_kind = line->kind;
  return *made;
}

}  // namespace insetbook
