// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "answers/sizes_shown.h"
#include "answers/thing_said.h"
#include "cli/json_answers.h"
#include "cli/run.h"
#include "cli/run_fits.h"
#include "measure/write.h"

namespace insetbook::cli {
namespace {

std::string strip_text(const DiePair& pair, Unit unit) {
  std::string text = border_text(pair.least, unit);
  if (!pair.even && pair.greatest != pair.least) text += " to " + border_text(pair.greatest, unit);
  if (pair.give_or_take > Length()) text += fmt::format(" ± {}", give_text(pair.give_or_take, unit));
  return text;
}

std::string remark(const DiePair& pair) {
  std::string text = pair.turned ? "turned by a quarter" : "";
  if (!pair.even && pair.greatest == pair.least)
    text += std::string(text.empty() ? "" : "; ") + "wider at the corners";
  return text;
}

std::string sized(const OpeningRecord& line) {
  return fmt::format("{} {}", line.shape_word,
                     shaped_size_text(line.shape_word, line.width, line.height, line.unit));
}

std::string wide_text(const PairsAnswer& answer) {
  return answer.border ? fmt::format(" {} wide", write(*answer.border, answer.unit)) : std::string();
}

void print_around_or_in(const PairsAnswer& answer, std::size_t most, Output& out) {
  const std::string name = opening_name(*answer.opening);
  if (answer.around.empty() && answer.in.empty()) {
    out.headline(
        fmt::format("No other die makes an even border{} in {} or around it.", wide_text(answer), name));
    return;
  }
  std::vector<std::string> first;
  if (!answer.around.empty())
    first.push_back(fmt::format("{} goes round it: {}", describe(answer.around.front().outer),
                                strip_text(answer.around.front(), answer.unit)));
  if (!answer.in.empty())
    first.push_back(fmt::format("{} goes into it: {}", describe(answer.in.front().inner),
                                strip_text(answer.in.front(), answer.unit)));
  out.headline(fmt::format("{}.", fmt::join(first, ". ")));
  out.detail(answer.opening->line_id == 0 ? fmt::format("{}.", name)
                                          : fmt::format("It is {}: {}.", name, sized(*answer.opening)));
  if (answer.cut_edge)
    out.detail(
        fmt::format("No line was named: what goes into it goes into that one, what goes round it round "
                    "its cut edge, {}.",
                    sized(*answer.cut_edge)));
  if (!answer.note.empty()) out.detail(answer.note);
  out.blank();
  Table table{{"goes", "die", "size", "shows", "even", ""}, {}};
  const auto add = [&](const std::vector<DiePair>& pairs, bool around) {
    for (std::size_t i = 0; i < pairs.size() && i < most; ++i) {
      const OpeningRecord& other = around ? pairs[i].outer : pairs[i].inner;
      table.rows.push_back({around ? "round it" : "into it", describe(other), sized(other),
                            strip_text(pairs[i], answer.unit), pairs[i].even ? "yes" : "no",
                            remark(pairs[i])});
    }
  };
  add(answer.around, true);
  add(answer.in, false);
  out.table(table);
  const std::size_t more = std::max(answer.around.size(), answer.in.size());
  if (more > most) out.detail(fmt::format("There are more: --limit {} shows all.", more));
}

void print_any(const PairsAnswer& answer, std::size_t most, Output& out) {
  if (answer.any.empty()) {
    out.headline(fmt::format("No two dies make a frame{}.", wide_text(answer)));
    return;
  }
  const DiePair& first = answer.any.front();
  out.headline(fmt::format("{} and {} in it: a frame {} wide.", describe(first.outer), describe(first.inner),
                           strip_text(first, answer.unit)));
  out.blank();
  Table table{{"outer die", "size", "inner die", "size", "frame", "even", ""}, {}};
  for (std::size_t i = 0; i < answer.any.size() && i < most; ++i) {
    const DiePair& pair = answer.any[i];
    table.rows.push_back({describe(pair.outer), sized(pair.outer), describe(pair.inner), sized(pair.inner),
                          strip_text(pair, answer.unit), pair.even ? "yes" : "no", remark(pair)});
  }
  out.table(table);
  if (answer.any.size() > most)
    out.detail(
        fmt::format("The first {} of {}: --limit {} shows all.", most, answer.any.size(), answer.any.size()));
}

}  // namespace

bool is_empty(const PairsAnswer& answer) {
  return answer.around.empty() && answer.in.empty() && answer.any.empty();
}

void print_pairs(const PairsAnswer& answer, std::size_t most, Output& out) {
  if (answer.opening)
    print_around_or_in(answer, most, out);
  else
    print_any(answer, most, out);
  if (answer.not_computed > 0)
    out.detail(
        fmt::format("{} measured cut edges have shapes that are not computed yet.", answer.not_computed));
}

int run_pairs(const Invocation& invocation, Output& out) {
  const Result<Book> book = open_book(invocation, Book::Use::read, out);
  if (!book) return out.problem(book.error());
  const Result<std::size_t> limit = limit_given(invocation, pairs_shown);
  if (!limit) return out.problem(limit.error());
  PairsAsked asked{.opening = invocation.text(), .border = {}};
  if (invocation.has("border")) asked.border = invocation.value("border");
  const Result<PairsAnswer> answer = pairs_of(*book, asked);
  if (!answer) return out.problem(answer.error());
  if (out.json())
    out.raw(answer_json(*answer));
  else
    print_pairs(*answer, *limit, out);
  return 0;
}

}  // namespace insetbook::cli
