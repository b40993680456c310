// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where a colour value lies for the eye: CIE L*a*b* under daylight D65, and the same as lightness, chroma and
// hue. sRGB as in IEC 61966-2-1: primaries and the white x = 0.3127, y = 0.3290 of that standard, no
// adaptation to another white.
#pragma once

#include <cstdint>

namespace insetbook {

struct Lab {
  double l = 0;  // 0 black to 100 white
  double a = 0;  // green to red
  double b = 0;  // blue to yellow
};

struct Lch {
  double lightness = 0;
  double chroma = 0;
  double hue = 0;  // degrees, 0 ≤ hue < 360; 0 where chroma is 0
};

Lab to_lab(std::uint32_t srgb);
Lch to_lch(const Lab& lab);

}  // namespace insetbook
