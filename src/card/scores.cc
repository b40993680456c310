// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/scores.h"

#include <array>
#include <string>

#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

struct ScoreWords {
  std::string_view words;
  ScoreAlong along;
  bool from_far_end;
};
constexpr std::array<ScoreWords, 10> score_words{{{"from the left", ScoreAlong::width, false},
                                                  {"from left", ScoreAlong::width, false},
                                                  {"from the right", ScoreAlong::width, true},
                                                  {"from right", ScoreAlong::width, true},
                                                  {"from the top", ScoreAlong::height, false},
                                                  {"from top", ScoreAlong::height, false},
                                                  {"from the bottom", ScoreAlong::height, true},
                                                  {"from bottom", ScoreAlong::height, true},
                                                  {"long side", ScoreAlong::long_side, false},
                                                  {"short side", ScoreAlong::short_side, false}}};

struct WayWord {
  std::string_view word;
  FoldWay way;
};
constexpr std::array<WayWord, 2> way_words{{{"mountain", FoldWay::mountain}, {"valley", FoldWay::valley}}};

// They say nothing about where the crease is.
constexpr std::array<std::string_view, 4> silent_words = {"score", "scored", "at", "fold"};

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

bool is_small_letter(char c) {
  return c >= 'a' && c <= 'z';
}

// Whether the words were there; they are made spaces.
bool take_words(std::string& text, std::string_view words) {
  bool found = false;
  for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
    const bool begins = at == 0 || !is_small_letter(text[at - 1]);
    const std::size_t end = at + words.size();
    if (!begins || (end < text.size() && is_small_letter(text[end]))) continue;
    text.replace(at, words.size(), words.size(), ' ');
    found = true;
  }
  return found;
}

std::optional<Score> read_score(std::string_view said, Unit no_unit) {
  std::string text = lower(said);
  Score score;
  for (const ScoreWords& words : score_words) {
    if (!take_words(text, words.words)) continue;
    if (score.along != ScoreAlong::not_said) return std::nullopt;
    score.along = words.along;
    score.from_far_end = words.from_far_end;
  }
  for (const WayWord& word : way_words) {
    if (!take_words(text, word.word)) continue;
    if (score.way != FoldWay::not_said) return std::nullopt;
    score.way = word.way;
  }
  for (const std::string_view word : silent_words) take_words(text, word);
  const auto length = read_length(trim(text), no_unit);
  if (!length) return std::nullopt;
  score.at = length->length;
  return score;
}

bool runs_along_width(const Score& score, bool width_is_long, bool other_side) {
  switch (score.along) {
    case ScoreAlong::width:
      return true;
    case ScoreAlong::height:
      return false;
    case ScoreAlong::long_side:
      return width_is_long;
    case ScoreAlong::short_side:
      return !width_is_long;
    case ScoreAlong::not_said:
      break;
  }
  return width_is_long != other_side;
}

}  // namespace

std::optional<std::vector<Score>> read_scores(std::string_view scores, Unit no_unit) {
  std::vector<Score> read;
  while (!trim(scores).empty()) {
    const std::size_t end = std::min(scores.find(';'), scores.size());
    const std::string_view part = trim(scores.substr(0, end));
    scores.remove_prefix(std::min(end + 1, scores.size()));
    if (part.empty()) continue;
    const auto score = read_score(part, no_unit);
    if (!score) return std::nullopt;
    read.push_back(*score);
  }
  return read;
}

std::optional<std::vector<ScoreOnSheet>> scores_on_sheet(const std::vector<Score>& scores, Length width,
                                                         Length height, bool other_side) {
  std::vector<ScoreOnSheet> placed;
  for (const Score& score : scores) {
    const bool upright = runs_along_width(score, width >= height, other_side);
    const Length side = upright ? width : height;
    if (score.at <= Length() || score.at >= side) return std::nullopt;
    placed.push_back({upright, score.from_far_end ? side - score.at : score.at, score.way,
                      score.along != ScoreAlong::not_said});
  }
  return placed;
}

}  // namespace insetbook
