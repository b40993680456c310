// SPDX-License-Identifier: GPL-3.0-or-later
//
// Questions for other answers, asked of the book of sample-data/: each is handed to its answer, for a
// recorded thing and an invented size alike. Sizes, places and dates are those of the tables there.
#include <gtest/gtest.h>

#include <algorithm>

#include "answers/find.h"
#include "answers/fits_panel.h"
#include "answers/sample_book.h"
#include "measure/write.h"

namespace insetbook {
namespace {

FindAnswer asked(const std::string& question) {
  Result<FindAnswer> answer = find(sample_book(), {.question = question});
  EXPECT_TRUE(answer) << question << ": " << (answer ? "" : answer.error().what);
  return answer ? std::move(*answer) : FindAnswer();
}

template <class Answer>
Answer answer_to(const std::string& question) {
  const FindAnswer answer = asked(question);
  const Answer* found = std::get_if<Answer>(&answer.answer);
  EXPECT_TRUE(found) << question;
  return found ? *found : Answer();
}

TEST(OtherQuestions, WhatFitsAnInventedSize) {
  const auto fits =
      answer_to<FitsAnswer>("how big do I cut a panel for a 3 x 4 in frame so an eighth shows all round");
  EXPECT_TRUE(fits.invented);
  EXPECT_EQ(fits.border_from, BorderFrom::asked);
  ASSERT_FALSE(fits.panels.empty());
  EXPECT_EQ(fits.panels[0].shape, "rectangle");
  EXPECT_EQ(write_size(fits.panels[0].width, fits.panels[0].height, Unit::inch), "2-3/4 x 3-3/4 in");
  EXPECT_EQ(fits.panels[0].status, PanelStatus::computed);

  const auto circle = answer_to<FitsAnswer>("what fits in a 3 in circle with a 1/4 in border");
  ASSERT_FALSE(circle.panels.empty());
  EXPECT_EQ(circle.panels[0].shape, "circle");
  EXPECT_EQ(circle.panels[0].width, Length::inch_fraction(5, 2));

  // The name of a die comes before a size.
  const auto die = answer_to<FitsAnswer>("what fits tidepool rectangles 2");
  EXPECT_FALSE(die.invented);
  EXPECT_EQ(die.opening.set, "Tidepool Rectangles");
}

TEST(OtherQuestions, WhatFitsAPaperByName) {
  const auto fits = answer_to<FitsAnswer>("what fits an A6 card");
  EXPECT_EQ(fits.opening.width, Length::mm(105));
  EXPECT_EQ(fits.note,
            "Read as ISO A6, 105 x 148 mm; it can also mean a card for the American A6 envelope, 4-1/2 x "
            "6-1/4 in.");
}

TEST(OtherQuestions, AMisspeltOpeningIsSaid) {
  const auto fits = answer_to<FitsAnswer>("what fits tidepol rectangles 2");
  EXPECT_EQ(fits.opening.set, "Tidepool Rectangles");
  EXPECT_FALSE(fits.note.empty());
}

TEST(OtherQuestions, AMisspeltPanelIsSaid) {
  const Result<FramesAnswer> frames = what_frames(sample_book(), {.size = "moonrse circles 3"});
  ASSERT_TRUE(frames) << frames.error().what;
  EXPECT_EQ(frames->panel.width, Length::inch_fraction(23, 8));
  EXPECT_FALSE(frames->note.empty());
  EXPECT_FALSE(what_frames(sample_book(), {.size = "nonsense of a kind"}));
}

TEST(OtherQuestions, WhatFramesARecordedThing) {
  const auto stamp = answer_to<FramesAnswer>("what goes round the teapot stamp");
  EXPECT_EQ(stamp.panel_of, "stamp, Kettle on the Sill, teapot");
  EXPECT_EQ(stamp.panel.width, Length::inch_fraction(15, 8));
  EXPECT_FALSE(stamp.openings.empty());

  const auto die = answer_to<FramesAnswer>("which die frames moonrise circles 3");
  EXPECT_EQ(die.panel.width, Length::inch_fraction(23, 8));
  ASSERT_FALSE(die.openings.empty());
  for (const FramingOpening& found : die.openings)
    EXPECT_FALSE(found.opening.set == "Moonrise Circles" && found.opening.die == "3");

  const auto in_set = answer_to<FramesAnswer>("which tidepool rectangle frames a 2 in circle");
  ASSERT_FALSE(in_set.openings.empty());
  for (const FramingOpening& found : in_set.openings) EXPECT_EQ(found.opening.set, "Tidepool Rectangles");
}

struct Whether {
  const char* question;
  const char* sentence;
};

TEST(OtherQuestions, WhetherAPanelFits) {
  // 3-3/8 x 4-5/8 in, read to 1/16 in: 1/32 in give or take.
  const Whether table[] = {
      {"does a 3-1/4 x 4-1/2 in panel fit tidepool rectangles 2",
       "Yes. A rectangle 3-1/4 x 4-1/2 in fits: tried before, 1/16 in showing on the narrowest side."},
      {"does a 4-1/4 x 3 in panel fit tidepool rectangles 2",
       "Yes. A rectangle 4-1/4 x 3 in fits, turned by a quarter: 3/16 in shows on the narrowest side."},
      {"does a 3-3/8 x 4 in panel fit tidepool rectangles 2",
       "Just. A rectangle 3-3/8 x 4 in is snug, 0 in showing on the narrowest side: cut one and try."},
      {"does a 3-1/2 x 4 in panel fit tidepool rectangles 2",
       "No. A rectangle 3-1/2 x 4 in is 1/8 in too wide."},
      {"will a 4 x 5 in panel go in tidepool rectangles 2",
       "No. A rectangle 4 x 5 in is 5/8 in too wide and 3/8 in too high."},
      {"can I fit a 3-1/8 x 4-3/8 in panel in tidepool rectangles 2 with a 1/4 in border",
       "No, not with 1/4 in showing. A rectangle 3-1/8 x 4-3/8 in fits, but only 1/8 in shows on the "
       "narrowest "
       "side."},
      {"does a 3 in square fit in a 3 in circle", "No. A square 3 in does not fit."},
      {"does a 2 in square fit in a 3 in circle",
       "Yes. A square 2 in fits: just over 5/64 in shows on the narrowest side."},
  };
  for (const Whether& row : table) {
    const auto fits = answer_to<FitsAnswer>(row.question);
    ASSERT_TRUE(fits.panel_asked) << row.question;
    EXPECT_EQ(panel_sentence(fits), row.sentence) << row.question;
  }
}

TEST(OtherQuestions, PairsAreNotThereYet) {
  const Result<FindAnswer> answer =
      find(sample_book(), {.question = "which two dies make a frame a quarter inch wide"});
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.error().what, "which two dies make a frame a quarter inch wide is not there yet (pairs)");
}

TEST(OtherQuestions, HowBig) {
  const auto die = answer_to<MeasureAnswer>("how big is the second largest tidepool rectangle");
  ASSERT_EQ(die.lines.size(), 2u);
  EXPECT_FALSE(die.recorded);
  EXPECT_EQ(die.lines[0].opening.line, "stitched");
  ASSERT_FALSE(die.lines[0].outcome.known.empty());
  EXPECT_EQ(die.lines[0].outcome.known[0].width, Length::inch_fraction(27, 8));
  EXPECT_EQ(die.lines[1].opening.line, "cut");

  const auto line = answer_to<MeasureAnswer>("have I measured tidepool rectangles 2, cut?");
  ASSERT_EQ(line.lines.size(), 1u);
  EXPECT_EQ(line.lines[0].opening.line, "cut");

  const auto missing = answer_to<MeasureAnswer>("have I measured tidepool rectangles 6");
  ASSERT_EQ(missing.lines.size(), 2u);
  EXPECT_TRUE(missing.lines[0].outcome.known.empty());
  // Its neighbours are 2-1/2 x 3-3/4 in and 1-3/4 x 2-15/16 in.
  const FindAnswer estimated = asked("how big is tidepool rectangles 6, cut");
  ASSERT_EQ(estimated.notes.size(), 1u);
  EXPECT_EQ(estimated.notes[0].substr(0, estimated.notes[0].find(", give")),
            "By the sizes of its set the cut line is about 2-1/8 x 3-11/32 in");

  EXPECT_EQ(answer_to<ShowAnswer>("how big are the tidepool rectangles").name, "Tidepool Rectangles");
  EXPECT_EQ(answer_to<ShowAnswer>("how big is Kettle's On").name, "Kettle's On");
}

TEST(OtherQuestions, NotMeasuredYet) {
  const auto all = answer_to<UnmeasuredAnswer>("which dies are not measured yet");
  EXPECT_EQ(all.lines, 15);
  EXPECT_EQ(all.dies.size(), 9u);
  const auto set = answer_to<UnmeasuredAnswer>("what still needs measuring in the snowmelt scallops");
  EXPECT_EQ(set.set, "Snowmelt Scallops");
  ASSERT_EQ(set.dies.size(), 1u);
  EXPECT_EQ(set.dies[0].die, "5");
  EXPECT_EQ(set.dies[0].lines, (std::vector<std::string>{"cut", "embossed"}));
  EXPECT_TRUE(answer_to<UnmeasuredAnswer>("what needs measuring in gatepost strips").dies.empty());
}

struct Place {
  const char* question;
  const char* place;
  std::size_t things;
};

TEST(OtherQuestions, WhereThingsAreKept) {
  const Place table[] = {
      {"where are the tidepool rectangles", "drawer 1, top", 1},
      {"where is the second largest tidepool rectangle", "drawer 1, top", 1},
      {"where is tidepool rectangles 3", "drawer 1, top", 1},
      {"where is the sage ink", "ink tray", 1},
      {"where did I put the Hedge and Ditch stamps", "stamp tin 2", 4},
      {"where do I keep sage", "ink tray", 2},
      {"which drawer are the brick wall folders in", "drawer 4", 1},
      {"where is the guillotine trimmer", "", 1},
      {"where are the tidepol rectangles", "drawer 1, top", 1},
  };
  for (const Place& row : table) {
    const auto kept = answer_to<KeptAnswer>(row.question);
    ASSERT_EQ(kept.things.size(), row.things) << row.question;
    EXPECT_TRUE(std::ranges::any_of(kept.things, [&](const KeptThing& t) { return t.place == row.place; }))
        << row.question;
  }
  EXPECT_EQ(answer_to<KeptAnswer>("where are the tidepol rectangles").read_as, "tidepol rectangles");
}

TEST(OtherQuestions, NearestColours) {
  const auto sage = answer_to<NearestAnswer>("nearest to sage");
  ASSERT_FALSE(sage.colours.empty());
  EXPECT_EQ(sage.colours[0].name, "lichen");
  for (const NearestColour& colour : sage.colours) EXPECT_NE(colour.name, "sage");

  // Bilberry stain was withdrawn in 2023, and stands behind every colour that can be had, however near.
  const Result<NearestAnswer> bilberry = nearest_to(sample_book(), {.colour = "#57457f", .limit = 100});
  ASSERT_TRUE(bilberry);
  const auto at = std::ranges::find(bilberry->colours, "bilberry stain", &NearestColour::name);
  ASSERT_NE(at, bilberry->colours.end());
  EXPECT_EQ(at->status, "withdrawn");
  EXPECT_EQ(at->delta_e, 0);
  for (auto before = bilberry->colours.begin(); before != at; ++before) {
    if (before->status == "withdrawn") {
      EXPECT_LE(before->delta_e, at->delta_e);
    }
  }
  EXPECT_EQ(bilberry->colours[0].status, "current");
  EXPECT_TRUE(std::is_sorted(bilberry->colours.begin(), at, [](const auto& a, const auto& b) {
    return a.status == b.status && a.delta_e < b.delta_e;
  }));

  const auto gorse = answer_to<NearestAnswer>("what can I use instead of gorse hedge");
  EXPECT_EQ(gorse.status, "withdrawn");
  EXPECT_EQ(gorse.stand_ins, (std::vector<std::string>{"card stock, heavy card: marmalade peel heavy card",
                                                       "ink, ink pad: marmalade peel ink pad"}));

  EXPECT_FALSE(nearest_to(sample_book(), {.colour = "no such colour"}));
  EXPECT_FALSE(nearest_to(sample_book(), {.colour = "#12"}));
}

struct Length2 {
  const char* question;
  std::int64_t nm;
  Unit unit;
};

TEST(OtherQuestions, AnotherUnit) {
  const Length2 table[] = {
      {"3-7/16 in mm", 87'312'500, Unit::mm},         {"3-7/16 in in mm", 87'312'500, Unit::mm},
      {"60 mm in inches", 60'000'000, Unit::inch},    {"what is 2.3 cm in inches", 23'000'000, Unit::inch},
      {"60 in inches", 60'000'000, Unit::inch},  // a bare figure is in the other unit
      {"how many mm is 1/4 in", 6'350'000, Unit::mm},
  };
  for (const Length2& row : table) {
    const auto answer = answer_to<ConvertedTo>(row.question);
    ASSERT_EQ(answer.converted.lengths.size(), 1u) << row.question;
    EXPECT_EQ(answer.converted.lengths[0].nm(), row.nm) << row.question;
    EXPECT_EQ(answer.unit, row.unit) << row.question;
  }
  EXPECT_EQ(answer_to<ConvertedTo>("60 mm in inches").converted.on_ruler, "2-3/8 in");
  EXPECT_EQ(in_centimetres(answer_to<ConvertedTo>("5 in in cm").converted), "12.7 cm");
  EXPECT_TRUE(answer_to<ConvertedTo>("5 in in cm").centimetres);
}

TEST(OtherQuestions, ARecord) {
  EXPECT_EQ(answer_to<ShowAnswer>("show Kettle's On").name, "Kettle's On");
  EXPECT_EQ(answer_to<ShowAnswer>("show me the moonrise circles").name, "Moonrise Circles");
}

TEST(OtherQuestions, SayHowTheyWereRead) {
  const FindAnswer answer = asked("which tidepool rectangle frames a 2 in circle with a 1/8 in border");
  ASSERT_EQ(answer.understood.size(), 3u);
  EXPECT_EQ(answer.understood[0].text, "2 in circle");
  EXPECT_EQ(answer.understood[1].means, "the border on each side");
  EXPECT_EQ(answer.understood[2].text, "Tidepool Rectangles");
}

}  // namespace
}  // namespace insetbook
