// SPDX-License-Identifier: GPL-3.0-or-later
//
// "two circles, one navy and one white", "one circle only": words that part or bound what was counted.
#include <algorithm>

#include "language/orders.h"
#include "language/recognise.h"
#include "text/utf8.h"

namespace insetbook {

// Whether more than one of something was asked for before `at`.
bool Recogniser::counts_before(std::size_t at) const {
  constexpr std::size_t furthest = 16;
  for (std::size_t i = at > furthest ? at - furthest : 0; i < at; ++i) {
    if (is_word(i, "pair") || is_word(i, "couple") || is_word(i, "both")) return true;
    const auto number = pieces_[i].kind == Piece::Kind::word ? small_number(pieces_[i].folded) : std::nullopt;
    if (number && *number > 1) return true;
  }
  return false;
}

// "one" of those counted before: a property stands behind it, and what parts a list before it.
void Recogniser::each_of_them(std::size_t at, std::vector<Seen>& out) {
  constexpr std::size_t longest_property = 3;
  const bool other = is_word(at, "the") && is_word(at + 1, "other");
  if ((!is_word(at, "one") && !other) || at == 0) return;
  const std::size_t before = at - 1;
  if (!is_mark(before, ",") && !is_mark(before, ";") && !is_mark(before, ":") && !is_mark(before, "&") &&
      !is_word(before, "and") && !is_word(before, "with"))
    return;
  if (!counts_before(at)) return;
  std::size_t last = at + (other ? 2 : 1);
  const std::size_t property = skip(last, {"in", "is", "of"});
  bool said = false;
  for (std::size_t count = run_of_words(property, longest_property); count > 0 && !said; --count) {
    ++steps_;
    const std::string text = words(property, count);
    const auto terms = context_.vocabulary.find(text);
    said = std::ranges::any_of(exactly(text),
                               [](const NamedRecord& record) {
                                 return record.kind == NameKind::colour || record.kind == NameKind::supply;
                               }) ||
           (!terms.empty() && (terms.front().vocabulary == VocabularyName::colour_word ||
                               terms.front().vocabulary == VocabularyName::technique ||
                               terms.front().vocabulary == VocabularyName::material));
  }
  if (const auto measured = measurement(property); measured && !measured->bare) said = true;
  if (!said) return;
  if (is_word(last, "in") || is_word(last, "is")) ++last;
  Seen it = seen(As::each, at, last, priority_of::side);
  it.word = words(at, last - at);
  out.push_back(std::move(it));
}

// "one circle only", "two sage hearts, no more": the number before the phrase is all there are.
void Recogniser::only_so_many(std::size_t at, std::vector<Seen>& out) const {
  constexpr std::size_t longest_phrase = 6;
  const auto number = small_number(pieces_[at].folded);
  if (!number || at + 1 >= pieces_.size()) return;
  if (const auto measured = measurement(at); measured && measured->last > at + 1) return;
  for (std::size_t i = at + 2; i < std::min(at + longest_phrase, pieces_.size()); ++i) {
    if (pieces_[i].kind != Piece::Kind::word) return;
    if (!is_word(i, "only")) {
      if (phrase_ends(i)) return;
      continue;
    }
    if (!phrase_ends(i + 1)) return;
    Seen it = seen(As::number, at, at + 1, priority_of::side);
    it.number = *number;
    it.exactly = true;
    it.bare = true;
    it.word = pieces_[at].folded;
    out.push_back(std::move(it));
    return;
  }
}

}  // namespace insetbook
