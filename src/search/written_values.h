// SPDX-License-Identifier: GPL-3.0-or-later
//
// What was ever written in a column that has an index, each value once, however many records share it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/sqlite.h"

namespace insetbook {

// `next`: of the first value behind ?1 and none that is empty, its only column; one value or none of text.
// `wanted(value)`: whether it is one of the answer.
template <class Wanted>
std::vector<std::string> written_values(Statement& next, const Wanted& wanted) {
  std::vector<std::string> found;
  for (std::string at;;) {
    next.bind(1, std::string_view(at));
    const bool any = next.step() && !next.text(0).empty();
    if (any) at = next.text(0);
    next.reset();
    if (!any) return found;
    if (wanted(at)) found.push_back(at);
  }
}

}  // namespace insetbook
