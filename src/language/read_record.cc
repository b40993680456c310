// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_record.h"

#include <algorithm>
#include <array>
#include <utility>

#include "language/orders.h"
#include "language/read_opening.h"
#include "measure/read.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Longer ones first: the first that matches is taken.
constexpr GoesWords how_words[] = {
    {"wrapped around", GoesHow::around},
    {"tied around", GoesHow::around},
    {"wrapped round", GoesHow::around},
    {"threaded through", GoesHow::through},
    {"on top of", GoesHow::on},
    {"glued to", GoesHow::on},
    {"sits in", GoesHow::in},
    {"in front of", GoesHow::on},
    {"around", GoesHow::around},
    {"round", GoesHow::around},
    {"through", GoesHow::through},
    {"thru", GoesHow::through},
    {"behind", GoesHow::behind},
    {"beneath", GoesHow::behind},
    {"under", GoesHow::behind},
    {"below", GoesHow::behind},
    {"within", GoesHow::in},
    {"onto", GoesHow::on},
    {"into", GoesHow::in},
    {"over", GoesHow::on},
    {"on", GoesHow::on},
    {"in", GoesHow::in},
};

constexpr std::string_view articles[] = {"the", "a", "an"};

// Where the first `count` words of `text` end, if they fold to `words`; npos otherwise.
std::size_t end_of_words(std::string_view text, std::string_view words) {
  const auto count = static_cast<std::size_t>(std::ranges::count(words, ' ')) + 1;
  std::size_t end = 0;
  for (std::size_t i = 0; i < count; ++i) {
    end = text.find_first_not_of(' ', end);
    if (end == std::string_view::npos) return end;
    end = std::min(text.find(' ', end), text.size());
  }
  return fold(text.substr(0, end)) == words ? end : std::string_view::npos;
}

std::string_view without_article(std::string_view text) {
  for (const std::string_view article : articles) {
    const std::size_t end = end_of_words(text, article);
    if (end != std::string_view::npos && end < text.size()) return trim(text.substr(end));
  }
  return text;
}

std::string_view first_word(std::string_view folded) {
  return folded.substr(0, folded.find(' '));
}

constexpr std::string_view edges[] = {"left",   "right",  "top",    "bottom",
                                      "middle", "centre", "center", "edges"};

// One part of a glue cell between commas.
Result<void> read_glue_part(std::string_view part, Unit no_unit, Glue& glue) {
  const std::string folded = fold(part);
  if (folded == "none" || folded == "no" || folded == "no glue" || folded == "not glued") {
    glue.where = Glue::Where::none;
    return {};
  }
  if (folded == "whole" || folded == "all" || folded == "all over" || folded == "everywhere") {
    glue.where = Glue::Where::whole;
    return {};
  }
  std::string_view edge = first_word(folded);
  if (std::ranges::find(edges, edge) == std::end(edges)) {
    if (!glue.with.empty()) glue.with += ", ";
    glue.with += part;
    return {};
  }
  if (edge == "center" || edge == "centre") edge = "middle";
  glue.where = Glue::Where::part;
  glue.edge = std::string(edge);
  const std::size_t figure = part.find(' ');
  if (figure == std::string_view::npos) return {};
  const std::string_view rest = trim(part.substr(figure));
  if (fold(rest) == "edge" || fold(rest) == "side") return {};
  const Result<ReadLength> length = read_length(rest, no_unit);
  if (!length) return failure(length.error());
  glue.length = length->length;
  return {};
}

Problem bad_cell(std::string_view cell, std::string_view what, std::string_view expected) {
  Problem problem;
  problem.what = in_quotes(cell) + " is " + std::string(what);
  problem.where.text = std::string(cell);
  problem.expected = std::string(expected);
  return problem;
}

Problem no_line_kind(std::string_view cell) {
  return bad_cell(
      cell, "no line of a die",
      "cut, stitched, pierced, scored, embossed or window, with a number where there are several");
}

Problem no_count(std::string_view cell) {
  return bad_cell(cell, "no count", "a whole number from 1 to 999");
}

}  // namespace

std::string_view goes_word(GoesHow how) {
  switch (how) {
    case GoesHow::on:
      return "on";
    case GoesHow::in:
      return "in";
    case GoesHow::behind:
      return "behind";
    case GoesHow::around:
      return "around";
    case GoesHow::through:
      return "through";
  }
  return "on";
}

std::span<const GoesWords> goes_words() {
  return how_words;
}

Goes read_goes(std::string_view cell) {
  Goes goes;
  std::string_view rest = trim(cell);
  for (const GoesWords& candidate : how_words) {
    const std::size_t end = end_of_words(rest, candidate.words);
    if (end == std::string_view::npos) continue;
    goes.how = candidate.how;
    rest = trim(rest.substr(end));
    break;
  }
  rest = without_article(rest);
  goes.target = std::string(rest);
  const std::string folded = fold(rest);
  goes.side = side_word(first_word(folded));
  if (folded.starts_with("section ")) goes.section = small_number(std::string_view(folded).substr(8));
  return goes;
}

Result<Glue> read_glue(std::string_view cell, Unit no_unit) {
  Glue glue;
  glue.text = std::string(trim(cell));
  std::string_view rest = glue.text;
  while (!rest.empty()) {
    // A comma inside a figure ("6,5 cm") has no space after it.
    std::size_t comma = rest.find(", ");
    if (comma == std::string_view::npos) comma = rest.size();
    const std::string_view part = trim(rest.substr(0, comma));
    if (!part.empty())
      if (const Result<void> read = read_glue_part(part, no_unit, glue); !read) return failure(read.error());
    rest = comma < rest.size() ? rest.substr(comma + 1) : std::string_view();
  }
  return glue;
}

DieCell read_die_cell(std::string_view cell) {
  DieCell die;
  const std::string folded = fold(cell);
  die.rank = read_rank(folded);
  die.rank_from_smallest = read_rank_from_smallest(folded);
  if (die.rank)
    die.label = std::to_string(*die.rank);
  else if (!die.rank_from_smallest)
    die.label = std::string(trim(cell));
  return die;
}

Result<LineCell> read_line_cell(std::string_view cell) {
  const std::string folded = fold(cell);
  if (folded.empty()) return LineCell{.kind = "cut", .name = "cut"};
  std::string_view words = folded;
  std::string number;
  const std::size_t space = words.rfind(' ');
  if (space != std::string_view::npos && plain_number(words.substr(space + 1))) {
    number = std::string(words.substr(space));
    words = words.substr(0, space);
  }
  std::string kind = line_kind(words);
  if (kind.empty()) return failure(no_line_kind(trim(cell)));
  std::string name = kind + number;
  return LineCell{.kind = std::move(kind), .name = std::move(name)};
}

std::string side_word(std::string_view folded) {
  for (const std::string_view beginning :
       {std::string_view("on "), std::string_view("at "), std::string_view("the ")})
    if (folded.starts_with(beginning)) folded.remove_prefix(beginning.size());
  const auto is = [&](std::initializer_list<std::string_view> words) {
    return std::ranges::find(words, folded) != words.end();
  };
  if (is({"front", "outside", "cover", "face"})) return "front";
  if (is({"inside", "interior"})) return "inside";
  if (is({"back", "reverse", "rear"})) return "back";
  return {};
}

Result<int> read_count(std::string_view cell) {
  std::string folded = fold(cell);
  std::string_view word = folded;
  if (word.empty()) return 1;
  for (const std::string_view beginning :
       {std::string_view("a "), std::string_view("x "), std::string_view("x")})
    if (word.starts_with(beginning)) {
      word.remove_prefix(beginning.size());
      break;
    }
  for (const std::string_view ending : {std::string_view(" x"), std::string_view("x")})
    if (word.ends_with(ending)) {
      word.remove_suffix(ending.size());
      break;
    }
  const auto number = small_number(word);
  if (!number) return failure(no_count(trim(cell)));
  return *number;
}

}  // namespace insetbook
