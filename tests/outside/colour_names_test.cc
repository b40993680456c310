// SPDX-License-Identifier: GPL-3.0-or-later
//
// The names of colours that a record takes for colours are names of a published survey of ordinary speech
// (xkcd_color_survey_954.csv; its source stands beside it).
#include "language/colour_names.h"

#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <string>

#include "outside_data.h"

namespace insetbook {
namespace {

TEST(ColourNames, AreNamesOfTheSurvey) {
  const auto path = outside_data("xkcd_color_survey_954.csv");
  if (!path) GTEST_SKIP() << "the survey is not there";
  std::ifstream file(*path);
  std::set<std::string, std::less<>> survey;
  for (std::string line; std::getline(file, line);) {
    const std::size_t first = line.find(',');
    const std::size_t last = line.rfind(',');
    if (first < last) survey.insert(line.substr(first + 1, last - first - 1));
  }
  ASSERT_GT(survey.size(), 900u);
  for (const std::string_view name : ordinary_colour_names) EXPECT_TRUE(survey.contains(name)) << name;
}

}  // namespace
}  // namespace insetbook
