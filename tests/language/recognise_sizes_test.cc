// SPDX-License-Identifier: GPL-3.0-or-later
//
// The recogniser of sizes and counts: text → the spans that it offers, and what each means.
#include <gtest/gtest.h>

#include "language/offers.h"

namespace insetbook {
namespace {

struct Case {
  const char* text;
  const char* offered;
};

bool is_size(const Seen& seen) {
  return seen.as == As::number || says_any<SizeIs>(seen);
}

void compare(const Offers& offers, std::initializer_list<Case> cases) {
  for (const Case& each : cases) EXPECT_EQ(offers.on(each.text, is_size), each.offered) << each.text;
}

TEST(Sizes, OneFigure) {
  compare(Offers(), {
                        {"2 in", "0-4 size=2in ±1/32in"},
                        {"2in", "0-3 size=2in ±1/32in"},
                        {"2\"", "0-2 size=2in ±1/32in"},
                        {"2 inch", "0-6 size=2in ±1/32in"},
                        {"2-3/8 in", "0-8 size=2-3/8in ±1/32in"},
                        {"2 3/8 in", "0-8 size=2-3/8in ±1/32in"},
                        {"2⅜ in", "0-7 size=2-3/8in ±1/32in"},
                        {"2.375 inches", "0-12 size=2-3/8in ±1/32in"},
                        {"two inches", "0-10 size=2in ±1/32in"},
                        {"two and three eighths inches", "0-28 size=2-3/8in ±1/32in"},
                        {"a quarter inch", "0-14 size=1/4in ±1/32in"},
                        {"half an inch", "0-12 size=1/2in ±1/32in"},
                        {"an inch and a half", "0-18 size=1-1/2in ±1/32in"},
                        {"60 mm", "0-5 size=60mm ±0.8mm"},
                        {"6 cm", "0-4 size=60mm ±0.8mm"},
                        {"6,5 cm", "0-6 size=65mm ±0.8mm"},
                        {"a 2 in circle", "2-6 size=2in ±1/32in"},
                        {"2 in circle, 3 in square", "0-4 size=2in ±1/32in; 13-17 size=3in ±1/32in"},
                        {"circle", ""},
                    });
}

TEST(Sizes, TwoFiguresAndTheirSides) {
  compare(Offers(), {
                        {"2 x 3 in", "0-8 size=2in x 3in ±1/32in"},
                        {"2 by 3 in", "0-9 size=2in x 3in ±1/32in"},
                        {"2 in x 3 in", "0-11 size=2in x 3in ±1/32in"},
                        {"5 x 7", "0-5 size=5in x 7in ±1/32in"},
                        {"60 x 80 mm", "0-10 size=60mm x 80mm ±0.8mm"},
                        {"W 2 x H 3 in", "0-12 size=2in wide x 3in tall ±1/32in"},
                        {"3 in tall x 2 in wide", "0-21 size=2in wide x 3in tall ±1/32in"},
                        {"2 x 3 in tall", "0-13 size=2in wide x 3in tall ±1/32in"},
                        {"2 x 3 in wide", "0-13 size=3in wide x 2in tall ±1/32in"},
                        {"3 in tall", "0-9 size=3in tall ±1/32in"},
                        {"3 in high", "0-9 size=3in tall ±1/32in"},
                        {"2 in wide", "0-9 size=2in wide ±1/32in"},
                        {"1/4 in in width", "0-15 size=1/4in wide ±1/32in"},
                        {"13 in long", "0-10 size=13in ±1/32in"},
                        {"2 in across", "0-11 size=2in ±1/32in"},
                        {"2 in diameter", "0-13 size=2in ±1/32in"},
                        {"with a diameter of 2 in", "0-23 size=2in ±1/32in"},
                        {"ø 60 mm", "0-8 size=60mm ±0.8mm"},
                        {"2 x 3 in tall card", "0-13 size=2in wide x 3in tall ±1/32in"},
                    });
}

TEST(Sizes, Relations) {
  compare(Offers(), {
                        {"exactly 2 in", "0-12 size=2in ±1/32in"},
                        {"about 2 in", "0-10 size=about 2in ±1/8in"},
                        {"~2 in", "0-5 size=about 2in ±1/8in"},
                        {"roughly 60 mm", "0-13 size=about 60mm ±3mm"},
                        {"around 2 in", "0-11 size=about 2in ±1/8in"},
                        {"2 in or so", "0-10 size=about 2in ±1/8in"},
                        {"under 3 in", "0-10 size=under 3in"},
                        {"smaller than 3 in", "0-17 size=under 3in"},
                        {"less than 3 in", "0-14 size=under 3in"},
                        {"below 3 in", "0-10 size=under 3in"},
                        {"< 3 in", "0-6 size=under 3in"},
                        {"over 2 in", "0-9 size=over 2in"},
                        {"wider than 2 in", "0-15 size=over 2in"},
                        {"more than 2 in", "0-14 size=over 2in"},
                        {"> 2 in", "0-6 size=over 2in"},
                        {"at least 2 in", "0-13 size=at least 2in"},
                        {"no smaller than 2 in", "0-20 size=at least 2in"},
                        {"min. 2 in", "0-9 size=at least 2in"},
                        {"2 in or more", "0-12 size=at least 2in"},
                        {">= 2 in", "0-7 size=at least 2in"},
                        {"at most 2 in", "0-12 size=at most 2in"},
                        {"up to 2 in", "0-10 size=at most 2in"},
                        {"2 in or less", "0-12 size=at most 2in"},
                        {"<= 2 in", "0-7 size=at most 2in"},
                        {"under 5 x 7 in", "0-14 size=under 5in x 7in"},
                    });
}

TEST(Sizes, RangesAndTolerances) {
  compare(Offers(), {
                        {"2 to 3 in", "0-9 size=2in to 3in"},
                        {"2-3 in", "0-6 size=2in to 3in"},
                        {"2..3 in", "0-7 size=2in to 3in"},
                        {"between 2 and 3 in", "0-18 size=2in to 3in"},
                        {"between two and three inches", "0-28 size=2in to 3in"},
                        {"from 2 to 3 in", "0-14 size=2in to 3in"},
                        {"2 in and 3 in", "0-4 size=2in ±1/32in; 9-13 size=3in ±1/32in"},
                        {"2 in ± 1/16 in", "0-15 size=2in ±1/16in"},
                        {"2 in +- 1/16", "0-12 size=2in ±1/16in"},
                        {"2 in give or take a sixteenth", "0-29 size=2in ±1/16in"},
                        {"about 2 in ± 1/4 in", "0-20 size=about 2in ±1/4in"},
                    });
}

// A number without a unit may be a count; only what stands beside it tells.
TEST(Sizes, PlainNumbers) {
  compare(Offers(), {
                        {"2", "0-1 count 2 | size=2in ±1/32in"},
                        {"two", "0-3 count 2 | size=2in ±1/32in"},
                        {"a dozen", "0-7 count 12"},
                        {"a pair of", "0-9 count 2"},
                        {"a couple of", "0-11 count 2"},
                        {"2x", "0-2 count 2 | size=2in ±1/32in"},
                        {"more than 2", "0-11 count 2 | size=over 2in"},
                        {"at least two", "0-12 count 2 | size=at least 2in"},
                        {"exactly 2", "0-9 count 2 | size=2in ±1/32in"},
                        {"999", "0-3 count 999 | size=999in ±1/32in"},
                        {"1000", "0-4 size=1000in ±1/32in"},
                        {"2.5", "0-3 size=2-1/2in ±1/32in"},
                        {"2-3", "0-3 count 2 | size=2in to 3in"},
                        {"2-3/8", "0-5 size=2-3/8in ±1/32in"},
                    });
}

TEST(Sizes, OfAMetricBook) {
  compare(Offers(Unit::mm), {
                                {"60", "0-2 count 60 | size=60mm ±0.8mm"},
                                {"60 x 80", "0-7 size=60mm x 80mm ±0.8mm"},
                                {"about 60", "0-8 count 60 | size=about 60mm ±3mm"},
                                {"2 in", "0-4 size=2in ±1/32in"},
                                {"2-3/8 in", "0-8 size=2-3/8in ±1/32in"},
                                {"2-3/8", "0-5 size=2-3/8in ±1/32in"},
                                {"2-3/8 x 4-1/8", "0-13 size=2-3/8in x 4-1/8in ±1/32in"},
                            });
}

// A size that cannot be is never offered: the reader tells it as a problem.
TEST(Sizes, ThatCannotBe) {
  for (const char* text : {"1/0 in", "1e3 in", "2,500 mm", "0x2 in"})
    EXPECT_EQ(Offers().on(text, is_size), "") << text;
}

}  // namespace
}  // namespace insetbook
