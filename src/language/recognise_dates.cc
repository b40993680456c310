// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "language/dates.h"
#include "language/recognise.h"
#include "language/says.h"
#include "language/seasons.h"

namespace insetbook {

namespace {

// Whether a year stands before the piece, a point, and another year, with the second point, behind it.
bool two_points(const std::vector<Piece>& pieces, std::size_t at) {
  const auto year = [](std::string_view figure) {
    return figure.size() == 4 && std::ranges::all_of(figure, [](char c) { return c >= '0' && c <= '9'; });
  };
  if (at == 0 || at + 1 >= pieces.size() || pieces[at].folded != "." || !pieces[at].glued) return false;
  const std::string_view next = pieces[at + 1].folded;
  return pieces[at + 1].glued && next.starts_with('.') && year(pieces[at - 1].folded) && year(next.substr(1));
}

}  // namespace

// The words of dates that begin at `at`, commas and the points of short months among them.
std::vector<DateWord> Recogniser::date_words(std::size_t at) const {
  std::vector<DateWord> words;
  for (std::size_t i = at; i < pieces_.size() && words.size() < longest_dates; ++i) {
    const Piece& piece = pieces_[i];
    const bool point = is_mark(i, ".") && piece.glued && i > at && month_named(pieces_[i - 1].folded);
    // "2024..2025", whose pieces are "2024", "." and ".2025".
    if (i > at && two_points(pieces_, i)) {
      words.push_back({"to", false});
      words.push_back({std::string_view(pieces_[++i].folded).substr(1), false});
      continue;
    }
    if (piece.kind != Piece::Kind::word && !is_mark(i, ",") && !point) break;
    words.push_back({piece.folded, piece.hyphen});
  }
  return words;
}

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
    for (DateWord& word : date_words(last + 1)) words.push_back(word);
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
  const DateReading how{context_.today, context_.southern, context_.unit == Unit::inch, outright};
  std::vector<DateWord> words = date_words(at);
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
