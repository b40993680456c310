// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/scoring_marks.h"

namespace insetbook {

std::vector<OffTheMark> off_the_marks(const Base& base, Length marks) {
  std::vector<OffTheMark> off;
  if (marks <= Length()) return off;
  for (const SheetCrease& crease : base.creases) {
    const Length side = crease.upright ? base.width : base.height;
    const auto on_groove = [&](Length at) { return round_down(at, marks) == at; };
    if (on_groove(crease.at) || on_groove(side - crease.at)) continue;
    off.push_back({crease.at, round_down(crease.at + marks / 2, marks)});
  }
  return off;
}

}  // namespace insetbook
