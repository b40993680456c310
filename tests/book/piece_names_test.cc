// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/piece_names.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

namespace insetbook {
namespace {

TEST(PieceNames, AreHeldAgainstWholeWords) {
  const std::string frame = called_one_of({"frame", "frames", "window frame"});
  for (const char* name : {"frame", "oval frame", "frame 2", "two frames", "the window frame of it"})
    EXPECT_TRUE(is_called(name, frame)) << name;
  for (const char* name : {"", "framed oval", "mainframe", "frame2", "window"})
    EXPECT_FALSE(is_called(name, frame)) << name;
  EXPECT_FALSE(is_called("frame", called_one_of({})));
  EXPECT_TRUE(is_called("die cut piece", called_one_of({"die cut"})));
  EXPECT_FALSE(is_called("die of the cut", called_one_of({"die cut"})));
}

TEST(PieceNames, AreAFunctionOfTheConnection) {
  const Database db = Database::open(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
  know_piece_names(db);
  Statement row = db.prepare("SELECT called('oval frame', ?1), called('oval', ?1), called(NULL, ?1)");
  row.bind(1, std::string_view("frame"));
  ASSERT_TRUE(row.step());
  EXPECT_EQ(row.integer(0), 1);
  EXPECT_EQ(row.integer(1), 0);
  EXPECT_EQ(row.integer(2), 0);
}

}  // namespace
}  // namespace insetbook
