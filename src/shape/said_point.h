// SPDX-License-Identifier: GPL-3.0-or-later
//
// A place in an outline as it is said to a person: "12.5, 3 mm", from the outline's origin.
#pragma once

#include <string>

#include "shape/outline.h"

namespace insetbook {

std::string said(Point point);

}  // namespace insetbook
