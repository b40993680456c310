// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/backup.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <fstream>

#include "book/book_parts.h"
#include "book/changes.h"
#include "book/invented.h"
#include "book/photos.h"
#include "book/sha256.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

const std::string picture = "\xff\xd8\xff\xe0 an invented photograph";

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

void write(const fs::path& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

// A book with a set, a sample and its photograph.
struct Whole : TestBook {
  Whole() {
    change("made", [&](Change& change) {
      put_nested_set(change, "Tidepool Rectangles", 2);
      SampleRow row;
      row.title = "Moonrise birthday";
      row.photos.push_back({"front.jpg", *keep_photo(book, picture, "front.jpg")});
      EXPECT_TRUE(put_sample(change, row));
    });
  }
  fs::path copy() {
    const auto made = backup(book, folder.path() / "copy.db");
    EXPECT_TRUE(made) << made.error().what;
    return made->file;
  }
};

// FIPS 180-4's examples as published by NIST ("SHA256.pdf", example values), and the empty text (from
// memory).
TEST(Sha256, KnownValues) {
  EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(Photos, AreKeptOnceUnderTheirHash) {
  const TestBook test;
  const auto hash = keep_photo(test.book, picture, "a.jpg");
  ASSERT_TRUE(hash);
  EXPECT_EQ(*hash, sha256(picture));
  EXPECT_EQ(keep_photo(test.book, picture, "b.jpg"), *hash);
  EXPECT_EQ(*read_photo(test.book, *hash), picture);
  EXPECT_EQ(std::distance(fs::directory_iterator(test.folder.path() / "photos"), {}), 1);
}

TEST(Photos, WhatIsNoneIsRefused) {
  const TestBook test;
  const auto text = keep_photo(test.book, "just words", "notes.txt");
  ASSERT_FALSE(text);
  EXPECT_EQ(text.error().what, "\"notes.txt\" is no picture");
  EXPECT_EQ(text.error().expected, "a JPEG, PNG, WebP, GIF, TIFF, HEIF or SVG file");
  EXPECT_FALSE(keep_photo(test.book, "", "empty.jpg"));
  const auto large = keep_photo(test.book, std::string(largest_photo + 1, 'x'), "large.jpg");
  ASSERT_FALSE(large);
  EXPECT_EQ(large.error().what, "\"large.jpg\" is larger than 64 MB");
  const auto none = keep_photo_file(test.book, test.folder.path() / "none.jpg");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().kind, ProblemKind::bad_input);
  EXPECT_FALSE(keep_photo_file(test.book, test.folder.path()));
}

TEST(Photos, DamagedOrMissingOnesAreSaid) {
  const TestBook test;
  const std::string hash = *keep_photo(test.book, picture, "a.jpg");
  write(photo_path(test.book, hash), picture + "x");
  EXPECT_EQ(read_photo(test.book, hash).error().what,
            "the photograph \"" + photo_path(test.book, hash).string() + "\" is damaged");
  EXPECT_EQ(*keep_photo(test.book, picture, "a.jpg"), hash);  // mends it
  EXPECT_TRUE(read_photo(test.book, hash));
  EXPECT_FALSE(read_photo(test.book, std::string(64, '0')));
  EXPECT_FALSE(read_photo(test.book, "../book.db"));
}

TEST(Backup, IsOneFileAndIsRestored) {
  Whole whole;
  const std::string before = dump(whole.book);
  const auto made = backup(whole.book, std::nullopt);
  ASSERT_TRUE(made) << made.error().what;
  EXPECT_EQ(made->file.parent_path(), whole.folder.path() / "backups");
  EXPECT_EQ(made->photographs, 1);
  EXPECT_EQ(made->missing.size(), 0u);

  whole.change("another", [](Change& change) { put_titled(change, "Another"); });
  fs::remove(photo_path(whole.book, sha256(picture)));
  fs::create_directory(whole.folder.path() / "index");
  const auto restored = restore(whole.folder.path(), made->file);
  ASSERT_TRUE(restored) << restored.error().what;
  EXPECT_EQ(restored->samples, 1);
  EXPECT_EQ(restored->photographs, 1);
  EXPECT_EQ(restored->version, book_version);
  EXPECT_EQ(dump(whole.book), before);  // also for whoever had it open
  EXPECT_EQ(*read_photo(whole.book, sha256(picture)), picture);
  EXPECT_FALSE(fs::exists(whole.folder.path() / "index"));
  EXPECT_EQ(verify(whole.folder.path())->faults, std::vector<std::string>());

  // The state before was kept, and comes back the same way.
  ASSERT_TRUE(restore(whole.folder.path(), restored->present));
  EXPECT_EQ(sample_titled(whole.book, "another"), 2);
}

TEST(Backup, IsNeverWrittenOverAFile) {
  Whole whole;
  write(whole.folder.path() / "mine.db", "mine");
  const auto made = backup(whole.book, whole.folder.path() / "mine.db");
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().what,
            "there is a file \"" + (whole.folder.path() / "mine.db").string() + "\" already");
  EXPECT_EQ(read(whole.folder.path() / "mine.db"), "mine");
  EXPECT_FALSE(backup(whole.book, whole.folder.path() / "no such folder" / "copy.db"));
}

TEST(Backup, TwoInOneSecondHaveTwoNames) {
  Whole whole;
  const auto first = backup(whole.book, std::nullopt), second = backup(whole.book, std::nullopt);
  ASSERT_TRUE(first && second);
  EXPECT_NE(first->file, second->file);
}

TEST(Backup, SaysWhichPhotographsAreMissing) {
  Whole whole;
  fs::remove(photo_path(whole.book, sha256(picture)));
  const auto made = backup(whole.book, std::nullopt);
  ASSERT_TRUE(made);
  ASSERT_EQ(made->missing.size(), 1u);
  EXPECT_TRUE(made->missing.front().starts_with("front.jpg: ")) << made->missing.front();
}

TEST(Restore, MendsAPhotographThatWasDamagedInPlace) {
  Whole whole;
  const auto made = backup(whole.book, std::nullopt);
  ASSERT_TRUE(made);
  const fs::path photo = photo_path(whole.book, sha256(picture));
  std::string bytes(picture);
  bytes.back() = static_cast<char>(bytes.back() ^ 1);
  std::ofstream(photo, std::ios::binary) << bytes;
  ASSERT_FALSE(verify(whole.book.folder())->faults.empty());
  ASSERT_TRUE(restore(whole.book.folder(), made->file));
  EXPECT_TRUE(verify(whole.book.folder())->faults.empty());
}

TEST(Restore, MakesABookWhereThereIsNone) {
  Whole whole;
  const fs::path copy = whole.copy();
  const TemporaryFolder other;
  const auto restored = restore(other.path() / "book", copy);
  ASSERT_TRUE(restored) << restored.error().what;
  EXPECT_TRUE(restored->present.empty());
  const auto book = Book::open(other.path() / "book", Book::Use::read);
  ASSERT_TRUE(book) << book.error().what;
  EXPECT_EQ(dump(*book), dump(whole.book));
  EXPECT_TRUE(read_photo(*book, sha256(picture)));
  Statement mode = book->database().prepare("PRAGMA journal_mode");
  ASSERT_TRUE(mode.step());
  EXPECT_EQ(mode.text(0), "wal");
}

TEST(Restore, TakesThePlaceOfADamagedBookAndKeepsItsBytes) {
  Whole whole;
  const fs::path copy = whole.copy();
  const TemporaryFolder other;
  { ASSERT_TRUE(Book::create(other.path())); }
  fs::resize_file(other.path() / "book.db", 9000);
  const std::string damaged = read(other.path() / "book.db");
  const auto restored = restore(other.path(), copy);
  ASSERT_TRUE(restored) << restored.error().what;
  EXPECT_EQ(read(restored->present), damaged);
  EXPECT_EQ(verify(other.path())->faults, std::vector<std::string>());
}

TEST(Restore, WhatIsNoBackupIsRefusedAndTheBookIsAsItWas) {
  Whole whole;
  const std::string before = dump(whole.book);
  const fs::path folder = whole.folder.path();
  const auto refused = [&](const fs::path& file) {
    const auto restored = restore(folder, file);
    EXPECT_FALSE(restored) << file;
    EXPECT_EQ(dump(whole.book), before);
    EXPECT_TRUE(fs::is_empty(folder / "backups"));
    return restored ? std::string() : restored.error().what;
  };
  const std::string text = (folder / "text.db").string(), torn = (folder / "torn.db").string();
  write(text, std::string(5000, 'x'));
  EXPECT_EQ(refused(text), "\"" + text + "\" is no copy of a book: it is another kind of file, or damaged");
  write(text, "");
  EXPECT_EQ(refused(text), "\"" + text + "\" is no copy of a book: it is another kind of file");
  EXPECT_EQ(refused(folder), "\"" + folder.string() + "\" is no copy of a book: it is a folder");
  EXPECT_NE(refused(folder / "none.db"), "");
  fs::copy(whole.copy(), torn);
  fs::resize_file(torn, fs::file_size(torn) / 2);
  EXPECT_NE(refused(torn), "");
  const std::string newer = (folder / "newer.db").string();
  fs::copy(folder / "copy.db", newer);
  Database::open(newer, SQLITE_OPEN_READWRITE).execute("PRAGMA user_version = 99");
  EXPECT_EQ(refused(newer),
            "this book has version 99, and this program knows books up to " + std::to_string(book_version));
  // A trigger of its own could do anything later.
  const std::string odd = (folder / "odd.db").string();
  fs::copy(folder / "copy.db", odd);
  Database::open(odd, SQLITE_OPEN_READWRITE)
      .execute("CREATE TRIGGER odd AFTER INSERT ON sample BEGIN DELETE FROM colour; END");
  EXPECT_EQ(refused(odd), "\"" + odd + "\" is no copy of a book: trigger odd is not part of a book");
  const std::string photo = (folder / "photo.db").string();
  fs::copy(folder / "copy.db", photo);
  Database::open(photo, SQLITE_OPEN_READWRITE).execute("UPDATE backup_photo SET bytes = x'00'");
  EXPECT_EQ(refused(photo), "\"" + photo + "\" is no copy of a book: a photograph in it is damaged");
}

TEST(Restore, LeavesANewerBookAlone) {
  Whole whole;
  const fs::path copy = whole.copy();
  const int newer = book_version + 1;
  whole.book.database().execute("PRAGMA user_version = " + std::to_string(newer));
  const auto restored = restore(whole.folder.path(), copy);
  ASSERT_FALSE(restored);
  EXPECT_EQ(restored.error().what, "this book has version " + std::to_string(newer) +
                                       ", and this program knows books up to " +
                                       std::to_string(book_version));
}

// ---- verify

std::vector<std::string> faults_after(Whole& whole, std::string_view sql) {
  whole.book.database().execute(sql);
  const auto verified = verify(whole.folder.path());
  EXPECT_TRUE(verified) << verified.error().what;
  return verified ? verified->faults : std::vector<std::string>();
}

TEST(Verify, AWholeBookHasNoFaults) {
  Whole whole;
  EXPECT_TRUE(undo(whole.book, std::nullopt));
  EXPECT_TRUE(undo(whole.book, 2));
  const auto verified = verify(whole.folder.path());
  ASSERT_TRUE(verified) << verified.error().what;
  EXPECT_EQ(verified->faults, std::vector<std::string>());
  EXPECT_EQ(verified->samples, 1);
  EXPECT_EQ(verified->dies, 2);
  EXPECT_EQ(verified->photographs, 1);
  EXPECT_EQ(verified->changes, 3);
}

TEST(Verify, EachKindOfFaultIsListed) {
  struct Row {
    const char* sql;
    const char* fault;
  };
  for (const Row& row : std::vector<Row>{
           {"UPDATE sample SET note = 'behind the log'", "sample 1 is not as the change log has it"},
           {"PRAGMA foreign_keys = OFF; DELETE FROM die_set", "die 1 refers to a die_set that is not there"},
           {"PRAGMA foreign_keys = OFF; DELETE FROM measurement WHERE id = 2",
            "measurement 2 is in the change log and not in the book"},
           {"INSERT INTO name_word (name_word, rowid, name) VALUES ('delete', 13, 'Moonrise birthday')",
            "the look-up by name (name_word) is out of step with the records"},
           {"UPDATE change_row SET before = 'x' WHERE id = 1", "entry 1 of the change log cannot be read"},
           {"DROP INDEX sample_made", "book.db: index sample_made is missing"},
           {"CREATE TABLE more (a)", "book.db: table more is not part of a book"}}) {
    Whole whole;
    const auto faults = faults_after(whole, row.sql);
    EXPECT_NE(std::find(faults.begin(), faults.end(), row.fault), faults.end())
        << row.fault << "\nfound: " << testing::PrintToString(faults);
  }
}

TEST(Verify, MissingAndDamagedPhotographs) {
  Whole whole;
  const fs::path path = photo_path(whole.book, sha256(picture));
  write(path, picture + "x");
  EXPECT_EQ(verify(whole.folder.path())->faults,
            std::vector<std::string>{"the photograph \"front.jpg\" of \"Moonrise birthday\" is damaged: " +
                                     path.string()});
  fs::remove(path);
  EXPECT_EQ(verify(whole.folder.path())->faults,
            std::vector<std::string>{"the photograph \"front.jpg\" of \"Moonrise birthday\" is missing: " +
                                     path.string()});
}

// Bytes in the middle of the file overwritten, page by page: never a crash, never unnoticed.
TEST(Verify, DamagedPagesAreFoundOrRefused) {
  Whole whole;
  whole.book.database().execute("PRAGMA wal_checkpoint(TRUNCATE)");
  const std::string good = read(whole.folder.path() / "book.db");
  const TemporaryFolder other;
  const std::size_t page = 4096;
  int noticed = 0, pages = 0;
  for (std::size_t at = 0; at + page <= good.size(); at += page, ++pages) {
    std::string bad = good;
    for (std::size_t i = 0; i < page; ++i) bad[at + i] = static_cast<char>(0x5a);
    write(other.path() / "book.db", bad);
    fs::remove(other.path() / "book.db-wal");
    fs::remove(other.path() / "book.db-shm");
    fs::create_directories(other.path() / "photos");
    fs::copy_file(photo_path(whole.book, sha256(picture)), other.path() / "photos" / sha256(picture),
                  fs::copy_options::overwrite_existing);
    const auto verified = verify(other.path());
    if (!verified || !verified->faults.empty()) ++noticed;
  }
  EXPECT_GT(pages, 50);
  EXPECT_EQ(noticed, pages);
}

}  // namespace
}  // namespace insetbook
