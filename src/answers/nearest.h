// SPDX-License-Identifier: GPL-3.0-or-later
//
// "Which colours are near this one?" The colours of the book by their difference for the eye (CIEDE2000,
// colour/difference.h), those that can still be had before the withdrawn ones, each nearest first. Whether a
// colour can be had is what its supplies say: by their status, else by their dates.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct NearestAsked {
  std::string colour;  // a colour of the book by name, or #rrggbb
  std::size_t limit = 10;
};

struct NearestColour {
  std::string name;
  std::uint32_t srgb = 0;
  std::string status;  // current, withdrawn, or empty: no supply of that colour is in the book
  double delta_e = 0;
};

struct NearestAnswer {
  std::string name;  // of the colour asked; empty: a value was asked
  std::uint32_t srgb = 0;
  std::string status;
  std::vector<NearestColour> colours;
  std::vector<std::string> without_value;  // colours that cannot be compared
  std::vector<std::string> stand_ins;  // what its supplies say: "ink, ink pad, gorse hedge: marmalade peel …"
  std::string read_as;                 // where the name was misspelt: what was typed
};

Result<NearestAnswer> nearest_to(const Book& book, const NearestAsked& asked);

// What the supplies of a colour say of it, together: "current" where one of them can be had.
std::string colour_status(const Book& book, std::int64_t colour_id);

}  // namespace insetbook
