// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/dates.h"
#include "language/read_line.h"
#include "language/read_line_stages.h"
#include "text/utf8.h"

namespace insetbook {

Result<std::string> read_day(std::string_view text, const ReadingContext* context) {
  const std::string said(trim(text));
  const std::string folded = fold(said);
  if (is_iso_day(said)) return said;
  if (context && !context->today.empty()) {
    if (folded == "today") return context->today;
    if (folded == "yesterday") return day_after(context->today, -1);
    const Result<Itemised> items = read_stages("made " + said, *context);
    if (items && items->items.size() == 1 && items->items.front().kind == Item::Kind::says) {
      const auto* made = std::get_if<MadeIn>(&items->items.front().offered.front().says);
      if (made && made->from == made->to && !made->from.empty()) return made->from;
    }
  }
  Problem problem;
  problem.what = "\"" + said + "\" is no whole date";
  problem.expected = "the day, as 2024-03-02, or today";
  return failure(std::move(problem));
}

}  // namespace insetbook
