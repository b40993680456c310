// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/openings.h"

#include <gtest/gtest.h>

#include "book/changes.h"
#include "book/invented.h"

namespace insetbook {
namespace {

void put(Change& change, std::string_view set, std::string_view die, std::string_view line,
         std::string_view kind, std::optional<Length> width, std::optional<int> rank = std::nullopt) {
  LineRow row = line_row(set, die, kind, "rectangle");
  row.line = line;
  row.rank = rank;
  if (width) row.measured = measured(*width, *width + Length::inches(1));
  ASSERT_TRUE(put_line(change, row));
}

Length in(std::int64_t whole) {
  return Length::inches(whole);
}

struct Drawer : TestBook {
  Drawer() {
    change("made", [](Change& change) {
      put_nested_set(change, "Tidepool Rectangles", 3);
      put_nested_set(change, "Tidepool Squares", 2);
      // Labelled, not numbered; ordered by size.
      put(change, "Harbour Tags", "buoy", "cut", "cut", in(1));
      put(change, "Harbour Tags", "anchor", "cut", "cut", in(3));
      put(change, "Harbour Tags", "gull", "cut", "cut", in(2));
      put(change, "Harbour Tags", "crab", "cut", "cut", std::nullopt);
      // One die with windows.
      put(change, "Lighthouse", "big label", "cut", "cut", in(5));
      put(change, "Lighthouse", "big label", "pierced", "pierced", in(4));
      put(change, "Lighthouse", "big label", "window", "window", in(2));
      put(change, "Lighthouse", "big label", "window 2", "window", in(1));
      // Plain and stitched by turns.
      for (int i = 0; i < 6; ++i) {
        put(change, "Alternating Ovals", std::string(1, static_cast<char>('a' + i)), "cut", "cut",
            in(10 - i));
        if (i % 2 == 1) {
          put(change, "Alternating Ovals", std::string(1, static_cast<char>('a' + i)), "stitched", "stitched",
              in(10 - i) - Length::inch_fraction(1, 8));
        }
      }
      put(change, "Frames Only", "x", "window", "window", in(2));
      put(change, "Frames Only", "x", "window 2", "window", in(1));
      put(change, "Frames Only", "y", "window", "window", in(3));
    });
  }
  std::string found(const OpeningWanted& wanted) {
    const Result<OpeningRecord> opening = find_opening(book, wanted);
    if (opening) return describe(*opening) + (opening->read_as.empty() ? "" : " read as " + opening->read_as);
    std::string text = opening.error().what + ": ";
    for (const std::string& one : opening.error().candidates) text += one + "; ";
    return text;
  }
};

OpeningWanted wanted(std::string_view name, std::optional<int> rank = std::nullopt,
                     std::string_view line = "", std::optional<int> from_smallest = std::nullopt) {
  OpeningWanted one;
  one.name = name;
  one.rank = rank;
  one.rank_from_smallest = from_smallest;
  one.line = line;
  one.text = name;
  return one;
}

TEST(FindOpening, TheOneMeant) {
  Drawer drawer;
  struct Row {
    OpeningWanted wanted;
    const char* found;
  };
  const std::vector<Row> rows{
      {wanted("tidepool rectangles 2"), "Tidepool Rectangles 2 (second largest), stitched"},
      {wanted("2 tidepool rectangles"), "Tidepool Rectangles 2 (second largest), stitched"},
      {wanted("tidepool rectangle 2", {}, "cut"), "Tidepool Rectangles 2 (second largest), cut"},
      {wanted("tidepool rectangle", 2, "stitched"), "Tidepool Rectangles 2 (second largest), stitched"},
      {wanted("rectangle", 1), "Tidepool Rectangles 1 (largest), stitched"},
      {wanted("rectangle tidepool", {}, "", 1), "Tidepool Rectangles 3 (third largest), stitched"},
      {wanted("tidpool rectangels 2"),
       "Tidepool Rectangles 2 (second largest), stitched read as Tidepool Rectangles 2"},
      {wanted("tidpool rectangels", 3),
       "Tidepool Rectangles 3 (third largest), stitched read as Tidepool Rectangles"},
      {wanted("harbour tags gull"), "Harbour Tags gull (second largest), cut"},
      {wanted("gull"), "Harbour Tags gull (second largest), cut"},
      {wanted("gull harbour"), "Harbour Tags gull (second largest), cut"},
      {wanted("harbour tag 1"), "Harbour Tags anchor (largest), cut"},
      {wanted("harbour tags", {}, "", 1), "Harbour Tags buoy (third largest), cut"},
      {wanted("crab"), "Harbour Tags crab, cut"},
      {wanted("lighthouse"), "Lighthouse big label (largest), pierced"},
      {wanted("big label"), "Lighthouse big label (largest), pierced"},
      {wanted("big label", {}, "window 2"), "Lighthouse big label (largest), window 2"},
      {wanted("alternating ovals", 2, "stitched"), "Alternating Ovals d (second largest), stitched"},
      {wanted("big label", {}, "window"), "Lighthouse big label (largest), window"},
      {wanted("frames only y"), "Frames Only y, window"},
      // Refused.
      {wanted("alternating ovals", 1),
       "2 dies answer to \"alternating ovals\": Alternating Ovals a, cut; Alternating Ovals b, stitched; "},
      {wanted("tidepool rectangles"),
       "3 dies answer to \"tidepool rectangles\": Tidepool Rectangles 1, stitched; Tidepool Rectangles 2, "
       "stitched; "
       "Tidepool Rectangles 3, stitched; "},
      {wanted("tidepool 2"),
       "2 dies answer to \"tidepool 2\": Tidepool Rectangles 2, stitched; Tidepool Squares 2, stitched; "},
      {wanted("frames only x"),
       "2 lines answer to \"frames only x\": Frames Only x, window; Frames Only x, window 2; "},
      {wanted("tidepool rectangles 2", {}, "embossed"),
       "Tidepool Rectangles 2 has no embossed line: Tidepool Rectangles 2, cut; Tidepool Rectangles 2, "
       "stitched; "},
      {wanted("tidepool rectangles", 9),
       "\"tidepool rectangles\": there are 3 dies in order, and none has that place: Tidepool Rectangles 1; "
       "Tidepool "
       "Rectangles 2; Tidepool Rectangles 3; "},
      {wanted("granite"),
       "no die answers to \"granite\": Alternating Ovals; Frames Only; Harbour Tags; Lighthouse; Tidepool "
       "Rectangles; "
       "Tidepool Squares; "},
      {wanted(""),
       "no die answers to \"\": Alternating Ovals; Frames Only; Harbour Tags; Lighthouse; Tidepool "
       "Rectangles; Tidepool Squares; "},
  };
  for (const Row& row : rows) EXPECT_EQ(drawer.found(row.wanted), row.found) << row.wanted.name;
}

TEST(FindOpening, InAnEmptyBook) {
  TestBook test;
  const auto none = find_opening(test.book, wanted("tidepool"));
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().expected, "the book has no dies yet: \"insetbook import\" takes a table of them");
}

TEST(Openings, OfASetByRankOutermostFirst) {
  Drawer drawer;
  std::string order;
  for (const OpeningRecord& one : openings_of_set(drawer.book, 1)) {
    order += one.die + " " + one.line + " " + std::to_string(one.rank) + "/" +
             std::to_string(one.dies_in_set) + "; ";
  }
  EXPECT_EQ(order, "1 cut 1/3; 1 stitched 1/3; 2 cut 2/3; 2 stitched 2/3; 3 cut 3/3; 3 stitched 3/3; ");
  order = "";
  for (const OpeningRecord& one : openings_of_set(drawer.book, 3))
    order += one.die + std::to_string(one.rank) + " ";
  EXPECT_EQ(order, "anchor1 gull2 buoy3 crab0 ");
  order = "";
  const std::int64_t label = find_opening(drawer.book, wanted("big label"))->die_id;
  for (const OpeningRecord& one : openings_of_die(drawer.book, label)) order += one.line + ", ";
  EXPECT_EQ(order, "cut, pierced, window, window 2, ");
}

TEST(Openings, MeasuredOnesInOneGo) {
  Drawer drawer;
  EXPECT_EQ(measured_openings(drawer.book, 1).size(), 6u);
  const auto all = measured_openings(drawer.book, std::nullopt);
  for (const OpeningRecord& one : all) {
    const auto same = opening(drawer.book, one.line_id);
    ASSERT_TRUE(same);
    EXPECT_EQ(same->rank, one.rank);
    EXPECT_EQ(same->width, one.width);
    EXPECT_TRUE(one.measured);
  }
  EXPECT_FALSE(opening(drawer.book, 999));
}

TEST(Openings, PanelsTriedAndPiecesOfSamples) {
  Drawer drawer;
  const std::int64_t line = find_opening(drawer.book, wanted("tidepool rectangles 2"))->line_id;
  drawer.change("tried", [&](Change& change) {
    TriedRow row;
    row.line_id = line;
    row.shape = "rectangle";
    row.width = in(2);
    row.height = in(3);
    row.result = "fits";
    row.date = "2025-05-01";
    EXPECT_TRUE(put_tried(change, row));
    row.date = "2026-05-01";
    row.sample_id = put_titled(change, "Card 1");
    EXPECT_TRUE(put_tried(change, row));
    row.result = "too tight";
    row.width = in(3);
    EXPECT_TRUE(put_tried(change, row));
    for (int i = 1; i <= 8; ++i) {
      ElementRow piece;
      piece.sample_id = put_titled(change, "Card " + std::to_string(i));
      piece.name = "panel";
      piece.shape = "rectangle";
      if (i < 8) piece.size = {in(2), in(3), Unit::inch, false, "2 x 3 in"};
      piece.in_line_id = line;
      EXPECT_TRUE(put_element(change, piece));
    }
  });
  const std::vector<TriedPanel> panels = tried_in(drawer.book, line);
  ASSERT_EQ(panels.size(), 10u);  // three by hand, seven pieces with a size
  EXPECT_EQ(panels[0].date, "2026-05-01");
  EXPECT_EQ(panels[0].sample, "Card 1");
  EXPECT_FALSE(panels[2].from_sample);
  EXPECT_TRUE(panels[3].from_sample);
  EXPECT_EQ(panels[3].element, "panel");
  EXPECT_EQ(panels[3].sample, "Card 7");  // of pieces without a date the newest row comes first

  // A condition sees the size before the sample is looked up, and leaves what was tried by hand alone.
  std::int64_t asked = 0;
  const std::vector<TriedPanel> some = tried_in(drawer.book, line, [&](const TriedPanel& piece) {
    EXPECT_EQ(piece.width, in(2));
    EXPECT_EQ(piece.sample, "");
    return asked++ < 2;
  });
  ASSERT_EQ(some.size(), 5u);
  EXPECT_EQ(asked, 7);
  EXPECT_EQ(some[4].element, "panel");
  EXPECT_EQ(tried_in(drawer.book, line, [](const TriedPanel&) { return false; }).size(), 3u);

  const std::vector<TriedCount> counts = tried_counts_in(drawer.book, line);
  ASSERT_EQ(counts.size(), 2u);
  EXPECT_EQ(counts[0].by_hand, 2);
  EXPECT_EQ(counts[0].pieces, 7);
  EXPECT_EQ(counts[0].samples, (std::vector<std::int64_t>{7, 6, 5, 4, 3}));
  EXPECT_EQ(counts[1].result, "too tight");
  std::int64_t by_hand = 0, pieces = 0;
  for (const TriedCount& each : tried_counts_in_set(drawer.book, 1)) {
    by_hand += each.by_hand;
    pieces += each.pieces;
  }
  EXPECT_EQ(by_hand, 3);
  EXPECT_EQ(pieces, 7);
  const std::optional<TriedCount> fits = fits_by_hand_in(drawer.book, line);
  ASSERT_TRUE(fits);
  EXPECT_EQ(fits->width, in(2));
  EXPECT_EQ(tried_counts_in_set(drawer.book, 2).size(), 0u);
}

TEST(Openings, AnUnmeasuredOneHasNoShapeYet) {
  Drawer drawer;
  const auto shape = shape_of(*find_opening(drawer.book, wanted("crab")));
  ASSERT_FALSE(shape);
  EXPECT_EQ(shape.error().what, "Harbour Tags crab, cut is not measured yet");
  EXPECT_EQ(shape.error().expected, "its size: insetbook measure \"Harbour Tags crab, cut\" --size SIZE");
}

}  // namespace
}  // namespace insetbook
