// SPDX-License-Identifier: GPL-3.0-or-later
//
// "Light blue", "dark green": by lightness, of each basic colour word on its own, since a dark yellow is
// lighter than a light brown. The bounds lie halfway between what the survey of ordinary speech that
// tests/outside/colour_test.cc reads calls by the bare word and by "light" or "pale", and "dark" or "deep",
// before it, the nearer of the two. Black and white have neither.
#pragma once

#include <cstdint>

#include "colour/words.h"

namespace insetbook {

bool is_light(std::uint32_t srgb, BasicColour word);
bool is_dark(std::uint32_t srgb, BasicColour word);

}  // namespace insetbook
