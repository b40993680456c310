// SPDX-License-Identifier: GPL-3.0-or-later
//
// Free words of a question in the form that the index is asked: stems, phrases of stems, joined as the
// question joins them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "language/question.h"
#include "search/index.h"
#include "search/words.h"

namespace insetbook {

std::vector<std::string> stems_of(std::string_view text, Stemmer& stemmer);

// Each phrase that must be there. A word on its own is a phrase of one; one that is cut at a mark ("3/8") is
// a phrase of its parts; one without letters or figures is an empty phrase, which every text holds.
std::vector<std::vector<std::string>> wanted_phrases(const WordsAre& words, Stemmer& stemmer);

// The term of a stem that stands in what the card says. No word begins like it: words are in small letters.
std::string on_card(const std::string& stem);

// Of a node that is about free words only (normal_form.h, is_text).
TextAsked text_asked(const Node& node, Stemmer& stemmer);

// "(glitter AND NOT "snow flake")"
std::string print(const TextAsked& asked);

}  // namespace insetbook
