// SPDX-License-Identifier: GPL-3.0-or-later
//
// The exact check in any outline: whether a panel whose middle lies at a given place keeps a border to every
// edge. For a rectangle, rounded rectangle or circle its core (form.h) must keep the border and the radius; a
// squared distance is compared with a squared distance, in whole ticks, after a look in floating point that
// only ever settles what is far from open. What the rings leave open because they stand `error` from the
// truth is undecided.
#pragma once

#include <cstdint>

#include "fit/edge_tree.h"
#include "fit/form.h"

namespace insetbook {

// In ticks, in the outline's coordinates: the middle of a panel's box.
struct Middle {
  std::int64_t x = 0, y = 0;
  bool operator==(const Middle&) const = default;
};

// How many edges were settled in which way, for tests.
struct EdgesSettled {
  std::int64_t by_box = 0, by_filter = 0, exactly = 0, with_wide = 0;
};

// panel: of the kind `rounded`. border ≥ 0, in ticks. Touching is `inside`.
Where lies_at(const EdgeTree& edges, const Form& panel, Middle middle, std::int64_t border,
              EdgesSettled* settled = nullptr);

// Whether lies_at is `inside`, sooner.
bool surely_lies_at(const EdgeTree& edges, const Form& panel, Middle middle, std::int64_t border);

// Whether every edge is at least `distance` ≥ 0 (ticks) from the core whose middle lies there; with distance
// 0, whether none runs through its inside. `soon`: what is not surely so is undecided.
Where keeps(const EdgeTree& edges, const Core& core, Middle middle, std::int64_t distance,
            EdgesSettled* settled = nullptr, bool soon = false);

// Whether a core keeps a distance from a quarter of a circle, exactly.
bool keeps_to_quarter(const QuarterArc& arc, const Core& core, Middle middle, std::int64_t distance);

// Whether an odd number of rings go round a point, of which no edge runs through it.
bool goes_round(const EdgeTree& edges, Middle point);

// The place in the middle of the outline's box.
Middle centre_of(const EdgeTree& edges);

}  // namespace insetbook
