// SPDX-License-Identifier: GPL-3.0-or-later
//
// UTF-8 text as people type it: decoding, counting in characters, folding for comparison.
// Every text that enters the book passes `valid_utf8`; every name that is compared passes `fold`.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

// One character of a text: its code point and where its bytes begin and end (half-open) in the text.
struct Character {
  char32_t code;
  std::size_t begin;
  std::size_t end;
};

// Decodes `text`. Bytes that are no UTF-8 become U+FFFD, one for each byte, so that any bytes can be read.
std::vector<Character> characters(std::string_view text);

bool valid_utf8(std::string_view text);

// The number of characters before byte `offset` of `text`: a place as Problem counts it.
std::size_t characters_before(std::string_view text, std::size_t offset);

// The character that begins at byte `at` of `text` (U+FFFD for a byte that is no UTF-8). at < text.size().
Character character_at(std::string_view text, std::size_t at);

void append_utf8(std::string& out, char32_t code);

// Unicode space, line ends and tabs included.
bool is_space(char32_t code);
// Hyphens and dashes of every kind, the minus sign included; no underscore.
bool is_hyphen(char32_t code);
// Single and double quotation marks, apostrophes, primes, straight or curly.
bool is_quote(char32_t code);
bool is_letter(char32_t code);

// The form in which names and words are compared: NFKD, marks removed, case folded, hyphens of every kind and
// underscores made spaces, quotes and apostrophes and invisible characters removed, runs of space made one,
// ends trimmed. "Z-Fold", "z fold" and "Ｚ　fold" fold alike; "½" is NOT safe here: read fractions before
// folding. Folding twice changes nothing more.
std::string fold(std::string_view text);

// Trims Unicode space from both ends.
std::string_view trim(std::string_view text);

// The number of characters to insert, remove, replace or swap with their neighbour to get from `a` to `b`, no
// character touched twice; given up (limit + 1) above `limit`. Takes time in proportion to the length times
// the limit.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit);

}  // namespace insetbook
