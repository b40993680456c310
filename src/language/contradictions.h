// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a question asks that nothing can be: two sizes of one piece that leave none between them, two shapes,
// roles or sides of one piece, two periods, two forms or sizes of the card, and what is asked for and
// excluded at once. It is said; the tree stays as it was asked. Choices ("or") are not looked into.
#pragma once

#include <string>
#include <vector>

#include "language/question.h"

namespace insetbook {

// Adds a note for each pair, as "nothing can be both under 1 in and over 3 in".
void add_contradictions(const Node& tree, std::vector<std::string>& notes);

}  // namespace insetbook
