// SPDX-License-Identifier: GPL-3.0-or-later
//
// The greatest border of a panel in an opening, to the whole nanometre below it.
#pragma once

#include <optional>

#include "fit/inside.h"

namespace insetbook {

// Empty: the panel does not fit without a border either.
std::optional<Length> greatest_border(const Ground& ground, const Form& panel);

}  // namespace insetbook
