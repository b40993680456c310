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
  if (const auto said = place_in(ordinals, word)) return said;
  if (word.size() < 3) return std::nullopt;
  const std::string_view ending = word.substr(word.size() - 2);
  if (ending != "st" && ending != "nd" && ending != "rd" && ending != "th") return std::nullopt;
  return plain_number(word.substr(0, word.size() - 2));
}

std::optional<Order> order_at(std::span<const std::string> words) {
  const auto word = [&](std::size_t i) {
    return i < words.size() ? std::string_view(words[i]) : std::string_view();
  };
  const auto size_word = [&](std::size_t i, Order order) -> std::optional<Order> {
    if (!any_of(large_words, word(i)) && !any_of(small_words, word(i))) return std::nullopt;
    order.from_smallest = any_of(small_words, word(i));
    order.by_size = true;
    order.words = i + 1;
    return order;
  };
  if (const auto alone = size_word(0, {.rank = 1})) return alone;
  if (word(0) == "next") {
    const std::size_t after = word(1) == "to" ? (word(2) == "the" ? 3u : 2u) : 1u;
    return size_word(after, {.rank = 2});
  }
  const auto rank = ordinal(word(0));
  if (!rank) return std::nullopt;
  if (const auto said = size_word(1, {.rank = *rank})) return said;
  // "second from the largest" is counted like "second largest".
  if (word(1) == "from" || word(1) == "to") {
    const std::size_t after = word(2) == "the" ? 3u : 2u;
    if (const auto said = size_word(after, {.rank = *rank})) return said;
  }
  return Order{.words = 1, .rank = *rank};
}

}  // namespace insetbook
