// SPDX-License-Identifier: GPL-3.0-or-later
//
// The panels that were tried in an opening, by hand and as pieces of samples that lie in it, and what each of
// them left of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answers/fits.h"
#include "book/evidence.h"

namespace insetbook {

struct KnownOpening {
  const OpeningRecord& record;
  std::optional<Opening> opening;  // empty: not measured, or not computable
  Length step;
};

// What was tried in the opening: results by hand, and the pieces of samples that are insets.
std::vector<TriedPanel> tried_in_opening(const Book& book, const KnownOpening& known);

// Panels that fitted, the most often tried first. Of one panel tried by hand several times the newest result
// counts; what did not fit, or cannot have, becomes a warning.
std::vector<FittingPanel> tried_panels(const KnownOpening& known, const std::vector<TriedPanel>& all,
                                       std::vector<std::string>& warnings);

// What the hand found goes before what the figures say: a computed panel whose newest result by hand is that
// it did not fit says so, and comes after the others.
void heed_results(const KnownOpening& known, const std::vector<TriedPanel>& all,
                  std::vector<FittingPanel>& panels);

// The border that a panel of this size left in an opening; empty where it is no inset or its border is not
// known. `shape`: the opening's.
std::optional<Length> border_left(const OpeningRecord& opening, const Result<Shape>& shape, TriedPanel tried,
                                  Length step);

}  // namespace insetbook
