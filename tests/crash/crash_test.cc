// SPDX-License-Identifier: GPL-3.0-or-later
//
// The program is killed at every write, sync, rename and removal of each piece of work; what is found
// afterwards is the book as it was before or as it is after, and whole. The same with a disk that is full
// from that point on.
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <functional>
#include <set>

#include "answers/record.h"
#include "book/backup.h"
#include "book/changes.h"
#include "book/edit.h"
#include "book/invented.h"
#include "book/photos.h"
#include "failing_disk.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

const std::string nothing_there = "no book";

struct Work {
  std::string name;
  std::function<void(const fs::path& folder)> prepare;
  std::function<Result<void>(const fs::path& folder)> run;
};

std::string picture(int i) {
  return "\xff\xd8\xff\xe0 an invented photograph " + std::to_string(i);
}

Result<void> import_into(Book& book, int samples) {
  return book.change("imported", [&](Change& change) -> Result<void> {
    put_nested_set(change, "Tidepool Rectangles", 8);
    const Result<std::int64_t> kelp = put_colour(change, "Kelp", 0x5a7a4a);
    if (!kelp) return failure(kelp.error());
    for (int i = 0; i < samples; ++i) {
      SampleRow row;
      row.title = "Imported card " + std::to_string(i);
      row.steps = std::string(400, 's');
      if (i % 20 == 0) {
        const Result<std::string> hash = keep_photo(book, picture(i), "photo.jpg");
        if (!hash) return failure(hash.error());
        row.photos.push_back({"photo.jpg", *hash});
      }
      const auto put = put_sample(change, row);
      if (!put) return failure(put.error());
      for (int p = 0; p < 5; ++p) {
        ElementRow piece;
        piece.sample_id = put->second;
        piece.name = "piece " + std::to_string(p);
        piece.mentions.push_back({"paper", std::nullopt, *kelp, std::nullopt, "kelp"});
        if (const auto done = put_element(change, piece); !done) return failure(done.error());
      }
    }
    return {};
  });
}

void make_book(const fs::path& folder) {
  Result<Book> book = Book::create(folder);
  ASSERT_TRUE(book);
  ASSERT_TRUE(book->change("made", [&](Change& change) -> Result<void> {
    put_nested_set(change, "Moonrise Circles", 4);
    SampleRow row;
    row.title = "Moonrise birthday";
    row.photos.push_back({"front.jpg", *keep_photo(*book, picture(-1), "front.jpg")});
    return put_sample(change, row) ? Result<void>() : Result<void>();
  }));
}

// The book as its first version was: without the look-up by name.
void make_version_1(const fs::path& folder) {
  make_book(folder);
  const Database db = Database::open((folder / "book.db").string(), SQLITE_OPEN_READWRITE);
  std::string drop;
  Statement triggers = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'");
  while (triggers.step()) drop += "DROP TRIGGER " + std::string(triggers.text(0)) + ";";
  db.execute(drop +
             "DROP TABLE name_word; DROP TABLE name_trigram; DROP VIEW name_of; DROP INDEX mention_unlinked; "
             "DROP INDEX element_glue; DROP TABLE name_piece; DROP INDEX sample_envelope; "
             "ALTER TABLE sample DROP COLUMN meant; ALTER TABLE element DROP COLUMN meant; "
             "PRAGMA user_version = 1");
}

template <class T>
Result<void> only_whether(const Result<T>& result) {
  if (!result) return failure(result.error());
  return {};
}

Result<void> with_book(const fs::path& folder, const std::function<Result<void>(Book&)>& work) {
  Result<Book> book = Book::open(folder, Book::Use::write);
  if (!book) return failure(book.error());
  return work(*book);
}

const std::vector<Work>& works() {
  static const std::vector<Work> all{
      {"create", [](const fs::path&) {}, [](const fs::path& f) { return only_whether(Book::create(f)); }},
      {"import", make_book,
       [](const fs::path& f) { return with_book(f, [](Book& book) { return import_into(book, 40); }); }},
      {"record", make_book,
       [](const fs::path& f) {
         return with_book(f, [](Book& book) {
           return book.change("recorded", [&](Change& change) -> Result<void> {
             const Result<std::string> hash = keep_photo(book, picture(7), "seven.jpg");
             if (!hash) return failure(hash.error());
             SampleRow row;
             row.title = "Recorded";
             row.photos.push_back({"seven.jpg", *hash});
             return only_whether(put_sample(change, row));
           });
         });
       }},
      {"record_from_lines", make_book,
       [](const fs::path& f) {
         return with_book(f, [](Book& book) {
           std::string lines =
               "easel fold\nbase white 8-1/2 x 5-1/2 in, scored at 4-1/4 in\ngrey panel 4 x 5-1/4 in\n";
           for (int i = 0; i < 40; ++i)
             lines += "sage circle 2-3/8 in, speckled, from moonrise circles 3, on the grey panel, wibble\n";
           return only_whether(record(book, {.title = "Low Tide", .text = lines}));
         });
       }},
      {"undo",
       [](const fs::path& f) {
         make_book(f);
         ASSERT_TRUE(with_book(f, [](Book& book) { return import_into(book, 8); }));
       },
       [](const fs::path& f) {
         return with_book(f, [](Book& book) { return only_whether(undo(book, std::nullopt)); });
       }},
      {"migration", make_version_1,
       [](const fs::path& f) { return only_whether(Book::open(f, Book::Use::write)); }},
      {"backup", make_book,
       [](const fs::path& f) {
         return with_book(f, [](Book& book) { return only_whether(backup(book, std::nullopt)); });
       }},
      {"restore",
       [](const fs::path& f) {
         make_book(f);
         ASSERT_TRUE(with_book(f, [&](Book& book) { return only_whether(backup(book, f / "copy.db")); }));
         ASSERT_TRUE(with_book(f, [](Book& book) { return import_into(book, 2); }));
       },
       [](const fs::path& f) { return only_whether(restore(f, f / "copy.db")); }},
      {"restore_where_the_book_is_damaged",
       [](const fs::path& f) {
         make_book(f);
         ASSERT_TRUE(with_book(f, [&](Book& book) { return only_whether(backup(book, f / "copy.db")); }));
         fs::resize_file(f / "book.db", 9000);
       },
       [](const fs::path& f) { return only_whether(restore(f, f / "copy.db")); }},
  };
  return all;
}

void PrintTo(const Work& work, std::ostream* out) {
  *out << work.name;
}

// UUIDs and times are new each time the work is done. "8-4-4-4-12" and "YYYY-MM-DDTHH:MM:SSZ" are taken out.
std::string without_chance(const std::string& dumped) {
  const auto is_at = [&](std::size_t at, std::initializer_list<std::pair<std::size_t, char>> marks) {
    return std::all_of(marks.begin(), marks.end(), [&](const auto& mark) {
      return at + mark.first < dumped.size() && dumped[at + mark.first] == mark.second;
    });
  };
  std::string out;
  for (std::size_t at = 0; at < dumped.size();) {
    if (is_at(at, {{8, '-'}, {13, '-'}, {18, '-'}, {23, '-'}})) {
      at += 36;
    } else if (is_at(at, {{4, '-'}, {7, '-'}, {10, 'T'}, {13, ':'}, {16, ':'}, {19, 'Z'}})) {
      at += 20;
    } else {
      out += dumped[at++];
    }
  }
  return out;
}

// The state of a folder, as somebody who opens the book sees it.
std::string state_of(const fs::path& folder) {
  if (!fs::exists(folder / "book.db")) return nothing_there;
  const Result<Book> book = Book::open(folder, Book::Use::write);
  if (!book) return "unusable: " + book.error().what;
  return without_chance(dump(*book));
}

std::vector<std::string> faults_of(const fs::path& folder) {
  const Result<Verified> verified = verify(folder);
  if (!verified) return {verified.error().what};
  return verified->faults;
}

// A copy of a database in the backups folder is whole under its own name.
void expect_whole_backups(const fs::path& folder) {
  if (!fs::exists(folder / "backups")) return;
  for (const auto& entry : fs::directory_iterator(folder / "backups")) {
    if (entry.path().extension() != ".db" || entry.path().filename().string().starts_with("damaged"))
      continue;
    const Database db = Database::open(entry.path().string(), SQLITE_OPEN_READONLY);
    Statement check = db.prepare("PRAGMA integrity_check");
    ASSERT_TRUE(check.step());
    EXPECT_EQ(check.text(0), "ok") << entry.path();
    EXPECT_NO_THROW(db.prepare("SELECT count(*) FROM backup_photo")) << entry.path();
  }
}

class Crash : public testing::TestWithParam<Work> {
 protected:
  void SetUp() override {
    use_failing_disk();
    fail_at(Failure::none, 0);
    GetParam().prepare(model_.path() / "book");
    // A book that was never opened again is as somebody finds it next: unreadable ones stay as they are.
    const TemporaryFolder look, done;
    copy_to(look.path());
    before_ = state_of(look.path() / "book");
    copy_to(done.path());
    fail_at(Failure::none, 0);
    const Result<void> ran = GetParam().run(done.path() / "book");
#ifdef __SANITIZE_ADDRESS__
    // A process that is watched so closely takes long to split: some thirty stops there, every one elsewhere.
    constexpr int stops = 30;
    stride_ = std::max(1, points_passed() / stops);
#endif
    ASSERT_TRUE(ran) << ran.error().what;
    after_ = state_of(done.path() / "book");
    whole_before_ = before_.rfind("unusable", 0) != 0 && before_ != nothing_there;
  }
  void copy_to(const fs::path& folder) const {
    if (fs::exists(model_.path() / "book")) {
      fs::copy(model_.path() / "book", folder / "book", fs::copy_options::recursive);
    }
  }
  // Runs the work in a process of its own; whether it was killed.
  bool killed_at(const fs::path& folder, int point) const {
    const pid_t child = ::fork();
    if (child == 0) {
      fail_at(Failure::kill, point);
      ::_exit(GetParam().run(folder) ? 0 : 1);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_TRUE(WIFSIGNALED(status) ? WTERMSIG(status) == SIGKILL : WEXITSTATUS(status) == 0) << status;
    return WIFSIGNALED(status);
  }
  void expect_before_or_after(const fs::path& folder, int point) const {
    const std::string state = state_of(folder);
    EXPECT_TRUE(state == before_ || state == after_)
        << "stopped at point " << point << ": " << state.substr(0, 200);
    if (state == after_ || whole_before_) {
      EXPECT_EQ(faults_of(folder), std::vector<std::string>()) << "stopped at point " << point;
    }
    expect_whole_backups(folder);
  }

  TemporaryFolder model_;
  std::string before_, after_;
  int stride_ = 1;
  bool whole_before_ = false;
};

TEST_P(Crash, KilledAtEveryPointLeavesAllOrNone) {
  int stops = 0;
  std::set<bool> outcomes;
  for (int point = 1;; point += stride_) {
    const TemporaryFolder folder;
    copy_to(folder.path());
    if (!killed_at(folder.path() / "book", point)) break;
    ++stops;
    expect_before_or_after(folder.path() / "book", point);
    outcomes.insert(state_of(folder.path() / "book") == before_);
    if (HasFailure()) return;
    // The work can be done now, as if nothing had been.
    if (point % 7 == 0 && state_of(folder.path() / "book") == before_) {
      EXPECT_TRUE(GetParam().run(folder.path() / "book")) << point;
      EXPECT_EQ(faults_of(folder.path() / "book"), std::vector<std::string>());
    }
  }
  EXPECT_GT(stops, 10);
  if (before_ != after_) {
    EXPECT_EQ(outcomes.count(true), 1u);
  }
  RecordProperty("stops", stops);
}

TEST_P(Crash, AFullDiskIsSaidAndLeavesAllOrNone) {
  int stops = 0, refused = 0;
  for (int point = 1;; point += stride_) {
    const TemporaryFolder folder;
    copy_to(folder.path());
    fail_at(Failure::disk_full, point);
    const Result<void> done = GetParam().run(folder.path() / "book");
    const bool reached = points_passed() >= point;
    fail_at(Failure::none, 0);
    if (!reached) break;
    ++stops;
    const std::string state = state_of(folder.path() / "book");
    if (done) {
      EXPECT_TRUE(state == after_) << point << ": " << state.substr(0, 200);
    } else {
      ++refused;
      EXPECT_TRUE(state == before_) << point << ": " << state.substr(0, 200);
      EXPECT_EQ(done.error().kind, ProblemKind::unusable_book);
      EXPECT_EQ(done.error().what, "the disk is full; the book is as it was") << point;
      EXPECT_EQ(done.error().expected, "make room on the disk and try again");
    }
    if (done || whole_before_) {
      EXPECT_EQ(faults_of(folder.path() / "book"), std::vector<std::string>()) << point;
    }
    if (HasFailure()) return;
  }
  EXPECT_GT(stops, 10);
  EXPECT_GT(refused, 0);
}

INSTANTIATE_TEST_SUITE_P(Book, Crash, testing::ValuesIn(works()),
                         [](const auto& one) { return one.param.name; });

}  // namespace
}  // namespace insetbook
