// SPDX-License-Identifier: GPL-3.0-or-later
//
// The fields of `find`'s JSON that a question on a real book brings out rarely.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/json_answers.h"

namespace insetbook::cli {
namespace {

using Json = nlohmann::json;

TEST(JsonFind, ProblemsStandBesideWhatWasRead) {
  FindAnswer answer;
  answer.problems = {{.what = "there is no field \"colr\"",
                      .where = {.text = "colr:sage circle size:", .at = 0, .length = 4},
                      .expected = "",
                      .candidates = {"colour"}},
                     {.what = "size has no value", .where = {.text = "colr:sage circle size:", .at = 17}}};
  answer.understood = {{"circle", "shape circle"}};
  const Json json = Json::parse(answer_json(answer));
  EXPECT_EQ(json.at("error").at("what"), "there is no field \"colr\"");
  EXPECT_EQ(json.at("error").at("where").at("at"), 0);
  ASSERT_EQ(json.at("problems").size(), 2u);
  EXPECT_EQ(json.at("problems").at(1).at("where").at("at"), 17);
  EXPECT_EQ(json.at("understood").at(0).at("means"), "shape circle");
  EXPECT_FALSE(json.contains("hits"));
}

TEST(JsonFind, MarksAreCountedInCharacters) {
  FindAnswer answer;
  Hits hits;
  Hit hit;
  hit.title = "Café";
  hit.matched = {{.text = "café", .element = "", .why = "Café au lait", .marks = {{0, 5}, {9, 13}}}};
  hits.hits = {hit};
  hits.total = 1;
  hits.facets = {{.name = "fold", .values = {{.label = "easel", .asks = "fold:easel", .count = 3}}}};
  answer.answer = std::move(hits);
  const Json json = Json::parse(answer_json(answer));
  const Json marks = json.at("hits").at(0).at("matched").at(0).at("marks");
  EXPECT_EQ(marks, Json::parse(R"([{"at":0,"length":4},{"at":8,"length":4}])"));
  EXPECT_EQ(json.at("facets"),
            Json::parse(R"([{"name":"fold","values":[{"label":"easel","count":3,"asks":"fold:easel"}]}])"));
}

TEST(JsonFind, AnEmptyAnswerSaysWhatEmptiesIt) {
  FindAnswer answer;
  Hits hits;
  hits.emptied_by = {"tag fold"};
  answer.answer = hits;
  const Json json = Json::parse(answer_json(answer));
  EXPECT_EQ(json.at("total"), 0);
  EXPECT_EQ(json.at("emptied_by").at(0), "tag fold");
  EXPECT_TRUE(json.at("nearest").is_array());
}

}  // namespace
}  // namespace insetbook::cli
