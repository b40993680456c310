// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a person wrote, as a complaint says it back. Every complaint quotes with `in_quotes`, so that a pasted
// page does not come back whole: at most `most_quoted` characters of it, and on one line.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace insetbook {

inline constexpr std::size_t most_quoted = 60;

// "the text", trimmed, shortened when long, line ends as spaces and other control characters as U+FFFD.
std::string in_quotes(std::string_view text);
// The same without the quotation marks.
std::string cut_short(std::string_view text);

// The first control character: what no keyboard types into a name (U+0000 to U+001F, U+007F to U+009F). Tabs
// and line ends are none where `lines` allows them.
enum class Lines { one, several };
struct ControlCharacter {
  char32_t code;
  std::size_t at;  // in characters from 0
};
std::optional<ControlCharacter> control_character(std::string_view text, Lines lines);
// "the character U+0007, which nothing shows": what a complaint calls it.
std::string name_of(const ControlCharacter& found);

}  // namespace insetbook
