// SPDX-License-Identifier: GPL-3.0-or-later
//
// The scores of a base as people write them, and on which side of the sheet each is measured.
//
// The rule of "Folds, faces and the card check": a score with no side named is measured along the long side
// from its left end (from the top where the long side stands upright).
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "measure/size.h"

namespace insetbook {

// Which side of the base a score is measured along.
enum class ScoreAlong { not_said, width, height, long_side, short_side };

// Which way the paper folds at a crease, seen from the inside: at a valley the inside faces meet.
enum class FoldWay { not_said, valley, mountain };

struct Score {
  Length at;
  ScoreAlong along = ScoreAlong::not_said;
  bool from_far_end = false;  // from the right or from the bottom
  FoldWay way = FoldWay::not_said;
};

// "2-1/8; 4-1/4", "2 in mountain", "from the top 3 in", "short side at 2 in". Empty where a part of it is not
// understood.
std::optional<std::vector<Score>> read_scores(std::string_view scores, Unit no_unit);

// A score on the sheet: an upright crease is `at` from the left, a level one from the top.
struct ScoreOnSheet {
  bool upright = true;
  Length at;
  FoldWay way = FoldWay::not_said;
  bool side_was_said = false;
  bool operator==(const ScoreOnSheet&) const = default;
};

// Each score on the side it is measured along, in the order written; empty where one is off the sheet. `other
// side`: those with no side named are taken along the short side instead.
std::optional<std::vector<ScoreOnSheet>> scores_on_sheet(const std::vector<Score>& scores, Length width,
                                                         Length height, bool other_side = false);

}  // namespace insetbook
