// SPDX-License-Identifier: GPL-3.0-or-later
//
// The text of a sample that free words are looked for in: its own fields, the names and notes of its pieces,
// the terms as they were written, and the names of colours, supplies and die sets that it uses. What changes
// any of these is what Book::samples_changed_since answers for.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct TextField {
  std::string label;    // "title", "steps", "note", "colour"
  std::string element;  // the piece it is said of, or empty
  std::string text;
};

// The label of what the card says, which a question may ask for alone.
inline constexpr std::string_view words_of_card = "words";

// Empty where there is no such sample.
std::vector<TextField> text_of_sample(const Book& book, std::int64_t sample);

// The same part by part, in the same order: for who stops at the first field that will do.
enum class TextPart { sample, elements, mentions };
inline constexpr std::array all_text_parts{TextPart::sample, TextPart::elements, TextPart::mentions};
std::vector<TextField> text_of_sample(const Book& book, std::int64_t sample, TextPart part);

}  // namespace insetbook
