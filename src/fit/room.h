// SPDX-License-Identifier: GPL-3.0-or-later
//
// How much room is in an outline, found once and kept, so that a panel asked for later is often settled
// without a search: what lies wholly within a rectangle or a circle that lies inside does too, and what holds
// a rectangle or a circle that lies nowhere inside does not. All lengths are nm.
#pragma once

#include <optional>
#include <vector>

#include "fit/fit.h"
#include "fit/hull.h"
#include "fit/sides.h"

namespace insetbook {

struct Room {
  // Of all rectangles that are so wide: one `high` high lies inside somewhere, and one `high_in_middle` in
  // the middle (0: none is known); none that is `too_high` lies anywhere.
  struct Rectangles {
    std::int64_t wide = 0, high_in_middle = 0, high = 0, too_high = 0;
    bool operator==(const Rectangles&) const = default;
  };
  std::vector<Rectangles> rectangles;  // from narrow to wide
  // Diameters, in the same way.
  std::int64_t circle_in_middle = 0, circle = 0, too_large_a_circle = 0;
  bool operator==(const Room&) const = default;
};

// Of a shape whose outline is drawn; a Problem where it cannot be.
Result<Room> room_in(const Shape& opening);

// What surely holds a panel, and what it surely holds, each in any place: rectangles and circles.
struct PanelReach {
  Shape panel;
  bool drawn = false;  // an outline: what touches to some µm is left undecided, and not bounded
  Sides box;           // it lies in this rectangle
  std::optional<std::int64_t> in_circle;  // and in a circle of this diameter
  Sides holds;                            // this rectangle lies in it
  std::int64_t holds_circle = 0;          // and a circle of this diameter
  std::vector<HullCorner> hull;           // of an outline, to its error
};
Result<PanelReach> reach_of(const Shape& panel);

// Which border a panel surely keeps in the middle of an opening, which in some place, and than which it keeps
// no greater one anywhere. Negative: it is not known to fit so; with `most` < 0 it does not fit.
struct BorderBounds {
  std::int64_t in_middle = -1, somewhere = -1, most = -1;
};
// In an outline, from what room is in it.
BorderBounds border_bounds(const Room& room, Sides opening, const PanelReach& panel, bool may_turn);
// An outline as the panel, in an opening that is a plain shape; not turned.
BorderBounds border_bounds(const Shape& plain_opening, const PanelReach& panel);

}  // namespace insetbook
