// SPDX-License-Identifier: GPL-3.0-or-later
//
// Pounds and grams against published factors, a published table and published examples of thickness.
#include "card/paper_weight.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "outside/data_rows.h"
#include "outside/outside_data.h"

namespace insetbook {
namespace {

// Source: basis_weight_factors.csv: grammage = pounds x 453.59237 g / (sheets x basic area), with the factors
// that printwiki.org prints to three decimals.
TEST(PaperWeightOutside, FactorsOfTheGrades) {
  const auto path = outside_data("basis_weight_factors.csv");
  if (!path) GTEST_SKIP() << "basis_weight_factors.csv is not here";
  int checked = 0, printed = 0;
  for (const auto& row : data_rows(*path)) {
    const PaperGrade* grade = paper_grade_named(row[0].substr(0, row[0].find('/')));
    ASSERT_NE(grade, nullptr) << row[0];
    EXPECT_EQ(grade->width.nm(), std::llround(number(row[1]) * 25'400'000)) << row[0];
    EXPECT_EQ(grade->height.nm(), std::llround(number(row[2]) * 25'400'000)) << row[0];
    EXPECT_EQ(grade->sheets, std::llround(number(row[3]))) << row[0];
    // A thousand pounds, so that milligrams show six figures of the factor.
    const double factor = static_cast<double>(mg_m2_from_pounds(1'000'000, *grade)) / 1e6;
    EXPECT_NEAR(factor, number(row[5]), 0.6e-6) << row[0];
    const double back = static_cast<double>(pounds_from_mg_m2(1'000'000'000, *grade)) / 1e9;
    EXPECT_NEAR(back, number(row[6]), 0.6e-6) << row[0];
    ++checked;
    if (row[7].empty()) continue;
    EXPECT_NEAR(factor, number(row[7]), 0.0005 + 1e-9) << row[0];
    ++printed;
  }
  EXPECT_EQ(checked, 6);
  EXPECT_EQ(printed, 4);
}

// Source: basis_weight_table_hp5550.csv: a printer manual's weight equivalence table. Its exact columns are
// the formula on its gsm column; its printed pounds are rounded to trade weights, up to 1.21 lb away.
TEST(PaperWeightOutside, APrintedTableOfEquivalents) {
  const auto path = outside_data("basis_weight_table_hp5550.csv");
  if (!path) GTEST_SKIP() << "basis_weight_table_hp5550.csv is not here";
  constexpr std::array<const char*, 6> grades = {"bond", "text", "cover", "bristol", "index", "tag"};
  int checked = 0;
  for (const auto& row : data_rows(*path)) {
    const std::int64_t mg_m2 = std::llround(number(row[6]) * 1000);
    for (std::size_t i = 0; i < grades.size(); ++i) {
      const double pounds =
          static_cast<double>(pounds_from_mg_m2(mg_m2, *paper_grade_named(grades[i]))) / 1000;
      EXPECT_NEAR(pounds, number(row[7 + i]), 0.0056) << grades[i] << " " << row[6];
      EXPECT_NEAR(pounds, number(row[i]), 1.22) << grades[i] << " " << row[6];
      ++checked;
    }
  }
  EXPECT_EQ(checked, 24 * 6);
}

// Source: printwiki.org, Grammage: 20 lb bond is 75.2 g/m²; 103.6 g/m² is 69.93 lb book (its factor cut off).
TEST(PaperWeightOutside, WorkedExamples) {
  EXPECT_NEAR(static_cast<double>(*read_paper_weight("20 lb bond")), 75'200, 50);
  const std::int64_t book = pounds_from_mg_m2(103'600, *paper_grade_named("book"));
  EXPECT_NEAR(static_cast<double>(book), 69'930, 70);
}

// Source: caliper_examples.csv, single sources each, so for plausibility only: ours is within a quarter of
// each. That the bulk of paper is between 1.1 and 1.6 cm³/g is of its source text.
TEST(PaperWeightOutside, TypicalThicknessIsPlausible) {
  const auto path = outside_data("caliper_examples.csv");
  if (!path) GTEST_SKIP() << "caliper_examples.csv is not here";
  int checked = 0;
  for (const auto& row : data_rows(*path)) {
    const auto typical = typical_caliper(std::llround(number(row[1]) * 1000));
    ASSERT_TRUE(typical) << row[0];
    const double mm = static_cast<double>(typical->thickness.nm()) / 1e6;
    EXPECT_NEAR(mm, number(row[2]), number(row[2]) / 4) << row[0];
    const double bulk = mm * 1000 / number(row[1]);
    EXPECT_GT(bulk, 1.1) << row[0];
    EXPECT_LT(bulk, 1.6) << row[0];
    ++checked;
  }
  EXPECT_EQ(checked, 11);
}

}  // namespace
}  // namespace insetbook
