// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/kept_answers.h"

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <vector>

#include "book/sqlite.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

struct Folder {
  fs::path path;
  Folder() {
    std::string name = (fs::temp_directory_path() / "insetbook-kept-XXXXXX").string();
    path = mkdtemp(name.data());
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path); }
};

const KeptKey key{"arch 70 x 90", "border 2"};

TEST(KeptAnswers, NothingIsThereAtFirstAndNothingIsMadeByLooking) {
  Folder folder;
  EXPECT_FALSE(KeptAnswers(folder.path).find(1, key));
  EXPECT_TRUE(fs::is_empty(folder.path));
}

TEST(KeptAnswers, WhatIsKeptIsFoundUnderJustThat) {
  Folder folder;
  KeptAnswers(folder.path).keep(1, key, "60 x 80");
  KeptAnswers kept(folder.path);
  EXPECT_EQ(kept.find(1, key), "60 x 80");
  EXPECT_FALSE(kept.find(2, key));
  EXPECT_FALSE(kept.find(1, {"arch 70 x 91", "border 2"}));
  EXPECT_FALSE(kept.find(1, {"arch 70 x 90", "border 3"}));
  kept.keep(1, {"arch 70 x 90", "border 3"}, "58 x 78");
  kept.keep(1, key, "60 x 81");
  EXPECT_EQ(kept.find(1, key), "60 x 81");
  EXPECT_EQ(kept.find(1, {"arch 70 x 90", "border 3"}), "58 x 78");
}

TEST(KeptAnswers, ANewMeasurementLetsTheOldAnswersOfThatLineGo) {
  Folder folder;
  KeptAnswers kept(folder.path);
  kept.keep(1, key, "a");
  kept.keep(2, key, "b");
  kept.keep(1, {"arch 71 x 90", "border 2"}, "c");
  EXPECT_FALSE(kept.find(1, key));
  EXPECT_EQ(kept.find(2, key), "b");
  EXPECT_EQ(kept.find(1, {"arch 71 x 90", "border 2"}), "c");
}

TEST(KeptAnswers, ADamagedFileIsMadeAnew) {
  for (const std::size_t size : {0u, 7u, 5000u}) {
    Folder folder;
    std::ofstream(folder.path / "derived.db") << std::string(size, 'x');
    EXPECT_FALSE(KeptAnswers(folder.path).find(1, key)) << size;
    KeptAnswers(folder.path).keep(1, key, "a");
    EXPECT_EQ(KeptAnswers(folder.path).find(1, key), "a") << size;
  }
  // Damage behind a good header.
  Folder folder;
  KeptAnswers(folder.path).keep(1, key, std::string(20'000, 'a'));
  {
    std::fstream file(folder.path / "derived.db", std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(4096);
    file << std::string(8192, '\xff');
  }
  EXPECT_FALSE(KeptAnswers(folder.path).find(1, key));
  KeptAnswers(folder.path).keep(1, key, "b");
  EXPECT_EQ(KeptAnswers(folder.path).find(1, key), "b");
}

// One character of the answer is another, and the file can be read: it is no answer.
TEST(KeptAnswers, ADamagedAnswerIsNone) {
  Folder folder;
  KeptAnswers(folder.path).keep(1, key, "1106299 x 1500000");
  {
    Database db = Database::open((folder.path / "derived.db").string(), SQLITE_OPEN_READWRITE);
    db.execute("UPDATE kept SET answer = replace(answer, '1106299', '1106298')");
  }
  EXPECT_FALSE(KeptAnswers(folder.path).find(1, key));
  KeptAnswers(folder.path).keep(1, key, "b");
  EXPECT_EQ(KeptAnswers(folder.path).find(1, key), "b");
}

// Programs that keep their first answer at once keep it in one file: none takes it from another.
TEST(KeptAnswers, SeveralMakeTheFileAtOnce) {
  Folder folder;
  constexpr int programs = 8, answers = 20;
  std::vector<pid_t> children;
  for (int program = 0; program < programs; ++program) {
    const pid_t child = fork();
    if (child == 0) {
      for (int i = 0; i < answers; ++i)
        KeptAnswers(folder.path).keep(program * answers + i, key, std::to_string(program));
      _exit(0);
    }
    ASSERT_GT(child, 0);
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    ASSERT_EQ(waitpid(child, &status, 0), child);
    EXPECT_EQ(status, 0);
  }
  KeptAnswers kept(folder.path);
  for (int i = 0; i < programs * answers; ++i) EXPECT_EQ(kept.find(i, key), std::to_string(i / answers)) << i;
}

TEST(KeptAnswers, AFolderThatCannotBeWrittenKeepsNothing) {
  KeptAnswers kept("/nowhere/at/all");
  kept.keep(1, key, "a");
  EXPECT_FALSE(kept.find(1, key));
}

}  // namespace
}  // namespace insetbook
