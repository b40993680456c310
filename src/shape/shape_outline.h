// SPDX-License-Identifier: GPL-3.0-or-later
//
// The outline of a shape of the trade from its figures (shape.h): each kind's figures and how its curves are
// drawn are written at its function in shape_outline.cc. The box of the outline is the shape's size. A figure
// that is wanted and not recorded is a Problem that names it (`missing_figure`); one that cannot be with the
// others ("depth 2 in" of a shape 3 in high) a Problem that says which.
#pragma once

#include "shape/curves.h"
#include "shape/shape.h"

namespace insetbook {

Result<CurvedOutline> outline_of(const Shape& shape);

}  // namespace insetbook
