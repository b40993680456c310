// SPDX-License-Identifier: GPL-3.0-or-later
//
// How kept answers (book/kept_answers.h) are written: the opening they are of, and rows of whole numbers.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "fit/fit.h"

namespace insetbook {

// All of an opening that an answer may rest on.
std::string kept_opening(const Opening& opening);

// What stands before the separator, which the text loses with it; all of it where there is none.
std::string_view take(std::string_view& text, char separator);

// As many numbers as `figures` has, one space between two; false where the text is anything else.
bool read_figures(std::string_view text, std::span<std::int64_t> figures);

}  // namespace insetbook
