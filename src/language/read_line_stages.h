// SPDX-License-Identifier: GPL-3.0-or-later
//
// The stages of a question, as far as a record uses them: pieces → offers → cover → items.
#pragma once

#include <string_view>

#include "language/items.h"
#include "language/read_question.h"

namespace insetbook {

// A Problem: a size that cannot be, a quote that does not end.
Result<Itemised> read_stages(std::string_view text, const ReadingContext& context);

}  // namespace insetbook
