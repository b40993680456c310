// SPDX-License-Identifier: GPL-3.0-or-later
//
// The closed size of a base: what is left of width and height when every score is folded flat. Only what is
// certain is answered: scores that run across the whole base, all read, on a fold whose sections simply lie
// on one another. Everything else (slits, diagonal creases, folds in which a part stands up in the closed
// card) is empty.
//
// The rule of "Folds, faces and the card check": side folds have upright creases, top folds and tents level
// ones, whatever order the base's figures are written in; other folds lie as written.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "measure/size.h"

namespace insetbook {

// How the creases of a base lie, whatever order its figures are written in.
enum class FoldLies { upright_creases, level_creases, as_written, unfolded };

// Of the folds whose sections simply lie on one another; no fold said: as written. Empty for every other
// fold.
std::optional<FoldLies> fold_lies(std::span<const std::string> folds);

// Two near scores that fold the same way make a spine: at most half an inch (common practice, no source), and
// at most half of what lies on either side.
inline constexpr Length widest_spine = Length::inch_fraction(1, 2);
bool is_spine(Length between, Length before, Length behind);

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
