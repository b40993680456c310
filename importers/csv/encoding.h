// SPDX-License-Identifier: GPL-3.0-or-later
//
// The bytes of a table as UTF-8 text without a byte order mark. UTF-8, UTF-16 (either order, with a mark or
// without) and Windows-1252 are recognised. Bytes that are none of them are a Problem that says which byte:
// nothing is replaced.
#pragma once

#include <string>
#include <string_view>

#include "text/problem.h"

namespace insetbook {

enum class TextEncoding { utf8, utf16le, utf16be, windows1252 };
std::string_view encoding_word(TextEncoding encoding);  // "UTF-8", …

struct DecodedText {
  std::string text;
  TextEncoding encoding = TextEncoding::utf8;
};

Result<DecodedText> decode_text(std::string bytes);

}  // namespace insetbook
