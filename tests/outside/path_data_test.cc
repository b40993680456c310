// SPDX-License-Identifier: GPL-3.0-or-later
//
// The path reader against published cases: the W3C's SVG 1.1 test suite and others as collected in
// svg_path_cases.json (its source file names each).
#include "shape/path_data.h"

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "outside/outside_data.h"
#include "shape/write_path_data.h"

namespace insetbook {
namespace {

using Json = nlohmann::json;

std::optional<Json> cases() {
  const auto file = outside_data("svg_path_cases.json");
  if (!file) return std::nullopt;
  std::ifstream in(*file);
  return Json::parse(in);
}

std::string normal(const std::string& text) {
  const auto read = read_path_data(text, 1e6, FillRule::non_zero);
  EXPECT_TRUE(read) << text << ": " << read.error().what;
  return read ? write_path_data(*read) : "";
}

TEST(PathDataOutside, EqualPaths) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  ASSERT_GT(all->at("parse_equal_pairs").size(), 20u);
  for (const Json& pair : all->at("parse_equal_pairs")) {
    EXPECT_EQ(normal(pair[0]), normal(pair[1])) << pair;
    EXPECT_NE(normal(pair[0]), "");
  }
}

TEST(PathDataOutside, MustBeRejected) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  ASSERT_GT(all->at("parse_must_be_rejected").size(), 3u);
  for (const Json& text : all->at("parse_must_be_rejected"))
    EXPECT_FALSE(read_path_data(text.get<std::string>(), 1e6, FillRule::non_zero)) << text;
}

// A browser draws such a path up to the mistake (SVG 2, 9.5.4). Ours is refused: half an outline is no
// outline of a die. Up to there it reads as the other of the pair.
TEST(PathDataOutside, WhatABrowserCutsOffIsRefusedAtThatPlace) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  for (const Json& pair : all->at("parse_equal_pairs_after_truncation_at_error")) {
    for (const Json& one : pair) {
      const std::string text = one;
      const std::size_t wrong = text.find('#');
      const auto read = read_path_data(text, 1e6, FillRule::non_zero);
      ASSERT_EQ(read.has_value(), wrong == std::string::npos) << text;
      if (read) continue;
      EXPECT_EQ(read.error().where.at, wrong);
      EXPECT_NE(normal(text.substr(0, wrong)), "");
    }
  }
}

TEST(PathDataOutside, Numbers) {
  const auto all = cases();
  if (!all) GTEST_SKIP() << "no published path cases here";
  for (const Json& one : all->at("number_formats_first_point")) {
    const auto read = read_path_data(one.at("d").get<std::string>() + " h1", 1e6, FillRule::non_zero);
    ASSERT_TRUE(read) << one;
    ASSERT_EQ(read->contours.size(), 1u);
    EXPECT_NEAR(static_cast<double>(read->contours[0].start.x), one.at("point")[0].get<double>() * 1e6, 0.5);
    EXPECT_NEAR(static_cast<double>(read->contours[0].start.y), one.at("point")[1].get<double>() * 1e6, 0.5);
  }
}

}  // namespace
}  // namespace insetbook
