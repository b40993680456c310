// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_opening.h"

#include <gtest/gtest.h>

#include <string>

namespace insetbook {
namespace {

std::string printed(const OpeningPhrase& phrase) {
  std::string text = "[" + phrase.name + "]";
  if (phrase.rank) text += " rank " + std::to_string(*phrase.rank);
  if (phrase.rank_from_smallest) text += " from smallest " + std::to_string(*phrase.rank_from_smallest);
  if (!phrase.line.empty()) text += " line " + phrase.line;
  return text;
}

struct Case {
  const char* said;
  const char* read;
};

TEST(ReadOpening, Phrases) {
  const Case cases[] = {
      {"second largest tidepool rectangle", "[tidepool rectangle] rank 2"},
      {"the second largest tidepool rectangle, stitched", "[tidepool rectangle] rank 2 line stitched"},
      {"Second-largest Tidepool Rectangle (stitched line)", "[tidepool rectangle] rank 2 line stitched"},
      {"second largest tidepool rectangle?", "[tidepool rectangle] rank 2"},
      {"2nd largest tidepool rectangle stitched", "[tidepool rectangle] rank 2 line stitched"},
      {"the second biggest of the tidepool rectangles", "[tidepool rectangles] rank 2"},
      {"second largest die of the tidepool rectangles", "[tidepool rectangles] rank 2"},
      {"the third tidepool rectangle", "[tidepool rectangle] rank 3"},
      {"tidepool rectangles, second largest", "[tidepool rectangles] rank 2"},
      {"next to largest tidepool rectangle", "[tidepool rectangle] rank 2"},
      {"next largest tidepool rectangle", "[tidepool rectangle] rank 2"},
      {"second from the largest tidepool rectangle", "[tidepool rectangle] rank 2"},
      {"the largest tidepool rectangle", "[tidepool rectangle] rank 1"},
      {"tidepool rectangles 2", "[tidepool rectangles 2]"},
      {"tidepool rectangles 2, stitched", "[tidepool rectangles 2] line stitched"},
      {"tidepool rectangles #2", "[tidepool rectangles 2]"},
      {"tidepool rectangles no. 2", "[tidepool rectangles 2]"},
      {"tidepool rectangles die 2", "[tidepool rectangles 2]"},
      {"die 2 of the tidepool rectangles", "[tidepool rectangles 2]"},
      {"the smallest moonrise circle", "[moonrise circle] from smallest 1"},
      {"second smallest moonrise circle", "[moonrise circle] from smallest 2"},
      {"second to smallest moonrise circle", "[moonrise circle] from smallest 2"},
      {"window of the big label", "[big label] line window"},
      {"the window in the big label", "[big label] line window"},
      {"window 2 of the big label", "[big label] line window 2"},
      {"big label, window 2", "[big label] line window 2"},
      {"big label window", "[big label] line window"},
      {"the sewn line of the largest tidepool rectangle", "[tidepool rectangle] rank 1 line stitched"},
      {"cut edge of tidepool rectangles 3", "[tidepool rectangles 3] line cut"},
      {"stitched rectangles 2", "[stitched rectangles 2]"},
      {"second largest stitched rectangle", "[stitched rectangle] rank 2"},
      {"window", "[window]"},
      {"", "[]"},
      {"the", "[]"},
      {"largest", "[] rank 1"},
  };
  for (const Case& c : cases) EXPECT_EQ(printed(read_opening(c.said)), c.read) << c.said;
}

TEST(ReadOpening, KeepsTheTextAsTyped) {
  EXPECT_EQ(read_opening("  The SECOND largest Tidepool rectangle ").text,
            "The SECOND largest Tidepool rectangle");
}

TEST(ReadOpening, LineInsideTheNameIsTheOtherReading) {
  const auto readings = readings_of_opening("second largest stitched rectangle");
  ASSERT_EQ(readings.size(), 2u);
  EXPECT_EQ(printed(readings[0]), "[stitched rectangle] rank 2");
  EXPECT_EQ(printed(readings[1]), "[rectangle] rank 2 line stitched");
  EXPECT_EQ(readings_of_opening("tidepool rectangles 2, stitched").size(), 1u);
  EXPECT_EQ(readings_of_opening("tidepool rectangles 2").size(), 1u);
}

TEST(ReadOpening, RanksOnTheirOwn) {
  EXPECT_EQ(read_rank("2"), 2);
  EXPECT_EQ(read_rank("second largest"), 2);
  EXPECT_EQ(read_rank("2nd largest"), 2);
  EXPECT_EQ(read_rank("largest"), 1);
  EXPECT_EQ(read_rank("the largest"), 1);
  EXPECT_EQ(read_rank("third"), 3);
  EXPECT_EQ(read_rank("die 4"), 4);
  EXPECT_EQ(read_rank("smallest"), std::nullopt);
  EXPECT_EQ(read_rank("0"), std::nullopt);
  EXPECT_EQ(read_rank("2023"), std::nullopt);
  EXPECT_EQ(read_rank("large tag"), std::nullopt);
  EXPECT_EQ(read_rank(""), std::nullopt);
  EXPECT_EQ(read_rank_from_smallest("smallest"), 1);
  EXPECT_EQ(read_rank_from_smallest("third smallest"), 3);
  EXPECT_EQ(read_rank_from_smallest("2"), std::nullopt);
}

TEST(ReadOpening, LineKinds) {
  EXPECT_EQ(line_kind("sewn"), "stitched");
  EXPECT_EQ(line_kind("stitched line"), "stitched");
  EXPECT_EQ(line_kind("outer edge"), "cut");
  EXPECT_EQ(line_kind("aperture"), "window");
  EXPECT_EQ(line_kind("score"), "scored");
  EXPECT_EQ(line_kind("wavy"), "");
  EXPECT_EQ(line_kind(""), "");
}

}  // namespace
}  // namespace insetbook
