// SPDX-License-Identifier: GPL-3.0-or-later
//
// The region that closed ways of straight edges go round, by a fill rule, as rings that cross nothing. Where
// edges cross, both are bent to the crossing point rounded to the nearest nanometre, which moves no point of
// them by more than 0.7072 nm; that may make them cross another edge close by, so it is done in rounds until
// nothing crosses. What lies on both sides alike is no edge of the region and falls away. No ring comes to a
// corner of its own twice: what touches itself is two rings.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "shape/curves.h"
#include "shape/outline.h"

namespace insetbook {

struct Region {
  std::vector<Ring> rings;
  std::vector<Point> crossings;  // where the ways crossed or lay on each other, in the order drawn
  int rounds = 0;                // in which crossing points were rounded
};

// Ways as rings, whatever they cross or touch; points within ±2^30. Nothing: they cross more than a hundred
// thousand times, or crossings bred crossings for a hundred rounds, which no input is known to do.
std::optional<Region> region_of(const std::vector<Ring>& ways, FillRule rule);

}  // namespace insetbook
