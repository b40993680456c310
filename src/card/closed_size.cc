// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/closed_size.h"

#include <algorithm>
#include <array>

#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

// How the base lies under a fold that is certain.
enum class Lies {
  upright_creases,
  level_creases,
  as_written,
  unfolded,
};

struct KnownFold {
  std::string_view term;
  Lies lies;
};
constexpr std::array<KnownFold, 20> known_folds{{
    {"side fold", Lies::upright_creases},
    {"half fold", Lies::as_written},
    {"top fold", Lies::level_creases},
    {"tent", Lies::level_creases},
    {"z fold", Lies::as_written},
    {"level z fold", Lies::level_creases},
    {"easel", Lies::as_written},
    {"side easel", Lies::upright_creases},
    {"accordion", Lies::as_written},
    {"fan fold", Lies::as_written},
    {"w fold", Lies::as_written},
    {"m fold", Lies::as_written},
    {"gate", Lies::as_written},
    {"level gate", Lies::level_creases},
    {"letter tri fold", Lies::as_written},
    {"roll fold", Lies::as_written},
    {"french fold", Lies::as_written},
    {"flat", Lies::unfolded},
    {"note card", Lies::unfolded},
    {"tag", Lies::unfolded},
}};

std::optional<Lies> lies(std::span<const std::string> folds) {
  if (folds.empty()) return Lies::as_written;
  if (folds.size() > 1) return std::nullopt;
  const auto fold = std::find_if(known_folds.begin(), known_folds.end(),
                                 [&](const KnownFold& one) { return one.term == folds.front(); });
  return fold == known_folds.end() ? std::nullopt : std::optional(fold->lies);
}

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
// They say nothing about where the crease is.
constexpr std::array<std::string_view, 6> silent_words = {"mountain", "valley", "score",
                                                          "scored",   "at",     "fold"};

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

void blank_words(std::string& text, std::string_view words) {
  for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
    const bool begins = at == 0 || !is_letter(text[at - 1]);
    const std::size_t end = at + words.size();
    if (begins && (end >= text.size() || !is_letter(text[end])))
      text.replace(at, words.size(), words.size(), ' ');
  }
}

std::optional<Score> read_score(std::string_view said, Unit no_unit) {
  std::string text = lower(said);
  Score score;
  for (const ScoreWords& words : score_words) {
    if (text.find(words.words) == std::string::npos) continue;
    if (score.along != ScoreAlong::not_said) return std::nullopt;
    score.along = words.along;
    score.from_far_end = words.from_far_end;
    blank_words(text, words.words);
  }
  for (const std::string_view word : silent_words) blank_words(text, word);
  const auto length = read_length(trim(text), no_unit);
  if (!length) return std::nullopt;
  score.at = length->length;
  return score;
}

struct Creases {
  std::vector<Length> across_width, across_height;
};

// Each score on the side it is measured along; empty where one is off the sheet.
std::optional<Creases> place_scores(const std::vector<Score>& scores, Length width, Length height) {
  Creases creases;
  for (const Score& score : scores) {
    const bool width_is_long = width >= height;
    const bool along_width =
        score.along == ScoreAlong::width || (score.along == ScoreAlong::short_side && !width_is_long) ||
        ((score.along == ScoreAlong::long_side || score.along == ScoreAlong::not_said) && width_is_long);
    const Length side = along_width ? width : height;
    if (score.at <= Length() || score.at >= side) return std::nullopt;
    (along_width ? creases.across_width : creases.across_height)
        .push_back(score.from_far_end ? side - score.at : score.at);
  }
  return creases;
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

Length folded_length(Length length, std::vector<Length> creases) {
  std::sort(creases.begin(), creases.end());
  creases.push_back(length);
  Length at, lowest, highest, before;
  std::int64_t direction = 1;
  for (const Length crease : creases) {
    at += direction * (crease - before);
    lowest = std::min(lowest, at);
    highest = std::max(highest, at);
    before = crease;
    direction = -direction;
  }
  return highest - lowest;
}

std::optional<ClosedBase> closed_size(std::span<const std::string> folds, Length width, Length height,
                                      std::string_view scores, Unit no_unit) {
  const auto how = lies(folds);
  const auto read = read_scores(scores, no_unit);
  if (!how || !read) return std::nullopt;
  // A base without scores is folded somewhere, unless the fold says that it is not.
  if (*how == Lies::unfolded) return read->empty() ? std::optional(ClosedBase{width, height}) : std::nullopt;
  if (read->empty()) return std::nullopt;
  const auto creases = place_scores(*read, width, height);
  if (!creases) return std::nullopt;
  const ClosedBase closed{folded_length(width, creases->across_width),
                          folded_length(height, creases->across_height)};
  if (*how == Lies::as_written) return closed;
  // The fold says which way its creases run, so the base is turned to suit; creases both ways cannot all run
  // so.
  if (!creases->across_width.empty() && !creases->across_height.empty()) return std::nullopt;
  const bool upright = !creases->across_width.empty();
  if (upright == (*how == Lies::upright_creases)) return closed;
  return ClosedBase{closed.height, closed.width};
}

}  // namespace insetbook
