// SPDX-License-Identifier: GPL-3.0-or-later
//
// The recogniser of vocabulary terms: every label of every term is offered as that term, however it is
// written, and longer labels stand beside the shorter ones that they hold.
#include <gtest/gtest.h>

#include "language/offers.h"
#include "language/small_words.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

bool is_term(const Seen& seen) {
  return seen.as == As::term;
}

constexpr VocabularyName asked_for[] = {
    VocabularyName::technique, VocabularyName::fold, VocabularyName::feature,  VocabularyName::shape,
    VocabularyName::occasion,  VocabularyName::role, VocabularyName::material, VocabularyName::colour_word};

// Whether the whole text is offered with that meaning.
bool offered(const Offers& offers, const std::string& text, const std::string& meaning) {
  for (const Offer& offer : offers.every(text)) {
    const bool whole = offer.seen.span == Span{0, text.size()};
    if (whole && (" | " + offer.value + " | ").find(" | " + meaning + " | ") != std::string::npos)
      return true;
  }
  return false;
}

// Labels that are words of the language itself ("card", "ink") are no terms where they stand alone.
TEST(Terms, UnderEveryLabel) {
  const Offers offers;
  const Vocabulary vocabulary;
  int labels = 0;
  for (const VocabularyName in : asked_for)
    for (const Term& term : vocabulary.terms(in)) {
      std::vector<std::string> all = term.labels;
      all.push_back(term.label);
      for (const std::string& label : all) {
        if (small_word(fold(label))) continue;
        ++labels;
        EXPECT_TRUE(offered(offers, label, std::string(vocabulary_word(in)) + " " + term.id))
            << vocabulary_word(in) << " " << term.label << ": " << label;
      }
    }
  EXPECT_GT(labels, 2000);
}

TEST(Terms, HoweverTheyAreWritten) {
  for (const char* text : {"z fold", "Z-fold", "zfold", "Z folds", "Z FOLD"})
    EXPECT_TRUE(offered(Offers(), text, "fold z fold")) << text;
  for (const char* text : {"stenciling", "stencilling", "stenciled", "stencilled", "Stencilling"})
    EXPECT_TRUE(offered(Offers(), text, "technique stencilling")) << text;
  for (const char* text : {"fussy cut", "fussy-cut", "fussy cutting", "hand cut"})
    EXPECT_TRUE(offered(Offers(), text, "technique hand cutting")) << text;
  for (const char* text : {"splatter", "splattered", "speckled", "speckling"})
    EXPECT_TRUE(offered(Offers(), text, "technique speckling")) << text;
  for (const char* text : {"popped up", "popped-up", "on foam"})
    EXPECT_TRUE(offered(Offers(), text, "technique popped up")) << text;
  for (const char* text : {"circle", "circles", "Circle", "round"})
    EXPECT_TRUE(offered(Offers(), text, "shape circle")) << text;
  for (const char* text : {"sentiment", "sentiments", "greeting", "saying"})
    EXPECT_TRUE(offered(Offers(), text, "role sentiment")) << text;
  for (const char* text : {"stand-up fold", "stand up fold", "standup fold", "stand-up"})
    EXPECT_TRUE(offered(Offers(), text, "fold stand up fold")) << text;
}

TEST(Terms, Spans) {
  const Case cases[] = {
      {"speckled circle", "0-8 technique speckling; 9-15 shape circle"},
      {"a circle easel", "2-14 fold circle easel"},
      {"scalloped circle", "0-16 shape scalloped circle"},
      {"dry embossed panel", "0-12 technique dry embossing; 13-18 role panel"},
      {"inside panel", "0-12 role inside panel"},
      {"gold ink", "0-8 material metallic ink"},
      {"frobnitz", ""},
      {"circlet", ""},
      {"circle easels and squares", "0-13 fold circle easel; 18-25 shape square"},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_term), each.offered) << each.text;
}

// The shorter labels that a longer one holds are offered too: the cover chooses.
TEST(Terms, ShorterOnesBeside) {
  std::vector<std::string> values;
  for (const Offer& offer : Offers().every("circle easel"))
    if (is_term(offer.seen)) values.push_back(offer.value);
  EXPECT_EQ(values, (std::vector<std::string>{"shape circle", "fold circle easel", "fold easel"}));
}

// All that a label means, the likeliest first.
TEST(Terms, SeveralMeanings) {
  const Case cases[] = {
      {"tag", "0-3 shape tag | role tag"},
      {"z", "0-1 fold z fold | fold accordion"},
      {"die cut", "0-7 role die cut | technique die cutting"},
      {"ribbon", "0-6 material ribbon | role ribbon"},
  };
  for (const Case& each : cases) {
    const std::string offered = Offers().on(each.text, is_term);
    EXPECT_EQ(offered.substr(0, std::string(each.offered).size()), each.offered) << each.text;
  }
}

}  // namespace
}  // namespace insetbook
