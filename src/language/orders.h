// SPDX-License-Identifier: GPL-3.0-or-later
//
// Words that say a place in an order or a number: "second", "2nd", "second largest", "next to smallest",
// "smallest but one", "second from the top". All take folded words (text/utf8.h, fold) and look at no
// more than six of them. The top of a set is its largest, its last die the smallest.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace insetbook {

// "first", "2nd", "23rd" → 1, 2, 23; "twentieth" is the last one that is read as a word.
std::optional<int> ordinal(std::string_view word);
// A whole number of at most three figures, or a word up to "twelve"; a pair or a couple is 2, a dozen 12.
std::optional<int> small_number(std::string_view word);
// Only figures: "2" → 2; at most three of them, not zero.
std::optional<int> plain_number(std::string_view word);

// An order by size that begins at words[0].
struct RankOrder {
  std::size_t words = 0;  // how many words it takes
  int rank = 0;           // 1 = the largest (or the smallest)
  bool from_smallest = false;
  bool by_size = false;  // a word for the size was said ("largest"); a bare "second" counts from the largest
};
std::optional<RankOrder> order_at(std::span<const std::string> words);

}  // namespace insetbook
