// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/recognise.h"
#include "text/place_words.h"

namespace insetbook {

// "high of centre", "centred on the fold", "in the bottom right corner", "hanging off the edge": where the
// words that say it end; `at` where none begins. One word alone ("left", "top") says too little.
std::size_t Recogniser::place_end(std::size_t at) const {
  const auto one_of = [&](std::size_t i, std::initializer_list<std::string_view> list) {
    return skip(i, list) > i;
  };
  const auto across = [&](std::size_t i) { return is_word(i, "left") || is_word(i, "right"); };
  const auto upright = [&](std::size_t i) { return one_of(i, {"top", "bottom", "upper", "lower"}); };
  const std::size_t first = skip(at, {"in", "at", "on", "to", "the"});
  if (one_of(first, {"high", "low", "left", "right", "above", "below"})) {
    const std::size_t of = skip(first + 1, {"of", "the"});
    const bool centre = of > first + 1 && one_of(of, {"centre", "center", "middle"});
    if (centre) return of + 1;
    const bool direct =
        (is_word(first, "above") || is_word(first, "below")) && one_of(first + 1, {"centre", "center"});
    if (direct) return first + 2;
  }
  if (upright(first) && across(first + 1)) {
    const std::size_t hand = skip(first + 2, {"hand"});
    return skip(hand, {"corner"});
  }
  if (first > at) return at;
  if (one_of(at, {"centred", "centered"})) {
    if (!is_word(at + 1, "on")) return at + 1;
    const std::size_t noun = skip(at + 2, {"the"});
    return is_word(noun, "fold") || is_word(noun, "opening") ? noun + 1 : at + 1;
  }
  if (is_word(at, "flush")) {
    const std::size_t side = skip(at + 1, {"with", "to", "at", "the"});
    return across(side) || upright(side) ? skip(side + 1, {"edge"}) : at;
  }
  if (is_word(at, "hanging") || is_word(at, "overhanging")) {
    std::size_t side = skip(at + 1, {"off", "over", "the", "an"});
    if (across(side) || upright(side)) ++side;
    const std::size_t edge = skip(side, {"edge", "side"});
    return edge > at + 1 ? edge : at;
  }
  return at;
}

// What is said of a piece's place; it needs a piece beside it.
void Recogniser::places(std::size_t at, std::vector<Seen>& out) const {
  const std::size_t last = place_end(at);
  if (last == at) return;
  PlaceIs place{place_words(typed(at, last))};
  if (place.words.empty()) return;
  Seen it = seen(As::says, at, last, priority_of::side);
  it.word = words(at, last - at);
  it.says = std::move(place);
  out.push_back(std::move(it));
}

}  // namespace insetbook
