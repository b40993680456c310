// SPDX-License-Identifier: GPL-3.0-or-later
//
// Phrases of a line in the form in which the book keeps them: scores with "; " between, where the glue is,
// and the line of another piece's die.
#pragma once

#include <string>
#include <string_view>

namespace insetbook {

// "4-1/4 in and 6 in" → "4-1/4 in; 6 in"
std::string scores_of(std::string_view said);
// "along the left 2 in only" → "left 2 in"; "no glue" → "none"
std::string glue_of(std::string_view said);
// "frame, stitched" or "frame stitched line": the kind of line, which is taken off `said`; else empty.
std::string line_taken_off(std::string& said);

}  // namespace insetbook
