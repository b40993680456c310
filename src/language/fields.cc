// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/fields.h"

#include <algorithm>
#include <utility>

#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr bool in_order() {
  int place = 0;
  for (const Field& each : fields)
    if (static_cast<int>(each.id) != place++ || each.slot != place) return false;
  return true;
}
static_assert(in_order(), "the table is in the order of FieldName, each slot once");

bool has_word(std::string_view list, std::string_view word) {
  while (!list.empty()) {
    const std::size_t end = std::min(list.find(' '), list.size());
    if (list.substr(0, end) == word) return true;
    list.remove_prefix(std::min(end + 1, list.size()));
  }
  return false;
}

}  // namespace

const Field& field(FieldName id) {
  return fields[static_cast<std::size_t>(id)];
}

const Field* field_named(std::string_view folded) {
  for (const Field& each : fields)
    if (each.name == folded || has_word(each.other_names, folded)) return &each;
  return nullptr;
}

std::vector<std::string> fields_like(std::string_view folded) {
  std::vector<std::pair<std::size_t, std::string>> near;
  const std::size_t limit = folded.size() > 64 ? 0 : std::max<std::size_t>(2, folded.size() / 2);
  for (const Field& each : fields) {
    const std::size_t distance = edit_distance(folded, each.name, limit);
    if (distance <= limit) near.emplace_back(distance, each.name);
  }
  std::stable_sort(near.begin(), near.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> names;
  for (auto& [distance, name] : near)
    if (names.size() < 3) names.push_back(std::move(name));
  return names;
}

}  // namespace insetbook
