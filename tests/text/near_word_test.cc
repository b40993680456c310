// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/near_word.h"

#include <gtest/gtest.h>

namespace insetbook {
namespace {

TEST(NearWord, WhatMayBeASlip) {
  struct Row {
    const char* written;
    const char* meant;
    int mistakes;  // 0: none is believed
  };
  const Row table[] = {
      {"easle", "easel", 1},
      {"circel", "circle", 1},
      {"cirle", "circle", 1},
      {"circl", "circle", 1},
      {"nvay", "navy", 1},
      {"harbor", "harbour", 1},
      {"embosing", "embossing", 1},
      {"speckeling", "speckling", 1},
      {"stitchnig", "stitching", 1},
      {"acetaat", "acetate", 0},
      {"rectnagel", "rectangle", 2},
      {"velum", "vellum", 1},
      // Other words, and not slips.
      {"how", "low", 0},
      {"help", "hemp", 0},
      {"pond", "bond", 0},
      {"newest", "nest", 0},
      {"bigger", "finger", 0},
      {"sage", "sage", 0},
      {"2024", "2042", 0},
      {"navy", "nav", 0},
      {"blue", "glue", 0},
      {"mount", "count", 0},
      {"", "", 0},
      {"a", "", 0},
  };
  for (const Row& row : table)
    EXPECT_EQ(slip_distance(row.written, row.meant).value_or(0), static_cast<std::size_t>(row.mistakes))
        << row.written << ", " << row.meant;
}

}  // namespace
}  // namespace insetbook
