// SPDX-License-Identifier: GPL-3.0-or-later
//
// Places of pieces as people write them: "high of centre", "in the bottom right corner", "centred on the
// fold". The words that tell one place from another, so that the same place said in other words is the same.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

// "in the bottom right corner" → bottom, right; "centered" → centred. In the order in which they stand, but
// top and bottom before left and right.
std::vector<std::string> place_words(std::string_view written);
// Whether the words of the place stand in what was written, one behind the other. Of no words: no.
bool says_place(std::string_view written, const std::vector<std::string>& words);

}  // namespace insetbook
