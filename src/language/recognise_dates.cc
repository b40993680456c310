// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/dates.h"
#include "language/recognise.h"
#include "language/says.h"

namespace insetbook {

// The words of dates that begin at `at`, commas and the points of short months among them.
std::vector<DateWord> Recogniser::date_words(std::size_t at) const {
  std::vector<DateWord> words;
  for (std::size_t i = at; i < pieces_.size() && words.size() < longest_dates; ++i) {
    const Piece& piece = pieces_[i];
    const bool point = is_mark(i, ".") && piece.glued && i > at && month_named(pieces_[i - 1].folded);
    if (piece.kind != Piece::Kind::word && !is_mark(i, ",") && !point) break;
    words.push_back({piece.folded, piece.hyphen});
  }
  return words;
}

// "made in 2023", "since March", "between 2020 and 2022", "2020-2022"
void Recogniser::dates(std::size_t at, std::vector<Seen>& out, bool outright) const {
  const DateReading how{context_.today, context_.southern, context_.unit == Unit::inch, outright};
  const auto found = dates_at(date_words(at), how);
  if (!found) return;
  Seen date = seen(found->no_such_day ? As::unread : As::says, at, at + found->words, priority_of::date);
  if (found->no_such_day) {
    date.word = no_such_day;
    out.push_back(std::move(date));
    return;
  }
  date.says = MadeIn{found->period.from, found->period.to};
  if (found->relative) date.notes.push_back("today is " + std::string(context_.today));
  if (found->season)
    date.notes.push_back(std::string("seasons are ") + (context_.southern ? "southern" : "northern") +
                         " (insetbook settings hemisphere)");
  if (found->other) {
    const MadeIn other{found->other->from, found->other->to};
    date.other.push_back({std::string(typed(at, at + found->words)), in_words(*date.says), as_field(other)});
  }
  out.push_back(std::move(date));
}

}  // namespace insetbook
