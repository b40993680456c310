// SPDX-License-Identifier: GPL-3.0-or-later
//
// The recognisers of what is said of the card itself: closed sizes by name, which way round it is, sides, and
// what is not recorded of it.
#include <gtest/gtest.h>

#include "language/offers.h"
#include "language/read_question.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

TEST(Cards, ClosedSizesByName) {
  const Case cases[] = {
      {"A6", "0-2 closed=105mm x 148mm ±0.8mm"},
      {"a6 card", "0-7 closed=105mm x 148mm ±0.8mm"},
      {"A5", "0-2 closed=148mm x 210mm ±0.8mm"},
      {"A4", "0-2 closed=210mm x 297mm ±0.8mm"},
      {"A2", "0-2 closed=4-1/4in x 5-1/2in ±1/32in"},
      {"C6", "0-2 closed=105mm x 148mm ±0.8mm"},
      {"DL", "0-2 closed=99mm x 210mm ±0.8mm"},
      {"slimline", "0-8 closed=3-1/2in x 8-1/2in ±1/32in"},
      {"half letter", "0-11 closed=4-1/4in x 5-1/2in ±1/32in"},
      // of an envelope, a sheet or a base
      {"A6 envelope", ""},
      {"envelope A6", ""},
      {"A2 sheet", ""},
      {"A2 base", ""},
      {"A99", ""},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, says_any<ClosedSizeIs>), each.offered) << each.text;
}

TEST(Cards, WhichWayRound) {
  const Case cases[] = {
      {"landscape", "0-9 closed=landscape"},
      {"landscape card", "0-14 closed=landscape"},
      {"landscape orientation", "0-21 closed=landscape"},
      {"portrait", "0-8 closed=portrait"},
      {"portrait cards", "0-14 closed=portrait"},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, says_any<ClosedSizeIs>), each.offered) << each.text;
}

// A size, a form or a way round beside the word for the card is the card's.
TEST(Cards, SizesBesideTheWordCard) {
  struct Row {
    const char *question, *tree;
  };
  const Offers offers;
  for (const Row& row : std::vector<Row>{
           {"5 x 7 card", "all(closed=5in x 7in ±1/32in)"},
           {"card 5 x 7", "all(closed=5in x 7in ±1/32in)"},
           {"cards closing to 5 x 7", "all(closed=5in x 7in ±1/32in)"},
           {"finished size 5 x 7", "all(closed=5in x 7in ±1/32in)"},
           {"4 in square card", "all(closed=4in x 4in ±1/32in)"},
           {"square card", "all(closed=square)"},
           {"tall card", "all(closed=portrait)"},
           {"wide card", "all(closed=landscape)"},
           {"under 5 x 7 cards", "all(closed=under 5in x 7in)"},
           {"5 x 7", "all(piece(size=5in x 7in ±1/32in))"},
       }) {
    const auto question = read_question(row.question, offers.context());
    ASSERT_TRUE(question) << row.question;
    EXPECT_EQ(print(*question), row.tree) << row.question;
  }
}

TEST(Cards, Sides) {
  const Case cases[] = {
      {"on the front", "0-12 side=front"},
      {"at the back", "0-11 side=back"},
      {"on the inside", "0-13 side=inside"},
      {"on the outside", "0-14 side=front"},
      {"on the reverse", "0-14 side=back"},
      {"on the front of the card", "0-24 side=front"},
      {"on the back of a card", "0-21 side=back"},
      {"front", "0-5 side=front"},
      {"back", "0-4 side=back"},
      {"the front", "4-9 side=front"},
      {"side:inside", "0-11 side=inside"},
      {"where:back", "0-10 side=back"},
      // how pieces go together, more often
      {"inside", ""},
      {"outside", ""},
      {"inside of the card", ""},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, says_any<SideIs>), each.offered) << each.text;
}

TEST(Cards, WhatIsNotRecorded) {
  const Case cases[] = {
      {"no photo", "0-8 no=photo"},
      {"without a photo", "0-15 no=photo"},
      {"with no photograph", "0-18 no=photo"},
      {"that have no envelope", "0-21 no=envelope"},
      {"no date", "0-7 no=made"},
      {"undated", "0-7 no=made"},
      {"no steps", "0-8 no=steps"},
      {"no notes", "0-8 no=note"},
      {"no words", "0-8 no=words"},
      {"no occasion", "0-11 no=occasion"},
      {"no fold", "0-7 no=fold"},
      {"no:photo", "0-8 no=photo"},
      {"missing:words", "0-13 no=words"},
      {"no circle", ""},
      {"no easel fold", ""},
  };
  for (const Case& each : cases)
    EXPECT_EQ(Offers().on(each.text, says_any<HasNo>), each.offered) << each.text;
}

}  // namespace
}  // namespace insetbook
