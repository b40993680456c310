// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a misspelt word of the trade was probably meant to be: "easle" → "easel", "circel" → "circle".
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "language/vocabulary.h"

namespace insetbook {

// The label of one vocabulary that the text is a slip for, word by word (text/near_word.h), with the fewest
// mistakes; of equals a preferred label, then the first in the order of the terms. Empty where there is none.
std::optional<std::string> near_label(const Vocabulary& vocabulary, VocabularyName in, std::string_view text);

}  // namespace insetbook
