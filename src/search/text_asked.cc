// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/text_asked.h"

#include <algorithm>

namespace insetbook {
namespace {

TextAsked::Kind kind_of(Node::Kind kind) {
  if (kind == Node::Kind::any) return TextAsked::Kind::any;
  return kind == Node::Kind::none ? TextAsked::Kind::none : TextAsked::Kind::all;
}

}  // namespace

std::vector<std::string> stems_of(std::string_view text, Stemmer& stemmer) {
  std::vector<std::string> stems;
  for_each_word(text, [&](std::string_view word) { stems.push_back(stemmer.stem(word)); });
  return stems;
}

std::vector<std::vector<std::string>> wanted_phrases(const WordsAre& words, Stemmer& stemmer) {
  std::vector<std::vector<std::string>> phrases;
  for (const std::string& word : words.words) {
    std::vector<std::string> stems = stems_of(word, stemmer);
    if (words.phrase && !phrases.empty()) {
      phrases.front().insert(phrases.front().end(), stems.begin(), stems.end());
    } else {
      phrases.push_back(std::move(stems));
    }
  }
  return phrases;
}

std::string on_card(const std::string& stem) {
  return "W" + stem;
}

TextAsked text_asked(const Node& node, Stemmer& stemmer) {
  TextAsked asked;
  if (node.kind == Node::Kind::one) {
    const auto& words = std::get<WordsAre>(node.constraint.front().says);
    for (auto& phrase : wanted_phrases(words, stemmer)) {
      if (words.on_card) std::ranges::transform(phrase, phrase.begin(), on_card);
      asked.children.push_back({TextAsked::Kind::phrase, std::move(phrase), {}});
    }
    return asked;
  }
  asked.kind = kind_of(node.kind);
  for (const Node& child : node.children) asked.children.push_back(text_asked(child, stemmer));
  return asked;
}

std::string print(const TextAsked& asked) {
  std::string out;
  if (asked.kind == TextAsked::Kind::phrase) {
    for (const std::string& word : asked.words) out += (out.empty() ? "" : " ") + word;
    return asked.words.size() == 1 ? out : "\"" + out + "\"";
  }
  const bool any = asked.kind != TextAsked::Kind::all;
  for (const TextAsked& child : asked.children)
    out += (out.empty() ? "" : any ? " OR " : " AND ") + print(child);
  return (asked.kind == TextAsked::Kind::none ? "NOT (" : "(") + out + ")";
}

}  // namespace insetbook
