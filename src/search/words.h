// SPDX-License-Identifier: GPL-3.0-or-later
//
// Words of a text as they are indexed and asked for: the folded text (text/utf8.h) cut at everything that is
// no letter, figure or mark; a symbol (a heart, a star) is a word of its own. Words are compared by their
// English stem, cut to what the index can hold.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

// Each word of the text, folded, in order.
void for_each_word(std::string_view text, const std::function<void(std::string_view)>& use);
std::vector<std::string> words_of(std::string_view text);

// Each word with its place in the text as it was written (bytes, half-open): for showing where it is.
struct PlacedWord {
  std::string word;  // folded
  std::size_t begin = 0;
  std::size_t end = 0;
};
std::vector<PlacedWord> placed_words(std::string_view text);

// Remembers the stems it has made.
class Stemmer {
 public:
  Stemmer();
  ~Stemmer();
  const std::string& stem(std::string_view word);

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace insetbook
