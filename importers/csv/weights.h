// SPDX-License-Identifier: GPL-3.0-or-later
//
// The weight of paper: grams a square metre, or pounds of a grade ("80 lb cover"): the weight of 500 sheets
// of the grade's own basic size. Pounds without a grade could be any, so they have no value.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace insetbook {

// Milligrams a square metre, rounded to the nearest. Empty where the text says no weight that can be known.
std::optional<std::int64_t> read_paper_weight(std::string_view text);

}  // namespace insetbook
