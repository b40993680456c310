// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/border.h"

#include <algorithm>
#include <cmath>

#include "fit/last_that_holds.h"

namespace insetbook {
namespace {

// Guesses are in ticks and only save checks.
double guess_in_rounded(const Form& opening, const Core& core) {
  const auto across = static_cast<double>(opening.half_width - core.half_width);
  const auto along = static_cast<double>(opening.half_height - core.half_height);
  const double box = std::min(across, along);
  const auto radius = static_cast<double>(opening.radius);
  const double x = radius - across, y = radius - along;
  return x > 0 && y > 0 ? std::min(box, radius - std::hypot(x, y)) : box;
}

// Where the concave function over ellipse.cc's core_in_ellipse is greatest: its slope is 0 where x² A²/(A² -
// μ)² + y² B²/(B² - μ)² = 1. The left side is convex and grows, so Newton's method comes down to it from a
// place where it is more than 1.
double guess_in_ellipse(const Form& opening, const Core& core) {
  const auto a = static_cast<double>(opening.half_width), b = static_cast<double>(opening.half_height);
  const auto x = static_cast<double>(core.half_width), y = static_cast<double>(core.half_height);
  double mu = std::min(a * (a - x), b * (b - y));
  for (int round = 0; round < 30; ++round) {
    const double over_a = 1 / (a * a - mu), over_b = 1 / (b * b - mu);
    const double first = x * a * over_a, second = y * b * over_b;
    const double change =
        (first * first + second * second - 1) / (2 * (first * first * over_a + second * second * over_b));
    if (!(change > mu * 1e-15)) break;
    mu -= change;
  }
  const double distance2 = mu * (1 - x * x / (a * a - mu) - y * y / (b * b - mu));
  return distance2 > 0 ? std::sqrt(distance2) : 0;
}

std::int64_t guess(const Form& opening, const Form& panel, std::int64_t most) {
  if (panel.kind != FormKind::rounded || opening.kind == FormKind::polygon) return most;
  const Core core{panel.half_width - panel.radius, panel.half_height - panel.radius};
  const double distance =
      opening.kind == FormKind::ellipse ? guess_in_ellipse(opening, core) : guess_in_rounded(opening, core);
  return static_cast<std::int64_t>((distance - static_cast<double>(panel.radius)) / ticks_in_nm);
}

}  // namespace

std::optional<Length> greatest_border(const Ground& ground, const Form& panel) {
  if (!holds(lies_in(ground, panel, 0))) return std::nullopt;
  const Form& opening = ground.form();
  const std::int64_t most =
      std::min(opening.half_width - panel.half_width, opening.half_height - panel.half_height) / ticks_in_nm;
  const auto fits = [&](std::int64_t nm) { return holds(lies_in(ground, panel, nm * ticks_in_nm)); };
  return Length::nm(last_that_holds(0, most, guess(opening, panel, most), fits));
}

}  // namespace insetbook
