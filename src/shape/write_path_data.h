// SPDX-License-Identifier: GPL-3.0-or-later
//
// Curves as path data in millimetres, exactly: a whole nanometre is six digits behind the point. Reading it
// back (path_data.h, 1 mm a unit) gives the same curves.
#pragma once

#include <string>

#include "shape/curves.h"

namespace insetbook {

std::string write_path_data(const CurvedOutline& outline);
// The rings, as lines.
std::string write_path_data(const Outline& outline);

}  // namespace insetbook
