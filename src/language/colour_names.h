// SPDX-License-Identifier: GPL-3.0-or-later
//
// Names of colours in ordinary speech beyond the basic colour words: what a record may say of a paper before
// the book knows that colour ("a sage circle"). They say no value, and a question does not read them: it
// looks for the colours of the book. Each is a name of the published survey that
// tests/outside/colour_names_test.cc reads; words that a card is as likely to show ("sky", "rose", "moss",
// "sand") are left out.
#pragma once

#include <algorithm>
#include <string_view>

namespace insetbook {

inline constexpr std::string_view ordinary_colour_names[] = {
    "amber",      "amethyst", "apricot",  "aquamarine", "aubergine", "auburn",     "azure",       "blush",
    "bordeaux",   "bronze",   "burgundy", "carmine",    "celadon",   "cerise",     "cerulean",    "charcoal",
    "chartreuse", "claret",   "cobalt",   "copper",     "coral",     "crimson",    "denim",       "ecru",
    "eggplant",   "emerald",  "fuchsia",  "gold",       "goldenrod", "indigo",     "jade",        "khaki",
    "lavender",   "magenta",  "mahogany", "maroon",     "mauve",     "merlot",     "mint",        "mocha",
    "mustard",    "navy",     "ochre",    "olive",      "peach",     "periwinkle", "plum",        "puce",
    "ruby",       "russet",   "rust",     "saffron",    "sage",      "salmon",     "sapphire",    "scarlet",
    "sepia",      "sienna",   "silver",   "slate",      "taupe",     "terracotta", "ultramarine", "umber",
    "vermillion", "viridian"};
static_assert(std::ranges::is_sorted(ordinary_colour_names));

constexpr bool is_ordinary_colour(std::string_view folded) {
  return std::ranges::binary_search(ordinary_colour_names, folded);
}

}  // namespace insetbook
