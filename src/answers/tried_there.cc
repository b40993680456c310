// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/tried_there.h"

#include <algorithm>

#include "answers/opening_said.h"

namespace insetbook {
namespace {

std::vector<std::int64_t> lines_with_results(const Book& book) {
  Statement& rows = book.statement("SELECT DISTINCT line_id FROM tried ORDER BY line_id");
  std::vector<std::int64_t> lines;
  while (rows.step()) lines.push_back(rows.integer(0));
  rows.reset();
  return lines;
}

// The line that is named, else every line of each die that is meant.
Result<std::vector<OpeningRecord>> lines_meant(const Book& book, const std::string& text) {
  const OpeningWanted wanted = opening_wanted(text);
  std::vector<OpeningRecord> lines;
  if (wanted.line.empty())
    for (const std::int64_t die : dies_wanted(book, wanted))
      for (OpeningRecord& line : openings_of_die(book, die)) lines.push_back(std::move(line));
  if (!lines.empty()) return lines;
  const Result<OpeningRecord> said = find_opening(book, wanted);
  if (!said) return failure(said.error());
  if (!wanted.line.empty()) return std::vector<OpeningRecord>{*said};
  return openings_of_die(book, said->die_id);
}

}  // namespace

Result<TriedThereAnswer> tried_there(const Book& book, const TriedThereAsked& asked) {
  TriedThereAnswer answer{.opening = asked.opening, .result = asked.result};
  std::vector<OpeningRecord> lines;
  if (asked.opening.empty()) {
    for (const std::int64_t id : lines_with_results(book))
      if (std::optional<OpeningRecord> line = opening(book, id)) lines.push_back(std::move(*line));
  } else {
    Result<std::vector<OpeningRecord>> meant = lines_meant(book, asked.opening);
    if (!meant) return failure(meant.error());
    lines = std::move(*meant);
  }
  for (const OpeningRecord& line : lines)
    for (TriedPanel& tried : tried_in(book, line.line_id)) {
      if (tried.from_sample && asked.opening.empty()) continue;
      if (!asked.result.empty() && tried.result != asked.result) continue;
      answer.tried.push_back({line, std::move(tried)});
    }
  std::ranges::stable_sort(answer.tried, [](const TriedThere& a, const TriedThere& b) {
    if (a.tried.from_sample != b.tried.from_sample) return b.tried.from_sample;
    return a.tried.date > b.tried.date;
  });
  answer.total = answer.tried.size();
  if (answer.tried.size() > asked.limit) answer.tried.resize(asked.limit);
  return answer;
}

}  // namespace insetbook
