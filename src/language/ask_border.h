// SPDX-License-Identifier: GPL-3.0-or-later
//
// The border said with a question for what fits or frames: "with a 1/8 in border", "so an eighth shows all
// round", "leaving 1/8 in on each side", "a quarter inch smaller" (which is off the whole: an eighth on each
// side).
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/pieces.h"
#include "measure/size.h"

namespace insetbook {

struct BorderSaid {
  std::string border;              // each side, as a length is read: "1/8 in"
  std::size_t begin = 0, end = 0;  // the pieces that say it, with the words that lead to it, half-open
};

std::optional<BorderSaid> border_said(std::string_view text, const std::vector<Piece>& pieces, Unit no_unit);

// A length at a piece, also an eighth, a quarter … alone, which are of an inch: the length as it is read back
// and the place behind it.
struct LengthSaid {
  std::string length;
  std::size_t end = 0;
};
std::optional<LengthSaid> length_said(std::string_view text, const std::vector<Piece>& pieces, std::size_t at,
                                      Unit no_unit);

}  // namespace insetbook
