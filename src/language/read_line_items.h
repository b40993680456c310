// SPDX-License-Identifier: GPL-3.0-or-later
//
// The last stage of reading a line of a record: items (items.h) → the fields of the line. A record says what
// is: choices, exclusions and sizes that are no one size are told as not read.
#pragma once

#include <string_view>

#include "language/items.h"
#include "language/read_line.h"

namespace insetbook {

// `text` is what the items were read from; their places point into it.
void take_items(std::string_view text, const ReadingContext& context, Itemised& items, LineSaid& line);

}  // namespace insetbook
