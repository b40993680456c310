// SPDX-License-Identifier: GPL-3.0-or-later
//
// The order of the samples and how many of them, where a question says so: "newest easel", "oldest 3", "the
// last five cards", "my first card". "First" and "last" count only before the cards themselves: a date or a
// die may stand behind them as well.
#include <algorithm>

#include "language/orders.h"
#include "language/recognise.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_order = 6;

}  // namespace

bool Recogniser::names_samples(std::size_t at) const {
  static constexpr std::string_view named[] = {"card", "cards", "sample", "samples", "design", "designs"};
  return at < pieces_.size() && std::ranges::find(named, pieces_[at].folded) != std::end(named);
}

// The shape, role or card that an order by size before `at` is said of: "largest sage circle". None where it
// is a die of a set.
std::optional<std::size_t> Recogniser::ordered_piece(std::size_t at) {
  constexpr std::size_t longest_phrase = 4;
  for (std::size_t i = at; i < at + longest_phrase && !phrase_ends(i); ++i) {
    if (set_at(i, NameKind::set)) return std::nullopt;
    if (names_samples(i)) return i;
    ++steps_;
    const auto terms = context_.vocabulary.find(pieces_[i].folded);
    const bool piece = std::ranges::any_of(terms, [](const TermMatch& term) {
      return term.vocabulary == VocabularyName::shape || term.vocabulary == VocabularyName::role;
    });
    if (piece) return i;
  }
  return std::nullopt;
}

// "smallest card", "the three biggest cards", "second largest circle"
void Recogniser::order_by_size(std::size_t at, std::vector<Seen>& out) {
  static constexpr std::string_view words[] = {"smallest", "littlest", "tiniest", "largest",
                                               "biggest",  "tallest",  "widest"};
  const bool said = std::ranges::find(words, pieces_[at].folded) != std::end(words);
  if (said && names_samples(at + 1)) {
    Seen it = seen(As::unread, at, at + 2, priority_of::side);
    it.word = no_such_order;
    out.push_back(std::move(it));
    return;
  }
  const auto order = order_at(word_list(at, longest_order));
  const std::size_t last = order && order->by_size ? at + order->words : at + (said ? 1 : 0);
  const auto ordered = last > at ? ordered_piece(last) : std::nullopt;
  if (!ordered) return;
  Seen it = seen(As::unread, at, last, priority_of::side);
  it.word = names_samples(*ordered) ? no_such_order : no_such_order_of_pieces;
  out.push_back(std::move(it));
}

Problem Recogniser::no_order_of_pieces(const Seen& unread) {
  const auto piece = ordered_piece(unread.last);
  const std::string name = piece ? std::string(typed(*piece, *piece + 1)) : "circle";
  const auto order = order_at(word_list(unread.first, longest_order));
  const bool small = order && order->from_smallest;
  return problem_at(text_, unread.span,
                    "\"" + std::string(typed(unread.first, unread.last)) +
                        "\" asks for an order by size, which pieces are not put into",
                    "a size, as in \"" + name + (small ? " under " : " over ") +
                        (context_.unit == Unit::inch ? "2 in\"" : "50 mm\""));
}

void Recogniser::order_by_date(std::size_t at, std::vector<Seen>& out) const {
  const std::size_t said = skip(at, {"the", "my", "our"});
  if (said >= pieces_.size()) return;
  // "the three newest cards", "two newest easels": the number may stand before the order.
  const auto before = small_number(pieces_[said].folded);
  const std::size_t begins = said + (before ? 1 : 0);
  if (begins >= pieces_.size()) return;
  const bool most_recent = is_word(begins, "most") && is_word(begins + 1, "recent");
  std::size_t last = begins + (most_recent ? 2 : 1);
  Seen it = seen(As::order, at, last, priority_of::side);
  it.oldest = is_word(begins, "oldest") || is_word(begins, "earliest") || is_word(begins, "first");
  const bool bare = is_word(begins, "first") || is_word(begins, "last");
  if (!bare && !it.oldest && !most_recent && !is_word(begins, "newest") && !is_word(begins, "latest")) return;
  ++steps_;
  const auto count = last < pieces_.size() ? small_number(pieces_[last].folded) : std::nullopt;
  const auto sized = count ? measurement(last) : std::nullopt;
  const bool counts = count && (!sized || (sized->bare && sized->last == last + 1));
  if (before && (counts || bare)) return;
  if (bare && !names_samples(last + (counts ? 1 : 0))) return;
  if (counts) it.number = *count;
  if (before) it.number = *before;
  if (bare && !counts) it.number = pieces_[last].folded.ends_with('s') ? 0 : 1;
  if (counts) ++last;
  if (bare) ++last;
  it.last = last;
  it.span = span_of(at, last);
  it.weight = 2 * static_cast<int>(last - at);
  out.push_back(std::move(it));
}

}  // namespace insetbook
