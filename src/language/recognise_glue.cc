// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "language/recognise.h"
#include "language/single_words.h"
#include "schema/label_key.h"
#include "text/utf8.h"

namespace insetbook {

// Whether a word of a vocabulary is asked of pieces or samples. What a supply's status is, is read by
// recognise_status.cc. A word for an adhesive is one only where that is its likeliest meaning ("brad"), and
// where it says more than that the piece is stuck ("glued").
bool Recogniser::asked_of_samples(const TermMatch& match, const TermMatch& likeliest) {
  if (match.vocabulary == VocabularyName::status) return false;
  if (match.vocabulary != VocabularyName::adhesive) return true;
  return likeliest.vocabulary == VocabularyName::adhesive && match.likelihood >= 30 && match.id != "glue" &&
         match.id != "no glue";
}

// "stuck with foam", "glued down with wet glue", "not glued"
void Recogniser::stuck_with(std::size_t at, std::vector<Seen>& out) {
  static constexpr std::string_view leads[] = {"stuck", "glued", "fastened", "attached", "adhered"};
  const std::string& word = pieces_[at].folded;
  const bool lead = std::ranges::find(leads, word) != std::end(leads);
  std::size_t label = at;
  if (lead) {
    label = skip(at + 1, {"down", "on", "with", "by", "using"});
    if (label == at + 1) return;
    label = skip(label, {"a", "an", "some", "the"});
  } else if (word != "no" && word != "not" && word != "unglued") {
    return;
  }
  for (std::size_t count = run_of_words(label, longest_label_); count > 0; --count) {
    ++steps_;
    const auto found = context_.vocabulary.find(words(label, count), VocabularyName::adhesive);
    if (found.empty() || (!lead && found.front().id != "no glue")) continue;
    Seen it = seen(As::term, at, label + count, priority_of::side);
    it.word = words(label, count);
    it.terms = {found.front()};
    out.push_back(std::move(it));
    return;
  }
}

// An adhesive with all that may be written of it.
GlueIs Recogniser::glue_of(const std::string& adhesive) {
  GlueIs glue{with_narrower(VocabularyName::adhesive, adhesive)};
  for (const std::string& id : glue.terms) {
    glue.keys.push_back(label_key(id));
    const auto term = context_.vocabulary.term(VocabularyName::adhesive, id);
    if (!term) continue;
    for (const std::string& label : term->labels) glue.keys.push_back(label_key(fold(label)));
  }
  std::ranges::sort(glue.keys);
  return glue;
}

// The adhesives of the book that are called so: a card whose supplies name one is stuck with it, wherever.
std::vector<Says> Recogniser::supplies_of(const GlueIs& glue) const {
  constexpr std::size_t longest_label = 6;  // words
  std::vector<Says> supplies;
  for (const NamedRecord& adhesive : context_.names.adhesives()) {
    std::vector<std::string> keys;
    for (const std::string& word : single_words(fold(adhesive.name))) keys.push_back(label_key(word));
    bool called_so = false;
    for (std::size_t first = 0; first < keys.size(); ++first) {
      std::string key;
      for (std::size_t last = first; last < std::min(first + longest_label, keys.size()); ++last) {
        key += keys[last];
        called_so = called_so || std::ranges::binary_search(glue.keys, key);
      }
    }
    if (called_so) supplies.push_back(SupplyIs{{adhesive.id}, adhesive.name});
  }
  return supplies;
}

}  // namespace insetbook
