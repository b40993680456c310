// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/place_words.h"

#include <algorithm>
#include <utility>

#include "text/utf8.h"

namespace insetbook {
namespace {

// Words without which a place is the same.
constexpr std::string_view left_out[] = {"in", "at",     "on",      "to",   "the",   "a",    "of",  "with",
                                         "by", "corner", "corners", "edge", "edges", "side", "hand"};

constexpr std::pair<std::string_view, std::string_view> same[] = {
    {"center", "centre"}, {"centered", "centred"}, {"centrally", "centred"},   {"middle", "centre"},
    {"upper", "top"},     {"lower", "bottom"},     {"overhanging", "hanging"}, {"above", "high"},
    {"below", "low"},     {"higher", "high"}};

bool is_across(std::string_view word) {
  return word == "left" || word == "right";
}
bool is_up(std::string_view word) {
  return word == "top" || word == "bottom";
}

}  // namespace

std::vector<std::string> place_words(std::string_view written) {
  const std::string folded = fold(written);
  std::vector<std::string> words;
  for (std::string_view rest = folded; !rest.empty();) {
    const std::size_t end = std::min(rest.find_first_of(" ,;"), rest.size());
    std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (word.empty() || std::ranges::find(left_out, word) != std::end(left_out)) continue;
    const auto other = std::ranges::find(same, word, &std::pair<std::string_view, std::string_view>::first);
    if (other != std::end(same)) word = other->second;
    if (!words.empty() && is_across(words.back()) && is_up(word))
      words.insert(words.end() - 1, std::string(word));
    else
      words.emplace_back(word);
  }
  return words;
}

bool says_place(std::string_view written, const std::vector<std::string>& words) {
  if (words.empty() || written.empty()) return false;
  const std::vector<std::string> there = place_words(written);
  return std::search(there.begin(), there.end(), words.begin(), words.end()) != there.end();
}

}  // namespace insetbook
