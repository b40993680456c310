// SPDX-License-Identifier: GPL-3.0-or-later
//
// The printed form of the answers to `fits`, `frames` and `pairs`, which `find` prints too when a question is
// for them.
#pragma once

#include "answers/fits.h"
#include "answers/frames.h"
#include "answers/pairs.h"
#include "cli/output.h"

namespace insetbook::cli {

void print_fits(const FitsAnswer& answer, Output& out);
void print_frames(const FramesAnswer& answer, Output& out);

inline constexpr std::size_t pairs_shown = 20;  // of each kind, unless asked
// At most so many of each kind.
void print_pairs(const PairsAnswer& answer, std::size_t most, Output& out);
bool is_empty(const PairsAnswer& answer);

}  // namespace insetbook::cli
