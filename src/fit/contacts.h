// SPDX-License-Identifier: GPL-3.0-or-later
//
// What holds a panel: the places of the line that are nearest to it. To be shown; nothing is decided here.
#pragma once

#include "fit/fit.h"

namespace insetbook {

// A place of the line, from the left and from the top of the opening's box, and the place of the panel that
// is nearest to it.
struct Contact {
  Length x, y;
  Length panel_x, panel_y;
  Length distance;
};

// The places at which the panel, where it lies, is as near to the line as anywhere, to a hundredth of a
// millimetre; where it is so along a whole stretch, its ends. No more than 8, the nearest first. Problems as
// of panels_inside.
Result<std::vector<Contact>> contacts(const Opening& opening, const Panel& panel);

}  // namespace insetbook
