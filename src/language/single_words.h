// SPDX-License-Identifier: GPL-3.0-or-later
//
// The words of folded text, parted at its spaces; none of them is empty.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

std::vector<std::string> single_words(std::string_view folded);

}  // namespace insetbook
