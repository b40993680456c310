// SPDX-License-Identifier: GPL-3.0-or-later
//
// The recognisers of what a person gave names to: colours and supplies, and samples that others are based on
// or like. Basic colour words are terms; what they stand for is looked up by value.
#include <gtest/gtest.h>

#include "language/offers.h"
#include "language/read_question.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

bool is_name(const Seen& seen) {
  const bool word = seen.as == As::term && seen.terms.front().vocabulary == VocabularyName::colour_word;
  return seen.as == As::named || word || says_any<ColourIs>(seen);
}

TEST(Names, ColoursByNameAndByBasicWord) {
  const Case cases[] = {
      {"sage", "0-4 colour Sage"},
      {"SAGE", "0-4 colour Sage"},
      {"a sage circle", "2-6 colour Sage"},
      {"lichen grey", "0-11 colour Lichen Grey"},
      {"lichen-grey", "0-11 colour Lichen Grey"},
      {"chalk white", "0-11 colour Chalk White"},
      {"grey", "0-4 colour word grey"},
      {"gray", "0-4 colour word grey"},
      {"green", "0-5 colour word green"},
      {"greenish", "0-8 colour word green"},
      {"navy blue", "0-4 colour Navy; 5-9 colour word blue"},
      {"sagebrush", ""},
      {"mauveine", ""},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_name), each.offered) << each.text;
}

TEST(Names, ColoursNearOne) {
  const Case cases[] = {
      {"like sage", "0-9 colour=like Sage, within 10"},
      {"similar to sage", "0-15 colour=like Sage, within 10"},
      {"like sage within 5", "0-18 colour=like Sage, within 5"},
      {"like #a55030", "0-12 colour=like #a55030, within 10"},
      {"#A55030", "0-7 colour=like #a55030, within 10"},
      {"#a5503", ""},
      {"like mauveine", ""},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_name), each.offered) << each.text;
}

// The words that say what a supply is go with its name.
TEST(Names, Supplies) {
  const Case cases[] = {
      {"garden gate", "0-11 supply Garden Gate"},
      {"Garden-Gate", "0-11 supply Garden Gate"},
      {"garden gate stamps", "0-18 supply Garden Gate"},
      {"garden gate stamp set", "0-21 supply Garden Gate"},
      {"harbour dots folder", "0-19 supply Harbour Dots"},
      {"kelp", "0-4 colour Kelp | supply Kelp"},
      {"garden", ""},
      {"harbour", ""},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_name), each.offered) << each.text;
}

// What the colour is of: the ink where the words say so, else the paper of a piece with a shape.
TEST(Names, PaperAndInkApart) {
  struct Row {
    const char *question, *tree;
  };
  const Offers offers;
  for (const Row& row : std::vector<Row>{
           {"navy", "all(colour=Navy)"},
           {"navy circle", "all(piece(paper=Navy, shape=circle))"},
           {"navy paper", "all(paper=Navy)"},
           {"navy card stock", "all(paper=Navy)"},
           {"navy ink", "all(ink=Navy)"},
           {"navy ink circle", "all(piece(ink=Navy, shape=circle))"},
           {"circle in navy ink", "all(piece(shape=circle, ink=Navy))"},
           {"circle in navy paper", "all(piece(shape=circle, paper=Navy))"},
           {"navy paper and sage ink", "all(paper=Navy, ink=Sage)"},
           {"sage circle stamped in navy",
            "all(piece(paper=Sage, shape=circle, technique=stamping, ink=Navy))"},
           {"sentiment in navy", "all(piece(role=sentiment, colour=Navy))"},
           {"paper:navy", "all(paper=Navy)"},
           {"ink:navy", "all(ink=Navy)"},
           {"colour:navy", "all(colour=Navy)"},
       }) {
    const auto question = read_question(row.question, offers.context());
    ASSERT_TRUE(question) << row.question;
    EXPECT_EQ(print(*question), row.tree) << row.question;
  }
}

TEST(Names, Samples) {
  const auto is_sample = [](const Seen& seen) { return says_any<BasedOn, AlikeTo, TitleIs>(seen); };
  const Case cases[] = {
      {"based on harbour easel", "0-22 based=Harbour Easel"},
      {"based on the harbour easel", "0-26 based=Harbour Easel"},
      {"based upon \"harbour easel\"", "0-26 based=Harbour Easel"},
      {"based on harbour easel with a circle", "0-22 based=Harbour Easel"},
      {"like harbour easel", "0-18 alike=Harbour Easel"},
      {"more like harbour easel", "0-23 alike=Harbour Easel"},
      {"similar to the harbour easel", "0-28 alike=Harbour Easel"},
      {"title:\"harbour easel\"", "0-21 title=Harbour Easel"},
      {"based on nothing", ""},
      {"like nothing", ""},
      {"harbour easel", ""},
  };
  for (const Case& each : cases) EXPECT_EQ(Offers().on(each.text, is_sample), each.offered) << each.text;
}

}  // namespace
}  // namespace insetbook
