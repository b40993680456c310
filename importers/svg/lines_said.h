// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the person says of a drawing on the command line: how long a unit is, and which strokes, classes and
// names are which line of a die.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "importers/svg/drawing.h"
#include "language/read_record.h"

namespace insetbook {

// "1 mm", "0.5 mm", or "96 = 1 in": so many units of the drawing are that long. In nanometres, not rounded.
Result<double> read_scale(std::string_view text);

// "red = stitched; .guide = pierced; #00ff00 = window": the stroke, class or name before "=", folded, and the
// line behind it. A dot before a class may stand or not.
using LinesSaid = std::vector<std::pair<std::string, LineCell>>;
Result<LinesSaid> read_lines_said(std::string_view text);

// The line of an outline: by its stroke, a class, its name or the name of a group around it in the die, in
// this order; else the line that its name is the word for. Empty: nothing says it.
std::optional<LineCell> line_said(const DrawnOutline& outline, const std::vector<std::string>& groups,
                                  const LinesSaid& said);

}  // namespace insetbook
