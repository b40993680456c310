// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/date_words.h"
#include "language/read_line.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// The one day that all of the text says.
std::optional<DaySaid> day_of(std::string_view text, const ReadingContext& context) {
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return std::nullopt;
  const std::vector<DateWord> words = date_words(*pieces, 0);
  if (words.size() != pieces->size()) return std::nullopt;
  const std::optional<FoundDates> found = dates_at(words, date_reading(context, true));
  if (!found || found->no_such_day || found->words != words.size()) return std::nullopt;
  if (found->period.from.empty() || found->period.from != found->period.to) return std::nullopt;
  return DaySaid{found->period.from, found->other ? found->other->from : std::string()};
}

// "Nov 8" as "8 Nov": where a whole line is a day, the number counts nothing else.
std::string day_first(std::string_view said) {
  const std::size_t space = said.find(' ');
  if (space == std::string_view::npos) return {};
  const std::string_view month = said.substr(0, space), day = trim(said.substr(space));
  const bool figures =
      !day.empty() && day.size() < 3 && day.find_first_not_of("0123456789") == std::string_view::npos;
  return figures ? std::string(day) + " " + std::string(month) : std::string();
}

}  // namespace

Result<DaySaid> read_day(std::string_view text, const ReadingContext* context) {
  const std::string said(trim(text));
  if (is_iso_day(said)) return DaySaid{said, {}};
  if (context && !context->today.empty()) {
    if (std::optional<DaySaid> day = day_of(said, *context)) return std::move(*day);
    if (std::optional<DaySaid> day = day_of(day_first(said), *context)) return std::move(*day);
  }
  Problem problem;
  problem.what = "\"" + said + "\" is no whole date";
  problem.expected = "the day, as 2024-03-02, or today";
  return failure(std::move(problem));
}

}  // namespace insetbook
