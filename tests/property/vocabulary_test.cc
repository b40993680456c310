// SPDX-License-Identifier: GPL-3.0-or-later
//
// The look-up of terms, held against a plain walk over all terms, with a person's own words generated so that
// they meet the compiled ones, each other and themselves.
#include "language/vocabulary.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "schema/label_key.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// Labels of compiled terms, one a broader term of others, and words that are nowhere.
const std::vector<std::string> some_labels = {"Easel",     "stand-up fold", "tent",     "Gate",
                                              "zed stand", "hill fold",     "circle",   "mats",
                                              "Hill-fold", "popped up",     "splatter", "Lid"};

std::string any_label() {
  return *rc::gen::elementOf(some_labels);
}

Term any_own_term() {
  Term term;
  term.vocabulary = *rc::gen::element(VocabularyName::fold, VocabularyName::role, VocabularyName::technique);
  term.label = any_label();
  const int others = *rc::gen::inRange(0, 3);
  for (int i = 0; i < others; ++i) term.labels.push_back(any_label());
  if (*rc::gen::arbitrary<bool>()) term.broader = any_label();
  return term;
}

std::string key(const std::string& label) {
  return label_key(fold(label));
}

// A book has each term once.
std::vector<Term> any_own_terms() {
  std::vector<Term> own;
  const int count = *rc::gen::inRange(0, 6);
  for (int i = 0; i < count; ++i) {
    Term term = any_own_term();
    const bool there = std::any_of(own.begin(), own.end(), [&](const Term& other) {
      return other.vocabulary == term.vocabulary && fold(other.label) == fold(term.label);
    });
    if (!there) own.push_back(std::move(term));
  }
  return own;
}

bool labelled(const Term& term, const std::string& wanted) {
  return key(term.label) == wanted || std::any_of(term.labels.begin(), term.labels.end(),
                                                  [&](const auto& label) { return key(label) == wanted; });
}

using Found = std::set<std::pair<VocabularyName, std::string>>;

// The person's own terms with the label; in every vocabulary where there are none, the compiled ones.
Found found_by_walking(const std::vector<Term>& own, const std::string& label) {
  Found found;
  for (const auto in :
       {VocabularyName::technique, VocabularyName::fold, VocabularyName::feature, VocabularyName::shape,
        VocabularyName::occasion, VocabularyName::role, VocabularyName::material, VocabularyName::adhesive,
        VocabularyName::colour_word, VocabularyName::status}) {
    Found here;
    for (const Term& term : own) {
      if (term.vocabulary == in && labelled(term, key(label))) here.emplace(in, fold(term.label));
    }
    if (here.empty()) {
      for (const Term& term : Vocabulary().terms(in)) {
        if (labelled(term, key(label))) here.emplace(in, term.id);
      }
    }
    found.merge(here);
  }
  return found;
}

RC_GTEST_PROP(Vocabulary, FindsWhatAWalkOverAllTermsFinds, ()) {
  const std::vector<Term> own = any_own_terms();
  const Vocabulary words(own);
  const std::string label = any_label();
  const auto matches = words.find(label);
  Found found;
  for (const TermMatch& match : matches) found.emplace(match.vocabulary, match.id);
  RC_ASSERT(found.size() == matches.size());
  RC_ASSERT(found == found_by_walking(own, label));
}

// Narrower terms are those from which the chain of broader terms reaches the term, found here by adding one
// level at a time.
RC_GTEST_PROP(Vocabulary, FindsEveryNarrowerTerm, ()) {
  const Vocabulary words(any_own_terms());
  const auto terms = words.terms(VocabularyName::fold);
  const std::string top = terms[*rc::gen::inRange<std::size_t>(0, terms.size())].id;
  std::set<std::string> below = {top};
  for (std::size_t size = 0; size != below.size();) {
    size = below.size();
    for (const Term& term : terms) {
      if (!term.broader.empty() && below.contains(term.broader)) below.insert(term.id);
    }
  }
  const auto found = words.with_narrower(VocabularyName::fold, top);
  RC_ASSERT(found.front() == top);
  RC_ASSERT(std::set<std::string>(found.begin(), found.end()) == below);
  RC_ASSERT(found.size() == below.size());
}

}  // namespace
}  // namespace insetbook
