// SPDX-License-Identifier: GPL-3.0-or-later
//
// "birthday easel or christmas tent": where the phrases beside `or` say the same kinds of things in the same
// order, two or more kinds of them or how pieces go together, each phrase is one side of the choice. A phrase
// reaches back to the last comma or bracket, and on to the next one or to the end; every phrase of a chain of
// `or` has to be alike, and a comma list of such phrases before it belongs to it. They are left alone where a
// field stands in one of them, where one behind the first begins with what is excluded, and where each is a
// single piece ("navy circle or sage square"), which is a choice as it is. Behind a colour a fold and a piece
// count as one kind of thing ("white easel or navy square").
#pragma once

#include <vector>

#include "language/items.h"

namespace insetbook {

// Puts each such phrase into a bracket of its own.
void bracket_parallel_phrases(std::vector<Item>& items);

}  // namespace insetbook
