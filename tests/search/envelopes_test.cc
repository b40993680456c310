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
  // Written by its name: the American A2 envelope has that size.
  for (const char* written : {"A2", "a2 envelope", "A2, lined"})
    EXPECT_TRUE(envelope_says(written, envelope, Unit::inch)) << written;
  for (const char* written : {"", "C6", "A6", "4-3/8 x 5-7/8 in", "4-3/8 x 5-3/4 mm"})
    EXPECT_FALSE(envelope_says(written, envelope, Unit::inch)) << written;
}

TEST(Envelopes, AreAskedForByName) {
  const EnvelopeIs c6{.words = {"c6"}, .said = "C6", .named = true};
  for (const char* written : {"C6", "c6, lined", "lined (C6)", "114 x 162 mm", "162 x 114 mm", "ISO C6"})
    EXPECT_TRUE(envelope_says(written, c6, Unit::inch)) << written;
  // C6/C5 has the words of C6, and is larger; an exact size is within 0.8 mm.
  for (const char* written : {"", "none", "C6/C5", "A6", "114 x 163 mm", "114 x 162", "4-3/8 x 5-3/4 in"})
    EXPECT_FALSE(envelope_says(written, c6, Unit::inch)) << written;
  EXPECT_TRUE(envelope_says("114 x 162", c6, Unit::mm));
  EXPECT_TRUE(envelope_says("114.8 x 162 mm", c6, Unit::mm));
  EXPECT_FALSE(envelope_says("114.9 x 162 mm", c6, Unit::mm));
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
