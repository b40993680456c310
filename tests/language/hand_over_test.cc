// SPDX-License-Identifier: GPL-3.0-or-later
//
// Questions for other answers, and questions for samples that are put in much the same words.
#include <gtest/gtest.h>

#include "language/ask_border.h"
#include "language/ask_thing.h"
#include "language/read_question.h"
#include "measure/write.h"
#include "table_names.h"

namespace insetbook {
namespace {

struct Case {
  const char* question;
  const char* printed;
};

class HandOver : public testing::Test {
 protected:
  Result<Question> read(std::string_view text) {
    return read_question(text, {vocabulary_, names_, Unit::inch, "2026-11-25"});
  }
  void expect(std::span<const Case> cases) {
    for (const Case& row : cases) {
      const Result<Question> question = read(row.question);
      ASSERT_TRUE(question) << row.question << ": " << question.error().what;
      EXPECT_EQ(print(*question), row.printed) << row.question;
      EXPECT_EQ(question->text, row.question);
      const std::string again = print_as_fields(*question);
      const Result<Question> back = read(again);
      ASSERT_TRUE(back) << again;
      EXPECT_EQ(print(*back), row.printed) << row.question << " → " << again;
    }
  }

  Vocabulary vocabulary_;
  TableNames names_;
};

TEST_F(HandOver, WhatFits) {
  const Case cases[] = {
      {"what fits inside this frame?", "fits(this frame)"},
      {"what fits inside the second largest tidepool rectangle", "fits(second largest tidepool rectangle)"},
      {"what fits tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"what will fit in tidepool rectangles 2, stitched?", "fits(tidepool rectangles 2, stitched)"},
      {"What size fits in the smallest moonrise circle", "fits(smallest moonrise circle)"},
      {"what shape fits the largest tidepool rectangle", "fits(largest tidepool rectangle)"},
      {"what shapes fit in moonrise circles 3", "fits(moonrise circles 3)"},
      {"what goes in tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"what goes inside a 3 in circle", "fits(3 in circle)"},
      {"what can I put in the big labels large tag", "fits(big labels large tag)"},
      {"what could I fit inside a 60 mm circle?", "fits(60 mm circle)"},
      {"which circle fits inside the largest tidepool rectangle",
       "fits(largest tidepool rectangle; shape=circle)"},
      {"which square will go in moonrise circles 2", "fits(moonrise circles 2; shape=square)"},
      {"how big do I cut a panel for a 3 x 4 in frame", "fits(3 x 4 in frame)"},
      {"how big should I cut the mat to go in moonrise circles 1", "fits(moonrise circles 1)"},
      {"how big a circle fits in tidepool rectangles 3", "fits(tidepool rectangles 3; shape=circle)"},
      {"how big a panel goes in the largest moonrise circle?", "fits(largest moonrise circle)"},
      {"how large can a panel be in a 3 x 4 in opening", "fits(3 x 4 in opening)"},
      {"how big a panel for tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"what size do I cut for the second largest tidepool rectangle",
       "fits(second largest tidepool rectangle)"},
      {"what size should I cut the panel to fit in a 2-3/8 in circle", "fits(2-3/8 in circle)"},
      {"what size panel for tidepool rectangles 4", "fits(tidepool rectangles 4)"},
      {"what size panel do I need for a 5 x 7 in frame", "fits(5 x 7 in frame)"},
      {"what size should the panel for tidepool rectangles 4 be", "fits(tidepool rectangles 4)"},
      {"what do I cut to fit tidepool rectangles 4", "fits(tidepool rectangles 4)"},
      {"can you tell me what fits inside tidepool rectangles 1?", "fits(tidepool rectangles 1)"},
      {"I want to know how big to cut a panel for moonrise circles 2", "fits(moonrise circles 2)"},
      {"the largest circle that fits tidepool rectangles 2", "fits(tidepool rectangles 2; shape=circle)"},
      {"biggest mat for tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"panel that fits tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"panel size for tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"inset for tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"what panel do I need for the third largest tidepool rectangle",
       "fits(third largest tidepool rectangle)"},
      {"size to cut for tidepool rectangles 2", "fits(tidepool rectangles 2)"},
      {"which insets fit the largest moonrise circle", "fits(largest moonrise circle)"},
      {"what fits behind the window of the big label", "fits(window of the big label)"},
      {"what covers the window of big labels large tag", "fits(window of big labels large tag)"},
      {"what fits an A6 card", "fits(A6 card)"},
  };
  expect(cases);
}

TEST_F(HandOver, WhatFitsWithABorder) {
  const Case cases[] = {
      {"what panel fits in the second largest tidepool rectangle, 1/8 in border",
       "fits(second largest tidepool rectangle; border=1/8 in)"},
      {"what size do I cut for the second largest tidepool rectangle so an eighth shows all round",
       "fits(second largest tidepool rectangle; border=1/8 in)"},
      {"what fits in a 3 in circle with a 1/4 in border", "fits(3 in circle; border=1/4 in)"},
      {"what fits in tidepool rectangles 2 with an eighth showing",
       "fits(tidepool rectangles 2; border=1/8 in)"},
      {"what fits in tidepool rectangles 2 with 3 mm showing on each side",
       "fits(tidepool rectangles 2; border=3 mm)"},
      {"what fits with a border of 1/16 in in tidepool rectangles 2",
       "fits(tidepool rectangles 2; border=1/16 in)"},
      {"what fits in tidepool rectangles 2, leaving an eighth of an inch on each side",
       "fits(tidepool rectangles 2; border=an eighth of an inch)"},
      {"what fits in tidepool rectangles 2 so that three sixteenths show all the way round",
       "fits(tidepool rectangles 2; border=3/16 in)"},
      {"what fits tidepool rectangles 2 with 1/8 in all round", "fits(tidepool rectangles 2; border=1/8 in)"},
      {"what fits in tidepool rectangles 2, border 1/8", "fits(tidepool rectangles 2; border=1/8)"},
      {"what fits in tidepool rectangles 2, a quarter inch smaller",
       "fits(tidepool rectangles 2; border=1/8 in)"},
      {"what fits in tidepool rectangles 2, 1/8 in smaller all round",
       "fits(tidepool rectangles 2; border=1/8 in)"},
      {"how big do I cut a panel for a 3 x 4 in frame so an eighth shows all round?",
       "fits(3 x 4 in frame; border=1/8 in)"},
      {"how big a circle with a 1/4 in border fits moonrise circles 2",
       "fits(moonrise circles 2; shape=circle; border=1/4 in)"},
  };
  expect(cases);
}

TEST_F(HandOver, WhatFrames) {
  const Case cases[] = {
      {"what frames a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"which die frames a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"which dies frame a 2 in circle?", "frames(2 in circle)"},
      {"which die goes round a 2-3/8 in circle", "frames(2-3/8 in circle)"},
      {"what goes around a 3 x 4 in image", "frames(3 x 4 in image)"},
      {"which dies fit around a 2 in circle", "frames(2 in circle)"},
      {"what can I put round a 2-3/8 in circle", "frames(2-3/8 in circle)"},
      {"frame for a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"which die for a 60 mm circle", "frames(60 mm circle)"},
      {"which die do I use for a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"which frame should I use to frame a 2 in square", "frames(2 in square)"},
      {"do I have a die for a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"is there a die that goes round a 2 in circle", "frames(2 in circle)"},
      {"find me a frame for a 3 x 4 in panel", "frames(3 x 4 in panel)"},
      {"what does a 3 x 4 in panel fit in", "frames(3 x 4 in panel)"},
      {"which die does a 2 in circle go in?", "frames(2 in circle)"},
      {"which tidepool rectangle frames a 2 x 3 in panel", "frames(2 x 3 in panel; in=Tidepool Rectangles)"},
      {"which of my moonrise circles goes round a 2 in circle", "frames(2 in circle; in=Moonrise Circles)"},
      {"which die frames moonrise circles 3", "frames(moonrise circles 3)"},
      {"what goes round the garden gate stamp", "frames(garden gate stamp)"},
      {"which dies are big enough for a 5 x 7 card", "frames(5 x 7 card)"},
      {"what can I frame a 3 x 4 in panel with", "frames(3 x 4 in panel)"},
      {"something to frame a 2 in circle", "frames(2 in circle)"},
      {"which die frames a 3 x 4 in panel with a 1/8 in border", "frames(3 x 4 in panel; border=1/8 in)"},
      {"what frames a 2 in circle with at least 1/4 in showing", "frames(2 in circle; border=1/4 in)"},
      {"which die goes round a 2 in circle leaving 1/8 in all round", "frames(2 in circle; border=1/8 in)"},
      {"which circle goes round a 2 in circle", "frames(2 in circle; shape=circle)"},
  };
  expect(cases);
}

TEST_F(HandOver, WhetherAPanelFits) {
  const Case cases[] = {
      {"does a 3 x 4 in panel fit tidepool rectangles 2",
       "fits(tidepool rectangles 2; panel=a 3 x 4 in panel)"},
      {"will a 2 in circle fit in moonrise circles 3?", "fits(moonrise circles 3; panel=a 2 in circle)"},
      {"can I fit a 3 x 4 in panel in the second largest tidepool rectangle",
       "fits(second largest tidepool rectangle; panel=a 3 x 4 in panel)"},
      {"would a 60 mm circle go inside a 3 in square", "fits(3 in square; panel=a 60 mm circle)"},
      {"does moonrise circles 4 fit inside tidepool rectangles 3 with 1/8 in all round",
       "fits(tidepool rectangles 3; border=1/8 in; panel=moonrise circles 4)"},
  };
  expect(cases);
}

TEST_F(HandOver, Pairs) {
  const Case cases[] = {
      {"which two dies make a frame a quarter inch wide", "pairs(; border=a quarter inch)"},
      {"which two dies give a 1/4 in frame", "pairs(; border=1/4 in)"},
      {"what two circles make a frame 1/8 in wide", "pairs(; border=1/8 in)"},
      {"which dies make an even border round tidepool rectangles 2", "pairs(tidepool rectangles 2)"},
      {"which dies make a 1/8 in border in the largest moonrise circle",
       "pairs(largest moonrise circle; border=1/8 in)"},
      {"which pair of dies cuts a frame 1/4 in wide", "pairs(; border=1/4 in)"},
      {"which die fits inside tidepool rectangles 2", "pairs(tidepool rectangles 2)"},
      {"pairs for moonrise circles 2", "pairs(moonrise circles 2)"},
  };
  expect(cases);
}

TEST_F(HandOver, HowBig) {
  const Case cases[] = {
      {"how big is the second largest tidepool rectangle", "measured(second largest tidepool rectangle)"},
      {"have I measured the second largest tidepool rectangle",
       "measured(second largest tidepool rectangle)"},
      {"have I measured tidepool rectangles 4 yet?", "measured(tidepool rectangles 4)"},
      {"what size is the second largest tidepool rectangle?", "measured(second largest tidepool rectangle)"},
      {"what is the size of moonrise circles 3", "measured(moonrise circles 3)"},
      {"what size are the moonrise circles", "measured(moonrise circles)"},
      {"how wide is the smallest moonrise circle", "measured(smallest moonrise circle)"},
      {"did I measure tidepool rectangles 3", "measured(tidepool rectangles 3)"},
      {"is tidepool rectangles 3 measured", "measured(tidepool rectangles 3)"},
      {"has tidepool rectangles 3 been measured yet", "measured(tidepool rectangles 3)"},
      {"what does moonrise circles 3 measure", "measured(moonrise circles 3)"},
      {"size of the big labels large tag", "measured(big labels large tag)"},
      {"dimensions of tidepool rectangles 2, stitched", "measured(tidepool rectangles 2, stitched)"},
      {"when did I measure moonrise circles 3", "measured(moonrise circles 3)"},
      {"how big is Harbour Easel", "measured(Harbour Easel)"},
      {"how big is the smallest hexagon", "measured(smallest hexagon)"},
      {"how wide is gatepost long strip", "measured(gatepost long strip)"},
      {"how big was the circle on Harbour Easel", "measured(circle on Harbour Easel)"},
      {"what size is the frame on Harbour Easel", "measured(frame on Harbour Easel)"},
  };
  expect(cases);
}

TEST_F(HandOver, DiesBySize) {
  const Case cases[] = {
      {"do I have a 3 inch circle die", "dies(3 inch circle)"},
      {"have I got a 2-3/8 circle die?", "dies(2-3/8 circle)"},
      {"which die is 2-3/8", "dies(2-3/8)"},
      {"which dies are 3 inches", "dies(3 inches)"},
      {"which die cuts a 3 inch circle", "dies(3 inch circle)"},
      {"what dies do I have around 2 in", "dies(around 2 in)"},
      {"which die is closest to 2-1/4 in", "dies(about 2-1/4 in)"},
      {"is there a die that cuts 2 x 3 in", "dies(2 x 3 in)"},
      {"what circle dies do I have", "dies(circle)"},
      {"what dies do I have", "dies()"},
      {"do I have dies under 1 inch", "dies(under 1 inch)"},
      {"which tidepool rectangle is 3 x 4-1/4", "dies(3 x 4-1/4; in=Tidepool Rectangles)"},
      {"which of my moonrise circles is 2 in", "dies(2 in; in=Moonrise Circles)"},
  };
  expect(cases);
}

TEST_F(HandOver, WhatWasTried) {
  const Case cases[] = {
      {"what did I try in tidepool rectangles 2", "tried(tidepool rectangles 2)"},
      {"what have I tried in the moonrise circles?", "tried(moonrise circles)"},
      {"what did I try", "tried()"},
      {"what was too tight", "tried(; too tight)"},
      {"which panels were too loose in tidepool rectangles 2", "tried(tidepool rectangles 2; too loose)"},
  };
  expect(cases);
}

TEST_F(HandOver, WhatWasMadeWithAThing) {
  const Case cases[] = {
      {"what did I use the garden gate stamp for", "used(garden gate stamp)"},
      {"what have I made with harbour dots", "used(harbour dots)"},
  };
  expect(cases);
}

TEST_F(HandOver, NotMeasuredYet) {
  const Case cases[] = {
      {"which dies are not measured yet", "unmeasured()"},
      {"which dies haven't I measured", "unmeasured()"},
      {"what still needs measuring", "unmeasured()"},
      {"what have I not measured yet?", "unmeasured()"},
      {"which dies have not been measured", "unmeasured()"},
      {"unmeasured dies", "unmeasured()"},
      {"dies without a size", "unmeasured()"},
      {"dies with no size", "unmeasured()"},
      {"anything not measured yet?", "unmeasured()"},
      {"what is left to measure", "unmeasured()"},
      {"what needs measuring in the tidepool rectangles", "unmeasured(Tidepool Rectangles)"},
      {"which moonrise circles are not measured yet", "unmeasured(Moonrise Circles)"},
  };
  expect(cases);
}

TEST_F(HandOver, WhereItIsKept) {
  const Case cases[] = {
      {"where is the tidepool rectangles set", "kept(tidepool rectangles set)"},
      {"where are my moonrise circles", "kept(moonrise circles)"},
      {"where are my moonrise circles kept?", "kept(moonrise circles)"},
      {"where do I keep garden gate", "kept(garden gate)"},
      {"where did I put the garden gate stamps", "kept(garden gate stamps)"},
      {"where have I put harbour dots", "kept(harbour dots)"},
      {"where can I find the kelp ink", "kept(kelp ink)"},
      {"where do the tidepool rectangles live", "kept(tidepool rectangles)"},
      {"which drawer are the moonrise circles in", "kept(moonrise circles)"},
      {"in which box is garden gate?", "kept(garden gate)"},
      {"which drawer holds the big labels", "kept(big labels)"},
      {"do you know where the big labels are", "kept(big labels)"},
  };
  expect(cases);
}

TEST_F(HandOver, NearestColours) {
  const Case cases[] = {
      {"nearest to sage", "nearest(sage)"},
      {"what colour is close to #a55030", "nearest(#a55030)"},
      {"which colours are nearest to sage", "nearest(sage)"},
      {"closest colour to lichen grey", "nearest(lichen grey)"},
      {"colours like sage", "nearest(sage)"},
      {"what is nearest to sage?", "nearest(sage)"},
      {"which ink is nearest to sage", "nearest(sage)"},
      {"nearest sage", "nearest(sage)"},
      {"what can I use instead of sage", "nearest(sage)"},
  };
  expect(cases);
}

TEST_F(HandOver, AnotherUnit) {
  const Case cases[] = {
      {"3-7/16 in mm", "convert(3-7/16; unit=mm)"},
      {"3-7/16 in in mm", "convert(3-7/16 in; unit=mm)"},
      {"60 mm in inches", "convert(60 mm; unit=in)"},
      {"what is 2.3 cm in inches", "convert(2.3 cm; unit=in)"},
      {"convert 2-7/8 x 4-1/8 in to mm", "convert(2-7/8 x 4-1/8 in; unit=mm)"},
      {"how many mm is 3-7/16 in", "convert(3-7/16 in; unit=mm)"},
      {"how much is 60mm in inches?", "convert(60mm; unit=in)"},
      {"3-7/16\" in mm", "convert(3-7/16\"; unit=mm)"},
      {"5 inches as cm", "convert(5 inches; unit=mm)"},
      {"2 in circle in mm", "convert(2 in circle; unit=mm)"},
      {"A6 in inches", "convert(A6; unit=in)"},
  };
  expect(cases);
  EXPECT_TRUE(read("5 inches as cm")->centimetres);
  EXPECT_FALSE(read("5 inches in mm")->centimetres);
}

TEST_F(HandOver, ARecord) {
  const Case cases[] = {
      {"show Harbour Easel", "show(Harbour Easel)"},
      {"show me the tidepool rectangles", "show(tidepool rectangles)"},
      {"show tidepool rectangles 2", "show(tidepool rectangles 2)"},
      {"tell me about garden gate", "show(garden gate)"},
      {"what do I know about moonrise circles 3", "show(moonrise circles 3)"},
      {"open harbour easel", "show(harbour easel)"},
      {"what colour is sage", "show(sage)"},
      {"what colour was the frame on harbour easel", "show(frame on harbour easel)"},
  };
  expect(cases);
}

// These stay questions for samples, whatever tree they give.
TEST_F(HandOver, SamplesAreStillAskedFor) {
  const char* const questions[] = {
      "cards showing gulls",
      "designs that fit an A6 envelope",
      "which designs fit in an A6 envelope",
      "which designs use a 3 in circle die",
      "cards with a 3 in circle die cut",
      "which tidepool rectangles did I use",
      "what did I use sage for",
      "where the wild geese go",
      "what cards did I make in 2023",
      "which cards use the tidepool rectangles",
      "which dies did I use in 2023",
      "show me sage cards",
      "show birthday cards",
      "show me sage",
      "what frames did I use on birthday cards",
      "designs using a 2-3/8 in circle with a stand-up fold",
      "a frame around a circle",
      "circle in the second largest tidepool rectangle",
      "cards with a frame a quarter inch wide",
      "2-3/8 in",
      "2 in circle in navy",
      "card 5 x 7 in",
      "made in 2023",
      "nearest christmas",
      "cards close to christmas",
      "like:sage",
      "colour like:#a55030",
      "size:2in",
      "cards without a photo",
      "samples not measured",
      "how big cards",
      "what goes with sage",
      "what did I stamp in navy",
      "where did I use sage",
      "in the garden",
      "tidepool rectangles",
      "Harbour Easel",
      "moonrise circles 3",
      "panel for a birthday card",
      "largest circles",
      "cards with a mat behind a circle",
      "what fun",
      "what makes a good frame for a birthday card",
      "what makes a card stand",
      "for a 2 in circle",
      "does it fit",
      "will it stand",
      "can I use sage",
      "which",
      "what fits",
      "how big",
      "where is",
      "show",
      "",
  };
  for (const char* question : questions) {
    const Result<Question> read_as = read(question);
    ASSERT_TRUE(read_as) << question;
    EXPECT_EQ(read_as->asks, Asks::samples) << question << " → " << print(*read_as);
  }
}

TEST_F(HandOver, OffersTheOtherReading) {
  const Result<Question> question = read("where is the wild goose");
  ASSERT_TRUE(question);
  EXPECT_EQ(question->asks, Asks::samples);
  ASSERT_EQ(question->other_readings.size(), 1u);
  EXPECT_EQ(question->other_readings[0].taken, "samples with these words");
  EXPECT_EQ(question->other_readings[0].other,
            "where a thing is kept, but no die, set or supply is called \"wild goose\"");
}

// A title that begins as another question does is that sample's.
class TitledNames : public TableNames {
 public:
  std::vector<NamedRecord> exactly(std::string_view folded) const override {
    if (folded == "where are the moonrise circles")
      return {{NameKind::sample, 99, "Where Are the Moonrise Circles", ""}};
    return TableNames::exactly(folded);
  }
};

TEST(HandOverTitles, AWholeTitleIsTheSample) {
  const Vocabulary vocabulary;
  const TitledNames names;
  const Result<Question> question =
      read_question("where are the moonrise circles", {vocabulary, names, Unit::inch, "2026-11-25"});
  ASSERT_TRUE(question);
  EXPECT_EQ(question->asks, Asks::samples);
  ASSERT_FALSE(question->other_readings.empty());
  EXPECT_EQ(question->other_readings.back().other, "a question that is not for samples");
}

TEST(ThingSaid, ReadsASizeWithItsShape) {
  struct Row {
    const char* text;
    const char* size;  // as it is written back
    const char* shape;
  };
  const Row rows[] = {
      {"3 x 4 in frame", "3 x 4 in", ""},
      {"a 3 x 4 in rectangle", "3 x 4 in", "rectangle"},
      {"circle of 2-3/8 in", "2-3/8 in", "circle"},
      {"2-3/8 in circle", "2-3/8 in", "circle"},
      {"a round opening 60 mm across", "60 mm", "circle"},
      {"stamped image, 2 x 3 in", "2 x 3 in", ""},
      {"2 in square", "2 in", "square"},
      {"5 x 7 card", "5 x 7 in", ""},
      {"A6 card", "105 x 148 mm", ""},
      {"hexagon 3 in", "3 in", "hexagon"},
  };
  const Vocabulary vocabulary;
  for (const Row& row : rows) {
    const auto thing = read_thing(row.text, vocabulary, Unit::inch);
    ASSERT_TRUE(thing) << row.text;
    EXPECT_EQ(write(thing->size), row.size) << row.text;
    EXPECT_EQ(thing->shape, row.shape) << row.text;
  }
  for (const char* text : {"tidepool rectangles 2", "2", "2023", "circle", "2 in circle and 3 in square",
                           "2 to 3 in", "this frame", "sage 2 in circle", ""})
    EXPECT_FALSE(read_thing(text, vocabulary, Unit::inch)) << text;
}

}  // namespace
}  // namespace insetbook
