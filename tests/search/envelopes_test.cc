// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/envelopes.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(Envelopes, AreAskedForBySize) {
  EnvelopeIs envelope;
  envelope.size = SizeIs{
      .one_figure = false, .low = Length::inch_fraction(35, 8), .second = Length::inch_fraction(23, 4)};
  for (const char* written : {"4-3/8 x 5-3/4 in", "5-3/4 x 4-3/8 in", "4⅜ x 5¾", "4.375 x 5.75 in"})
    EXPECT_TRUE(envelope_says(written, envelope, Unit::inch)) << written;
  for (const char* written : {"", "C6", "4-3/8 x 5-7/8 in", "4-3/8 x 5-3/4 mm"})
    EXPECT_FALSE(envelope_says(written, envelope, Unit::inch)) << written;
}

TEST(Envelopes, AreAskedForByAllTheirWords) {
  EnvelopeIs envelope;
  envelope.words = {"c6", "lined"};
  EXPECT_TRUE(envelope_says("C6, lined", envelope, Unit::inch));
  EXPECT_TRUE(envelope_says("lined (C6)", envelope, Unit::inch));
  EXPECT_FALSE(envelope_says("C6", envelope, Unit::inch));
  EXPECT_FALSE(envelope_says("C65, lined", envelope, Unit::inch));
  envelope.words.clear();
  EXPECT_FALSE(envelope_says("C6", envelope, Unit::inch));
}

}  // namespace
}  // namespace insetbook
