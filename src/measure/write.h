// SPDX-License-Identifier: GPL-3.0-or-later
//
// Writes lengths and sizes as a person reads them: inches as mixed fractions (2-3/8 in), metric as mm (60
// mm, 60.5 mm). `write` is exact: reading it again gives the same nanometres, in either unit, whatever unit
// it was written in. Inches are written in halves to 64ths, thirds, fifths, sixths, sevenths, ninths, tenths
// and twelfths, rounded or whole; any other length as the shortest decimal that reads back the same (60 mm
// is 2.36220472 in). Metric takes as many decimals as it needs, six at most. Feet and metres are read, never
// written.
#pragma once

#include <string>

#include "measure/size.h"

namespace insetbook {

std::string write(Length length, Unit unit);         // "2-3/8 in", "60 mm"
std::string write_figure(Length length, Unit unit);  // "2-3/8", "60": without the unit
std::string write(const Size& size);                 // "2-7/8 x 4-1/8 in", "2-3/8 in" for one figure
std::string write(const Range& range);               // "2 to 3 in"
std::string write(const Measurement& measurement);
std::string write_size(Length width, Length height, Unit unit);  // two figures, one unit at the end

// The same in the unit asked, whatever unit it was written in.
std::string write(const Size& size, Unit unit);
std::string write(const Range& range, Unit unit);
std::string write(const Measurement& measurement, Unit unit);

// A size with all that was said of it: "W 2-7/8 x H 4-1/8 in", "2-3/8 in circle". read_size
// reads it back to the same Size.
std::string write_said(const Size& size);

// A computed length that must fit: the ruler mark (a multiple of `mark`) at or below it, never a false
// fraction.
std::string write_at_most(Length length, Length mark, Unit unit);

}  // namespace insetbook
