// SPDX-License-Identifier: GPL-3.0-or-later
//
// Ovals, exactly. The edge of an oval pulled in by a border is not an oval (it is a curve of the eighth
// degree), but whether a point lies within it is the sign of a few whole numbers; so is whether one oval lies
// in another with a border.
#pragma once

#include "fit/form.h"

namespace insetbook {

// A core centred in an oval. border ≥ 0.
Where core_in_ellipse(const Form& opening, const Core& core, std::int64_t border);

// An oval or circle centred in an oval or circle. border ≥ 0.
Where ellipse_in_ellipse(const Form& opening, const Form& panel, std::int64_t border);

// An oval centred in a rounded rectangle. border ≥ 0. Undecided when closer than about 1 nm.
Where ellipse_in_rounded(const Form& opening, const Form& panel, std::int64_t border);

}  // namespace insetbook
