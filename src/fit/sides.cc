// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/sides.h"

#include <algorithm>
#include <utility>

#include "shape/wide.h"

namespace insetbook {

bool nearer_proportions(Sides a, Sides b, Sides of) {
  const auto departure = [&](Sides sides) {
    const Int128 wide = static_cast<Int128>(sides.width) * of.height;
    const Int128 high = static_cast<Int128>(sides.height) * of.width;
    return std::pair{std::max(wide, high), std::min(wide, high)};
  };
  const auto [a_more, a_less] = departure(a);
  const auto [b_more, b_less] = departure(b);
  const Int128 left = a_more * b_less, right = b_more * a_less;
  return left != right ? left < right : a.width < b.width;
}

}  // namespace insetbook
