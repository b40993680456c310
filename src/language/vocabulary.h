// SPDX-License-Identifier: GPL-3.0-or-later
//
// The trade's words: techniques, folds, features, shapes, occasions, roles, materials, adhesives, basic colour words. The
// terms are data under schema/vocabularies (compiled in; schema/README.md says how) plus the person's own. A term has
// one preferred label, other labels, and a broader term where there is one (in the sense of W3C SKOS); a fold also says
// how it stands. Terms are named by their preferred label, folded ("stand-up fold" → "stand up fold").
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

enum class VocabularyName { technique, fold, feature, shape, occasion, role, material, adhesive, colour_word };
std::string_view vocabulary_word(VocabularyName name);                       // "technique"
std::optional<VocabularyName> vocabulary_name(std::string_view word);        // "technique", "techniques"

// How a card stands: built to stand, part-open, or not at all.
enum class Stands { not_said, built_to_stand, part_open, no };

// A term as it is compiled in or as a person added it.
struct Term {
  VocabularyName vocabulary;
  std::string id;                    // the folded preferred label: what the book stores
  std::string label;                 // as it is shown
  std::vector<std::string> labels;   // other labels, as they are shown
  std::string broader;               // id of the broader term of the same vocabulary, or empty
  Stands stands = Stands::not_said;  // folds
  std::string caution;               // what is said beside a step, or empty
  std::string caution_source;        // its source, or "common practice, no source"
};

// A term found under a label.
struct TermMatch {
  VocabularyName vocabulary;
  std::string id;
  std::string label;     // preferred label
  bool preferred;        // found under its preferred label
  int likelihood;        // where one label means several things: larger is likelier
};

// All vocabularies of one book. Making one costs nothing but the person's own terms: the compiled-in table is sorted at
// build time and searched in place.
class Vocabulary {
 public:
  Vocabulary();                                   // the terms of schema/vocabularies
  explicit Vocabulary(std::vector<Term> own);     // and a person's own, which win over them

  // Every term that has exactly this label (compared folded, plural or singular), likeliest first.
  std::vector<TermMatch> find(std::string_view label) const;
  std::vector<TermMatch> find(std::string_view label, VocabularyName in) const;
  std::optional<Term> term(VocabularyName in, std::string_view id) const;

  // The term and every narrower one, ids. "stand up fold" gives every fold that is built to stand.
  std::vector<std::string> with_narrower(VocabularyName in, std::string_view id) const;

  std::vector<Term> terms(VocabularyName in) const;   // in the order of their labels
  // The most words (separated by spaces, after folding) that any label has: how far a reader must look.
  std::size_t longest_label_words() const;
  // Every label, folded, for suggestions.
  std::vector<std::string> all_labels() const;

 private:
  std::vector<Term> own_;
};

}  // namespace insetbook
