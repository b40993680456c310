// SPDX-License-Identifier: GPL-3.0-or-later
//
// The book of sample-data/ answers every question of the two tables beside this file exactly as they say. The
// tables were worked out from the CSV files without this program (their notes say how).
#include "answers/sample_book.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>

#include "answers/find.h"
#include "answers/fits.h"
#include "measure/read.h"

namespace insetbook {
namespace {

using Json = nlohmann::json;

Json table(const std::string& name) {
  std::ifstream in(std::string(INSETBOOK_SOURCE_DIR) + "/tests/answers/" + name);
  return Json::parse(in);
}

Length length_said(const std::string& text) {
  return read_length(text, Unit::inch).value().length;
}
Size size_said(const std::string& text) {
  return read_size(text, Unit::inch).value();
}

TEST(SampleBook, AnswersItsQuestionsExactly) {
  const Json questions = table("sample_book_questions.json").at("questions");
  ASSERT_GT(questions.size(), 250u);
  for (const Json& row : questions) {
    std::vector<std::string> expected = row.at("titles");
    std::sort(expected.begin(), expected.end());
    for (const std::string ask : row.at("ask")) {
      const Result<FindAnswer> answer = find(sample_book(), {.question = ask, .limit = 1000});
      ASSERT_TRUE(answer) << ask << ": " << answer.error().what;
      const Hits* hits = std::get_if<Hits>(&answer->answer);
      ASSERT_TRUE(hits) << ask << " was not read as a question for samples";
      std::vector<std::string> titles;
      for (const Hit& hit : hits->hits) titles.push_back(hit.title);
      EXPECT_EQ(hits->total, titles.size()) << ask;
      std::sort(titles.begin(), titles.end());
      EXPECT_EQ(titles, expected) << ask << "\n  read as " << answer->as_fields;
    }
  }
}

// Of an excluded piece "not" is said once; of one thing, before that.
TEST(SampleBook, SaysHowItUnderstood) {
  const std::pair<const char*, const char*> rows[] = {
      {"card without a speckled circle",
       "speckled circle = no piece with technique speckling and shape circle"},
      {"easel without a circle on a square",
       "easel = fold easel or any kind of it; circle on a square = no piece with shape circle and goes on a "
       "piece with shape square"},
      {"sage circle not 2 in",
       "sage = paper sage; circle = shape circle; 2 in = not size 2 in, within 1/32 in"},
      {"no circle or square", "circle = not shape circle; square = not shape square"},
      {"exactly two circles", "exactly two = exactly 2; circles = shape circle"},
      {"at most two circles", "at most two circles = no piece with at least 3 and shape circle"},
  };
  for (const auto& [question, expected] : rows) {
    const Result<FindAnswer> answer = find(sample_book(), {.question = question});
    ASSERT_TRUE(answer) << question;
    std::string told;
    for (const Understood& one : answer->understood)
      told += (told.empty() ? "" : "; ") + one.text + " = " + one.means;
    EXPECT_EQ(told, expected) << question;
  }
}

const FittingPanel* largest_of(const FitsAnswer& answer, const std::string& shape, PanelStatus status) {
  for (const FittingPanel& panel : answer.panels)
    if (panel.status == status && panel.shape == shape && panel.kind == PanelKind::largest) return &panel;
  return nullptr;
}

// Every size of the row's `tried` list is among the tried panels, and there are no others.
void expect_tried(const Json& row, const FitsAnswer& answer, const std::string& ask) {
  std::vector<std::pair<std::int64_t, std::int64_t>> expected, found;
  for (const std::string& text : row.value("tried", std::vector<std::string>()))
    expected.emplace_back(size_said(text).width.nm(), size_said(text).height.nm());
  for (const FittingPanel& panel : answer.panels)
    if (panel.status == PanelStatus::tried) found.emplace_back(panel.width.nm(), panel.height.nm());
  std::sort(expected.begin(), expected.end());
  std::sort(found.begin(), found.end());
  EXPECT_EQ(found, expected) << ask;
  if (!found.empty()) {
    EXPECT_EQ(answer.panels.front().status, PanelStatus::tried) << ask;
  }
}

void expect_row(const Json& row, const std::string& ask) {
  FitsAsked asked{.opening = ask};
  if (row.contains("border_asked")) asked.border = row.at("border_asked").get<std::string>();
  if (row.contains("panel_shape")) asked.shape = row.at("panel_shape").get<std::string>();
  const Result<FitsAnswer> answer = what_fits(sample_book(), asked);
  ASSERT_TRUE(answer) << ask << ": " << answer.error().what;
  EXPECT_EQ(answer->opening.set, row.at("set")) << ask;
  EXPECT_EQ(answer->opening.die, row.at("die")) << ask;
  EXPECT_EQ(answer->opening.line, row.at("line")) << ask;
  expect_tried(row, *answer, ask);
  if (row.contains("border_from")) {
    EXPECT_EQ(border_from_word(answer->border_from), row.at("border_from")) << ask;
  }
  if (row.contains("border")) {
    EXPECT_EQ(answer->border, length_said(row.at("border"))) << ask;
  }
  if (row.contains("habit_of")) {
    EXPECT_EQ(answer->habit_of, row.at("habit_of")) << ask;
  }
  if (row.contains("behind")) {
    ASSERT_TRUE(answer->behind) << ask;
    EXPECT_EQ(answer->behind->width, size_said(row.at("behind")).width) << ask;
    EXPECT_EQ(answer->behind->height, size_said(row.at("behind")).height) << ask;
  }
  const std::string status = row.at("status");
  if (status != "computed" && status != "estimated") {
    EXPECT_FALSE(answer->not_computed.empty()) << ask;
    return;
  }
  const FittingPanel* panel = largest_of(
      *answer, row.at("panel_shape"), status == "computed" ? PanelStatus::computed : PanelStatus::estimated);
  ASSERT_TRUE(panel) << ask << ": " << answer->not_computed;
  EXPECT_EQ(panel->width, size_said(row.at("panel")).width) << ask;
  EXPECT_EQ(panel->height, size_said(row.at("panel")).height) << ask;
}

TEST(SampleBook, KnowsWhatFitsItsOpenings) {
  const Json openings = table("sample_book_fits.json").at("openings");
  ASSERT_GE(openings.size(), 20u);
  for (const Json& row : openings)
    for (const std::string ask : row.at("ask")) expect_row(row, ask);
}

}  // namespace
}  // namespace insetbook
