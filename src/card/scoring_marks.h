// SPDX-License-Identifier: GPL-3.0-or-later
//
// Scores that lie on no groove of the person's scoring board (grooves every 1/8 in, or every 5 mm: common
// practice, no source; a setting). A score is measured from either edge of the sheet, so it lies on a groove
// where one of the two distances does.
#pragma once

#include <vector>

#include "card/base.h"

namespace insetbook {

struct OffTheMark {
  Length at;       // from the left or the top
  Length nearest;  // the nearest groove, from the same edge
  bool operator==(const OffTheMark&) const = default;
};

// `marks` apart; zero: the person has no board.
std::vector<OffTheMark> off_the_marks(const Base& base, Length marks);

}  // namespace insetbook
