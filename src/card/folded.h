// SPDX-License-Identifier: GPL-3.0-or-later
//
// A base folded flat: its sections, which lies over which, which face is seen, and the closed size.
//
// Sections are numbered as the base lies open, inside up, row by row from the top left. Creases are folded in
// the order of the base, the last one outermost; where they run both ways, all of the second way are made on
// the folded stack. The closed card is seen from its front: the side from which more of section 1 is seen,
// and where it is hidden, the side of the part that was folded over it last. All places in the closed card
// are from its left and top as seen from the front, the card upright.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "card/base.h"

namespace insetbook {

// What bounds a section on one side. The way of a crease is seen from the inside.
enum class EdgeKind { free, valley, mountain };

enum EdgeSide { left_edge, right_edge, top_edge, bottom_edge };

struct BaseSection {
  int number = 1;
  Length left, top, width, height;  // on the open sheet
  std::array<EdgeKind, 4> edges{};  // by EdgeSide, as it lies open
  bool spine = false;               // stands on edge between two near creases, and is in no layer

  // In the closed card.
  Length closed_left, closed_top;
  bool mirrored_across = false, mirrored_down = false;  // against the open sheet
  int layer = 0;                                        // 0: foremost

  bool inside_to_front() const { return mirrored_across == mirrored_down; }
  Length closed_right() const { return closed_left + width; }
  Length closed_bottom() const { return closed_top + height; }
};

struct FoldedBase {
  Length width, height;  // the closed size
  Length spine;          // the widest one; zero where there is none
  std::vector<BaseSection> sections;
  std::vector<int> front_to_back;  // places in `sections`; spines are left out
};

// Fails where the pattern cannot be folded flat as it is written, and says why.
tl::expected<FoldedBase, BaseNotLaid> fold_flat(const Base& base, Unit unit);

}  // namespace insetbook
