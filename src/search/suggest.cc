// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/suggest.h"

#include <algorithm>

#include "book/names.h"
#include "search/sample_text.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Every word asked that must be somewhere.
void asked_words(const Node& node, std::vector<std::string>& out) {
  if (node.kind == Node::Kind::none) return;
  for (const Constraint& constraint : node.constraint) {
    const auto* words = std::get_if<WordsAre>(&constraint.says);
    if (!words) continue;
    for (const std::string& word : words->words) {
      for (std::string& part : words_of(word)) {
        if (std::find(out.begin(), out.end(), part) == out.end()) out.push_back(std::move(part));
      }
    }
  }
  for (const Node& child : node.children) asked_words(child, out);
}

constexpr std::size_t longest_character = 4;  // bytes

// Keeps the word with the fewest edits; of equals the one that was offered first.
class Nearest {
 public:
  explicit Nearest(std::string_view word) : word_(word), most_(characters(word).size() < 5 ? 1 : 2) {}
  void offer(std::string_view other) {
    if (other == word_) return;
    const std::size_t longer = std::max(other.size(), word_.size()) - std::min(other.size(), word_.size());
    if (longer > longest_character * most_) return;
    const std::size_t edits = edit_distance(other, word_, most_);
    if (edits > most_ || (!best_.empty() && edits >= edits_)) return;
    best_ = other;
    edits_ = edits;
  }
  const std::string& best() const { return best_; }

 private:
  std::string_view word_;
  std::size_t most_;
  std::size_t edits_ = 0;
  std::string best_;
};

// The stems that are spelled alike, as the words that were written.
void offer_words_of_book(const Book& book, Index& index, Stemmer& stemmer, const std::string& word,
                         Nearest& nearest) {
  constexpr std::size_t looked_at = 8;
  for (const Index::LikeStem& like : index.stems_like(book, stemmer.stem(word), looked_at)) {
    for (const TextField& field : text_of_sample(book, like.sample)) {
      for (const std::string& each : words_of(field.text)) {
        if (stemmer.stem(each) == like.stem) nearest.offer(each);
      }
    }
  }
}

// Returns false where a name holds the word as it is.
bool offer_names(const Book& book, const std::string& word, Nearest& nearest) {
  constexpr std::size_t looked_at = 5;
  for (const NameHit& name : find_names(book, word, std::nullopt, looked_at)) {
    for (const std::string& each : words_of(name.name)) {
      if (each == word) return false;
      nearest.offer(each);
    }
  }
  return true;
}

// The words of all labels, read once for all words that are asked.
class LabelWords {
 public:
  explicit LabelWords(const Vocabulary* vocabulary) : vocabulary_(vocabulary) {}

  bool has(const std::string& word) {
    read();
    return std::find(words_.begin(), words_.end(), word) != words_.end();
  }
  void offer(Nearest& nearest) {
    read();
    for (const std::string& each : words_) nearest.offer(each);
  }

 private:
  void read() {
    if (!vocabulary_) return;
    for (const std::string& label : vocabulary_->all_labels()) {
      for (std::string& each : words_of(label)) words_.push_back(std::move(each));
    }
    vocabulary_ = nullptr;
  }

  const Vocabulary* vocabulary_;  // null once it is read
  std::vector<std::string> words_;
};

}  // namespace

std::vector<Suggestion> suggestions(const Book& book, Index& index, Stemmer& stemmer, const Node& all,
                                    const Vocabulary* vocabulary) {
  std::vector<std::string> words;
  asked_words(all, words);
  std::vector<Suggestion> out;
  LabelWords labels(vocabulary);
  for (const std::string& word : words) {
    if (characters(word).size() < 3 || index.samples_with(book, stemmer.stem(word)) > 0) continue;
    if (labels.has(word)) continue;
    Nearest nearest(word);
    offer_words_of_book(book, index, stemmer, word, nearest);
    if (!offer_names(book, word, nearest)) continue;
    labels.offer(nearest);
    if (!nearest.best().empty()) out.push_back({word, nearest.best()});
  }
  return out;
}

}  // namespace insetbook
