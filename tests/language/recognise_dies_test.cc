// SPDX-License-Identifier: GPL-3.0-or-later
//
// The recogniser of die sets, their dies by order, label and number, and lines: text → the span and the die.
#include <gtest/gtest.h>

#include "language/offers.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

void compare(std::initializer_list<Case> cases) {
  const Offers offers;
  for (const Case& each : cases) EXPECT_EQ(offers.on(each.text, says_any<DieIs>), each.offered) << each.text;
}

TEST(Dies, SetsByName) {
  compare({
      {"tidepool rectangles", "0-19 die=Tidepool Rectangles"},
      {"Tidepool Rectangle", "0-18 die=Tidepool Rectangles"},
      {"tidepool rectangle dies", "0-23 die=Tidepool Rectangles"},
      {"tidepool rectangle die set", "0-26 die=Tidepool Rectangles"},
      {"a kelp circle", "2-13 die=Kelp Circles"},
      {"tide", ""},
      {"moonbeam circles", ""},
      {"second largest", ""},
  });
}

TEST(Dies, ByNumberAndLabel) {
  compare({
      {"tidepool rectangles 2", "0-21 die=Tidepool Rectangles 2"},
      {"tidepool rectangles no. 2", "0-25 die=Tidepool Rectangles 2"},
      {"tidepool rectangles #2", "0-22 die=Tidepool Rectangles 2"},
      {"tidepool rectangles nr 2", "0-24 die=Tidepool Rectangles 2"},
      {"tidepool rectangles die 2", "0-25 die=Tidepool Rectangles 2"},
      {"tidepool rectangles 99", "0-22 die=Tidepool Rectangles 99"},
      {"die 2 of the tidepool rectangles", "0-32 die=Tidepool Rectangles 2"},
      {"no. 2 tidepool rectangle", "0-24 die=Tidepool Rectangles 2"},
      {"#2 tidepool rectangle", "0-21 die=Tidepool Rectangles 2"},
      {"big labels large tag", "0-20 die=Big Labels large tag"},
      {"big label small tag", "0-19 die=Big Labels small tag"},
      // a size, and what is no number of the set
      {"tidepool rectangles 2 in", "0-19 die=Tidepool Rectangles"},
      {"tidepool rectangles 2 x 3", "0-19 die=Tidepool Rectangles"},
      {"tidepool rectangles 2-1/2", "0-19 die=Tidepool Rectangles"},
  });
}

TEST(Dies, ByOrder) {
  compare({
      {"largest tidepool rectangle", "0-26 die=Tidepool Rectangles, largest"},
      {"the largest tidepool rectangle", "4-30 die=Tidepool Rectangles, largest"},
      {"biggest tidepool rectangle", "0-26 die=Tidepool Rectangles, largest"},
      {"second largest tidepool rectangle", "0-33 die=Tidepool Rectangles, second largest"},
      {"2nd largest tidepool rectangle", "0-30 die=Tidepool Rectangles, second largest"},
      {"smallest tidepool rectangle", "0-27 die=Tidepool Rectangles, smallest"},
      {"second smallest tidepool rectangle", "0-34 die=Tidepool Rectangles, second smallest"},
      {"smallest but one tidepool rectangle", "0-35 die=Tidepool Rectangles, second smallest"},
      {"next to smallest tidepool rectangle", "0-35 die=Tidepool Rectangles, second smallest"},
      {"third tidepool rectangle", "0-24 die=Tidepool Rectangles, third largest"},
      {"second from the top tidepool rectangle", "0-38 die=Tidepool Rectangles, second largest"},
      {"middle tidepool rectangle", "0-25 die=Tidepool Rectangles, third largest"},
      {"tidepool rectangles, second largest", "0-35 die=Tidepool Rectangles, second largest"},
      {"tidepool rectangles, the second largest one", "0-43 die=Tidepool Rectangles, second largest"},
      {"tidepool rectangles' third", "0-26 die=Tidepool Rectangles, third largest"},
      {"largest of the tidepool rectangles", "0-34 die=Tidepool Rectangles, largest"},
  });
}

TEST(Dies, HowThePieceGoesWithIt) {
  compare({
      {"from tidepool rectangles 2", "0-26 die=Tidepool Rectangles 2"},
      {"using tidepool rectangles 2", "0-27 die=Tidepool Rectangles 2"},
      {"cut with tidepool rectangles 2", "0-30 die=Tidepool Rectangles 2"},
      {"cut by the tidepool rectangles", "0-30 die=Tidepool Rectangles"},
      {"in tidepool rectangles 2", "0-24 in=Tidepool Rectangles 2"},
      {"in the second largest tidepool rectangle", "0-40 in=Tidepool Rectangles, second largest"},
      {"inside the largest tidepool rectangle", "0-37 in=Tidepool Rectangles, largest"},
      {"within tidepool rectangles 2", "0-28 in=Tidepool Rectangles 2"},
      {"on tidepool rectangles 2", "3-24 die=Tidepool Rectangles 2"},
      {"die:\"tidepool rectangles 2\"", "0-27 die=Tidepool Rectangles 2"},
      {"in:\"tidepool rectangles 2\"", "0-26 in=Tidepool Rectangles 2"},
  });
}

TEST(Dies, Lines) {
  compare({
      {"tidepool rectangles 2, stitched", "0-31 die=Tidepool Rectangles 2, stitched"},
      {"tidepool rectangles 2 stitched line", "0-35 die=Tidepool Rectangles 2, stitched"},
      {"tidepool rectangles 2, stitched line", "0-36 die=Tidepool Rectangles 2, stitched"},
      {"the stitched line of tidepool rectangles 2", "4-42 die=Tidepool Rectangles 2, stitched"},
      {"stitched edge of the largest tidepool rectangle", "0-47 die=Tidepool Rectangles, largest, stitched"},
      {"window of the big label large tag", "0-33 die=Big Labels large tag, window"},
      {"in tidepool rectangles 2, stitched, with a circle", "0-34 in=Tidepool Rectangles 2, stitched"},
      // how a piece was treated, where it does not say outright that it is a line
      {"stitched tidepool rectangle", "9-27 die=Tidepool Rectangles"},
      {"tidepool rectangles 2, embossed", "0-21 die=Tidepool Rectangles 2"},
      {"tidepool rectangles 2, stitched circle", "0-21 die=Tidepool Rectangles 2"},
  });
}

}  // namespace
}  // namespace insetbook
