// SPDX-License-Identifier: GPL-3.0-or-later
//
// How a piece is stuck, as it was written ("foam, left 2 in"), held against an adhesive that is asked for.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "language/question.h"

namespace insetbook {

// Whether some words of it, one behind the other, are a label of the adhesive.
bool glue_says(std::string_view written, const GlueIs& glue);
// What of all that was ever written of glue says so.
std::vector<std::string> written_glues(const Book& book, const GlueIs& glue);

}  // namespace insetbook
