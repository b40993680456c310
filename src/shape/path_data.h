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

}  // namespace insetbook
