// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/estimated.h"

#include <algorithm>

namespace insetbook {

// The sizes of one edge of a set in size order, for the estimate: the lines of the same kind, one a die.
std::optional<Estimate> estimated_size(const Book& book, const OpeningRecord& opening) {
  std::vector<const OpeningRecord*> of_edge;
  const std::vector<OpeningRecord> all = openings_of_set(book, opening.set_id);
  for (const OpeningRecord& other : all)
    if (other.line == opening.line && other.rank > 0 && other.shape_word == opening.shape_word)
      of_edge.push_back(&other);
  std::sort(of_edge.begin(), of_edge.end(),
            [](const OpeningRecord* a, const OpeningRecord* b) { return a->rank < b->rank; });
  std::vector<std::optional<Ranked>> known;
  std::optional<std::size_t> wanted;
  for (const OpeningRecord* other : of_edge) {
    if (other->line_id == opening.line_id) wanted = known.size();
    known.push_back(other->measured && other->line_id != opening.line_id
                        ? std::optional<Ranked>({other->width, other->height, other->give_or_take})
                        : std::nullopt);
  }
  if (!wanted) return std::nullopt;
  return estimates(known)[*wanted];
}

}  // namespace insetbook
