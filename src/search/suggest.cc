// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/suggest.h"

#include <algorithm>
#include <functional>
#include <optional>

#include "book/names.h"
#include "search/sample_text.h"
#include "text/near_word.h"
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

// Keeps the words that may have been meant, those with the fewest mistakes first; of equals the one that was
// offered first.
class Near {
 public:
  explicit Near(std::string_view word) : word_(word) {}
  void offer(std::string_view other) {
    const std::optional<std::size_t> mistakes = slip_distance(word_, other);
    if (!mistakes) return;
    if (std::ranges::find(words_, other, &Offered::word) == words_.end())
      words_.push_back({std::string(other), *mistakes});
  }
  std::vector<std::string> words() {
    std::ranges::stable_sort(words_, {}, &Offered::mistakes);
    std::vector<std::string> all;
    for (Offered& each : words_) all.push_back(std::move(each.word));
    return all;
  }

 private:
  struct Offered {
    std::string word;
    std::size_t mistakes;
  };
  std::string_view word_;
  std::vector<Offered> words_;
};

// The stems that are spelled alike, as the words that were written.
void offer_words_of_book(const Book& book, Index& index, Stemmer& stemmer, const std::string& word,
                         Near& near) {
  constexpr std::size_t looked_at = 8;
  for (const Index::LikeStem& like : index.stems_like(book, stemmer.stem(word), looked_at)) {
    for (const TextField& field : text_of_sample(book, like.sample)) {
      for (const std::string& each : words_of(field.text)) {
        if (stemmer.stem(each) == like.stem) near.offer(each);
      }
    }
  }
}

// Returns false where a name holds the word as it is.
bool offer_names(const Book& book, const std::string& word, Near& near) {
  constexpr std::size_t looked_at = 5;
  for (const NameHit& name : find_names(book, word, std::nullopt, looked_at)) {
    for (const std::string& each : words_of(name.name)) {
      if (each == word) return false;
      near.offer(each);
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
  void offer(Near& near) {
    read();
    for (const std::string& each : words_) near.offer(each);
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

// Whether asking for the word would find a sample: in its text, or as what a term is said by.
class Finds {
 public:
  Finds(const Book& book, Index& index, Stemmer& stemmer, const Vocabulary* vocabulary)
      : book_(book), index_(index), stemmer_(stemmer), vocabulary_(vocabulary) {}

  bool operator()(const std::string& word) {
    if (index_.samples_with(book_, stemmer_.stem(word)) > 0) return true;
    if (!vocabulary_) return false;
    for (const TermMatch& match : vocabulary_->find(word))
      for (const std::string& term : vocabulary_->with_narrower(match.vocabulary, match.id))
        if (said(term)) return true;
    return false;
  }

 private:
  bool said(const std::string& term) {
    Statement& row = book_.statement(
        "SELECT 1 WHERE EXISTS (SELECT 1 FROM mention WHERE kind IN ('fold', 'technique', 'feature', "
        "'occasion', 'material') AND term = ?1) OR EXISTS (SELECT 1 FROM element WHERE shape = ?1) OR EXISTS "
        "(SELECT 1 FROM element WHERE role = ?1 AND role <> '')");
    row.bind(1, std::string_view(term));
    const bool found = row.step();
    row.reset();
    return found;
  }

  const Book& book_;
  Index& index_;
  Stemmer& stemmer_;
  const Vocabulary* vocabulary_;
};

// "Pond weed", where the book writes it in one.
bool written_as_one(const Book& book, const std::string& joined, Finds& finds) {
  return finds(joined) || !names_exactly(book, joined).empty();
}

}  // namespace

std::vector<Suggestion> suggestions(const Book& book, Index& index, Stemmer& stemmer, const Node& all,
                                    const Vocabulary* vocabulary) {
  std::vector<std::string> words;
  asked_words(all, words);
  std::vector<Suggestion> out;
  LabelWords labels(vocabulary);
  Finds finds(book, index, stemmer, vocabulary);
  const auto known = [&](const std::string& word) {
    return characters(word).size() < 3 || index.samples_with(book, stemmer.stem(word)) > 0 ||
           labels.has(word);
  };
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (i + 1 < words.size() && !(known(word) && known(words[i + 1]))) {
      const std::string joined = word + words[i + 1];
      if (written_as_one(book, joined, finds)) {
        out.push_back({word + " " + words[++i], joined});
        continue;
      }
    }
    if (known(word)) continue;
    Near near(word);
    offer_words_of_book(book, index, stemmer, word, near);
    if (!offer_names(book, word, near)) continue;
    labels.offer(near);
    const std::vector<std::string> offered = near.words();
    const auto best = std::ranges::find_if(offered, std::ref(finds));
    if (best != offered.end()) out.push_back({word, *best});
  }
  return out;
}

}  // namespace insetbook
