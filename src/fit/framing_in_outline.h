// SPDX-License-Identifier: GPL-3.0-or-later
//
// One panel in an opening, where one of the two is an outline: how it stands, and how it lies there.
#pragma once

#include "fit/fit.h"

namespace insetbook {

Result<Verdict> verdict_in_outline(const Opening& opening, const Shape& panel, Length border);

// As framing() in fit.h, the panel as it lies. In the middle where it keeps the border there, else where it
// leaves about the most.
Result<std::optional<Framing>> framed_in_outline(const Opening& opening, const Shape& panel, Length border,
                                                 Length step);

}  // namespace insetbook
