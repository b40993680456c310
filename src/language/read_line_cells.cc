// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line_cells.h"

#include <algorithm>
#include <iterator>

#include "language/read_opening.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Where the first of several scores ends, and how much stands between it and the next.
struct ScoreEnd {
  std::size_t at = 0, between = 0;
};
ScoreEnd end_of_score(std::string_view rest) {
  const std::size_t and_word = rest.find(" and ");
  std::size_t mark = rest.find_first_of(";,&");
  // A comma inside a figure ("6,5 cm") has no space behind it.
  while (mark != std::string_view::npos && rest[mark] == ',' && mark + 1 < rest.size() &&
         rest[mark + 1] != ' ')
    mark = rest.find_first_of(";,&", mark + 1);
  const std::size_t end = std::min({and_word, mark, rest.size()});
  return {end, end == and_word ? 5u : 1u};
}

}  // namespace

std::string scores_of(std::string_view rest) {
  std::string scores;
  while (!rest.empty()) {
    const ScoreEnd end = end_of_score(rest);
    std::string_view one = trim(rest.substr(0, end.at));
    if (fold(one).starts_with("at ")) one = trim(one.substr(3));
    if (!one.empty() && fold(one) != "and") scores += (scores.empty() ? "" : "; ") + std::string(one);
    rest.remove_prefix(std::min(end.at + end.between, rest.size()));
    if (fold(rest).starts_with("and ")) rest = rest.substr(rest.find("nd") + 3);
  }
  return scores;
}

std::string glue_of(std::string_view said) {
  static constexpr std::string_view left_out[] = {"the",  "only", "just", "along", "at",
                                                  "with", "on",   "by",   "edge"};
  std::string glue;
  for (std::string_view rest = said; !rest.empty();) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    const std::string_view word = rest.substr(0, end);
    if (std::ranges::find(left_out, fold(word)) == std::end(left_out))
      glue += (glue.empty() ? "" : " ") + std::string(word);
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  if (glue.empty()) glue = said;
  if (fold(glue) == "no glue" || fold(glue) == "not glued") glue = "none";
  return glue;
}

std::string line_taken_off(std::string& text) {
  const std::string_view said = text;
  const bool named = fold(said).ends_with(" line");
  if (!named && said.find(',') == std::string_view::npos) return {};
  const std::size_t end = named ? said.rfind(' ') : said.size();
  const std::size_t word = said.find_last_of(" ,", end - 1);
  if (word == std::string_view::npos) return {};
  std::string kind = line_kind(fold(said.substr(word + 1, end - word - 1)));
  if (kind.empty()) return {};
  std::string_view left = trim(said.substr(0, word));
  while (left.ends_with(',')) left = trim(left.substr(0, left.size() - 1));
  text = std::string(left);
  return kind;
}

}  // namespace insetbook
