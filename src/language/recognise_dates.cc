// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/date_words.h"
#include "language/dates.h"
#include "language/recognise.h"
#include "language/says.h"
#include "language/seasons.h"

namespace insetbook {

// "spring or summer 2024", "last spring or summer": what says when, for the season at `at` as well. Empty
// where no season with a date stands beside it.
std::vector<DateWord> Recogniser::season_of_neighbour(std::size_t at) const {
  const auto season = [&](std::size_t i) {
    return i < pieces_.size() && pieces_[i].kind == Piece::Kind::word &&
           season_begins(pieces_[i].folded, context_.southern).has_value();
  };
  if (!season(at)) return {};
  std::vector<DateWord> words{{pieces_[at].folded, false}};
  // "spring, summer or autumn 2024"
  std::size_t last = at;
  bool choice = false;
  while (!choice && (is_word(last + 1, "or") || is_mark(last + 1, ",")) && season(last + 2)) {
    choice = is_word(last + 1, "or");
    last += 2;
  }
  if (choice) {
    for (DateWord& word : date_words(pieces_, last + 1)) words.push_back(word);
    return words.size() > 1 ? words : std::vector<DateWord>();
  }
  if (at < 3 || !is_word(at - 1, "or")) return {};
  const auto is_this_or_last = [&](std::size_t i) { return is_word(i, "last") || is_word(i, "this"); };
  if (season(at - 2) && is_this_or_last(at - 3)) {
    words.insert(words.begin(), {pieces_[at - 3].folded, false});
    return words;
  }
  const bool of = at > 3 && is_word(at - 3, "of");
  if (!season(at - (of ? 4 : 3))) return {};
  words.push_back({pieces_[at - 2].folded, false});
  return words;
}

// "made in 2023", "since March", "between 2020 and 2022", "2020-2022"
void Recogniser::dates(std::size_t at, std::vector<Seen>& out, bool outright) const {
  const DateReading how = date_reading(context_, outright);
  std::vector<DateWord> words = date_words(pieces_, at);
  auto found = dates_at(words, how);
  if (!found) {
    // The season alone, dated by what stands beside it.
    words = season_of_neighbour(at);
    found = dates_at(words, how);
    if (!found || found->no_such_day || found->words < 2) return;
    found->words = 1;
  }
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
