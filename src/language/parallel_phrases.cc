// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/parallel_phrases.h"

#include <algorithm>
#include <span>
#include <utility>

namespace insetbook {
namespace {

using Kinds = std::vector<std::pair<Item::Kind, FieldName>>;

bool ends_phrases(const Item& item) {
  return item.kind == Item::Kind::comma || item.kind == Item::Kind::opens || item.kind == Item::Kind::group ||
         item.kind == Item::Kind::closes;
}

// What a phrase says, without what only joins it.
Kinds kinds_of(std::span<const Item> phrase) {
  Kinds kinds;
  for (const Item& item : phrase) {
    const bool joins = item.kind == Item::Kind::joins || (item.kind == Item::Kind::preposition && !item.how);
    if (joins) continue;
    const bool says = item.kind == Item::Kind::says;
    kinds.emplace_back(item.kind, says ? item.of : FieldName::text);
  }
  return kinds;
}

// Whether it says things of two kinds, or how pieces go together.
bool says_more_than_one_kind(std::span<const Item> phrase) {
  if (phrase.empty() || phrase.front().kind == Item::Kind::excludes) return false;
  if (std::ranges::any_of(phrase, &Item::field)) return false;
  const auto says = [](const Item& item) { return item.kind == Item::Kind::says; };
  const auto first = std::ranges::find_if(phrase, says);
  return std::any_of(first, phrase.end(), [&](const Item& item) {
    return (says(item) && item.of != first->of) || (item.kind == Item::Kind::preposition && item.how);
  });
}

// "navy circle or sage square": one piece each, which `or` offers as it is.
bool one_piece_each(std::span<const Item> phrase) {
  return std::ranges::all_of(
             phrase,
             [](const Item& item) { return says_of_piece(item) || item.kind == Item::Kind::number; }) &&
         std::ranges::count_if(phrase, is_head) == 1;
}

// The phrases between the "or"s of [first, last): half-open, by their places.
std::vector<std::pair<std::size_t, std::size_t>> phrases_of(const std::vector<Item>& items, std::size_t first,
                                                            std::size_t last) {
  std::vector<std::pair<std::size_t, std::size_t>> phrases;
  for (std::size_t begin = first, i = first; i <= last; ++i)
    if (i == last || items[i].kind == Item::Kind::either) {
      phrases.emplace_back(begin, i);
      begin = i + 1;
    }
  return phrases;
}

}  // namespace

void bracket_parallel_phrases(std::vector<Item>& items) {
  std::vector<Item> out;
  const auto bracket = [&](Item::Kind kind, std::size_t place) {
    Item item;
    item.kind = kind;
    item.span = {place, place};
    out.push_back(std::move(item));
  };
  for (std::size_t first = 0; first < items.size();) {
    std::size_t last = first;
    while (last < items.size() && !ends_phrases(items[last])) ++last;
    const auto phrases = phrases_of(items, first, last);
    const auto phrase = [&](const auto& places) {
      return std::span(items).subspan(places.first, places.second - places.first);
    };
    const std::span<const Item> leading = phrase(phrases.front());
    const Kinds kinds = kinds_of(leading);
    const bool parallel =
        phrases.size() > 1 && !one_piece_each(leading) &&
        std::ranges::all_of(phrases, [&](const auto& places) {
          return says_more_than_one_kind(phrase(places)) && kinds_of(phrase(places)) == kinds;
        });
    for (const auto& [begin, end] : phrases) {
      if (parallel) bracket(Item::Kind::opens, items[begin].span.begin);
      const std::size_t place = begin < end ? items[end - 1].span.end : 0;
      for (std::size_t i = begin; i < end; ++i) out.push_back(std::move(items[i]));
      if (parallel) bracket(Item::Kind::closes, place);
      if (end < last) out.push_back(std::move(items[end]));
    }
    if (last < items.size()) out.push_back(std::move(items[last]));
    first = last + 1;
  }
  items = std::move(out);
}

}  // namespace insetbook
