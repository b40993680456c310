// SPDX-License-Identifier: GPL-3.0-or-later
//
// Circles anywhere in an outline: the same promise as free_rectangle.h's.
#pragma once

#include "fit/free_rectangle.h"

namespace insetbook {

// The last of a chain of circles (as wide as high) that lies somewhere.
FoundPlace last_circle(const EdgeTree& edges, std::int64_t border, const Chain& chain);

}  // namespace insetbook
