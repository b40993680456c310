// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/shades.h"

#include <array>

namespace insetbook {
namespace {

struct Bounds {
  double dark, light;  // CIE L*: dark up to the one, light from the other
};

// In the order of BasicColour.
constexpr std::array<Bounds, basic_colour_count> bounds = {{
    {40, 51},   // red
    {58, 70},   // orange
    {86, 96},   // yellow
    {47, 76},   // green
    {43, 65},   // teal
    {24, 59},   // blue
    {22, 47},   // purple
    {60, 79},   // pink
    {20, 42},   // brown
    {75, 92},   // beige
    {97, 99},   // cream
    {42, 74},   // grey
    {-1, 101},  // black
    {-1, 101},  // white
}};

double lightness(std::uint32_t srgb) {
  return to_lab(srgb).l;
}

}  // namespace

bool is_light(std::uint32_t srgb, BasicColour word) {
  return lightness(srgb) >= bounds[static_cast<std::size_t>(word)].light;
}

bool is_dark(std::uint32_t srgb, BasicColour word) {
  return lightness(srgb) <= bounds[static_cast<std::size_t>(word)].dark;
}

}  // namespace insetbook
