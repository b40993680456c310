// SPDX-License-Identifier: GPL-3.0-or-later
//
// Questions that are asked of things and not of cards, and that the program has no answer for: what lies in a
// drawer, how much is left, which dies were never used. They are read as questions for cards like any other;
// the note says so, with the command that is nearest.
#pragma once

#include <string_view>
#include <vector>

#include "language/pieces.h"

namespace insetbook {

// Empty where the question is none of these. The text lives as long as the program.
std::string_view not_answered(const std::vector<Piece>& pieces);

}  // namespace insetbook
