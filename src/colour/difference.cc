// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/difference.h"

#include <cmath>
#include <numbers>

namespace insetbook {
namespace {

constexpr double degrees = std::numbers::pi / 180.0;

double seventh_power(double x) {
  const double cube = x * x * x;
  return cube * cube * x;
}

// sqrt(c^7 / (c^7 + 25^7))
double chroma_weight(double c) {
  const double power = seventh_power(c);
  return std::sqrt(power / (power + seventh_power(25.0)));
}

// Hue in degrees, 0 ≤ h < 360; 0 without chroma.
double hue_of(double a, double b) {
  if (a == 0 && b == 0) return 0;
  const double hue = std::atan2(b, a) / degrees;
  return hue < 0 ? hue + 360.0 : hue;
}

double hue_step(double h1, double h2, bool grey) {
  if (grey) return 0;
  const double step = h2 - h1;
  if (step > 180.0) return step - 360.0;
  if (step < -180.0) return step + 360.0;
  return step;
}

double mean_hue(double h1, double h2, bool grey) {
  const double sum = h1 + h2;
  if (grey) return sum;
  if (std::abs(h1 - h2) <= 180.0) return sum / 2.0;
  return sum < 360.0 ? (sum + 360.0) / 2.0 : (sum - 360.0) / 2.0;
}

}  // namespace

// The names are those of the paper; a bar is a mean, a prime the adjusted a* axis.
double colour_difference(const Lab& one, const Lab& other) {
  const double mean_c_ab = (std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2.0;
  const double g = 0.5 * (1.0 - chroma_weight(mean_c_ab));
  const double a1 = (1.0 + g) * one.a;
  const double a2 = (1.0 + g) * other.a;
  const double c1 = std::hypot(a1, one.b);
  const double c2 = std::hypot(a2, other.b);
  const double h1 = hue_of(a1, one.b);
  const double h2 = hue_of(a2, other.b);
  const bool grey = c1 * c2 == 0;

  const double delta_l = other.l - one.l;
  const double delta_c = c2 - c1;
  const double delta_h = 2.0 * std::sqrt(c1 * c2) * std::sin(hue_step(h1, h2, grey) / 2.0 * degrees);

  const double mean_l = (one.l + other.l) / 2.0;
  const double mean_c = (c1 + c2) / 2.0;
  const double mean_h = mean_hue(h1, h2, grey);
  const double t = 1.0 - 0.17 * std::cos((mean_h - 30.0) * degrees) +
                   0.24 * std::cos(2.0 * mean_h * degrees) + 0.32 * std::cos((3.0 * mean_h + 6.0) * degrees) -
                   0.20 * std::cos((4.0 * mean_h - 63.0) * degrees);
  const double from_blue = (mean_h - 275.0) / 25.0;
  const double delta_theta = 30.0 * std::exp(-from_blue * from_blue);
  const double from_grey = (mean_l - 50.0) * (mean_l - 50.0);
  const double s_l = 1.0 + 0.015 * from_grey / std::sqrt(20.0 + from_grey);
  const double s_c = 1.0 + 0.045 * mean_c;
  const double s_h = 1.0 + 0.015 * mean_c * t;
  const double r_t = -std::sin(2.0 * delta_theta * degrees) * 2.0 * chroma_weight(mean_c);

  const double l = delta_l / s_l;
  const double c = delta_c / s_c;
  const double h = delta_h / s_h;
  return std::sqrt(l * l + c * c + h * h + r_t * c * h);
}

double colour_difference(std::uint32_t one, std::uint32_t other) {
  return colour_difference(to_lab(one), to_lab(other));
}

}  // namespace insetbook
