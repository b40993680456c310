// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/path_data.h"

#include <gtest/gtest.h>

#include "shape/write_path_data.h"

namespace insetbook {
namespace {

struct Reads {
  std::string text, as;
};

TEST(PathData, EachCommand) {
  const Reads table[] = {
      {"", ""},
      {" \n", ""},
      {"M1 2", ""},  // a move alone draws nothing
      {"M1 2L3 4", "M1,2 L3,4"},
      {"M1 2 3 4", "M1,2 L3,4"},
      {"m1 2 3 4", "M1,2 L4,6"},
      {"M1 2l3 4-1-1", "M1,2 L4,6 L3,5"},
      {"M1 2H5V6h-1v-1z", "M1,2 L5,2 L5,6 L4,6 L4,5 Z"},
      {"M0 0C1 2 3 4 5 6", "M0,0 C1,2 3,4 5,6"},
      {"M1 1c1 2 3 4 5 6", "M1,1 C2,3 4,5 6,7"},
      {"M0 0C1 2 3 4 5 6S9 10 11 12", "M0,0 C1,2 3,4 5,6 C7,8 9,10 11,12"},
      {"M0 0L5 6S9 10 11 12", "M0,0 L5,6 C5,6 9,10 11,12"},  // nothing to mirror
      {"M0 0Q3 3 6 0", "M0,0 C2,2 4,2 6,0"},
      {"M0 0Q3 3 6 0T12 0", "M0,0 C2,2 4,2 6,0 C8,-2 10,-2 12,0"},
      {"M0 0T6 3", "M0,0 C0,0 2,1 6,3"},
      {"M0 0A5 3 30 1 0 4 4", "M0,0 A5,3 30 1 0 4,4"},
      {"M0 0a5-3 30 104 4", "M0,0 A5,3 30 1 0 4,4"},  // flags run together; a radius has no sign
      {"M0 0A0 3 0 0 0 4 4", "M0,0 L4,4"},
      {"M1 1A3 3 0 0 0 1 1L2 2", "M1,1 L2,2"},
      {"M0 0L4 0L4 4zl-1-1", "M0,0 L4,0 L4,4 Z M0,0 L-1,-1"},  // on from where the contour began
      {"M0 0L4 0zM9 9L8 8z", "M0,0 L4,0 Z M9,9 L8,8 Z"},
      {"M0,0,4,0", "M0,0 L4,0"},
      {"M.5.5 1e1 1E-1", "M0.5,0.5 L10,0.1"},
      {"M+1-2L.5-.5", "M1,-2 L0.5,-0.5"},
      {"M0 0L0.0000014 0.0000016", "M0,0 L0.000001,0.000002"},    // to the nearest nanometre
      {"M0 0l0.0000004 0l0.0000004 0", "M0,0 L0,0 L0.000001,0"},  // steps do not lose what they round
  };
  for (const Reads& row : table) {
    const auto read = read_path_data(row.text, 1e6, FillRule::non_zero);
    ASSERT_TRUE(read) << row.text << ": " << read.error().what;
    EXPECT_EQ(write_path_data(*read), row.as) << row.text;
    EXPECT_EQ(read->rule, FillRule::non_zero);
    const auto again = read_path_data(row.as, 1e6, FillRule::non_zero);
    ASSERT_TRUE(again) << row.as;
    EXPECT_EQ(write_path_data(*again), row.as);
  }
}

TEST(PathData, TheUnitScalesLengthsAndNoAngle) {
  EXPECT_EQ(write_path_data(*read_path_data("M0 0A2 1 30 0 1 1 1", 25.4e6, FillRule::even_odd)),
            "M0,0 A50.8,25.4 30 0 1 25.4,25.4");
}

struct Refuses {
  std::string text, what;
  std::size_t at;
};

TEST(PathData, WhatIsWrongAndWhere) {
  const Refuses table[] = {
      {"L1 2", "the path does not begin with a move", 0},
      {"1 2", "\"1\" is no command of a path", 0},
      {"M1", "the path ends where a number should stand", 2},
      {"M1,", "the path ends where a number should stand", 3},
      {"M,1 2", "a comma stands before the first number of a command", 1},
      {"M1,,2", "\",\" is no number of a path", 3},
      {"M1 2,", "a comma stands where no number follows", 4},
      {"M1 2 L3", "the path ends where a number should stand", 7},
      {"M1 2 L3 x", "\"x\" is no number of a path", 8},
      {"M1 2 B3 4", "\"B\" is no command of a path", 5},
      {"M1 2 z 3 4", "\"3\" is no command of a path", 7},
      {"M1 2 A1 1 0 2 0 3 3", "an arc's flag is neither 0 nor 1", 12},
      {"M1 2 A1 1 0 1", "an arc's flag is neither 0 nor 1", 13},
      {"M1 2 L1e999 0", "\"1e999\" is too large or too small", 6},
      {"M1 2 L-.", "\"-\" is no number of a path", 6},
      {"M0 0L2000 0", "the path goes farther out than can be computed with", 10},
      {"M0 0 L1 1 ü", "\"ü\" is no command of a path", 10},
  };
  for (const Refuses& row : table) {
    const auto read = read_path_data(row.text, 1e6, FillRule::even_odd);
    ASSERT_FALSE(read) << row.text;
    EXPECT_EQ(read.error().where.at, row.at) << row.text;
    EXPECT_EQ(read.error().where.text, row.text);
    EXPECT_EQ(read.error().what, row.what) << row.text;
  }
}

TEST(PathData, TooLongAndTooMuch) {
  EXPECT_FALSE(read_path_data("M0 0" + std::string(64 << 10, ' '), 1e6, FillRule::even_odd));
  std::string many = "M0 0";
  for (int i = 0; i < 20'000; ++i) many += "h1";
  many[0] = 'M';
  EXPECT_TRUE(read_path_data(many, 1e3, FillRule::even_odd));
  const auto more = read_path_data(many + "h1", 1e3, FillRule::even_odd);
  ASSERT_FALSE(more);
  EXPECT_EQ(more.error().what, "the path has too many curves");
}

}  // namespace
}  // namespace insetbook
