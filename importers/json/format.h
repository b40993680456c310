// SPDX-License-Identifier: GPL-3.0-or-later
//
// The exchange format: a folder with `book.json` and `photos/HASH`. schema/exchange.schema.json says it in
// full. It holds everything a person has put into a book: own words, settings, colours, die sets with their
// dies, lines and all measurements, supplies, samples with their pieces and photographs, and what was tried.
// Not the change log, and not the book's own identity: two books with the same records are the same bytes,
// whatever the order in which they were put in.
//
// Records refer to each other by UUID, lines by the UUID of their die and their name, pieces by their name
// within the sample.
#pragma once

#include <string_view>

namespace insetbook {

inline constexpr std::string_view exchange_format = "insetbook";
inline constexpr int exchange_version = 1;

// In the order in which they are written, and in which they refer to each other: to earlier ones only.
enum class Section { settings, terms, colours, sets, supplies, samples, tried };
inline constexpr std::string_view section_names[] = {"settings", "terms",   "colours", "sets",
                                                     "supplies", "samples", "tried"};
inline constexpr int section_count = 7;

}  // namespace insetbook
