// SPDX-License-Identifier: GPL-3.0-or-later
//
// Reads how people say which opening they mean: "second largest tidepool rectangle, stitched", "tidepool
// rectangles 2", "the smallest moonrise circle", "window of the big label". Only the words are read here; the
// book decides which record is meant (book/openings.h).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook {

struct OpeningPhrase {
  std::string name;         // what is left once order and line are taken out, folded: set and die label
  std::optional<int> rank;  // "second largest" → 2, "largest" → 1, "third" → 3
  std::optional<int> rank_from_smallest;  // "smallest" → 1, "second smallest" → 2
  std::string line;                       // "stitched", "window", "window 2"; empty = not said
  std::string text;                       // as typed
};

OpeningPhrase read_opening(std::string_view text);
// Every reading, the likeliest first. A word for a line inside the name may belong to the name of the set
// ("stitched rectangles 2") or say the line: the first reading leaves it in the name, the second takes it
// out.
std::vector<OpeningPhrase> readings_of_opening(std::string_view text);

// An order on its own, as the `die` cell of a table or an argument: "2" and "second largest" → 2 …
// Numbers of at most three figures; rank 0 is none.
std::optional<int> read_rank(std::string_view folded);
std::optional<int> read_rank_from_smallest(std::string_view folded);
// The line kind for any word of it ("sewn" → "stitched"); empty when it is none.
std::string line_kind(std::string_view folded);

}  // namespace insetbook
