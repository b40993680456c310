// SPDX-License-Identifier: GPL-3.0-or-later
//
// A piece may name a colour or a supply that the book does not have yet: the word is then kept as text. When
// the record comes, in whatever order the tables are given, the words that name it are made to mean it,
// within the change that brought it. Book::change calls `link_mentions` at its end; nobody else does.
#pragma once

#include "book/book.h"

namespace insetbook {

// A colour or a supply was made or renamed.
void colour_is_new(Change& change);
void supply_is_new(Change& change);
// What a book in the exchange format leaves as text stays so: only mentions that are there by now are looked
// at.
void keep_later_mentions(Change& change);

// Costs nothing where nothing is new.
void link_mentions(Change& change);

}  // namespace insetbook
