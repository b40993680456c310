// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a colour is of: paper or ink, as the words beside it say. A colour before "paper" or "ink" is read
// where these are (items.cc); behind them, after a technique and beside "coloured" here.
#pragma once

#include <string_view>
#include <vector>

#include "language/items.h"

namespace insetbook {

bool is_colour(const Item& item);
bool is_technique(const Item& item);
ColourUse use_of(const Item& colour);
// Whether a colour said at once behind it is that of its ink: "stamped navy", "ink blended navy and soot".
bool brings_ink(const TechniqueIs& technique);
void use_colour(Item& colour, ColourUse use);

// "sage coloured circle", "coloured card": says no more than that there is a colour.
void settle_coloured(std::string_view text, Itemised& out);
// "ink navy", "paper in navy": the use before the colour.
void use_before_colour(std::string_view text, Itemised& out);
// "stamped in navy and sage": both are of the use of the first.
void use_colours_joined(std::vector<Item>& items, std::size_t colour);
// The last of `settled` is of a shape with a colour of its own, and nothing that could be printed on it.
bool is_coloured_shape(const std::vector<Item>& settled);
// "stamped in navy", "image on white": whether `lead` between them said how the colour is used.
bool use_colour_after(const Item& before, const Item& lead, Item& colour);

}  // namespace insetbook
