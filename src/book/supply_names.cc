// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/supply_names.h"

#include <algorithm>
#include <array>
#include <vector>

#include "text/utf8.h"

namespace insetbook {

namespace {

enum Part { kind, set, name, colour, none };
using Parts = std::array<std::string, 4>;  // folded, by Part
using Order = std::array<Part, 4>;

// How a person names a supply, from the plainest to the fullest.
constexpr Order orders[] = {
    {name, none, none, none},   {colour, none, none, none}, {set, name, none, none},
    {name, set, none, none},    {name, colour, none, none}, {colour, name, none, none},
    {kind, name, none, none},   {name, kind, none, none},   {colour, kind, none, none},
    {kind, colour, none, none}, {set, colour, none, none},  {colour, name, kind, none},
    {set, name, colour, none},  {set, name, kind, none},    {set, colour, kind, none},
    {kind, name, colour, none}, {kind, set, name, none},    {kind, set, name, colour}};

// Empty where the supply lacks one of the parts.
std::string name_in(const Order& order, const Parts& parts) {
  std::string joined;
  for (const Part part : order) {
    if (part == none) break;
    if (parts[part].empty()) return {};
    joined += (joined.empty() ? "" : " ") + parts[part];
  }
  return joined;
}

std::vector<std::string> names_of(const Parts& parts) {
  std::vector<std::string> names;
  for (const Order& order : orders) {
    // A colour alone names the supply only where it has no name of its own: "sage" is said of paper and ink
    // alike.
    if (order[0] == colour && order[1] == none && !parts[name].empty()) continue;
    std::string one = name_in(order, parts);
    if (!one.empty() && std::find(names.begin(), names.end(), one) == names.end())
      names.push_back(std::move(one));
  }
  return names;
}

}  // namespace

SupplyNames::SupplyNames(const Book& book) {
  Statement& row = book.statement(
      "SELECT s.id, s.kind, s.set_name, s.name, coalesce(c.name, '') FROM supply s "
      "LEFT JOIN colour c ON c.id = s.colour_id");
  while (row.step()) {
    const std::int64_t id = row.integer(0);
    const Parts parts{fold(row.text(1)), fold(row.text(2)), fold(row.text(3)), fold(row.text(4))};
    for (std::string& one : names_of(parts)) {
      const auto [it, is_new] = ids_.emplace(std::move(one), id);
      if (!is_new && it->second != id) it->second.reset();
    }
  }
  row.reset();
}

std::optional<std::int64_t> SupplyNames::find(std::string_view text) const {
  std::string key(text);
  std::replace(key.begin(), key.end(), ',', ' ');
  const auto it = ids_.find(fold(key));
  return it == ids_.end() ? std::nullopt : it->second;
}

}  // namespace insetbook
