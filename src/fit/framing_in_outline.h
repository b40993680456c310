// SPDX-License-Identifier: GPL-3.0-or-later
//
// One panel in an opening, where one of the two is an outline: how it stands, and how it lies there.
#pragma once

#include "fit/fit.h"

namespace insetbook {

Result<Verdict> verdict_in_outline(const Opening& opening, const Shape& panel, Length border);

// As framing() in fit.h, the panel as it lies, where it leaves the most border.
Result<std::optional<Framing>> framed_in_outline(const Opening& opening, const Shape& panel, Length border,
                                                 Length step);

// The greatest border in the middle, where the panel keeps `border` there.
std::optional<Length> middle_border_in_outline(const Shape& opening, const Shape& panel, Length border);

}  // namespace insetbook
