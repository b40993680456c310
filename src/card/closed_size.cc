// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/closed_size.h"

#include <algorithm>
#include <array>

#include "card/scores.h"

namespace insetbook {

namespace {

struct KnownFold {
  std::string_view term;
  FoldLies lies;
};
constexpr std::array<KnownFold, 20> known_folds{{
    {"side fold", FoldLies::upright_creases},
    {"half fold", FoldLies::as_written},
    {"top fold", FoldLies::level_creases},
    {"tent", FoldLies::level_creases},
    {"z fold", FoldLies::as_written},
    {"level z fold", FoldLies::level_creases},
    {"easel", FoldLies::as_written},
    {"side easel", FoldLies::upright_creases},
    {"accordion", FoldLies::as_written},
    {"fan fold", FoldLies::as_written},
    {"w fold", FoldLies::as_written},
    {"m fold", FoldLies::as_written},
    {"gate", FoldLies::as_written},
    {"level gate", FoldLies::level_creases},
    {"letter tri fold", FoldLies::as_written},
    {"roll fold", FoldLies::as_written},
    {"french fold", FoldLies::as_written},
    {"flat", FoldLies::unfolded},
    {"note card", FoldLies::unfolded},
    {"tag", FoldLies::unfolded},
}};

bool has_one_crease(std::span<const std::string> folds) {
  if (folds.empty()) return true;
  const std::string& fold = folds.front();
  return fold == "side fold" || fold == "half fold" || fold == "top fold" || fold == "tent";
}

// Two near scores where the fold has one crease are a spine: what lies on either side is folded over it.
Length folded_side(Length side, std::vector<Length> creases, bool one_crease) {
  std::sort(creases.begin(), creases.end());
  if (one_crease && creases.size() == 2 && is_spine(creases[1] - creases[0], creases[0], side - creases[1]))
    return std::max(creases[0], side - creases[1]);
  return folded_length(side, std::move(creases));
}

}  // namespace

bool is_spine(Length between, Length before, Length behind) {
  return between <= widest_spine && between * 2 <= before && between * 2 <= behind;
}

std::optional<FoldLies> fold_lies(std::span<const std::string> folds) {
  if (folds.empty()) return FoldLies::as_written;
  if (folds.size() > 1) return std::nullopt;
  const auto fold = std::find_if(known_folds.begin(), known_folds.end(),
                                 [&](const KnownFold& one) { return one.term == folds.front(); });
  return fold == known_folds.end() ? std::nullopt : std::optional(fold->lies);
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
  const auto how = fold_lies(folds);
  const auto read = read_scores(scores, no_unit);
  if (!how || !read) return std::nullopt;
  // A base without scores is folded somewhere, unless the fold says that it is not.
  if (*how == FoldLies::unfolded)
    return read->empty() ? std::optional(ClosedBase{width, height}) : std::nullopt;
  if (read->empty()) return std::nullopt;
  const auto creases = scores_on_sheet(*read, width, height);
  if (!creases) return std::nullopt;
  std::vector<Length> across_width, across_height;
  for (const ScoreOnSheet& crease : *creases)
    (crease.upright ? across_width : across_height).push_back(crease.at);
  const bool one_crease = has_one_crease(folds);
  const ClosedBase closed{folded_side(width, std::move(across_width), one_crease),
                          folded_side(height, std::move(across_height), one_crease)};
  if (*how == FoldLies::as_written) return closed;
  // The fold says which way its creases run, so the base is turned to suit; creases both ways cannot all run
  // so.
  const auto is_upright = [](const ScoreOnSheet& crease) { return crease.upright; };
  const bool upright = std::all_of(creases->begin(), creases->end(), is_upright);
  if (!upright && std::any_of(creases->begin(), creases->end(), is_upright)) return std::nullopt;
  if (upright == (*how == FoldLies::upright_creases)) return closed;
  return ClosedBase{closed.height, closed.width};
}

}  // namespace insetbook
