// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/said_point.h"

#include <fmt/format.h>

#include <cstdlib>

namespace insetbook {
namespace {

std::string millimetres(std::int64_t nm) {
  constexpr std::int64_t mm = 1'000'000;
  std::string text = fmt::format("{}{}", nm < 0 ? "-" : "", std::llabs(nm) / mm);
  std::string rest = fmt::format("{:06}", std::llabs(nm) % mm);
  rest.erase(rest.find_last_not_of('0') + 1);
  return rest.empty() ? text : text + "." + rest;
}

}  // namespace

std::string said(Point point) {
  return millimetres(point.x) + ", " + millimetres(point.y) + " mm";
}

}  // namespace insetbook
