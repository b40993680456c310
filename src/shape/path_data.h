// SPDX-License-Identifier: GPL-3.0-or-later
//
// Path data as drawings write it (SVG 2, chapter 9): every command, relative and absolute, flags run
// together, numbers without spaces, arcs, shorthand curves. Numbers are in a unit that is given; each control
// point is rounded to the nearest nanometre, and that rounded path is what is recorded and computed with.
#pragma once

#include <string_view>

#include "shape/curves.h"

namespace insetbook {

// unit_nm: how many nanometres a path unit is. Bad path data: a Problem with the place in the text and what
// was expected there. Too long (64 KB) or too many curves (20 000): a Problem.
Result<CurvedOutline> read_path_data(std::string_view text, double unit_nm, FillRule rule);

// The same for path data in no known unit, scaled so that its box is width × height (above zero) with its top
// left corner at (0, 0).
Result<CurvedOutline> path_data_scaled_to(std::string_view text, FillRule rule, std::int64_t width,
                                          std::int64_t height);

}  // namespace insetbook
