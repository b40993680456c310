// SPDX-License-Identifier: GPL-3.0-or-later
//
// Fits or snug: how a panel stands to an opening whose figures may be smaller than measured.
#pragma once

#include "fit/fit.h"
#include "fit/inside.h"

namespace insetbook {

// Why nothing can be computed in an opening or with a panel, or nothing.
std::optional<Problem> not_computable(const Shape& shape);

// A panel that is inside as measured: `fits` when it also lies within the line (without a border) of the
// opening with each of its figures give_or_take smaller, else `snug`. The figure is the whole width, so each
// side comes in by half of it.
Verdict verdict_inside(const Opening& opening, const Form& panel);

}  // namespace insetbook
