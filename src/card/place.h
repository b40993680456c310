// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where a piece sits on what it lies on: the words people say, the figures to mark, and back.
//
// Rules ("Where a piece sits"): nothing said is centred. "High of centre" is up by half of the space above,
// unless that leaves less than the side border; then the top border is as wide as the sides (where there is
// so much room). "Low", "left" and "right of centre" are the same towards the other sides. A corner or a side
// with no figure is an eighth of an inch (3 mm) from its edges, or half the space where there is less.
// Figures that contradict each other by more than 1/32 in (0.8 mm) are refused with what they come to.
#pragma once

#include <string>
#include <string_view>

#include "card/face.h"

namespace insetbook {

// A place along one way, from the near edge (left, top) to the far one (right, bottom).
struct PlaceAlong {
  enum class How {
    not_said,
    centred,
    from_near,     // `from` the near edge; less than zero hangs off it
    from_far,      // `from` the far edge
    from_both,     // `from` the near and `other` from the far edge
    toward_near,   // high of centre, left of centre
    toward_far,    // low of centre, right of centre
    by_near_edge,  // at the near edge, no figure said
    by_far_edge,
  };
  How how = How::not_said;
  Length from, other;
  bool operator==(const PlaceAlong&) const = default;
};

struct PlaceSaid {
  PlaceAlong across, down;
  enum class CentredOn { ground, card, crease } centred_on = CentredOn::ground;
  bool same_border = false;  // as wide at the top as at the sides
  bool each_corner = false;  // one in each corner: the places of the others follow from the first
  Unit unit = Unit::inch;
  bool operator==(const PlaceSaid&) const = default;
};

// "centred", "high of centre", "bottom right", "flush left", "hanging off the right edge by 3/8 in", "1/8 in
// from both sides, 3/16 in from the top", "same border at top and sides". Blank: nothing said.
Result<PlaceSaid> read_place(std::string_view words, Unit no_unit);

struct GroundAndPiece {
  Length ground_width, ground_height;
  Length width, height;  // of the piece
};

// Left and top of the piece on its ground. The Problem says which figures disagree.
struct PlaceFound {
  Length left, top;
  bool operator==(const PlaceFound&) const = default;
};
Result<PlaceFound> find_place(const PlaceSaid& said, const GroundAndPiece& sizes, Unit unit);

// The figures to mark: "1/8 in from both sides, 3/16 in from the top". Read back it gives the same place.
std::string place_in_figures(const PlaceFound& place, const GroundAndPiece& sizes, Unit unit);

}  // namespace insetbook
