// SPDX-License-Identifier: GPL-3.0-or-later
//
// The lines of a record as text: their bullets and numbers, their words, and bytes that are no text.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/problem.h"

namespace insetbook {

// How many bytes of bullet or number stand before what is said.
struct LineLead {
  std::size_t bytes = 0;
  bool numbered = false;
};
LineLead lead_of(std::string_view line);

// Of folded text: the word at a place, counted from 0, or nothing.
std::string_view nth_word(std::string_view folded, std::size_t n);

// What stands behind so many words of a line, as typed.
std::string_view behind_words(std::string_view line, std::size_t count);
// Without the quotes around it.
std::string without_quotes(std::string_view value);
// The parts of a list by semicolons, or by commas with a space behind them.
std::vector<std::string> parts_of_list(std::string_view value);

// The first byte that is no UTF-8, with its line.
std::optional<Problem> bad_bytes(std::string_view text);

}  // namespace insetbook
