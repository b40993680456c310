// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/date_words.h"

#include <algorithm>
#include <string_view>

#include "language/calendar.h"

namespace insetbook {

namespace {

bool is_mark(const Piece& piece, std::string_view mark) {
  return piece.kind == Piece::Kind::mark && piece.folded == mark;
}

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

std::vector<DateWord> date_words(const std::vector<Piece>& pieces, std::size_t at) {
  std::vector<DateWord> words;
  for (std::size_t i = at; i < pieces.size() && words.size() < longest_dates; ++i) {
    const Piece& piece = pieces[i];
    const bool point = is_mark(piece, ".") && piece.glued && i > at && month_named(pieces[i - 1].folded);
    // "2024..2025", whose pieces are "2024", "." and ".2025".
    if (i > at && two_points(pieces, i)) {
      words.push_back({"to", false});
      words.push_back({std::string_view(pieces[++i].folded).substr(1), false});
      continue;
    }
    if (piece.kind != Piece::Kind::word && !is_mark(piece, ",") && !point) break;
    words.push_back({piece.folded, piece.hyphen});
  }
  return words;
}

DateReading date_reading(const ReadingContext& context, bool outright) {
  return {context.today, context.southern, context.unit == Unit::inch, outright};
}

}  // namespace insetbook
