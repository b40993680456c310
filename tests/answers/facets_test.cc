// SPDX-License-Identifier: GPL-3.0-or-later
//
// What stands beside the hits as counts, and that each value narrows the question to those that were counted.
#include <gtest/gtest.h>

#include <set>

#include "answers/find.h"
#include "answers/sample_book.h"

namespace insetbook {
namespace {

Hits hits_of(const std::string& question, bool facets) {
  const auto answer = find(sample_book(), {.question = question, .limit = 3, .facets = facets});
  EXPECT_TRUE(answer) << question;
  return answer ? std::get<Hits>(answer->answer) : Hits{};
}

TEST(Facets, EachValueNarrowsTheQuestionToThoseCounted) {
  for (const std::string question :
       {"circle", "navy", "stand-up fold", "made since 2023", "hand-cut stamped image"}) {
    const Hits hits = hits_of(question, true);
    ASSERT_GT(hits.total, 3u) << question;
    EXPECT_EQ(hits.hits.size(), 3u) << question;
    std::set<std::string> names;
    for (const Facet& facet : hits.facets) {
      names.insert(facet.name);
      std::size_t before = hits.total;
      for (const FacetValue& value : facet.values) {
        EXPECT_LE(value.count, before) << facet.name << " " << value.label;
        before = value.count;
        const Hits narrowed = hits_of(question + " " + value.asks, false);
        // A size is found within the tolerance as well.
        EXPECT_TRUE(facet.name == "closed size" || narrowed.total == value.count)
            << question + " " + value.asks;
        EXPECT_GE(narrowed.total, value.count) << question + " " + value.asks;
        EXPECT_LE(narrowed.total, hits.total) << question + " " + value.asks;
      }
    }
    EXPECT_TRUE(names.contains("year")) << question;
    EXPECT_TRUE(names.contains("technique")) << question;
  }
}

TEST(Facets, WhatIsAskedForIsLeftOut) {
  for (const Facet& facet : hits_of("fold:easel", true).facets)
    for (const FacetValue& value : facet.values) EXPECT_NE(value.asks, "fold:easel");
  EXPECT_TRUE(hits_of("circle", false).facets.empty());
}

}  // namespace
}  // namespace insetbook
