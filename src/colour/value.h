// SPDX-License-Identifier: GPL-3.0-or-later
//
// A colour value: sRGB with eight bits a channel, kept everywhere as one number 0xrrggbb. Start here; lab.h
// says where a value lies for the eye, difference.h how far two are apart, nearest.h which are near, words.h
// what people call it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "text/problem.h"

namespace insetbook {

// "#3a7d44", "#3A7D44", "#37c" (each digit twice). Space at the ends is allowed, nothing else. Without the #
// it is refused: "facade" and "decade" are words.
Result<std::uint32_t> read_colour_value(std::string_view text);

// "#3a7d44"
std::string write_colour_value(std::uint32_t srgb);

}  // namespace insetbook
