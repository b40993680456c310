// SPDX-License-Identifier: GPL-3.0-or-later
//
// The trade's words: techniques, folds, features, shapes, occasions, roles, materials, adhesives, basic
// colour words. The terms are data under schema/vocabularies (compiled in; schema/README.md says how) plus
// the person's own. A term has one preferred label, other labels, and a broader term where there is one (in
// the sense of W3C SKOS); a fold also says how it stands. Terms are named by their preferred label, folded
// ("stand-up fold" → "stand up fold").
//
// A label is found however it is written: plural or singular ("circles", "boxes"), British or American
// ("stenciling"), with a hyphen, a space or neither ("pop-up", "pop up", "popup"); schema/label_key.h has the
// rules.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

enum class VocabularyName {
  technique,
  fold,
  feature,
  shape,
  occasion,
  role,
  material,
  adhesive,
  colour_word,
  status  // of supplies and dies: current, withdrawn …
};
std::string_view vocabulary_word(VocabularyName name);  // "technique", "colour word"
std::optional<VocabularyName> vocabulary_name(
    std::string_view word);  // "technique", "Techniques"; "colour" too

// How a card stands: built to stand, part-open, or not at all.
enum class Stands { not_said, built_to_stand, part_open, no };
std::string_view stands_word(Stands stands);  // "built to stand", "part-open", "no"; not_said: ""
std::optional<Stands> stands_named(std::string_view word);  // the same words back, folded or not

// One crease of a fold: part/of of the open sheet from its left (upright) or its top (level), seen from the
// inside.
struct Crease {
  bool upright = true;
  int part = 1;
  int of = 2;
  bool mountain = false;  // else valley: the inside faces meet
  bool operator==(const Crease&) const = default;
};

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
  std::string note;                  // what the term means, where that needs saying
  std::optional<std::vector<Crease>>
      creases;  // folds with one usual form, in folding order; a flat card: none
};

// A term found under a label.
struct TermMatch {
  VocabularyName vocabulary;
  std::string id;
  std::string label;  // preferred label
  bool preferred;     // found under its preferred label
  // 1 to 100, usually 50, own terms 100. Of several meanings of one label the larger is likelier. Below 30
  // the word more often means what no vocabulary has ("house", said of a picture): it is to be looked for as
  // text as well.
  int likelihood;
};

// All vocabularies of one book. Making one costs nothing but the person's own terms: the compiled-in table is
// sorted at build time and searched in place.
class Vocabulary {
 public:
  Vocabulary() = default;  // the terms of schema/vocabularies
  // And a person's own. Only `vocabulary` and `label` (or `id`) need be set; `broader` may be written as any
  // label of its term; one that leads to no term is dropped (whoever records a term looks first). An own term
  // with the id of a compiled one adds its labels to it, and what else it sets (label, broader, stands,
  // caution, note, creases) takes the place of what was compiled. An own label wins over a compiled term of
  // the same vocabulary that has the same label. A fold that says nothing stands as its broader term does.
  explicit Vocabulary(std::vector<Term> own);

  // Every term that has exactly this label (compared by label_key), the person's own first, then likeliest
  // first.
  std::vector<TermMatch> find(std::string_view label) const;
  std::vector<TermMatch> find(std::string_view label, VocabularyName in) const;
  // The same for a label's key (schema/label_key.h). The key of several words is the keys of the words, one
  // after the other, so that a reader can go on word by word for as long as some label begins so.
  std::vector<TermMatch> find_key(std::string_view key) const;
  bool key_begins(std::string_view key) const;
  std::optional<Term> term(VocabularyName in, std::string_view id) const;

  // The term and every narrower one, ids, the term itself first. "stand up fold" gives every fold that is
  // built to stand. Empty when there is no such term.
  std::vector<std::string> with_narrower(VocabularyName in, std::string_view id) const;
  // Ids of all folds that stand so, in the order of their ids.
  std::vector<std::string> folds_that(Stands stands) const;

  std::vector<Term> terms(VocabularyName in) const;  // in the order of their ids
  // The most words (separated by spaces, after folding) that any label has: how far a reader must look.
  std::size_t longest_label_words() const;
  // Every label, folded, sorted, once each: for suggestions.
  std::vector<std::string> all_labels() const;

  // Changes whenever any term does: an index that was built with other words is built again.
  std::uint64_t fingerprint() const;

 private:
  struct OwnLabel {
    std::string key;
    std::string folded;
    std::size_t term;  // in own_
    bool preferred;
  };
  std::vector<OwnLabel>::const_iterator own_label(std::string_view key) const;
  void take_in(std::size_t place);
  void stand_as_broader(Term& term);
  const Term* own_term(VocabularyName in, std::string_view id) const;
  std::string broader_of(VocabularyName in, std::string_view id) const;
  std::vector<std::string> ids(VocabularyName in) const;

  bool in_place(VocabularyName in) const { return (moved_ >> static_cast<unsigned>(in) & 1U) == 0; }
  bool leads_to(const Term& own, std::string_view id) const;
  std::vector<std::string> searched_narrower(VocabularyName in, std::string_view id) const;

  // A bit for each vocabulary in which an own term gives a compiled one another broader term.
  std::uint32_t moved_ = 0;
  std::vector<Term> own_;         // complete: what a compiled term of the same id says is taken in
  std::vector<OwnLabel> labels_;  // of own_, by key
};

}  // namespace insetbook
