// SPDX-License-Identifier: GPL-3.0-or-later
//
// The last stage of reading a question: items → tree. The rules, which the table tests hold one by one:
//   - what is said together is one piece; a second shape, role, size, die, side or count begins another. With
//   no connector
//     between, what stood behind the first of two shapes goes to the second ("sage circle navy square");
//   - `and`, `with`, `plus`, a comma, and words such as `on` and `behind` begin another piece only before a
//   shape, role, die,
//     count or shaped size; a bare technique, colour or material behind them belongs to the piece before. "a
//     sage and navy circle" is one piece: like words joined by `and` before the shape;
//   - techniques, colours, materials and supplies that no piece is named with are each any piece's or the
//   sample's;
//   - what is said of the sample (fold, occasion, date …) ends a piece when a connector or a field follows;
//   - `-word` excludes the phrase up to its shape or role; `not`, `no`, `without` the whole phrase and each
//   one that `and` or
//     `or` joins to it, and a comma list that ends in `or`; a bare technique, colour or size behind `not` or
//     `without` is excluded from the piece before;
//   - `or` binds two neighbours of one kind, else the two whole phrases beside it;
//   - a word that is a role and a material ("ribbon") is read both ways, unless a shape or a role stands
//   beside it;
//   - "exactly two circles" is two and no three;
//   - a size without a shape before "card", or at once behind it, is the closed size; "square cards" is the
//   form.
#pragma once

#include <string_view>

#include "language/items.h"

namespace insetbook {

// Adds to `itemised` what falls away here. A Problem: brackets nested deeper than 50.
Result<Node> bind(std::string_view text, Itemised& itemised);

}  // namespace insetbook
