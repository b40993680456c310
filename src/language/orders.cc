// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/orders.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace insetbook {
namespace {

constexpr std::string_view ordinals[] = {"first",     "second",      "third",      "fourth",     "fifth",
                                         "sixth",     "seventh",     "eighth",     "ninth",      "tenth",
                                         "eleventh",  "twelfth",     "thirteenth", "fourteenth", "fifteenth",
                                         "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth"};
constexpr std::string_view numbers[] = {"one",   "two",   "three", "four", "five",   "six",
                                        "seven", "eight", "nine",  "ten",  "eleven", "twelve"};
constexpr std::string_view large_words[] = {"largest", "biggest", "greatest"};
constexpr std::string_view small_words[] = {"smallest", "littlest", "tiniest"};
// Where a place is counted from: "third from the top", "last but one".
constexpr std::string_view top_words[] = {"top", "start"};
constexpr std::string_view end_words[] = {"bottom", "end", "last"};

template <std::size_t N>
std::optional<int> place_in(const std::string_view (&list)[N], std::string_view word) {
  const auto at = std::ranges::find(list, word);
  if (at == std::end(list)) return std::nullopt;
  return static_cast<int>(at - std::begin(list)) + 1;
}

bool any_of(std::span<const std::string_view> list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace

std::optional<int> plain_number(std::string_view word) {
  if (word.empty() || word.size() > 3 || !std::ranges::all_of(word, is_digit)) return std::nullopt;
  int value = 0;
  for (const char c : word) value = value * 10 + (c - '0');
  if (value == 0) return std::nullopt;
  return value;
}

std::optional<int> small_number(std::string_view word) {
  if (const auto figures = plain_number(word)) return figures;
  if (word == "pair" || word == "couple") return 2;
  if (word == "dozen") return 12;
  return place_in(numbers, word);
}

std::optional<int> ordinal(std::string_view word) {
  if (word.size() < 3) return std::nullopt;
  const std::string_view ending = word.substr(word.size() - 2);
  if (ending != "st" && ending != "nd" && ending != "rd" && ending != "th") return std::nullopt;
  if (const auto said = place_in(ordinals, word)) return said;
  return plain_number(word.substr(0, word.size() - 2));
}

namespace {

// One of the largest or the smallest words at words[at], as the end that `rank` is counted from.
class OrderReader {
 public:
  explicit OrderReader(std::span<const std::string> words) : words_(words) {}

  std::optional<RankOrder> read() const {
    if (const auto alone = size_word(0, 1)) return but_so_many(*alone);
    if (word(0) == "last") {
      const RankOrder last = but_so_many({.words = 1, .rank = 1, .from_smallest = true, .by_size = true});
      if (last.words > 1) return last;
    }
    if (word(0) == "next") {
      const std::size_t after = word(1) == "to" ? (word(2) == "the" ? 3u : 2u) : 1u;
      return size_word(after, 2);
    }
    const auto rank = ordinal(word(0));
    if (!rank) return std::nullopt;
    if (const auto said = size_word(1, *rank)) return said;
    // "second from the largest" is counted like "second largest".
    if (word(1) == "from" || word(1) == "to") {
      const std::size_t after = word(2) == "the" ? 3u : 2u;
      if (const auto said = size_word(after, *rank)) return said;
      if (const auto said = end_word(after, *rank)) return said;
    }
    return RankOrder{.words = 1, .rank = *rank};
  }

 private:
  std::string_view word(std::size_t i) const {
    return i < words_.size() ? std::string_view(words_[i]) : std::string_view();
  }

  std::optional<RankOrder> size_word(std::size_t at, int rank) const {
    if (!any_of(large_words, word(at)) && !any_of(small_words, word(at))) return std::nullopt;
    return RankOrder{
        .words = at + 1, .rank = rank, .from_smallest = any_of(small_words, word(at)), .by_size = true};
  }

  std::optional<RankOrder> end_word(std::size_t at, int rank) const {
    if (!any_of(top_words, word(at)) && !any_of(end_words, word(at))) return std::nullopt;
    return RankOrder{
        .words = at + 1, .rank = rank, .from_smallest = any_of(end_words, word(at)), .by_size = true};
  }

  // "smallest but one" is the second smallest.
  RankOrder but_so_many(RankOrder order) const {
    if (word(order.words) != "but") return order;
    const auto count = small_number(word(order.words + 1));
    if (!count) return order;
    order.rank += *count;
    order.words += 2;
    return order;
  }

  std::span<const std::string> words_;
};

}  // namespace

std::optional<RankOrder> order_at(std::span<const std::string> words) {
  return OrderReader(words).read();
}

}  // namespace insetbook
