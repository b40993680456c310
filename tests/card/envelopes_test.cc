// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/envelopes.h"

#include <gtest/gtest.h>

#include "measure/write.h"

namespace insetbook {
namespace {

const Length eighth = Length::inch_fraction(1, 8);

std::string read(std::string_view text, Unit no_unit = Unit::inch) {
  const auto envelope = read_envelope(text, no_unit);
  if (!envelope) return "";
  return envelope->means + (envelope->other.empty() ? "" : "; or " + envelope->other);
}

TEST(Envelopes, AreReadByNameOrFigures) {
  EXPECT_EQ(read("C6"), "C6 envelope, 114 x 162 mm");
  EXPECT_EQ(read("c6 envelopes"), "C6 envelope, 114 x 162 mm");
  EXPECT_EQ(read("C6, lined"), "C6 envelope, 114 x 162 mm");
  EXPECT_EQ(read("C6 (lined)"), "C6 envelope, 114 x 162 mm");
  EXPECT_EQ(read("a2 envelope"), "A2 envelope, 4-3/8 x 5-3/4 in");
  EXPECT_EQ(read("A2"), "A2 envelope, 4-3/8 x 5-3/4 in");
  EXPECT_EQ(read("envelope A7"), "A7 envelope, 5-1/4 x 7-1/4 in; or C7 envelope, 81 x 114 mm");
  EXPECT_EQ(read("A6"), "A6 envelope, 4-3/4 x 6-1/2 in; or C6 envelope, 114 x 162 mm");
  EXPECT_EQ(read("A5 envelope"), "C5 envelope, 162 x 229 mm");
  EXPECT_EQ(read("#10"), "No. 10 envelope, 4-1/8 x 9-1/2 in");
  EXPECT_EQ(read("4-3/8 x 5-3/4 in"), "4-3/8 x 5-3/4 in");
  EXPECT_EQ(read("4⅜ x 5¾"), "4-3/8 x 5-3/4 in");
  EXPECT_EQ(read("114 x 162 mm envelope"), "114 x 162 mm");
  EXPECT_EQ(read("114 x 162", Unit::mm), "114 x 162 mm");
  EXPECT_EQ(read("5-3/4 x 4-3/8 in; lined"), "5-3/4 x 4-3/8 in");
}

TEST(Envelopes, AreNotReadOutOfOtherWords) {
  for (const char* text :
       {"", "none", "none, stamp on the back", "with the book", "5 in", "A4 paper", "letter"})
    EXPECT_EQ(read(text), "") << text;
}

TEST(Envelopes, TakeACardThatIsTheSlackSmallerEachWay) {
  const Length width = Length::inch_fraction(35, 8), height = Length::inch_fraction(23, 4);
  const auto fits = [&](Length card_width, Length card_height, std::optional<Length> thickness = {}) {
    return fit_in_envelope({card_width, card_height, thickness}, width, height, eighth).goes_in;
  };
  // The American A2 card, 4-1/4 x 5-1/2 in, in the A2 envelope: 1/8 in is left of the width, just enough.
  const Length card_width = Length::inch_fraction(17, 4), card_height = Length::inch_fraction(11, 2);
  EXPECT_TRUE(fits(card_width, card_height));
  EXPECT_TRUE(fits(card_height, card_width));
  EXPECT_FALSE(fits(card_width + Length::nm(1), card_height));
  EXPECT_TRUE(fits(card_width, height - eighth));
  EXPECT_FALSE(fits(card_width, height - eighth + Length::nm(1)));
  // Its thickness takes of the same 1/8 in, and no more than that is there.
  EXPECT_TRUE(fits(card_width, card_height, eighth));
  EXPECT_FALSE(fits(card_width, card_height, eighth + Length::nm(1)));
  EXPECT_TRUE(fit_in_envelope({card_width, card_height, {}}, width, height, Length()).goes_in);
}

TEST(Envelopes, SayWhatIsLeft) {
  const EnvelopeFit fit = fit_in_envelope({Length::inch_fraction(11, 2), Length::inch_fraction(17, 4), {}},
                                          Length::inch_fraction(35, 8), Length::inch_fraction(23, 4), eighth);
  EXPECT_TRUE(fit.goes_in);
  EXPECT_TRUE(fit.turned);
  EXPECT_EQ(write(fit.left_width, Unit::inch), "1/4 in");
  EXPECT_EQ(write(fit.left_height, Unit::inch), "1/8 in");
  EXPECT_EQ(fit.wanted, eighth);
  const EnvelopeFit none = fit_in_envelope({Length::mm(150), Length::mm(120), Length::mm(4)}, Length::mm(114),
                                           Length::mm(162), Length::mm(3));
  EXPECT_FALSE(none.goes_in);
  EXPECT_TRUE(none.turned);  // 12 and -6 mm against -36 and 42
  EXPECT_EQ(none.left_width, Length::mm(12));
  EXPECT_EQ(none.left_height, Length::mm(-6));
  EXPECT_EQ(none.wanted, Length::mm(4));
}

TEST(Envelopes, TheSmallestThatTakesACardIsNamedFirst) {
  const auto smallest = [](Length width, Length height, std::optional<Length> thickness, Length slack) {
    const auto all = envelopes_for({width, height, thickness}, slack);
    return all.empty() ? std::string() : std::string(all.front().envelope->name);
  };
  EXPECT_EQ(smallest(Length::inch_fraction(17, 4), Length::inch_fraction(11, 2), {}, eighth), "A2");
  EXPECT_EQ(smallest(Length::mm(148), Length::mm(105), {}, Length::mm(3)), "C6");
  EXPECT_EQ(smallest(Length::mm(140), Length::mm(105), {}, Length::mm(3)), "A2");
  EXPECT_EQ(smallest(Length::mm(140), Length::mm(105), Length::mm(8), Length::mm(3)), "C6");
  EXPECT_EQ(smallest(Length::inches(5), Length::inches(7), {}, eighth), "A7");
  EXPECT_EQ(smallest(Length::inches(6), Length::inches(6), {}, eighth), "160 mm square");
  EXPECT_EQ(smallest(Length::mm(2000), Length::mm(10), {}, Length()), "");
  const auto all = envelopes_for({Length::mm(105), Length::mm(148), {}}, Length::mm(3));
  ASSERT_GT(all.size(), 10u);
  for (std::size_t i = 1; i < all.size(); ++i)
    EXPECT_LE(all[i - 1].envelope->width.nm() * all[i - 1].envelope->height.nm(),
              all[i].envelope->width.nm() * all[i].envelope->height.nm());
}

TEST(Envelopes, EachTakesTheCardThatIsPutIntoIt) {
  int taken = 0;
  for (const EnvelopeSize& envelope : envelopes()) {
    EXPECT_FALSE(envelope.from.source.empty()) << envelope.name;
    EXPECT_EQ(envelope_named(envelope.name), &envelope);
    if (envelope.takes.empty()) continue;
    // The smallest C sizes leave less than 3 mm round their A sizes.
    const bool small = envelope.unit == Unit::mm && envelope.width < Length::mm(60);
    EXPECT_TRUE(fit_in_envelope({envelope.card_width, envelope.card_height, {}}, envelope.width,
                                envelope.height, small ? Length::mm(2) : Length::mm(3))
                    .goes_in)
        << envelope.name;
    ++taken;
  }
  EXPECT_GE(taken, 20);
}

}  // namespace
}  // namespace insetbook
