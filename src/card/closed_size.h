// SPDX-License-Identifier: GPL-3.0-or-later
//
// The closed size of a base: what is left of width and height when every score is folded flat. Only what is
// certain is answered: scores that run across the whole base, all read, on a fold whose sections simply lie
// on one another. Everything else (slits, diagonal creases, folds in which a part stands up in the closed
// card) is empty.
//
// The rules of "Folds, faces and the card check": a score with no side named is measured along the long side
// from its left end. Side folds have upright creases, top folds and tents level ones, whatever order the
// base's figures are written in; other folds lie as written.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "measure/size.h"

namespace insetbook {

// Which side of the base a score is measured along.
enum class ScoreAlong { not_said, width, height, long_side, short_side };

struct Score {
  Length at;
  ScoreAlong along = ScoreAlong::not_said;
  bool from_far_end = false;  // from the right or from the bottom
};

// "2-1/8; 4-1/4", "2 in mountain", "from the top 3 in", "short side at 2 in". Empty where a part of it is not
// understood.
std::optional<std::vector<Score>> read_scores(std::string_view scores, Unit no_unit);

// What a strip of this length measures when it is folded at each of the places, to and fro or round: a crease
// turns the paper back on itself, whichever way it is folded.
Length folded_length(Length length, std::vector<Length> creases);

struct ClosedBase {
  Length width;
  Length height;
  bool operator==(const ClosedBase&) const = default;
};

// `folds`: terms of the vocabulary of folds; none where the card says no fold. Width x height as the card
// stands.
std::optional<ClosedBase> closed_size(std::span<const std::string> folds, Length width, Length height,
                                      std::string_view scores, Unit no_unit);

}  // namespace insetbook
