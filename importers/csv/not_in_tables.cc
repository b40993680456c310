// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/not_in_tables.h"

#include <fmt/format.h>

#include <vector>

namespace insetbook {

namespace {

struct LeftOut {
  std::string_view one, several;
  std::string_view count;  // SQL
};

// Photographs and the text of an outline have columns; a colour comes back with the supply that has it.
constexpr LeftOut left_out[] = {
    {"setting", "settings", "SELECT count(*) FROM setting"},
    {"word of your own", "words of your own", "SELECT count(*) FROM own_term"},
    {"note of a set", "notes of sets", "SELECT count(*) FROM die_set WHERE note <> ''"},
    {"note of a die", "notes of dies", "SELECT count(*) FROM die WHERE note <> ''"},
    {"note of a measurement", "notes of measurements",
     "SELECT count(*) FROM measurement WHERE note <> '' AND standing <> 'earlier'"},
    {"note of a colour", "notes of colours", "SELECT count(*) FROM colour WHERE note <> ''"},
    {"earlier figure", "earlier figures", "SELECT count(*) FROM measurement WHERE standing = 'earlier'"},
    {"set without a line", "sets without a line",
     "SELECT count(*) FROM die_set s WHERE NOT EXISTS (SELECT 1 FROM die d JOIN line l ON l.die_id = d.id "
     "WHERE d.set_id = s.id)"},
    {"colour that no supply has", "colours that no supply has",
     "SELECT count(*) FROM colour c WHERE NOT EXISTS (SELECT 1 FROM supply s WHERE s.colour_id = c.id)"},
};

}  // namespace

std::string not_in_tables(const Book& book) {
  std::vector<std::string> parts;
  for (const LeftOut& kind : left_out) {
    Statement& row = book.statement(kind.count);
    const std::int64_t count = row.step() ? row.integer(0) : 0;
    row.reset();
    if (count > 0) parts.push_back(fmt::format("{} {}", count, count == 1 ? kind.one : kind.several));
  }
  if (parts.empty()) return {};
  std::string list = parts.front();
  for (std::size_t i = 1; i < parts.size(); ++i)
    list += fmt::format("{}{}", i + 1 == parts.size() ? " and " : ", ", parts[i]);
  return fmt::format("the tables have no place for {}; an export as JSON holds all of it", list);
}

}  // namespace insetbook
