// SPDX-License-Identifier: GPL-3.0-or-later
//
// About how large a line should be that nobody measured, by the sizes of its set (the rule is fit/fit.h's).
#pragma once

#include <optional>

#include "book/openings.h"
#include "fit/fit.h"

namespace insetbook {

// From the other dies of its edge, the line's own size left out where it has one. Empty where it does not
// stand between two measured ones.
std::optional<Estimate> estimated_size(const Book& book, const OpeningRecord& opening);

}  // namespace insetbook
