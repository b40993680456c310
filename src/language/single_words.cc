// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/single_words.h"

#include <algorithm>

namespace insetbook {

std::vector<std::string> single_words(std::string_view folded) {
  std::vector<std::string> words;
  while (!folded.empty()) {
    const std::size_t end = std::min(folded.find(' '), folded.size());
    if (end > 0) words.emplace_back(folded.substr(0, end));
    folded.remove_prefix(std::min(end + 1, folded.size()));
  }
  return words;
}

}  // namespace insetbook
