// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/post.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace insetbook {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

PostItem item_mm(int width, int height, std::optional<int> thickness_um, std::optional<std::int64_t> mg) {
  PostItem item{Length::mm(width), Length::mm(height), Unit::mm, {}, mg};
  if (thickness_um) item.thickness = Length::nm(*thickness_um * std::int64_t{1000});
  return item;
}

PostAnswer by(std::string_view service, const PostItem& item) {
  for (PostAnswer& answer : post(item))
    if (answer.service == service) return std::move(answer);
  ADD_FAILURE() << service << " is not in the table";
  return {};
}

TEST(Post, EachServiceAnswersWithSourceYearAndAdvice) {
  const auto answers = post(item_mm(114, 162, 2000, 18'000));
  EXPECT_GE(answers.size(), 4u);
  for (const PostAnswer& answer : answers) {
    EXPECT_EQ(answer.outcome, PostOutcome::goes) << answer.service;
    EXPECT_FALSE(answer.format.empty()) << answer.service;
    EXPECT_EQ(answer.advice, "check with the local post office");
    EXPECT_FALSE(answer.sources.empty()) << answer.service;
    EXPECT_GE(answer.from.year, 2000) << answer.service;
    EXPECT_THAT(answer.why, IsEmpty()) << answer.service;
    EXPECT_THAT(answer.not_checked, IsEmpty()) << answer.service;
    EXPECT_FALSE(answer.kept.empty()) << answer.service;
  }
  EXPECT_EQ(by("Royal Mail", item_mm(162, 114, 2000, 18'000)).kept,
            (std::vector<std::string>{"length 162 mm, at most 240 mm", "width 114 mm, at most 165 mm",
                                      "thickness 2 mm, at most 5 mm", "mass 18 g, at most 100 g"}));
}

TEST(Post, WhatIsSecondHandSaysSo) {
  EXPECT_THAT(by("Deutsche Post", item_mm(114, 162, 2000, 18'000)).sources,
              Contains(HasSubstr("second hand")));
  EXPECT_THAT(by("Royal Mail", item_mm(114, 162, 2000, 18'000)).sources,
              Contains("four pages on Royal Mail's formats, which agree (undated, read 2026), second hand"));
  EXPECT_THAT(by("USPS", item_mm(114, 162, 2000, 18'000)).sources,
              Contains("DMM 101.1.1, archive of 2021-01-24 (2021)"));
}

TEST(Post, WhatIsNotKnownIsSaidAndNotTakenForKept) {
  const PostAnswer answer = by("Royal Mail", item_mm(114, 162, {}, {}));
  EXPECT_EQ(answer.outcome, PostOutcome::goes);
  EXPECT_EQ(answer.format, "letter");
  EXPECT_THAT(answer.not_checked,
              ElementsAre("thickness not known: at most 5 mm", "mass not known: at most 100 g"));
  EXPECT_THAT(answer.kept, ElementsAre("length 162 mm, at most 240 mm", "width 114 mm, at most 165 mm"));
  EXPECT_THAT(by("USPS", item_mm(114, 162, {}, {})).not_checked,
              Contains("mass not known: at most 3.5 oz (99.223 g)"));
}

TEST(Post, ASquareEnvelopeIsTakenAsTheServiceSays) {
  const PostItem square{Length::inches(6), Length::inches(6), Unit::inch, Length::inch_fraction(1, 16),
                        15'000};
  const PostAnswer usps = by("USPS", square);
  EXPECT_EQ(usps.outcome, PostOutcome::surcharge);
  EXPECT_EQ(usps.format, "letter");
  EXPECT_EQ(usps.verdict, "goes as a non-machinable letter, which costs more");
  EXPECT_THAT(usps.why, ElementsAre("letter: length 1 times the width, at least 1.3"));
  const PostAnswer german = by("Deutsche Post", square);
  EXPECT_EQ(german.format, "Grossbrief");
  EXPECT_THAT(german.why, Contains("Standardbrief: length 1 times the width, at least 1.4"));
  EXPECT_EQ(by("Royal Mail", square).format, "letter");
  const PostItem small{Length::inch_fraction(19, 4), Length::inch_fraction(19, 4), Unit::inch,
                       Length::inch_fraction(1, 16), 15'000};
  EXPECT_EQ(by("USPS", small).outcome, PostOutcome::too_small);
  EXPECT_THAT(by("USPS", small).why, ElementsAre("length 4-3/4 in, at least 5 in"));
}

TEST(Post, AThickLetterIsALargeOneThenAParcel) {
  const PostAnswer large = by("Royal Mail", item_mm(114, 162, 7000, 40'000));
  EXPECT_EQ(large.format, "large letter");
  EXPECT_THAT(large.why, ElementsAre("letter: thickness 7 mm, at most 5 mm"));
  const PostAnswer parcel = by("Royal Mail", item_mm(114, 162, 26'000, 800'000));
  EXPECT_EQ(parcel.outcome, PostOutcome::too_large);
  EXPECT_EQ(parcel.format, "");
  EXPECT_EQ(parcel.verdict, "goes as a parcel");
  EXPECT_THAT(
      parcel.why,
      ElementsAre("letter: thickness 26 mm, at most 5 mm", "letter: mass 800 g, at most 100 g",
                  "large letter: thickness 26 mm, at most 25 mm", "large letter: mass 800 g, at most 750 g"));
}

TEST(Post, FiguresOnNoMarkAreNotShownAsExact) {
  PostItem item{Length::mm(114), Length::mm(162), Unit::inch, Length::nm(7'123'456), 10'000};
  EXPECT_THAT(by("Royal Mail", item).why, ElementsAre("letter: thickness about 0.280 in, at most 5 mm"));
  item.unit = Unit::mm;
  EXPECT_THAT(by("Royal Mail", item).why, ElementsAre("letter: thickness about 7.12 mm, at most 5 mm"));
}

TEST(Post, WhatMustBeLookedAtByHandIsSaid) {
  EXPECT_THAT(by("USPS", item_mm(114, 162, 2000, 18'000)).also, Contains(HasSubstr("easy to bend")));
  EXPECT_THAT(by("Australia Post", item_mm(114, 162, 2000, 18'000)).also,
              Contains("flexible throughout: else a parcel"));
}

}  // namespace
}  // namespace insetbook
