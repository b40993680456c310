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

std::string name_of(const OpeningRecord& line) {
  return line.set + " " + line.die + ", " + line.line;
}

// As sample-data/dies.csv has them: exact is within 1/32 in.
TEST(OtherQuestions, DiesBySize) {
  struct Row {
    const char* question;
    std::vector<std::string> dies;     // the first of them
    std::vector<std::string> nearest;  // the first of them
  };
  const Row table[] = {
      {"have I got a 2-3/8 circle die", {"Moonrise Circles 4, cut", "Dewpond Rounds 4, cut"}, {}},
      {"which die is 2-3/8", {"Moonrise Circles 4, cut", "Dewpond Rounds 4, cut"}, {}},
      {"do I have a 3 inch circle die", {"Snowmelt Scallops 2, embossed"}, {"Moonrise Circles 3, cut"}},
      {"which die cuts a 3 inch circle", {"Snowmelt Scallops 2, embossed"}, {"Moonrise Circles 3, cut"}},
      {"which dies are 3 inches", {"Pebblewash Squares 3, cut", "Snowmelt Scallops 3, cut"}, {}},
      {"what dies do I have around 2 in", {"Dewpond Rounds 5, cut", "Snowmelt Scallops 4, embossed"}, {}},
      {"do I have a 1-7/8 circle die", {}, {"Dewpond Rounds 5, cut", "Dewpond Rounds 4, cut"}},
      {"which die is 3-1/4 x 4-1/2", {"Tidepool Rectangles 3, cut"}, {}},
      {"which die is 4-1/2 x 3-1/4", {"Tidepool Rectangles 3, cut"}, {}},
  };
  for (const Row& row : table) {
    const auto found = answer_to<DiesAnswer>(row.question);
    std::vector<std::string> dies, nearest;
    for (const DieOfSize& die : found.dies)
      if (dies.size() < row.dies.size()) dies.push_back(name_of(die.opening));
    for (const DieOfSize& die : found.nearest)
      if (nearest.size() < row.nearest.size()) nearest.push_back(name_of(die.opening));
    EXPECT_EQ(dies, row.dies) << row.question;
    EXPECT_EQ(nearest, row.nearest) << row.question;
    EXPECT_EQ(found.nearest.empty(), row.nearest.empty()) << row.question;
  }
  const auto circle = answer_to<DiesAnswer>("do I have a 1-7/8 circle die");
  ASSERT_FALSE(circle.nearest.empty());
  EXPECT_EQ(circle.nearest[0].difference, "3/32 in larger");
  // Between 2-3/8 and 1-3/8 in, and never measured.
  ASSERT_EQ(circle.estimated.size(), 1u);
  EXPECT_EQ(name_of(circle.estimated[0].opening), "Moonrise Circles 5, cut");
  EXPECT_EQ(circle.estimated[0].estimate.width, Length::inch_fraction(15, 8));
}

TEST(OtherQuestions, HowBigByPartsOfAName) {
  const Whether table[] = {
      {"how big is the smallest hexagon", "Waspattic Hexagons 5, cut"},
      {"how big is the largest tag", "Thistlejam Tags big tag, cut"},
      {"how big is tidepool 2", "Tidepool Rectangles 2, stitched"},
      {"how big is dewpond 4", "Dewpond Rounds 4, cut"},
      {"how wide is gatepost long strip", "Gatepost Strips long strip, cut"},
  };
  for (const Whether& row : table) {
    const auto known = answer_to<MeasureAnswer>(row.question);
    ASSERT_FALSE(known.lines.empty()) << row.question;
    EXPECT_EQ(name_of(known.lines[0].opening), row.sentence) << row.question;
  }
  const Result<FindAnswer> none = find(sample_book(), {.question = "how big is a breadbox"});
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().what, "no die answers to \"breadbox\"");
  EXPECT_FALSE(none.error().candidates.empty());
}

TEST(OtherQuestions, APieceOfASample) {
  const auto frame = answer_to<PiecesAnswer>("what size is the frame on Fog Horn");
  ASSERT_EQ(frame.pieces.size(), 1u);
  EXPECT_EQ(frame.pieces[0].row.name, "frame");
  EXPECT_EQ(frame.pieces[0].row.size.text, "3-5/8 x 4-7/8 in");
  const auto circles = answer_to<PiecesAnswer>("how big was the circle on Kettle's On");
  ASSERT_EQ(circles.pieces.size(), 2u);
  EXPECT_EQ(circles.pieces[0].row.name, "round");
  EXPECT_FALSE(circles.all);
  EXPECT_TRUE(answer_to<PiecesAnswer>("what colour is the teapot round on Kettle's On").colour);
  EXPECT_TRUE(answer_to<PiecesAnswer>("how big is the zeppelin on Fog Horn").all);
}

TEST(OtherQuestions, TriedThere) {
  const auto there = answer_to<TriedThereAnswer>("what did I try in tidepool 2");
  EXPECT_EQ(there.total, 5u);  // three by hand, two layers of samples
  ASSERT_EQ(there.tried.size(), 5u);
  EXPECT_FALSE(there.tried[0].tried.from_sample);
  EXPECT_TRUE(there.tried[4].tried.from_sample);
  const auto tight = answer_to<TriedThereAnswer>("what was too tight");
  EXPECT_EQ(tight.total, 7u);
  ASSERT_FALSE(tight.tried.empty());
  EXPECT_EQ(name_of(tight.tried[0].opening), "Kelpwick Frames 1, window");
  EXPECT_EQ(answer_to<TriedThereAnswer>("what was too loose in moonrise circles 3").total, 1u);
}

TEST(OtherQuestions, UsedFor) {
  const auto hits = answer_to<Hits>("what did I use the moth stamps for");
  std::vector<std::string> titles;
  for (const Hit& hit : hits.hits) titles.push_back(hit.title);
  EXPECT_EQ(titles, (std::vector<std::string>{"Two Lighthouses", "Lantern Walk", "Scalloped Moon",
                                              "Lamp on the Stairs"}));
}

TEST(OtherQuestions, ColourOfAColour) {
  const auto shown = answer_to<ShowAnswer>("what colour is wet slate");
  const auto* colour = std::get_if<ShownColour>(&shown.shown);
  ASSERT_TRUE(colour);
  EXPECT_EQ(colour->srgb, 0x5b6770u);
}

// Circles only, those with something showing first; the one that was too tight is told so.
TEST(OtherQuestions, ACircleRoundACircle) {
  const auto frames = answer_to<FramesAnswer>("which circle goes round a 2 3/8 circle");
  ASSERT_FALSE(frames.openings.empty());
  for (const FramingOpening& found : frames.openings) EXPECT_EQ(found.opening.shape_word, "circle");
  EXPECT_EQ(name_of(frames.openings.front().opening), "Snowmelt Scallops 3, embossed");
  EXPECT_EQ(name_of(frames.openings.back().opening), "Moonrise Circles 4, cut");
  EXPECT_EQ(frames.opening_shape, "circle");
  EXPECT_EQ(frames.openings.size() + frames.other_shapes, 51u);
  // Asked what frames it, the least slack stays first.
  const auto all = answer_to<FramesAnswer>("which die frames a 2-3/8 in circle");
  EXPECT_EQ(name_of(all.openings.front().opening), "Moonrise Circles 4, cut");
  EXPECT_EQ(all.total, 51u);
}

TEST(OtherQuestions, TheLinesThatAreNotMeant) {
  const auto fits = answer_to<FitsAnswer>("what fits kelpwick frames 2");
  EXPECT_EQ(fits.opening.line, "cut");
  EXPECT_EQ(fits.other_lines,
            std::vector<std::string>{"Kelpwick Frames 2, window (rectangle 56 x 99 mm was tried in it)"});
  EXPECT_TRUE(answer_to<FitsAnswer>("what fits kelpwick frames 2, window").other_lines.empty());
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
    const auto kept = answer_to<StoredAnswer>(row.question);
    ASSERT_EQ(kept.things.size(), row.things) << row.question;
    EXPECT_TRUE(std::ranges::any_of(kept.things, [&](const StoredThing& t) { return t.place == row.place; }))
        << row.question;
  }
  EXPECT_EQ(answer_to<StoredAnswer>("where are the tidepol rectangles").read_as, "tidepol rectangles");
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
