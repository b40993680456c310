// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/paper_weight.h"

#include <gtest/gtest.h>

#include <cmath>

namespace insetbook {
namespace {

TEST(PaperWeight, IsReadAsPeopleWriteIt) {
  EXPECT_EQ(read_paper_weight("220 g/m²"), 220'000);
  EXPECT_EQ(read_paper_weight("220 gsm"), 220'000);
  EXPECT_EQ(read_paper_weight("75,2 g/m2"), 75'200);
  EXPECT_EQ(read_paper_weight("220"), 220'000);
  EXPECT_EQ(read_paper_weight("80 lb cover"), 216'329);
  EXPECT_EQ(read_paper_weight("80# cover"), 216'329);
  EXPECT_EQ(read_paper_weight("80 lb. card stock"), 216'329);
  EXPECT_EQ(read_paper_weight("80 lb cardstock"), 216'329);
  EXPECT_EQ(read_paper_weight("80 pounds text"), 118'412);
  EXPECT_EQ(read_paper_weight("20 lb bond"), 75'195);
}

TEST(PaperWeight, IsUnknownWherePoundsCouldBeAny) {
  for (const char* text : {"80 lb", "heavy", "", "0 g/m2", "80 stone cover", "80 covers"})
    EXPECT_EQ(read_paper_weight(text), std::nullopt) << text;
}

TEST(PaperWeight, GradesAreFoundByTheirWords) {
  ASSERT_NE(paper_grade_named("Card stock"), nullptr);
  EXPECT_EQ(paper_grade_named("Card stock")->name, "cover");
  EXPECT_EQ(paper_grade_named("cardstock")->name, "cover");
  EXPECT_EQ(paper_grade_named("offset")->name, "text");
  EXPECT_EQ(paper_grade_named("vellum"), nullptr);
}

// The factor of the header, by floating-point arithmetic.
TEST(PaperWeight, PoundsAndGramsTurnIntoEachOther) {
  const double factor = 453.59237 / (500 * 0.0254 * 0.0254);
  EXPECT_NEAR(factor, 1406.1392, 0.0001);
  ASSERT_EQ(paper_grades().size(), 6u);
  for (const PaperGrade& grade : paper_grades()) {
    const double area =
        static_cast<double>(grade.width.nm()) / 25.4e6 * static_cast<double>(grade.height.nm()) / 25.4e6;
    for (const std::int64_t thousandths : {1, 999, 65'000, 80'000, 110'500, 99'999'999}) {
      const double grams = static_cast<double>(thousandths) * factor / area;
      const std::int64_t mg = mg_m2_from_pounds(thousandths, grade);
      EXPECT_NEAR(static_cast<double>(mg), grams, 0.51 + grams * 1e-9) << grade.name;
      // A milligram is less than a thousandth of a pound in every grade.
      EXPECT_EQ(pounds_from_mg_m2(mg, grade), thousandths) << grade.name;
    }
  }
}

TEST(PaperWeight, OfASheetAndOfAnyArea) {
  // ISO 216: A0 is a square metre but for the rounding of its sides.
  EXPECT_EQ(sheet_mass_mg(Length::mm(1000), Length::mm(1000), 80'000), 80'000);
  EXPECT_EQ(sheet_mass_mg(Length::mm(210), Length::mm(297), 80'000), 4'990);  // 4989.6
  EXPECT_EQ(sheet_mass_mg(Length::mm(1), Length::mm(1), 500'000), 1);         // half up
  EXPECT_EQ(sheet_mass_mg(Length::mm(1), Length::mm(1), 499'999), 0);
  EXPECT_EQ(sheet_mass_mg(Length(), Length::mm(1), 499'999), 0);
  EXPECT_EQ(piece_mass_mg(62'370, 80'000), 4'990);
}

TEST(TypicalCaliper, LiesBetweenTheEntriesOfTheTable) {
  const auto at = [](std::int64_t mg) { return typical_caliper(mg)->thickness.nm(); };
  EXPECT_EQ(at(80'000), 100'000);
  EXPECT_EQ(at(225'000), 290'000);
  EXPECT_EQ(at(200'000), 260'000);  // in the middle of 175 and 225 g/m², 0.23 and 0.29 mm
  EXPECT_EQ(at(216'329), 280'000);  // 0.27959 mm
  EXPECT_EQ(at(45'000), 70'000);
  EXPECT_EQ(at(400'000), 600'000);
  std::int64_t before = 0;
  for (std::int64_t mg = 45'000; mg <= 400'000; mg += 500) {
    EXPECT_GE(at(mg), before) << mg;
    before = at(mg);
  }
}

TEST(TypicalCaliper, IsNotGuessedBeyondTheTable) {
  EXPECT_FALSE(typical_caliper(44'999));
  EXPECT_FALSE(typical_caliper(400'001));
  EXPECT_FALSE(typical_caliper(0));
}

TEST(TypicalCaliper, SaysThatItIsTypical) {
  EXPECT_EQ(typical_caliper(80'000)->source.rfind("typical: ", 0), 0u);
  EXPECT_NE(typical_caliper(78'000)->source.find("; "), std::string::npos);  // between two sources
  EXPECT_EQ(typical_caliper(200'000)->source.find("; "), std::string::npos);
}

}  // namespace
}  // namespace insetbook
