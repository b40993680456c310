// SPDX-License-Identifier: GPL-3.0-or-later
//
// "circle or square": `or` between two neighbours of one kind, and a comma list that ends in such an `or`,
// make one item that offers them all; a bracket around one item falls away, unless it is a single field of a
// colour, technique or other property.
#pragma once

#include <vector>

#include "language/items.h"

namespace insetbook {

void bind_neighbours(std::vector<Item>& items);

}  // namespace insetbook
