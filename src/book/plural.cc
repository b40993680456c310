// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/plural.h"

#include <algorithm>

namespace insetbook {

namespace {

// As the look-up's own reader of words has it: what is no letter and no figure stands between words.
bool is_mark(char c) {
  const auto byte = static_cast<unsigned char>(c);
  const bool letter = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
  return byte < 0x80 && !letter && !(byte >= '0' && byte <= '9');
}

}  // namespace

std::string singular_word(std::string_view word) {
  std::string one(word);
  if (word.size() > 4 && word.ends_with("ies")) return one.substr(0, one.size() - 3) + "y";
  for (const std::string_view end : {"xes", "ches", "shes", "sses", "zes"}) {
    if (word.size() > end.size() && word.ends_with(end)) return one.substr(0, one.size() - 2);
  }
  if (word.size() > 2 && word.ends_with("s") && !word.ends_with("ss") && !word.ends_with("us"))
    one.pop_back();
  return one;
}

std::vector<std::string> singular_words(std::string_view folded) {
  std::vector<std::string> words;
  std::size_t at = 0;
  while (at < folded.size()) {
    std::size_t end = at;
    while (end < folded.size() && !is_mark(folded[end])) ++end;
    if (end > at) words.push_back(singular_word(folded.substr(at, end - at)));
    at = end + 1;
  }
  return words;
}

std::vector<std::string> number_forms(std::string_view folded) {
  std::vector<std::string> forms{std::string(folded)};
  const std::size_t last = folded.rfind(' ') == std::string_view::npos ? 0 : folded.rfind(' ') + 1;
  const std::string before(folded.substr(0, last));
  const std::string one = singular_word(folded.substr(last));
  if (one.empty()) return forms;
  const auto add = [&](const std::string& word) {
    if (std::find(forms.begin(), forms.end(), before + word) == forms.end()) forms.push_back(before + word);
  };
  add(one);
  add(one + "s");
  add(one + "es");
  if (one.ends_with('y')) add(one.substr(0, one.size() - 1) + "ies");
  return forms;
}

}  // namespace insetbook
