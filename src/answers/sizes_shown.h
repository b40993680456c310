// SPDX-License-Identifier: GPL-3.0-or-later
//
// Sizes as answers show them: a circle with one figure, a figure that lies on no mark of a ruler at a mark
// beside it, said so.
#pragma once

#include <string>
#include <string_view>

#include "measure/size.h"
#include "shape/shape.h"

namespace insetbook {

// "2-3/8 in" for a circle, a square or a polygon of two like figures, else "2-7/8 x 4-1/8 in".
std::string shaped_size_text(std::string_view shape_word, Length width, Length height, Unit unit);
// The same of a size on record. What a drawing says to the nanometre is shown as nobody can measure it finer:
// a figure of more than three decimals of an inch or two of a millimetre at the nearest mark (1/64 in, 0.1
// mm), "about" before it.
std::string recorded_size_text(std::string_view shape_word, Length width, Length height, Unit unit);
// "circle 2-3/8 in", "square 2 in", "rectangle 3 x 4 in"
std::string shape_text(const Shape& shape, Unit unit);
// At the mark below (1/64 in, 0.5 mm), "just over" where it lies on none; "none" below zero.
std::string border_text(Length border, Unit unit);
// A give or take: at the mark above.
std::string give_text(Length give, Unit unit);
Length nearest_mark(Length length, Unit unit);
// What must not be smaller: at the mark above.
Length mark_above(Length length, Unit unit);

}  // namespace insetbook
