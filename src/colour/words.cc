// SPDX-License-Identifier: GPL-3.0-or-later
#include "colour/words.h"

#include <algorithm>
#include <bitset>

namespace insetbook {
namespace {

using enum BasicColour;

constexpr std::array<std::string_view, basic_colour_count> words = {
    "red",  "orange", "yellow", "green", "teal", "blue",  "purple",
    "pink", "brown",  "beige",  "cream", "grey", "black", "white"};

// Half-open: from ≤ value < to. Hues are degrees; one that runs over 360 goes on from 0.
struct Region {
  BasicColour word;
  short hue_from, hue_to;
  short chroma_from, chroma_to;
  short lightness_from, lightness_to;
};

// clang-format off
constexpr Region regions[] = {
    {red, 0, 44, 58, 200, 20, 64},
    {red, 345, 360, 24, 80, 8, 47},
    {red, 0, 42, 16, 58, 8, 58},
    {red, 40, 47, 58, 200, 28, 57},
    {red, 44, 50, 40, 58, 28, 48},
    {orange, 40, 80, 52, 200, 46, 101},
    {orange, 40, 78, 34, 52, 58, 86},
    {orange, 40, 58, 30, 52, 50, 62},
    {yellow, 74, 117, 42, 200, 60, 101},
    {yellow, 86, 112, 26, 42, 58, 94},
    {yellow, 82, 110, 50, 200, 52, 60},
    {green, 96, 110, 16, 200, 0, 58},
    {green, 108, 118, 16, 200, 0, 90},
    {green, 108, 118, 30, 200, 90, 101},
    {green, 118, 170, 16, 200, 0, 101},
    {green, 105, 118, 7, 16, 8, 88},
    {green, 118, 190, 7, 16, 8, 101},
    {green, 170, 186, 16, 40, 0, 66},
    {teal, 156, 232, 14, 200, 0, 95},
    {blue, 216, 303, 8, 60, 0, 101},
    {blue, 303, 307, 20, 60, 0, 15},
    {blue, 216, 311, 60, 200, 0, 101},
    {blue, 176, 216, 8, 200, 93, 101},
    {blue, 190, 216, 18, 200, 72, 93},
    {purple, 304, 345, 8, 60, 0, 25},
    {purple, 294, 345, 8, 60, 25, 101},
    {purple, 309, 345, 60, 200, 0, 30},
    {purple, 304, 345, 60, 100, 30, 101},
    {purple, 308, 345, 100, 200, 30, 101},
    {purple, 345, 360, 8, 80, 0, 42},
    {purple, 345, 358, 8, 22, 42, 62},
    {pink, 326, 345, 36, 200, 48, 101},
    {pink, 338, 360, 8, 36, 58, 101},
    {pink, 0, 50, 6, 36, 58, 101},
    {pink, 340, 360, 36, 200, 43, 101},
    {pink, 0, 12, 36, 200, 43, 101},
    {pink, 12, 28, 36, 200, 54, 101},
    {pink, 28, 41, 36, 70, 54, 101},
    {pink, 0, 20, 18, 36, 50, 58},
    {brown, 0, 35, 10, 45, 4, 36},
    {brown, 15, 40, 20, 40, 36, 58},
    {brown, 25, 85, 6, 10, 8, 34},
    {brown, 35, 105, 9, 46, 4, 60},
    {brown, 70, 100, 24, 42, 60, 72},
    {brown, 25, 60, 45, 90, 8, 34},
    {brown, 40, 104, 46, 90, 26, 48},
    {brown, 48, 100, 46, 66, 48, 58},
    {brown, 78, 95, 55, 70, 58, 64},
    {beige, 48, 106, 10, 42, 58, 93},
    {cream, 65, 115, 6, 46, 88, 101},
    {grey, 0, 360, 0, 6, 16, 93},
    {grey, 95, 335, 6, 16, 20, 84},
    {grey, 110, 156, 16, 23, 45, 72},
    {grey, 335, 455, 6, 13, 28, 80},
    {black, 0, 360, 0, 6, 0, 22},
    {black, 0, 360, 6, 20, 0, 10},
    {white, 0, 360, 0, 6, 90, 101},
    {white, 0, 360, 6, 14, 94, 101},
    {white, 60, 250, 6, 11, 92, 94},
};

// Read from the top, the first that holds is taken.
constexpr Region otherwise[] = {
    {black, 0, 360, 0, 14, 0, 15},
    {white, 0, 360, 0, 14, 92, 101},
    {grey, 0, 360, 0, 14, 15, 92},
    {red, 0, 40, 14, 200, 0, 58},
    {pink, 0, 40, 14, 200, 58, 101},
    {brown, 40, 75, 14, 200, 0, 58},
    {orange, 40, 75, 14, 200, 58, 101},
    {yellow, 75, 107, 14, 200, 0, 101},
    {green, 107, 165, 14, 200, 0, 101},
    {teal, 165, 205, 14, 200, 0, 101},
    {blue, 205, 300, 14, 200, 0, 101},
    {purple, 300, 345, 14, 200, 0, 101},
    {red, 345, 360, 14, 200, 0, 45},
    {pink, 345, 360, 14, 200, 45, 101},
};
// clang-format on

bool holds(const Region& region, const Lch& colour) {
  const auto between = [](double value, short from, short to) { return from <= value && value < to; };
  // Rounding may put black a hair below 0.
  const double lightness = std::max(colour.lightness, 0.0);
  return between(colour.chroma, region.chroma_from, region.chroma_to) &&
         between(lightness, region.lightness_from, region.lightness_to) &&
         (between(colour.hue, region.hue_from, region.hue_to) ||
          between(colour.hue + 360.0, region.hue_from, region.hue_to));
}

std::size_t number(BasicColour colour) {
  return static_cast<std::size_t>(colour);
}

std::bitset<basic_colour_count> words_of(const Lch& colour) {
  std::bitset<basic_colour_count> found;
  for (const Region& region : regions) {
    if (holds(region, colour)) found.set(number(region.word));
  }
  if (found.any()) return found;
  for (const Region& region : otherwise) {
    if (holds(region, colour)) return found.set(number(region.word));
  }
  return found;
}

}  // namespace

std::string_view basic_colour_word(BasicColour colour) {
  return words[number(colour)];
}

std::optional<BasicColour> basic_colour_named(std::string_view word) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == word) return static_cast<BasicColour>(i);
  }
  return std::nullopt;
}

std::vector<BasicColour> basic_colours_of(const Lch& colour) {
  const auto found = words_of(colour);
  std::vector<BasicColour> colours;
  for (std::size_t i = 0; i < basic_colour_count; ++i) {
    if (found[i]) colours.push_back(static_cast<BasicColour>(i));
  }
  return colours;
}

std::vector<BasicColour> basic_colours_of(std::uint32_t srgb) {
  return basic_colours_of(to_lch(to_lab(srgb)));
}

bool has_basic_colour(std::uint32_t srgb, BasicColour colour) {
  return words_of(to_lch(to_lab(srgb)))[number(colour)];
}

}  // namespace insetbook
