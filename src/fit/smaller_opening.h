// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether a panel still lies in an opening that is smaller than measured by its give or take u, where either
// is an outline. The opening is scaled to a box that is u less in width and height; that lies within the
// opening as measured where some point sees the whole of its edge, and is what the true opening may be. Holes
// and bays would be scaled too, and so leave more beside them than the opening as measured: where an opening
// has any that no such point sees, the panel must besides keep u / 2, what u takes off each side, from the
// edge as measured.
#pragma once

#include "fit/outline_family.h"

namespace insetbook {

class SmallerOpening {
 public:
  SmallerOpening(const Opening& opening, const OutlineGround& ground);

  // `fits` or `snug`, of a panel of the family that lies in the opening as measured.
  Verdict verdict(const OutlineFamily& family, Sides sides) const;

 private:
  const OutlineGround& ground_;
  Length give_or_take_;
  std::optional<OutlineGround> smaller_;  // empty: nothing is left of it
  bool sees_all_ = false;
};

// Whether the outline is one ring and some point, by 10 µm, sees the whole of it. What is closer than that
// counts as not.
bool some_point_sees_all(const EdgeTree& edges);

}  // namespace insetbook
