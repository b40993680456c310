// SPDX-License-Identifier: GPL-3.0-or-later
//
// Writes lengths and sizes as a person reads them: inches as mixed fractions (2-3/8 in), metric as mm (60 mm, 60.5 mm).
// `write` is exact: reading it again gives the same nanometres. Thirds, sixths, sevenths and ninths are written as the
// fraction they were rounded from. A length that no fraction up to 64ths names is written as a decimal, or in mm.
#pragma once

#include <string>

#include "measure/size.h"

namespace insetbook {

std::string write(Length length, Unit unit);                // "2-3/8 in", "60 mm"
std::string write_figure(Length length, Unit unit);         // "2-3/8", "60": without the unit
std::string write(const Size& size);                        // "2-7/8 x 4-1/8 in", "2-3/8 in" for one figure
std::string write(const Range& range);                      // "2 to 3 in"
std::string write_size(Length width, Length height, Unit unit);  // two figures, one unit at the end

// A computed length that must fit: the ruler mark (a multiple of `mark`) at or below it, never a false fraction.
std::string write_at_most(Length length, Length mark, Unit unit);

}  // namespace insetbook
