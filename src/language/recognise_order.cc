// SPDX-License-Identifier: GPL-3.0-or-later
//
// The order of the samples and how many of them, where a question says so: "newest easel", "oldest 3", "the
// last five cards", "my first card". "First" and "last" count only before the cards themselves: a date or a
// die may stand behind them as well.
#include <algorithm>

#include "language/orders.h"
#include "language/recognise.h"

namespace insetbook {

bool Recogniser::names_samples(std::size_t at) const {
  static constexpr std::string_view named[] = {"card", "cards", "sample", "samples", "design", "designs"};
  return at < pieces_.size() && std::ranges::find(named, pieces_[at].folded) != std::end(named);
}

// "smallest card", "the three biggest cards"
void Recogniser::order_by_size(std::size_t at, std::vector<Seen>& out) const {
  static constexpr std::string_view words[] = {"smallest", "littlest", "tiniest", "largest",
                                               "biggest",  "tallest",  "widest"};
  const bool said = std::ranges::find(words, pieces_[at].folded) != std::end(words);
  if (!said || !names_samples(at + 1)) return;
  Seen it = seen(As::unread, at, at + 2, priority_of::side);
  it.word = no_such_order;
  out.push_back(std::move(it));
}

void Recogniser::order_by_date(std::size_t at, std::vector<Seen>& out) const {
  const std::size_t begins = skip(at, {"the", "my", "our"});
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
  if (bare && !names_samples(last + (counts ? 1 : 0))) return;
  if (counts) it.number = *count;
  if (bare && !counts) it.number = pieces_[last].folded.ends_with('s') ? 0 : 1;
  if (counts) ++last;
  if (bare) ++last;
  it.last = last;
  it.span = span_of(at, last);
  it.weight = 2 * static_cast<int>(last - at);
  out.push_back(std::move(it));
}

}  // namespace insetbook
