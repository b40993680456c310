// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/place.h"

#include <gtest/gtest.h>

#include "card/glue.h"
#include "cards.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using cards::inches;

GroundAndPiece sizes(const char* ground, const char* piece) {
  const auto a = read_size(ground, Unit::inch), b = read_size(piece, Unit::inch);
  return {a->width, a->height, b->width, b->height};
}

std::string in_figures(const char* words, const char* ground, const char* piece) {
  const auto said = read_place(words, Unit::inch);
  if (!said) return "?";
  const auto found = find_place(*said, sizes(ground, piece), Unit::inch);
  if (!found) return "! " + found.error().what;
  return place_in_figures(*found, sizes(ground, piece), said->unit);
}

TEST(Place, FiguresOfWords) {
  const struct {
    const char *words, *ground, *piece, *figures;
  } cases[] = {
      {"", "4-1/4 x 5-1/2", "4 x 5-1/4", "1/8 in from both sides, 1/8 in from the top and the bottom"},
      {"centred", "4 x 5", "2 x 1", "1 in from both sides, 2 in from the top and the bottom"},
      {"centered", "4 x 5", "4 x 1", "flush left and right, 2 in from the top and the bottom"},
      // half of the space above
      {"high of centre", "4 x 6", "3 x 2", "1/2 in from both sides, 1 in from the top"},
      // which is less than the side border: as wide as the sides
      {"high of centre", "4 x 6", "2 x 5", "1 in from both sides, 1/2 in from the top and the bottom"},
      {"high of centre", "4 x 6", "2-1/2 x 4", "3/4 in from both sides, 3/4 in from the top"},
      {"low of centre", "4 x 6", "3 x 2", "1/2 in from both sides, 1 in from the bottom"},
      {"left of centre", "6 x 4", "2 x 3", "1 in from the left, 1/2 in from the top and the bottom"},
      {"bottom right", "4 x 5", "1 x 1", "1/8 in from the right, 1/8 in from the bottom"},
      {"top left corner", "4 x 5", "3-7/8 x 1", "1/16 in from both sides, 1/8 in from the top"},
      {"flush bottom", "4 x 5", "4 x 1", "flush left and right, flush bottom"},
      {"flush left", "4 x 5", "2 x 1", "flush left, 2 in from the top and the bottom"},
      {"hanging off the right edge by 3/8 in", "4 x 5", "2 x 1",
       "hanging off the right edge by 3/8 in, 2 in from the top and the bottom"},
      {"1/4 in from the bottom", "4 x 5", "2 x 1", "1 in from both sides, 1/4 in from the bottom"},
      {"1/8 in from both sides, 3/16 in from the top", "4-1/4 x 5-1/2", "4 x 5",
       "1/8 in from both sides, 3/16 in from the top"},
      {"1 in from the left and the top", "4 x 5", "2 x 1", "1 in from both sides, 1 in from the top"},
      {"1/2 in from the left and 1 in from the top", "4 x 5", "2 x 1",
       "1/2 in from the left, 1 in from the top"},
      {"same border at top and sides", "4-1/4 x 5-1/2", "4 x 5",
       "1/8 in from both sides, 1/8 in from the top"},
      {"top", "4 x 5", "2 x 1", "1 in from both sides, 1/8 in from the top"},
      {"5 mm from the top", "4 x 5", "2 x 1", "25.4 mm from both sides, 5 mm from the top"},
      {"1/4 in from the bottom right corner", "4 x 5", "2 x 1",
       "1/4 in from the right, 1/4 in from the bottom"},
  };
  for (const auto& c : cases) EXPECT_EQ(in_figures(c.words, c.ground, c.piece), c.figures) << c.words;
}

TEST(Place, ThatCannotBeSaysWhichFiguresDisagree) {
  EXPECT_EQ(
      in_figures("1 in from the left, 1 in from the right", "4 x 5", "3 x 1"),
      "! 1 in from the left, the piece of 3 in and 1 in from the right come to 5 in, and what it lies on is "
      "4 in wide");
  EXPECT_EQ(in_figures("1/8 in from both sides", "4-1/4 x 5", "4 x 1"),
            "1/8 in from both sides, 2 in from the top and the bottom");
  EXPECT_EQ(in_figures("hanging off the left edge by 3 in", "4 x 5", "2 x 1"),
            "! it would hang off by 3 in, and the piece is only 2 in wide");
  EXPECT_EQ(in_figures("6 in from the top", "4 x 5", "2 x 1"),
            "! 6 in from the top is past what it lies on, which is 5 in high");
}

TEST(Place, ThatIsNotUnderstoodIsRefused) {
  for (const char* words :
       {"somewhere nice", "3 in", "from the top", "by 1 in", "left and left", "1-9/8 in from the top"})
    EXPECT_FALSE(read_place(words, Unit::inch)) << words;
  const auto bad = read_place("somewhere nice", Unit::inch);
  ASSERT_FALSE(bad);
  EXPECT_EQ(bad.error().what, "the place \"somewhere nice\" is not understood");
}

TEST(Place, SpecialWords) {
  EXPECT_EQ(read_place("centred on the opening", Unit::inch)->centred_on, PlaceSaid::CentredOn::card);
  EXPECT_EQ(read_place("centred on the fold", Unit::inch)->centred_on, PlaceSaid::CentredOn::crease);
  EXPECT_TRUE(read_place("one in each corner", Unit::inch)->each_corner);
}

TEST(Glue, LiesWhereItWasSaid) {
  const Length wide = inches(4), high = inches(5);
  using Where = GlueSaid::Where;
  EXPECT_EQ(glued_parts({Where::strips, {{left_edge, inches(2)}}}, wide, high),
            (std::vector<Rect>{{Length(), Length(), inches(2), high}}));
  EXPECT_EQ(glued_parts({Where::strips, {{right_edge, inches(1)}}}, wide, high),
            (std::vector<Rect>{{inches(3), Length(), inches(1), high}}));
  EXPECT_EQ(glued_parts({Where::strips, {{top_edge, inches(1)}, {bottom_edge, inches(9)}}}, wide, high),
            (std::vector<Rect>{{Length(), Length(), wide, inches(1)}, {Length(), Length(), wide, high}}));
  EXPECT_EQ(glued_parts({}, wide, high), (std::vector<Rect>{{Length(), Length(), wide, high}}));
  EXPECT_TRUE(glued_parts({Where::none, {}}, wide, high).empty());
}

}  // namespace
}  // namespace insetbook
