// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/set_habit.h"

#include <algorithm>
#include <map>
#include <vector>

#include "answers/tried_panels.h"
#include "book/evidence.h"

namespace insetbook {
namespace {

// A border, and how many panels left it.
struct BorderCount {
  Length border;
  std::int64_t panels = 0;
};

// The border of the middle panel, the lesser of two.
Length middle(std::vector<BorderCount> borders, std::int64_t panels) {
  std::sort(borders.begin(), borders.end(),
            [](const BorderCount& a, const BorderCount& b) { return a.border < b.border; });
  std::int64_t before = 0;
  for (const BorderCount& border : borders) {
    before += border.panels;
    if (before > (panels - 1) / 2) return border.border;
  }
  return Length();
}

}  // namespace

std::pair<Length, int> habit_of_set(const Book& book, const OpeningRecord& opening, Length step) {
  std::map<std::int64_t, std::pair<OpeningRecord, Result<Shape>>> others;
  for (OpeningRecord& other : openings_of_set(book, opening.set_id)) {
    if (other.die_id == opening.die_id || !other.measured) continue;
    Result<Shape> shape = shape_of(other);
    others.emplace(other.line_id, std::pair(std::move(other), std::move(shape)));
  }
  std::vector<BorderCount> borders;
  std::int64_t panels = 0;
  for (const TriedCount& count : tried_counts_in_set(book, opening.set_id)) {
    const auto other = others.find(count.line_id);
    if (other == others.end() || count.result != "fits") continue;
    for (const bool from_sample : {false, true}) {
      TriedPanel tried{.shape = count.shape,
                       .width = count.width,
                       .height = count.height,
                       .unit = count.unit,
                       .from_sample = from_sample};
      const std::int64_t many = from_sample ? count.pieces : count.by_hand;
      if (many == 0) continue;
      if (const std::optional<Length> border =
              border_left(other->second.first, other->second.second, std::move(tried), step)) {
        borders.push_back({*border, many});
        panels += many;
      }
    }
  }
  return {std::max(middle(std::move(borders), panels), Length()), static_cast<int>(panels)};
}

}  // namespace insetbook
