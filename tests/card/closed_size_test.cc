// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/closed_size.h"

#include <gtest/gtest.h>

#include "language/vocabulary.h"
#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
namespace {

struct Case {
  std::vector<std::string> folds;
  const char* base;
  const char* scores;
  const char* closed;  // empty: not certain
};

TEST(ClosedSize, OfABase) {
  const Case cases[] = {
      // common practice, no source: a half-letter base, and the same with its first section folded back
      {{"side fold"}, "8-1/2 x 5-1/2 in", "4-1/4", "4-1/4 x 5-1/2 in"},
      {{"side fold"}, "5-1/2 x 8-1/2 in", "4-1/4", "4-1/4 x 5-1/2 in"},
      {{"top fold"}, "8-1/2 x 5-1/2 in", "4-1/4", "5-1/2 x 4-1/4 in"},
      {{"tent"}, "5-1/2 x 8-1/2 in", "4-1/4 in", "5-1/2 x 4-1/4 in"},
      {{"easel"}, "8-1/2 x 5-1/2 in", "2-1/8; 4-1/4", "4-1/4 x 5-1/2 in"},
      {{"z fold"}, "8-1/2 x 5-1/2 in", "2-1/8 in mountain; 4-1/4 in valley", "4-1/4 x 5-1/2 in"},
      {{}, "8-1/2 x 5-1/2 in", "4-1/4", "4-1/4 x 5-1/2 in"},
      // ISO 216: A5 folds to A6
      {{"side fold"}, "210 x 148 mm", "105 mm", "105 x 148 mm"},
      {{"gate"}, "12 x 6 in", "3; 9", "6 x 6 in"},
      {{"letter tri fold"}, "9 x 4 in", "3; 6", "3 x 4 in"},
      {{"accordion"}, "12 x 4 in", "3; 6; 9", "3 x 4 in"},
      {{"side fold"}, "8 x 5 in", "3", "5 x 5 in"},
      {{"side fold"}, "8 x 5 in", "3 in from the right", "5 x 5 in"},
      {{"z fold"}, "12 x 6 in", "2 from the right; 6", "6 x 6 in"},
      {{"french fold"}, "8-1/2 x 11 in", "short side at 4-1/4; long side at 5-1/2", "4-1/4 x 5-1/2 in"},
      {{"top fold"}, "4 x 10 in", "5 from the top", "4 x 5 in"},
      {{"flat"}, "4 x 6 in", "", "4 x 6 in"},
      {{"flat"}, "4 x 6 in", "3", ""},
      // a spine of two near scores
      {{"side fold"}, "8-3/4 x 5-1/2 in", "4-1/4; 4-1/2", "4-1/4 x 5-1/2 in"},
      {{"side fold"}, "8-1/2 x 5-1/2 in", "", ""},
      {{}, "8-1/2 x 5-1/2 in", "", ""},
      {{"side fold"}, "8-1/2 x 5-1/2 in", "in the middle", ""},
      {{"side fold"}, "8-1/2 x 5-1/2 in", "8-1/2", ""},
      {{"side fold"}, "8-1/2 x 5-1/2 in", "9", ""},
      {{"pop up bridge"}, "8-1/2 x 5-1/2 in", "4-1/4", ""},
      {{"side fold", "gate"}, "8-1/2 x 5-1/2 in", "4-1/4", ""},
      {{"side fold"}, "8 x 8 in", "4 from the left; 4 from the top", ""},
  };
  for (const Case& c : cases) {
    const auto base = read_size(c.base, Unit::inch);
    ASSERT_TRUE(base) << c.base;
    const auto closed = closed_size(c.folds, base->width, base->height, c.scores, base->unit);
    EXPECT_EQ(closed ? write_size(closed->width, closed->height, base->unit) : "", c.closed)
        << c.base << ", " << c.scores;
  }
}

TEST(ClosedSize, KnowsItsFoldsByTheirTerms) {
  const Vocabulary vocabulary;
  for (const char* term :
       {"side fold",       "half fold", "top fold",    "tent",   "z fold",    "level z fold", "easel",
        "side easel",      "accordion", "fan fold",    "w fold", "m fold",    "gate",         "level gate",
        "letter tri fold", "roll fold", "french fold", "flat",   "note card", "tag"})
    EXPECT_TRUE(vocabulary.term(VocabularyName::fold, term)) << term;
}

TEST(FoldedLength, TurnsBackAtEachCrease) {
  const auto in = [](int n) { return Length::inches(n); };
  EXPECT_EQ(folded_length(in(8), {}), in(8));
  EXPECT_EQ(folded_length(in(8), {in(4)}), in(4));
  EXPECT_EQ(folded_length(in(8), {in(3)}), in(5));
  EXPECT_EQ(folded_length(in(12), {in(9), in(3)}), in(6));
  EXPECT_EQ(folded_length(in(12), {in(2), in(6)}), in(6));
}

}  // namespace
}  // namespace insetbook
