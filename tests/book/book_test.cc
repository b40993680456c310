// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/book.h"

#include <gtest/gtest.h>

#include "book/records.h"
#include "book/temporary_folder.h"

namespace insetbook {
namespace {

TEST(Book, IsMadeEmptyAndOpenedAgain) {
  const TemporaryFolder folder;
  std::string uuid;
  {
    const Result<Book> book = Book::create(folder.path() / "new" / "book");
    ASSERT_TRUE(book) << book.error().what;
    uuid = book->uuid();
    EXPECT_EQ(uuid.size(), 36u);
    EXPECT_EQ(book->last_change(), 0);
  }
  const Result<Book> again = Book::open(folder.path() / "new" / "book", Book::Use::read);
  ASSERT_TRUE(again) << again.error().what;
  EXPECT_EQ(again->uuid(), uuid);
}

TEST(Book, AChangeIsKeptWhole) {
  const TemporaryFolder folder;
  Result<Book> book = Book::create(folder.path());
  ASSERT_TRUE(book);
  const auto done = book->change("made a sample", [&](Change& change) -> Result<void> {
    SampleRow row;
    row.title = "Moonrise birthday";
    const auto put = put_sample(change, row);
    EXPECT_TRUE(put);
    EXPECT_EQ(put->first, PutResult::added);
    ElementRow piece;
    piece.sample_id = put->second;
    piece.name = "frame";
    EXPECT_EQ(put_element(change, piece)->first, PutResult::added);
    EXPECT_EQ(put_element(change, piece)->first, PutResult::same);
    return {};
  });
  ASSERT_TRUE(done) << done.error().what;
  EXPECT_EQ(book->last_change(), 1);
  EXPECT_EQ(sample_titled(*book, "moonrise birthday"), 1);
  EXPECT_EQ(elements_of(*book, 1).size(), 1u);
}

}  // namespace
}  // namespace insetbook
