// SPDX-License-Identifier: GPL-3.0-or-later
//
// A line of a record as a text in which parts are taken out, and parts of it as they are kept.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "language/question.h"

namespace insetbook {

// The byte at which a character, counted from 0, begins.
std::size_t byte_at(std::string_view text, std::size_t character);
// Spaces in place of a span; `first` in its first place.
void blank(std::string& text, Span span, char first = ' ');
// Trimmed, and with one space for each run of them.
std::string single_spaced(std::string_view text);

}  // namespace insetbook
