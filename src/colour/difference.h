// SPDX-License-Identifier: GPL-3.0-or-later
//
// How far two colours are apart for the eye: CIEDE2000 (CIE 142-2001), with kL = kC = kH = 1, in the form of
// Sharma, Wu and Dalal, "The CIEDE2000 color-difference formula: implementation notes", 2005. About 1 is just
// seen side by side; up to about 10 is the same colour for a card. It is the same both ways and 0 only for
// equal colours; it is no distance: a way round over a third colour may be shorter.
#pragma once

#include <cstdint>

#include "colour/lab.h"

namespace insetbook {

double colour_difference(const Lab& one, const Lab& other);
double colour_difference(std::uint32_t one, std::uint32_t other);  // of two values 0xrrggbb

}  // namespace insetbook
