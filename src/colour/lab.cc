// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/lab.h"

#include <cmath>
#include <numbers>

namespace insetbook {
namespace {

double linear(std::uint32_t channel) {
  const double v = static_cast<double>(channel & 0xFF) / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

// CIE 15: the cube root, and the straight line that takes its place near black.
double lab_function(double t) {
  constexpr double epsilon = 216.0 / 24389.0;
  constexpr double kappa = 24389.0 / 27.0;
  return t > epsilon ? std::cbrt(t) : (kappa * t + 16.0) / 116.0;
}

}  // namespace

// The matrix as the exact fractions that follow from the primaries and the white (CSS Color Module Level 4,
// sample code).
Lab to_lab(std::uint32_t srgb) {
  const double r = linear(srgb >> 16);
  const double g = linear(srgb >> 8);
  const double b = linear(srgb);
  const double x = r * 506752 / 1228815 + g * 87881 / 245763 + b * 12673 / 70218;
  const double y = r * 87098 / 409605 + g * 175762 / 245763 + b * 12673 / 175545;
  const double z = r * 7918 / 409605 + g * 87881 / 737289 + b * 1001167 / 1053270;
  constexpr double white_x = 0.3127 / 0.3290;
  constexpr double white_z = (1.0 - 0.3127 - 0.3290) / 0.3290;
  const double fx = lab_function(x / white_x);
  const double fy = lab_function(y);
  const double fz = lab_function(z / white_z);
  return {116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)};
}

Lch to_lch(const Lab& lab) {
  const double chroma = std::hypot(lab.a, lab.b);
  if (chroma == 0) return {lab.l, 0, 0};
  double hue = std::atan2(lab.b, lab.a) * 180.0 / std::numbers::pi;
  if (hue < 0) hue += 360.0;
  return {lab.l, chroma, hue < 360.0 ? hue : 0.0};
}

}  // namespace insetbook
