// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is said, in three written forms: as the table tests compare it ("size=2-3/8in ±1/32in"), as a field
// that reads back to the same ("size:2-3/8in"), and as a person reads it ("size 2-3/8 in, within 1/32 in").
#pragma once

#include <string>

#include "language/fields.h"
#include "language/question.h"

namespace insetbook {

// Behind what was said of a colour, a supply or a die: how it was told which are meant.
inline constexpr std::string_view by_value_note = " (by value)";
inline constexpr std::string_view by_status_note = " (by status)";

FieldName field_of(const Says& says);
std::string printed(const Says& says);
std::string as_field(const Says& says);
std::string in_words(const Says& says);

// In quotes where it would not be read as one word.
std::string quoted(std::string_view value);
// "second largest", "smallest", "23rd largest".
std::string order_words(int rank, bool from_smallest);

}  // namespace insetbook
