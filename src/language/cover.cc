// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/cover.h"

#include <compare>
#include <utility>

namespace insetbook {
namespace {

struct Score {
  int understood = 0;
  int fewer = 0;  // minus the number of offers
  int outright = 0;
  auto operator<=>(const Score&) const = default;
};

Score added(const Score& rest, const Seen& offer) {
  return {rest.understood + offer.weight, rest.fewer - 1, rest.outright + offer.priority};
}

Seen as_text(const std::vector<Piece>& pieces, std::size_t at) {
  Seen word;
  word.as = As::text;
  word.first = at;
  word.last = at + 1;
  word.span = pieces[at].span;
  word.word = pieces[at].folded;
  return word;
}

std::string_view as_word(As as) {
  switch (as) {
    case As::text:
      return "text";
    case As::phrase:
      return "phrase";
    case As::filler:
      return "filler";
    case As::article:
      return "article";
    case As::mark:
      return "mark";
    case As::joins:
      return "joins";
    case As::comma:
      return "comma";
    case As::either:
      return "or";
    case As::excludes:
      return "excludes";
    case As::opens:
      return "opens";
    case As::closes:
      return "closes";
    case As::group:
      return "group";
    case As::preposition:
      return "goes";
    case As::card:
      return "card";
    case As::pieces:
      return "pieces";
    case As::paper:
      return "paper";
    case As::ink:
      return "ink";
    case As::tall:
      return "tall";
    case As::wide:
      return "wide";
    case As::order:
      return "order";
    case As::within:
      return "within";
    case As::each:
      return "each";
    case As::number:
      return "number";
    case As::term:
      return "term";
    case As::named:
      return "name";
    case As::like:
      return "like";
    case As::says:
      return "says";
    case As::unread:
      return "unread";
  }
  return "";
}

}  // namespace

std::vector<Seen> cover(const std::vector<Piece>& pieces, Recogniser& recogniser,
                        std::vector<Problem>& problems) {
  const std::size_t count = pieces.size();
  std::vector<Score> best(count + 1);
  std::vector<Seen> chosen(count);
  for (std::size_t at = count; at-- > 0;) {
    chosen[at] = as_text(pieces, at);
    best[at] = added(best[at + 1], chosen[at]);
    for (Seen& offer : recogniser.offers(at)) {
      const Score score = added(best[offer.last], offer);
      if (score > best[at]) {
        best[at] = score;
        chosen[at] = std::move(offer);
      }
    }
  }
  std::vector<Seen> taken;
  for (std::size_t at = 0; at < count;) {
    Seen& it = chosen[at];
    const std::size_t last = it.last;
    const bool room = problems.size() < most_problems;
    const bool not_understood = it.as == As::text || (it.as == As::number && it.weight == 0);
    if (not_understood && room)
      if (auto problem = recogniser.bad_size(at)) {
        at = recogniser.past_bad_size(at, *problem);
        problems.push_back(std::move(*problem));
        continue;
      }
    if (it.as == As::unread && room) problems.push_back(recogniser.problem_of(it));
    recogniser.resolve(it);
    taken.push_back(std::move(it));
    at = last;
  }
  return taken;
}

Result<std::vector<Seen>> cover(const std::vector<Piece>& pieces, Recogniser& recogniser) {
  std::vector<Problem> problems;
  std::vector<Seen> taken = cover(pieces, recogniser, problems);
  if (!problems.empty()) return failure(std::move(problems.front()));
  return taken;
}

std::string print(const std::vector<Seen>& seen, std::string_view text) {
  std::string out;
  for (const Seen& it : seen) {
    if (!out.empty()) out += " | ";
    out += std::string(as_word(it.as)) + " \"" +
           std::string(text.substr(it.span.begin, it.span.end - it.span.begin)) + "\"";
  }
  return out;
}

}  // namespace insetbook
