// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/book.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>

#include "book/book_parts.h"
#include "book/changes.h"
#include "book/invented.h"
#include "schema/migrations.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

void write(const fs::path& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

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

TEST(Book, HasTheFileSettingsItPromises) {
  const TestBook test;
  const Database& db = test.book.database();
  EXPECT_EQ(header_figure(db, "PRAGMA application_id"), book_mark);
  EXPECT_EQ(header_figure(db, "PRAGMA user_version"), book_version);
  EXPECT_EQ(header_figure(db, "PRAGMA foreign_keys"), 1);
  EXPECT_EQ(header_figure(db, "PRAGMA synchronous"), 2);
  Statement mode = db.prepare("PRAGMA journal_mode");
  ASSERT_TRUE(mode.step());
  EXPECT_EQ(mode.text(0), "wal");
  EXPECT_THROW(db.prepare("SELECT \"no such column\""), StoreError);
}

TEST(Book, VersionIsTheLastMigration) {
  EXPECT_EQ(book_version, migrations().back().number);
}

TEST(Book, NewUuidsAreRandomVersion4) {
  const std::string a = new_uuid(), b = new_uuid();
  EXPECT_NE(a, b);
  EXPECT_EQ(a[14], '4');  // RFC 9562: version, then variant
  EXPECT_NE(std::string("89ab").find(a[19]), std::string::npos);
}

TEST(Book, IsNotMadeTwice) {
  const TestBook test;
  const Result<Book> again = Book::create(test.folder.path());
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().kind, ProblemKind::refused);
  EXPECT_EQ(again.error().what, "there is a book in \"" + test.folder.path().string() + "\" already");
}

struct Unusable {
  std::string name;
  std::function<void(const fs::path& folder)> make;
  std::string what;  // DIR stands for the folder, NOW for the program's version
};

class UnusableBook : public testing::TestWithParam<Unusable> {};

TEST_P(UnusableBook, IsAClearProblem) {
  const TemporaryFolder folder;
  GetParam().make(folder.path());
  const Result<Book> book = Book::open(folder.path() / "book", Book::Use::write);
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().kind, ProblemKind::unusable_book);
  std::string what = GetParam().what;
  if (const auto at = what.find("NOW"); at != std::string::npos)
    what.replace(at, 3, std::to_string(book_version));
  if (const auto at = what.find("DIR"); at != std::string::npos)
    what.replace(at, 3, (folder.path() / "book").string());
  EXPECT_EQ(book.error().what, what);
  EXPECT_NE(book.error().expected, "");
}

INSTANTIATE_TEST_SUITE_P(
    Book, UnusableBook,
    testing::Values(Unusable{"no_folder", [](const fs::path&) {}, "there is no book in \"DIR\""},
                    Unusable{"no_file", [](const fs::path& f) { fs::create_directory(f / "book"); },
                             "there is no book in \"DIR\""},
                    Unusable{"a_file", [](const fs::path& f) { write(f / "book", "x"); },
                             "\"DIR\" is a file; a book is a folder"},
                    Unusable{"file_is_folder",
                             [](const fs::path& f) { fs::create_directories(f / "book" / "book.db"); },
                             "there is no book in \"DIR\""},
                    Unusable{"empty_file",
                             [](const fs::path& f) {
                               fs::create_directory(f / "book");
                               write(f / "book" / "book.db", "");
                             },
                             "\"DIR/book.db\" is not a book"},
                    Unusable{"no_database",
                             [](const fs::path& f) {
                               fs::create_directory(f / "book");
                               write(f / "book" / "book.db", std::string(9000, 'x'));
                             },
                             "\"DIR/book.db\" is not a book"},
                    Unusable{"other_database",
                             [](const fs::path& f) {
                               fs::create_directory(f / "book");
                               Database::open((f / "book" / "book.db").string(),
                                              SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE)
                                   .execute("CREATE TABLE t (a)");
                             },
                             "\"DIR/book.db\" is not a book"},
                    Unusable{"newer",
                             [](const fs::path& f) {
                               const auto made = Book::create(f / "book");
                               made->database().execute("PRAGMA user_version = 4711");
                             },
                             "this book has version 4711, and this program knows books up to NOW"},
                    Unusable{"torn",
                             [](const fs::path& f) {
                               { const auto made = Book::create(f / "book"); }
                               fs::resize_file(f / "book" / "book.db", 5000);
                             },
                             "the book is damaged"}),
    [](const auto& one) { return one.param.name; });

TEST(Book, ANewerBookIsLeftAsItIs) {
  const TemporaryFolder folder;
  const std::string newer = "PRAGMA user_version = " + std::to_string(book_version + 1);
  { Book::create(folder.path())->database().execute(newer); }
  const std::string before = read(folder.path() / "book.db");
  EXPECT_FALSE(Book::open(folder.path(), Book::Use::write));
  EXPECT_EQ(read(folder.path() / "book.db"), before);
}

// Runs as somebody who may not write: root may always.
template <class Work>
int as_nobody(const Work& work) {
  const pid_t child = ::fork();
  if (child == 0) {
    if (::geteuid() == 0 && ::setuid(65534) != 0) ::_exit(99);
    ::_exit(work());
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 98;
}

TEST(Book, IsReadWhereItMayNotBeWritten) {
  const TemporaryFolder folder;
  const fs::path place = folder.path() / "100% sure?";
  {
    Result<Book> book = Book::create(place);
    ASSERT_TRUE(book->change("made", [](Change& change) -> Result<void> {
      put_titled(change, "Moonrise birthday");
      return {};
    }));
  }
  ::chmod(folder.path().c_str(), 0755);
  ::chmod((place / "book.db").c_str(), 0444);
  ::chmod(place.c_str(), 0555);
  EXPECT_EQ(as_nobody([&] {
              const Result<Book> book = Book::open(place, Book::Use::read);
              if (!book) return 1;
              return sample_titled(*book, "moonrise birthday") ? 0 : 2;
            }),
            0);
  EXPECT_EQ(as_nobody([&] {
              const Result<Book> book = Book::open(place, Book::Use::write);
              if (book) return 1;
              return book.error().what == "the book may not be written" ? 0 : 2;
            }),
            0);
  EXPECT_EQ(as_nobody([&] { return Book::create(place / "inside") ? 1 : 0; }), 0);
  ::chmod(place.c_str(), 0755);
}

TEST(Book, AChangeIsKeptWhole) {
  TestBook test;
  test.change("made a sample", [](Change& change) {
    const std::int64_t id = put_titled(change, "Moonrise birthday");
    ElementRow piece;
    piece.sample_id = id;
    piece.name = "frame";
    EXPECT_EQ(put_element(change, piece)->first, PutResult::added);
    EXPECT_EQ(put_element(change, piece)->first, PutResult::same);
  });
  EXPECT_EQ(test.book.last_change(), 1);
  EXPECT_EQ(sample_titled(test.book, "moonrise birthday"), 1);
  EXPECT_EQ(elements_of(test.book, 1).size(), 1u);
}

TEST(Book, AChangeThatFailsLeavesNothing) {
  TestBook test;
  const std::string before = dump(test.book);
  const Result<void> done = test.book.change("import", [](Change& change) -> Result<void> {
    put_titled(change, "One");
    Problem problem;
    problem.what = "row 2 cannot be read";
    return failure(problem);
  });
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().what, "row 2 cannot be read");
  EXPECT_EQ(dump(test.book), before);
  EXPECT_EQ(test.book.last_change(), 0);
}

TEST(Book, AChangeThatChangesNothingLeavesNoEntry) {
  TestBook test;
  test.change("made", [](Change& change) { put_titled(change, "One"); });
  test.change("made again", [](Change& change) { put_titled(change, "One"); });
  EXPECT_EQ(test.book.last_change(), 1);
}

TEST(Book, AChangeCanSayWhatItWasAfterwards) {
  TestBook test;
  test.change("import", [](Change& change) {
    put_titled(change, "One");
    change.describe("imported 1 sample");
  });
  EXPECT_EQ(changes(test.book, 10).front().what, "imported 1 sample");
}

TEST(Book, BrokenReferencesAreRefusedAndNothingIsKept) {
  TestBook test;
  const Result<void> done = test.book.change("bad", [](Change& change) -> Result<void> {
    put_titled(change, "One");
    TriedRow row;
    row.line_id = 77;
    row.shape = "circle";
    row.width = row.height = Length::inches(1);
    row.result = "fits";
    return put_tried(change, row) ? Result<void>() : Result<void>();
  });
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().kind, ProblemKind::unusable_book);
  EXPECT_EQ(test.book.last_change(), 0);
}

TEST(Book, TwoProgramsTakeTurns) {
  TestBook test;
  Result<Book> other = Book::open(test.folder.path(), Book::Use::write);
  ASSERT_TRUE(other);
  sqlite3_busy_timeout(other->database().handle(), 20);
  test.change("first", [&](Change& change) {
    put_titled(change, "One");
    // The other reads the state before, and may not write now.
    EXPECT_EQ(sample_titled(*other, "one"), std::nullopt);
    const Result<void> second = other->change("second", [](Change&) -> Result<void> { return {}; });
    ASSERT_FALSE(second);
    EXPECT_EQ(second.error().what, "another program is writing to this book; nothing was changed");
    EXPECT_EQ(second.error().expected, "wait until it has finished and try again");
  });
  EXPECT_EQ(sample_titled(*other, "one"), 1);
  EXPECT_TRUE(other->change("second", [](Change& change) -> Result<void> {
    put_titled(change, "Two");
    return {};
  }));
  EXPECT_EQ(sample_titled(test.book, "two"), 2);
}

// The book as its first version was: before the look-up by name.
void make_version_1(const fs::path& folder) {
  fs::create_directories(folder);
  const Database db =
      Database::open((folder / "book.db").string(), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
  db.execute("PRAGMA journal_mode = WAL; PRAGMA application_id = " + std::to_string(book_mark));
  db.execute(migrations()[0].sql);
  db.execute("PRAGMA user_version = 1");
  db.execute("INSERT INTO book VALUES (1, 'u', '2026-01-01T00:00:00Z')");
  db.execute(
      "INSERT INTO die_set (uuid, name, key) VALUES ('s', 'Tidepool Rectangles', 'tidepool rectangles')");
  db.execute("INSERT INTO die (uuid, set_id, label, key) VALUES ('d', 1, '1', '1')");
  db.execute(
      "INSERT INTO line (die_id, kind, name, shape, figures, outline) VALUES (1, 'cut', 'cut', 'outline', "
      "'', 'M0 0H9V9z'),"
      " (1, 'window', 'ring', 'outline', '', 'M0 0H9V9zm1 1h3v3z'), (1, 'window', 'other', 'outline', 'by "
      "eye', 'M0 0H9V9zM1 1H3V3z')");
}

TEST(Book, AnOlderBookIsBroughtUpAfterABackup) {
  const TemporaryFolder folder;
  make_version_1(folder.path());
  const Result<Book> book = Book::open(folder.path(), Book::Use::read);
  ASSERT_TRUE(book) << book.error().what;
  EXPECT_EQ(header_figure(book->database(), "PRAGMA user_version"), book_version);
  Statement names = book->database().prepare("SELECT rowid FROM name_word('tidepool')");
  ASSERT_TRUE(names.step());
  EXPECT_EQ(names.integer(0), 9);
  // Path data of several lines was taken even-odd, and still is.
  Statement figures = book->database().prepare("SELECT group_concat(figures, '; ') FROM line");
  ASSERT_TRUE(figures.step());
  EXPECT_EQ(figures.text(0), "; even-odd; by eye, even-odd");

  std::vector<fs::path> backups;
  for (const auto& entry : fs::directory_iterator(folder.path() / "backups")) backups.push_back(entry.path());
  ASSERT_EQ(backups.size(), 1u);
  const Database kept = Database::open(backups.front().string(), SQLITE_OPEN_READONLY);
  EXPECT_EQ(header_figure(kept, "PRAGMA user_version"), 1);
}

// A row that was stored before a column was added is not as long as the others.
TEST(Book, WhatIsMeantOfAnOlderSampleCanBeTakenBack) {
  const TemporaryFolder folder;
  make_version_1(folder.path());
  Database::open((folder.path() / "book.db").string(), SQLITE_OPEN_READWRITE)
      .execute("INSERT INTO sample (uuid, title, key) VALUES ('t', 'Low Tide', 'low tide')");
  Result<Book> book = Book::open(folder.path(), Book::Use::write);
  ASSERT_TRUE(book) << book.error().what;
  const auto id = sample_titled(*book, "low tide");
  ASSERT_TRUE(id);
  bool changed = false;
  ASSERT_TRUE(book->change("meant", [&](Change& change) -> Result<void> {
    changed = set_meant(change, *id, std::nullopt, "no-stop");
    return {};
  }));
  EXPECT_TRUE(changed);
  EXPECT_EQ(sample(*book, *id)->meant, "no-stop");
  const auto undone = undo(*book, std::nullopt);
  ASSERT_TRUE(undone) << undone.error().what;
  EXPECT_EQ(sample(*book, *id)->meant, "");
}

TEST(Book, WhichChangesConcernWhichSamples) {
  TestBook test;
  std::int64_t one = 0, two = 0, colour_id = 0;
  test.change("made", [&](Change& change) {
    colour_id = *put_colour(change, "Kelp", std::nullopt);
    SampleRow row;
    row.title = "One";
    row.mentions.push_back({"paper", std::nullopt, colour_id, std::nullopt, "kelp"});
    one = put_sample(change, row)->second;
    two = put_titled(change, "Two");
  });
  EXPECT_EQ(test.book.samples_changed_since(0), (std::vector<std::int64_t>{one, two}));
  EXPECT_EQ(test.book.samples_changed_since(1), std::vector<std::int64_t>());
  test.change("value", [&](Change& change) { EXPECT_TRUE(put_colour(change, "kelp", 0x5a7a4a)); });
  EXPECT_EQ(test.book.samples_changed_since(1), std::vector<std::int64_t>{one});
  test.change("piece", [&](Change& change) {
    ElementRow piece;
    piece.sample_id = two;
    piece.name = "strip";
    EXPECT_TRUE(put_element(change, piece));
  });
  EXPECT_EQ(test.book.samples_changed_since(2), std::vector<std::int64_t>{two});
}

TEST(Book, WarnsOfNetworkFolders) {
  EXPECT_TRUE(network_file_system(0x6969));                                  // NFS
  EXPECT_TRUE(network_file_system(static_cast<std::int32_t>(0xFF534D42u)));  // CIFS, as a signed word
  EXPECT_FALSE(network_file_system(0xEF53));                                 // ext
  const TestBook test;
  EXPECT_EQ(test.book.warning(), "");
}

TEST(Book, DefaultFolderByTheBaseDirectoryRules) {
  const auto with = [](const char* named, const char* data, const char* home) {
    named != nullptr ? ::setenv("INSETBOOK", named, 1) : ::unsetenv("INSETBOOK");
    data != nullptr ? ::setenv("XDG_DATA_HOME", data, 1) : ::unsetenv("XDG_DATA_HOME");
    ::setenv("HOME", home, 1);
    return default_book_folder().string();
  };
  EXPECT_EQ(with("/b", "/d", "/h"), "/b");
  EXPECT_EQ(with(nullptr, "/d", "/h"), "/d/insetbook");
  EXPECT_EQ(with("", "relative", "/h"), "/h/.local/share/insetbook");
  EXPECT_EQ(with(nullptr, nullptr, "/h"), "/h/.local/share/insetbook");
}

TEST(Book, SampleColumnsAreWhereTheSchemaHasThem) {
  const TestBook test;
  Statement tables = test.book.database().prepare("SELECT name FROM sqlite_schema WHERE type = 'table'");
  int with_column = 0;
  while (tables.step()) {
    if (!logged_table(tables.text(0)) || tables.text(0) == "sample") continue;
    Statement columns =
        test.book.database().prepare("SELECT cid FROM pragma_table_info(?) WHERE name = 'sample_id'");
    columns.bind(1, tables.text(0));
    const int right = columns.step() ? static_cast<int>(columns.integer(0)) : -2;
    EXPECT_EQ(sample_column(tables.text(0)), right) << tables.text(0);
    with_column += right >= 0;
  }
  EXPECT_EQ(with_column, 4);
  EXPECT_EQ(sample_column("sample"), -1);
}

}  // namespace
}  // namespace insetbook
