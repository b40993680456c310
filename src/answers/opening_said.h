// SPDX-License-Identifier: GPL-3.0-or-later
//
// From the words for an opening to the opening: "second largest tidepool rectangle, stitched". The one place
// where the reading of the words (language/read_opening.h) meets the book (book/openings.h).
#pragma once

#include <string_view>

#include "book/openings.h"

namespace insetbook {

Result<OpeningRecord> opening_said(const Book& book, std::string_view text);
OpeningWanted opening_wanted(std::string_view text);

}  // namespace insetbook
