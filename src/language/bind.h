// SPDX-License-Identifier: GPL-3.0-or-later
//
// The last stage of reading a question: items → tree. The rules, which the table tests hold one by one:
//
// Pieces
//   - what is said together is one piece; a second shape, role, size, die, side or count begins another. With
//     no connector between, what stood behind the first of two shapes goes to the second ("sage circle navy
//     square"). Two bounds of a size, an upper and a lower one, are of one piece ("over 2 in and under 3
//     in");
//   - `and`, `with`, `plus` and a comma begin another piece only before a shape, role, die, count or shaped
//     size; a bare technique, colour or material behind them belongs to the piece before. "a sage and navy
//     circle" is one piece: like words joined by `and` before the shape;
//   - techniques, colours, materials and supplies that no piece is named with are each any piece's or the
//     sample's;
//   - one plain colour of a piece with a shape is its paper's ("navy circle"), unless a role or a technique
//     that brings a colour of its own was said; beside an ink every plain colour is;
//   - a word that is a role and a material ("ribbon") is read both ways, unless a shape or a role stands
//     beside it;
//   - `or` between properties behind the head of a piece is one within it: "white circle stamped in navy or
//     speckled" is a white circle that is one or the other;
//   - a bracket behind a piece that holds no more than techniques, colours, materials and supplies says what
//     it is: "white circle (stamped in navy or speckled)" is one or the other;
//   - "two circles, one navy and one white" are two pieces, with one of the properties each (settle_each.h);
//   - "exactly two circles" is two and no three; what is counted is a role, no material ("two ribbons");
//   - "more than five pieces" counts whatever the card has: a piece of which nothing but a count is said;
//   - numbers behind that of a die are dies of its set, where `and` or `or` stands before the last one
//     ("moonrise circles 3, 4 and 5"), each of a piece, unless they count what follows;
// How pieces go together
//   - `on`, `in`, `behind`, `around`, `through` and words like them (items.cc) before a piece say how the
//     piece before goes with it; so does a bracket behind them. What follows is said of the later piece, and
//     so is another such word ("a circle on a square on a rectangle"), unless `and` or a comma stands before
//     it. Where nothing stands before, it is said of any piece ("on a square");
//   - "behind it" is said of the piece before: "circle with a square behind it" is a square behind a circle;
//   - techniques and inks alone, `on` a piece, are that piece's ("navy ink on a circle"); a supply alone may
//     be, or be a piece that lies there ("snail on an arch");
//   - where a piece sits ("high of centre") is said of the piece that goes with another, not of that other;
//   - `not` before such a word excludes that way only; excluded pieces take theirs along ("without a circle
//     on a square"). "A circle without a square behind it" lies on no square;
//   - `or` behind the other piece offers another such, where a piece or such a word follows;
// The sample
//   - what is said of the sample (fold, occasion, date …) ends a piece when a connector or a field follows;
//   - what is said of the card behind `on` and an article is no piece's ("circle on a white card"): a colour
//   is
//     that of its base;
//   - a size without a shape before "card", or at once behind it, is the closed size; "square cards" is the
//     form, and a side at once behind it ("square card 5 in") both sides;
// Negation and choice
//   - `-word` excludes the phrase up to its shape or role; `not`, `no`, `without` the whole phrase and each
//     one that `and` or `or` joins to it, and a comma list that ends in `or`; a bare property behind `with`
//     belongs to the excluded piece ("without a liner with marbling"); a bare technique, colour or size
//     behind `not` or `without` is excluded from the piece before;
//   - `or` binds two neighbours of one kind, else the two whole phrases beside it. Phrases that say the same
//     kinds of things in the same order ("birthday easel or christmas tent") are whole ones
//     (parallel_phrases.h).
#pragma once

#include <string_view>

#include "language/items.h"

namespace insetbook {

// Adds to `itemised` what falls away here. A Problem: brackets, or pieces that go with one another, nested
// deeper than 50.
Result<Node> bind(std::string_view text, Itemised& itemised);

}  // namespace insetbook
