// SPDX-License-Identifier: GPL-3.0-or-later
//
// The words and marks of the language itself: connectors, negation, how pieces go together, fillers, the
// card, paper and ink; and phrases in quotes.
#include <gtest/gtest.h>

#include "language/offers.h"
#include "language/small_words.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

template <As... kinds>
bool one_of(const Seen& seen) {
  return ((seen.as == kinds) || ...);
}

// Every word of the table is offered as what the table says.
TEST(SmallWords, AsTheTableSays) {
  const Offers offers;
  for (const SmallWord& each : small_words_sorted) {
    const std::string text(each.words);
    bool found = false;
    for (const Offer& offer : offers.every(text))
      found = found || (offer.seen.as == each.as && offer.seen.span == Span{0, text.size()});
    EXPECT_TRUE(found) << text;
  }
}

TEST(SmallWords, Connectors) {
  const Case cases[] = {
      {"circle and square", "7-10 and"},
      {"circle with a square", "7-11 with"},
      {"circle, square; oval", "6-7 ,; 14-15 ;"},
      {"circle & square", "7-8 &"},
      {"circle + square", "7-8 +"},
      {"circle or square", "7-9 or"},
      {"circle/square", "6-7 /"},
      {"along with", "0-10 along with"},
      {"that have", "0-9 that have"},
      {"1/2", ""},
      {"android", ""},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, one_of<As::joins, As::comma, As::either>), each.offered) << each.text;
}

TEST(SmallWords, Negation) {
  const Case cases[] = {
      {"not easel", "0-3 not"},
      {"no easel", "0-2 no"},
      {"without an easel", "0-7 without"},
      {"-easel", "0-1 -"},
      {"circle -easel", "7-8 -"},
      {"but not", "0-7 but not"},
      {"anything but easel", "0-12 anything but"},
      {"except for easel", "0-10 except for"},
      {"other than easel", "0-10 other than"},
      {"that isn't", "0-10 that isnt"},
      {"don't have", "0-10 dont have"},
      // a hyphen within a word, a dash between words, an order
      {"stand-up", ""},
      {"circle - easel", ""},
      {"no. 2", ""},
      {"no 2", ""},
      {"nothing", ""},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, one_of<As::excludes>), each.offered) << each.text;
}

TEST(SmallWords, HowPiecesGoTogether) {
  const Case cases[] = {
      {"circle on a square", "7-9 on"},
      {"circle on top of a square", "7-16 on top of"},
      {"circle inside a square", "7-15 inside a"},
      {"mat behind a circle", "4-10 behind"},
      {"mat underneath a circle", "4-14 underneath"},
      {"ribbon around the front", "7-17 around the"},
      {"strip over a circle", "6-12 over a"},
      {"strip over 2 in", "13-15 in"},
      {"circle round 2 in", "15-17 in"},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, one_of<As::preposition>), each.offered) << each.text;
}

TEST(SmallWords, Quotes) {
  const Case cases[] = {
      {"\"happy birthday\"", "0-16 happy birthday"},
      {"'happy birthday'", "0-16 happy birthday"},
      {"“happy birthday”", "0-20 happy birthday"},
      {"‘happy birthday’", "0-20 happy birthday"},
      {"«happy birthday»", "0-18 happy birthday"},
      {"\"Happy, BIRTHDAY!\"", "0-18 happy, birthday!"},
      {"\"2 in circle\"", "0-13 2 in circle"},
      {"circle \"easel\" square", "7-14 easel"},
      {"\"a\" \"b\"", "0-3 a; 4-7 b"},
      // inches, feet and apostrophes
      {"2\"", ""},
      {"2\" circle", ""},
      {"2' 3\"", ""},
      {"valentine's", ""},
      {"dots' folder", ""},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, one_of<As::phrase>), each.offered) << each.text;
}

TEST(SmallWords, MarksThatSayNothing) {
  for (const char* text : {"?", "!", "…", "[", "|", "*"}) {
    const std::vector<Offer> offers = Offers().every(text);
    ASSERT_EQ(offers.size(), 1u) << text;
    EXPECT_EQ(offers.front().seen.as, As::mark) << text;
    EXPECT_EQ(offers.front().seen.weight, 0) << text;
  }
}

}  // namespace
}  // namespace insetbook
