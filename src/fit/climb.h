// SPDX-License-Identifier: GPL-3.0-or-later
//
// From a place to a better one near it, as long as there is one: for a search that is sure to come to the
// best place but slow to do so where many are almost as good.
#pragma once

namespace insetbook {

struct Spot {
  double x = 0, y = 0;  // nm
};

// Goes uphill by steps that are halved where no step leads up, from `step` down to `least`.
template <class Height>
Spot climb(Spot from, double step, double least, const Height& height) {
  double best = height(from);
  while (step >= least) {
    Spot next = from;
    for (const Spot way : {Spot{1, 0}, Spot{-1, 0}, Spot{0, 1}, Spot{0, -1}, Spot{0.7, 0.7}, Spot{0.7, -0.7},
                           Spot{-0.7, 0.7}, Spot{-0.7, -0.7}}) {
      const Spot there{from.x + way.x * step, from.y + way.y * step};
      const double here = height(there);
      if (here <= best) continue;
      best = here;
      next = there;
    }
    if (next.x == from.x && next.y == from.y) step /= 2;
    from = next;
  }
  return from;
}

}  // namespace insetbook
