// SPDX-License-Identifier: GPL-3.0-or-later
//
// Plural and singular alike, for names: "rectangles" and "rectangle", "boxes" and "box", "cherries" and
// "cherry" come to the same text. It need not be a word ("glas"); it is only compared.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

std::string singular_word(std::string_view folded_word);
// The words of a folded text, without the marks between them, singular each.
std::vector<std::string> singular_words(std::string_view folded);
// The folded forms under which a name in the other number may stand, the text itself first.
std::vector<std::string> number_forms(std::string_view folded);

}  // namespace insetbook
