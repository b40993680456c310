// SPDX-License-Identifier: GPL-3.0-or-later
//
// panels_inside where the opening or the panel is an outline.
#pragma once

#include "fit/fit.h"

namespace insetbook {

// Whether the opening or panel is computed as an outline (shape_outline.h): its kind has no form of its own.
bool is_outline(const Shape& shape);

struct OutlinePanels {
  std::vector<Panel> panels;
  std::string left_open;  // of a shape of which nothing was found: what was not excluded either; or empty
};

// `shapes`: one of each kind asked. The question's border is ≥ 0, its step > 0.
Result<OutlinePanels> panels_in_outline(const Opening& opening, const FitQuestion& question,
                                        const std::vector<Shape>& shapes);

}  // namespace insetbook
