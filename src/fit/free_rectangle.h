// SPDX-License-Identifier: GPL-3.0-or-later
//
// Rectangles anywhere in an outline, parallel to it. An answer is a promise both ways: the rectangle passed
// the exact check at the place that is given, and what is larger was excluded by bounds in floating point
// that give away more than their rounding. Places are tried to the nanometre. What is neither found nor
// excluded when the places that are left lie within 2 nm (within the error of curved edges, where that is
// more) is undecided: it is not taken, and said.
#pragma once

#include <functional>
#include <optional>

#include "fit/in_outline.h"
#include "fit/sides.h"

namespace insetbook {

struct Placed {
  Sides sides;
  Middle middle;
};

struct FoundPlace {
  std::optional<Placed> placed;
  std::optional<Sides> undecided;  // the largest that is better than what was placed, if it fits
  bool ended = false;              // undecided because the search was ended; else for being too close
  std::int64_t looked_at = 0;      // how many ranges of places and sides were looked at
};

// Sides that grow: each is as wide and as high as the one before it or more. at(1) … at(count).
struct Chain {
  std::int64_t count = 0;
  std::function<Sides(std::int64_t)> at;
};

// The largest area of which both sides are whole steps; of equal ones the nearest to the outline's
// proportions. border ≥ 0, step > 0, nm.
FoundPlace largest_rectangle(const EdgeTree& edges, std::int64_t border, std::int64_t step);

// The last of a chain that lies somewhere.
FoundPlace last_rectangle(const EdgeTree& edges, std::int64_t border, const Chain& chain);

}  // namespace insetbook
