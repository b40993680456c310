// SPDX-License-Identifier: GPL-3.0-or-later
//
// Which basic colour words people use for a value. The rule is two tables in words.cc, of regions in
// lightness, chroma and hue (lab.h). A value has every word in one of whose regions it lies; regions of
// neighbouring words overlap, because people do not agree there: a rust is both brown and red. A value in no
// region of the first table has the one word of the second table, which covers everything. So every value has
// at least one word, most have one, none more than three.
//
// The regions were drawn by us. How well they agree with what people say and with a published dictionary of
// colour names is measured in tests/outside/colour_test.cc. Metals (gold, silver) have no value that tells
// them from yellow and grey, and are no basic words here.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "colour/lab.h"

namespace insetbook {

enum class BasicColour : std::uint8_t {
  red,
  orange,
  yellow,
  green,
  teal,
  blue,
  purple,
  pink,
  brown,
  beige,
  cream,
  grey,
  black,
  white
};
inline constexpr std::size_t basic_colour_count = 14;

// "teal". These words are also the ids of the terms in schema/vocabularies/colour_words.json.
std::string_view basic_colour_word(BasicColour colour);
// The same word back; any other word, "gray" too, is none: the vocabulary knows those.
std::optional<BasicColour> basic_colour_named(std::string_view word);

// In the order of the enumeration.
std::vector<BasicColour> basic_colours_of(std::uint32_t srgb);
std::vector<BasicColour> basic_colours_of(const Lch& colour);
bool has_basic_colour(std::uint32_t srgb, BasicColour colour);

}  // namespace insetbook
