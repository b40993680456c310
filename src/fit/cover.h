// SPDX-License-Identifier: GPL-3.0-or-later
//
// What covers a window from behind: paper that reaches an overlap beyond its line all round.
#pragma once

#include "shape/shape.h"

namespace insetbook {

// The window's own shape. A circle, square or rectangle is larger by the overlap on each side. Others do not
// overlap evenly when they are made larger: in their proportions, each a cutting step wider than the one
// before, the first that holds the window with the overlap all round. Path data, and what its own shape
// would cover only at more than twice its size (a needle of an oval), is covered by the rectangle round it,
// the overlap larger on each side. overlap ≥ 0, step > 0. A shape with a figure missing is taken by its box.
Shape cover_from_behind(const Shape& window, Length overlap, Length step);

}  // namespace insetbook
