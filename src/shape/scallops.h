// SPDX-License-Identifier: GPL-3.0-or-later
//
// The scalloped edge of shape_outline.h: the notches on the shape that is a depth smaller all round, and an
// arc from notch to notch through each top.
#pragma once

#include "shape/curves.h"
#include "shape/shape.h"

namespace insetbook {

// No figure is missing. Scallops that are too deep for their width or for the size, or of no width, are a
// Problem.
Result<Contour> scalloped_edge(const Shape& shape);

}  // namespace insetbook
