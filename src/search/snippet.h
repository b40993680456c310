// SPDX-License-Identifier: GPL-3.0-or-later
//
// The part of a text that is shown because words were found in it, with the places of these words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "language/question.h"
#include "search/words.h"

namespace insetbook {

struct Snippet {
  std::string text;         // a long text is cut about the first word found, "…" where it is cut
  std::vector<Span> marks;  // in order, none within another
};

// `phrases`: stems that follow each other, as wanted_phrases gives them.
Snippet snippet_of(std::string_view text, const std::vector<std::vector<std::string>>& phrases,
                   Stemmer& stemmer);

}  // namespace insetbook
