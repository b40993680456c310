// SPDX-License-Identifier: GPL-3.0-or-later
//
// A panel turned by a quarter, as a shape of its own.
#pragma once

#include <optional>

#include "shape/shape.h"

namespace insetbook {

// Empty where it is the same again, or no shape says it: a polygon with an odd number of sides would lie on
// its side, and so would an outline.
std::optional<Shape> turned_by_a_quarter(Shape panel);

}  // namespace insetbook
