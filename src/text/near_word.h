// SPDX-License-Identifier: GPL-3.0-or-later
//
// When one word may be a slip of the finger for another. Short words are near to too many others ("how" and
// "low", "pond" and "bond"), so that how many mistakes are believed goes by the length; and the first letter
// is seldom the wrong one.
#pragma once

#include <optional>
#include <string_view>

namespace insetbook {

// How many mistakes apart the two folded words are (text/utf8.h, edit_distance), where one may be a slip for
// the other; else empty:
//   to 3 letters    never
//   4 letters       two neighbours changed places, nothing else ("nvay" for "navy")
//   5 to 7          one mistake      from 8 on       two
// A first letter that differs is a slip only where it changed places with the second, or in a word of 6
// letters or more that is otherwise the same. A word with a figure in it is never a slip.
std::optional<std::size_t> slip_distance(std::string_view written, std::string_view meant);

}  // namespace insetbook
