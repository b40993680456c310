// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/changes.h"

#include <gtest/gtest.h>

#include "book/edit.h"
#include "book/invented.h"
#include "book/names.h"
#include "book/row_text.h"

namespace insetbook {
namespace {

void expect_names_in_step(const Book& book) {
  for (const char* table : {"name_word", "name_trigram"}) {
    const std::string name = table;
    EXPECT_NO_THROW(book.database().execute("INSERT INTO " + name + " (" + name +
                                            ", rank) VALUES ('integrity-check', 1)"))
        << table;
  }
}

TEST(RowText, IsReadAsItWasWritten) {
  std::string text = "[";
  append_row_integer(text, std::numeric_limits<std::int64_t>::min());
  text += ",null,";
  const std::string odd(
      "a\"b\\c\n\x01\x1f"
      "d\0e ½",
      14);
  append_row_text(text, odd);
  text += ",";
  append_row_text(text, "");
  text += "]";
  const auto row = read_row_text(text);
  ASSERT_TRUE(row);
  ASSERT_EQ(row->size(), 4u);
  EXPECT_EQ((*row)[0], RowValue(std::numeric_limits<std::int64_t>::min()));
  EXPECT_EQ((*row)[1], RowValue());
  EXPECT_EQ((*row)[2], RowValue(odd));
  EXPECT_EQ((*row)[3], RowValue(std::string()));
}

TEST(RowText, WhatIsNoRowIsRefused) {
  for (const char* text : {"", "[", "[]", "[1", "[1]x", "[1,]", "{}", "[\"a]", "[\"\\", "[\"\\u12\"]",
                           "[\"\\u0041\"]", "[nul]", "[1.5]", "[99999999999999999999]"}) {
    EXPECT_FALSE(read_row_text(text)) << text;
  }
}

TEST(Undo, NothingToDoInANewBook) {
  TestBook test;
  const auto undone = undo(test.book, std::nullopt);
  ASSERT_TRUE(undone);
  EXPECT_FALSE(*undone);
}

TEST(Undo, AgainGoesFurtherBack) {
  TestBook test;
  std::vector<std::string> states{dump(test.book)};
  test.change("a set", [](Change& change) { put_nested_set(change, "Tidepool Rectangles", 3); });
  states.push_back(dump(test.book));
  test.change("a sample", [](Change& change) { put_titled(change, "One"); });
  states.push_back(dump(test.book));
  test.change("its title", [](Change& change) {
    EXPECT_TRUE(change_field(change, {EditKind::sample, 1, "One"}, "name", "Another"));
  });
  for (int back = 2; back >= 0; --back) {
    const auto undone = undo(test.book, std::nullopt);
    ASSERT_TRUE(undone) << undone.error().what;
    EXPECT_EQ((*undone)->id, back + 1);
    EXPECT_EQ(dump(test.book), states[static_cast<std::size_t>(back)]);
    expect_names_in_step(test.book);
  }
  EXPECT_FALSE(*undo(test.book, std::nullopt));
  const auto log = changes(test.book, 10);
  ASSERT_EQ(log.size(), 6u);
  EXPECT_EQ(log[0].what, "took back 1: a set");
  EXPECT_EQ(log[0].undoes, 1);
  EXPECT_EQ(log[5].undone_by, 6);
}

TEST(Undo, ATakingBackCanBeTakenBack) {
  TestBook test;
  test.change("a sample", [](Change& change) { put_titled(change, "One"); });
  const std::string with = dump(test.book);
  ASSERT_TRUE(undo(test.book, 1));
  ASSERT_TRUE(undo(test.book, 2));
  EXPECT_EQ(dump(test.book), with);
  // The sample is live again, and its making can be taken back again.
  const auto undone = undo(test.book, std::nullopt);
  ASSERT_TRUE(undone) << undone.error().what;
  EXPECT_EQ((*undone)->id, 1);
  EXPECT_EQ(sample_titled(test.book, "one"), std::nullopt);
}

TEST(Undo, WhatIsNotThereOrTakenBackIsRefused) {
  TestBook test;
  test.change("a sample", [](Change& change) { put_titled(change, "One"); });
  auto undone = undo(test.book, 7);
  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().kind, ProblemKind::unknown_name);
  EXPECT_EQ(undone.error().what, "there is no change 7");
  EXPECT_EQ(undone.error().expected, "a number from 1 to 1");
  ASSERT_TRUE(undo(test.book, 1));
  undone = undo(test.book, 1);
  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().kind, ProblemKind::refused);
  EXPECT_EQ(undone.error().what, "change 1 (\"a sample\") has been taken back already, by change 2");
}

TEST(Undo, OlderChangesCanBeTakenBackWhereNothingRestsOnThem) {
  TestBook test;
  test.change("one", [](Change& change) { put_titled(change, "One"); });
  test.change("two", [](Change& change) { put_titled(change, "Two"); });
  ASSERT_TRUE(undo(test.book, 1));
  EXPECT_EQ(sample_titled(test.book, "one"), std::nullopt);
  EXPECT_EQ(sample_titled(test.book, "two"), 2);
}

TEST(Undo, RowsTouchedAgainAreRefusedWithTheList) {
  TestBook test;
  test.change("one", [](Change& change) { put_titled(change, "One"); });
  test.change("renamed", [](Change& change) {
    EXPECT_TRUE(change_field(change, {EditKind::sample, 1, "One"}, "name", "Uno"));
  });
  const std::string before = dump(test.book);
  const auto undone = undo(test.book, 1);
  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().what, "change 1 (\"one\") cannot be taken back: later changes rest on it");
  EXPECT_EQ(undone.error().expected, "take those back first, the newest first");
  ASSERT_EQ(undone.error().candidates.size(), 1u);
  EXPECT_EQ(undone.error().candidates[0].substr(0, 11), "2: renamed ");
  EXPECT_EQ(dump(test.book), before);
  // Taken back itself, the later change is none any more.
  ASSERT_TRUE(undo(test.book, 2));
  EXPECT_TRUE(undo(test.book, 1));
}

TEST(Undo, RowsReferredToAreRefusedWithTheList) {
  TestBook test;
  test.change("a set", [](Change& change) { put_nested_set(change, "Tidepool Rectangles", 2); });
  test.change("a sample that used it", [](Change& change) {
    ElementRow piece;
    piece.sample_id = put_titled(change, "One");
    piece.name = "frame";
    piece.line_id = 1;
    EXPECT_TRUE(put_element(change, piece));
  });
  const std::string before = dump(test.book);
  const auto undone = undo(test.book, 1);
  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().what, "change 1 (\"a set\") cannot be taken back: later changes rest on it");
  ASSERT_EQ(undone.error().candidates.size(), 1u);
  EXPECT_EQ(undone.error().candidates[0].substr(0, 25), "2: a sample that used it ");
  EXPECT_EQ(dump(test.book), before);
}

TEST(Undo, ADeletionWhoseNameIsTakenIsRefusedWithTheList) {
  TestBook test;
  test.change("two", [](Change& change) {
    put_titled(change, "One");
    put_titled(change, "Two");
  });
  test.change("deleted", [](Change& change) {
    EXPECT_TRUE(delete_record(change, {EditKind::sample, 1, "One"}));
  });
  test.change("a new One", [](Change& change) { EXPECT_NE(put_titled(change, "One"), 1); });
  const std::string before = dump(test.book);
  const auto undone = undo(test.book, 2);
  ASSERT_FALSE(undone);
  ASSERT_EQ(undone.error().candidates.size(), 1u);
  EXPECT_EQ(undone.error().candidates[0].substr(0, 13), "3: a new One ");
  EXPECT_EQ(dump(test.book), before);
}

TEST(Undo, ADeletionComesBackWithAllItsParts) {
  TestBook test;
  test.change("made", [](Change& change) {
    put_nested_set(change, "Tidepool Rectangles", 2);
    SampleRow row;
    row.title = "One";
    row.mentions.push_back({"fold", "easel", std::nullopt, std::nullopt, "easel"});
    row.photos.push_back({"a.jpg", std::string(64, 'a')});
    ElementRow piece;
    piece.sample_id = put_sample(change, row)->second;
    piece.name = "frame";
    piece.mentions.push_back({"technique", "inking", std::nullopt, std::nullopt, "inked"});
    const std::int64_t frame = put_element(change, piece)->second;
    piece.name = "panel";
    piece.goes_to = frame;
    EXPECT_TRUE(put_element(change, piece));
  });
  const std::string before = dump(test.book);
  test.change("deleted", [](Change& change) {
    EXPECT_TRUE(delete_record(change, {EditKind::sample, 1, "One"}));
    EXPECT_TRUE(delete_record(change, {EditKind::set, 1, "Tidepool Rectangles"}));
  });
  expect_names_in_step(test.book);
  ASSERT_TRUE(undo(test.book, std::nullopt));
  EXPECT_EQ(dump(test.book), before);
  expect_names_in_step(test.book);
}

}  // namespace
}  // namespace insetbook
