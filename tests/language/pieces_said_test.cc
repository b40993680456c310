// SPDX-License-Identifier: GPL-3.0-or-later
//
// How pieces are called, counted and parted in a question: question → printed tree. Each question printed
// back as fields reads to the same tree.
#include <gtest/gtest.h>

#include "language/tree_rows.h"

namespace insetbook {
namespace {

std::string offered(std::string_view text) {
  const Offers offers;
  const auto question = read_question(text, offers.context());
  std::string out;
  if (question)
    for (const OtherReading& other : question->other_readings) out += other.other + ";";
  return out;
}

// "a frame" is a frame; the fold that stands like an A is written with a hyphen, or with "card" or "fold".
TEST(PiecesSaid, FrameIsARole) {
  compare_trees({
      {"oval frame", "all(piece(shape=oval, role=frame))"},
      {"a navy frame", "all(piece(colour=Navy, role=frame))"},
      {"a frame", "all(piece(role=frame))"},
      {"the frame", "all(piece(role=frame))"},
      {"circle in a frame", "all(piece(shape=circle, in(piece(role=frame))))"},
      {"panel inside a frame", "all(piece(role=panel, in(piece(role=frame))))"},
      {"A-frame", "all(fold=a frame)"},
      {"a-frame card", "all(fold=a frame)"},
      {"a frame card", "all(fold=a frame)"},
      {"a frame fold", "all(fold=a frame)"},
      {"circle on an A-frame", "all(piece(shape=circle), fold=a frame)"},
  });
  EXPECT_EQ(offered("circle in a frame"), "fold:\"A-frame\";");
  EXPECT_EQ(offered("circle in the frame"), "");
}

TEST(PiecesSaid, RingIsARoundFrameOrAShape) {
  compare_trees({
      {"circle ring", "all(piece(shape=circle, role=ring))"},
      {"ring", "all(any(piece(role=ring), piece(shape=ring)))"},
      {"a ring of navy", "all(any(piece(role=ring, colour=Navy), piece(shape=ring, colour=Navy)))"},
      {"circle in a ring", "all(piece(shape=circle, in(any(piece(role=ring), piece(shape=ring)))))"},
      {"shape:ring", "all(piece(shape=ring))"},
  });
}

// "inside" before a piece, where one stands before it, says where that lies; else it is a side of the card.
TEST(PiecesSaid, InsideIsAPlaceOrASide) {
  compare_trees({
      {"circle inside a rectangle", "all(piece(shape=circle, in(piece(shape=rectangle))))"},
      {"circle inside rectangle", "all(piece(shape=circle, in(piece(shape=rectangle))))"},
      {"sage circle inside the frame", "all(piece(paper=Sage, shape=circle, in(piece(role=frame))))"},
      {"sage circle inside sage square",
       "all(piece(paper=Sage, shape=circle, in(piece(paper=Sage, shape=square))))"},
      {"greeting inside", "all(piece(role=sentiment, side=inside))"},
      {"greeting inside the card", "all(piece(role=sentiment, side=inside))"},
      {"inside strip", "all(piece(side=inside, role=strip))"},
      {"easel, inside strip", "all(fold=easel, piece(side=inside, role=strip))"},
  });
}

TEST(PiecesSaid, OrBetweenPropertiesStaysWithinThePiece) {
  compare_trees({
      {"white circle stamped in navy or speckled",
       "all(any(piece(paper=white (by value), shape=circle, technique=stamping, ink=Navy), piece(paper=white "
       "(by value), shape=circle, "
       "technique=speckling)))"},
      {"circle stamped in navy or speckled on an easel",
       "all(any(piece(shape=circle, technique=stamping, ink=Navy), piece(shape=circle, "
       "technique=speckling)), "
       "fold=easel)"},
      {"circle stamped in navy or in kelp",
       "all(piece(shape=circle, technique=stamping, any(ink=Navy, ink=Kelp)))"},
      // of one kind, and of a piece that is named by it
      {"circle speckled or torn", "all(piece(shape=circle, any(technique=speckling, technique=tearing)))"},
      {"circle stamped in navy or speckled square",
       "all(any(piece(shape=circle, technique=stamping, ink=Navy), piece(technique=speckling, "
       "shape=square)))"},
  });
}

TEST(PiecesSaid, OneOfThoseCountedHasTheProperty) {
  compare_trees({
      {"two circles, one navy and one white",
       "all(piece(shape=circle, paper=Navy), piece(shape=circle, paper=white (by value)))"},
      {"two circles, one in navy and one in white",
       "all(piece(shape=circle, paper=Navy), piece(shape=circle, paper=white (by value)))"},
      {"2 sage circles: one speckled, the other torn",
       "all(piece(paper=Sage, shape=circle, technique=speckling), piece(paper=Sage, shape=circle, "
       "technique=tearing))"},
      {"three circles, one navy", "all(piece(shape=circle, paper=Navy), piece(count=2, shape=circle))"},
      {"three hearts, two navy and one white",
       "all(piece(count=2, shape=heart, paper=Navy), piece(shape=heart, paper=white (by value)))"},
      {"two circles, one 2 in and one 3 in",
       "all(piece(shape=circle, size=2in ±1/32in), piece(shape=circle, size=3in ±1/32in))"},
      {"two circles and one 2 in square",
       "all(piece(count=2, shape=circle), piece(size=2in ±1/32in, shape=square))"},
      {"two circles, three hearts", "all(piece(count=2, shape=circle), piece(count=3, shape=heart))"},
      {"two circles, one navy", "all(piece(shape=circle, paper=Navy), piece(shape=circle))"},
      // another piece
      {"two hearts and one navy circle", "all(piece(count=2, shape=heart), piece(paper=Navy, shape=circle))"},
      {"one navy circle and one white circle",
       "all(piece(paper=Navy, shape=circle), piece(paper=white (by value), shape=circle))"},
      {"two circles and one in square",
       "all(piece(count=2, shape=circle), piece(size=1in ±1/32in, shape=square))"},
  });
}

TEST(PiecesSaid, CountsInWords) {
  compare_trees({
      {"pair of hearts", "all(piece(count=2, shape=heart))"},
      {"half a dozen hearts", "all(piece(count=6, shape=heart))"},
      {"half dozen sage hearts", "all(piece(count=6, paper=Sage, shape=heart))"},
      {"a dozen hearts", "all(piece(count=12, shape=heart))"},
      {"a single circle", "all(piece(count=1, shape=circle), none(piece(count=2, shape=circle)))"},
      {"one circle only", "all(piece(count=1, shape=circle), none(piece(count=2, shape=circle)))"},
      {"two sage hearts only",
       "all(piece(count=2, paper=Sage, shape=heart), none(piece(count=3, paper=Sage, shape=heart)))"},
      {"two circles only on easels",
       "all(piece(count=2, shape=circle), none(piece(count=3, shape=circle)), fold=easel)"},
      {"single parent", "all(text=single, text=parent)"},
  });
}

TEST(PiecesSaid, DiesBySomeWordsOfTheirSet) {
  compare_trees({
      {"card with the moonrise die", "all(piece(die=Moonrise Circles))"},
      {"cut with the moonrise die", "all(piece(die=Moonrise Circles))"},
      {"made with moonrise dies", "all(piece(die=Moonrise Circles))"},
      {"cut with moonrise", "all(piece(die=Moonrise Circles))"},
      {"circles not cut with moonrise", "all(piece(shape=circle, none(die=Moonrise Circles)))"},
      {"circles not cut with the moonrise dies", "all(piece(shape=circle, none(die=Moonrise Circles)))"},
  });
}

TEST(PiecesSaid, EnvelopesAreFieldsOfTheSample) {
  compare_trees({
      {"C6 envelope", "all(envelope=c6)"},
      {"in a C6 envelope", "all(envelope=c6)"},
      {"easels with a C6 envelope", "all(fold=easel, envelope=c6)"},
      {"4-3/8 x 5-3/4 in envelope", "all(envelope=4-3/8in x 5-3/4in ±1/32in)"},
      {"envelope:C6", "all(envelope=c6)"},
      {"a2 envelope", "all(envelope=a2)"},
      {"in an American A2 envelope", "all(envelope=a2)"},
      {"A5 envelopes", "all(envelope=c5)"},
      {"slimline envelope", "all(envelope=slimline)"},
      {"4 bar envelope", "all(envelope=4 bar)"},
      {"envelope:\"4 bar\"", "all(envelope=4 bar)"},
      {"envelope:\"C6 lined\"", "all(envelope=c6 lined)"},
      {"circle, not in a C6 envelope", "all(piece(shape=circle), none(envelope=c6))"},
      {"no envelope", "all(no=envelope)"},
      {"C6 card", "all(closed=105mm x 148mm ±0.8mm)"},
  });
}

TEST(PiecesSaid, AColouredCardIsItsBase) {
  compare_trees({
      {"circle on a navy card", "all(piece(shape=circle), piece(paper=Navy, role=base))"},
      {"circle on a navy easel card", "all(piece(shape=circle), piece(paper=Navy, role=base), fold=easel)"},
      {"white easel or navy square",
       "all(any(all(colour=white (by value), fold=easel), piece(paper=Navy, shape=square)))"},
      {"white easel or a navy square",
       "all(any(all(colour=white (by value), fold=easel), piece(paper=Navy, shape=square)))"},
  });
}

}  // namespace
}  // namespace insetbook
