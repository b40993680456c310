// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the words between two things said come to: how pieces go together, how a colour is used, where what is
// said of the card begins, a side ("inside"), or nothing.
#pragma once

#include <string_view>
#include <vector>

#include "language/items.h"

namespace insetbook {

// "heart round arch": between a shape or role and another piece "round" is no shape.
void settle_round(std::vector<Item>& items);
// "panel on a 5 x 7 card": behind an article or a preposition the size before "card" begins what is said of
// the card.
void settle_card_sizes(std::string_view text, std::vector<Item>& items);
// "stamped in navy", "circle on a square", "circle on a white card", "inside" without anything to be inside
// of.
void settle_prepositions(std::string_view text, Itemised& out);

}  // namespace insetbook
