// SPDX-License-Identifier: GPL-3.0-or-later
//
// The program as a person runs it: words in, exit status and text out, on a book made of the sample tables.
#include <gtest/gtest.h>
#include <stdlib.h>
#include <sys/wait.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "cli/commands.h"

namespace insetbook::cli {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

struct Ran {
  int status = -1;
  std::string out;
};

Ran shell(const std::string& command) {
  Ran ran;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 4096> buffer{};
  while (const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), pipe))
    ran.out.append(buffer.data(), n);
  const int status = pclose(pipe);
  ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

// A folder of its own for each test, with a book of the sample tables where it is asked for.
class Program : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "insetbook-cli-XXXXXX").string();
    folder_ = mkdtemp(name.data());
  }
  void TearDown() override {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  fs::path book() const { return folder_ / "book"; }
  // Standard error goes where standard output does.
  Ran run(const std::string& words) const {
    return shell("'" + std::string(INSETBOOK_PROGRAM) + "' --book '" + book().string() + "' " + words +
                 " 2>&1");
  }
  Json json(const std::string& words) const {
    const Ran ran = shell("'" + std::string(INSETBOOK_PROGRAM) + "' --json --book '" + book().string() +
                          "' " + words + " 2>/dev/null");
    return Json::parse(ran.out, nullptr, false);
  }
  void import_samples() const {
    const std::string data = std::string(INSETBOOK_SOURCE_DIR) + "/sample-data/";
    const Ran ran = run("import " + data + "dies.csv " + data + "supplies.csv " + data + "samples.csv " +
                        data + "elements.csv " + data + "tried.csv");
    ASSERT_EQ(ran.status, 0) << ran.out;
  }
  fs::path file(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return folder_ / name;
  }
  fs::path folder_;
};

struct Row {
  std::string words;
  int status;
  std::string says;  // somewhere in what is printed
};

TEST_F(Program, AnswersEachCommand) {
  import_samples();
  const Row table[] = {
      {"find designs using a 2-3/8 in circle with a stand-up fold", 0, "10 samples"},
      {"find 2-3/8 in circle, tag fold, purple unicorn", 1, "No sample has all of that."},
      {"find what fits inside the second largest tidepool rectangle", 0, "rectangle 3-1/4 x 4-1/2 in"},
      {"fits second largest tidepool rectangle", 0, "Tried before."},
      {"fits tidepool rectangles 6", 0, "Estimated."},
      {"fits tidepool rectangles", 2, "one of these"},
      {"fits nothing of the kind", 2, ""},
      {"fits tidepool rectangles 2 --border 2-9/8", 2, "^"},
      {"frames 2-3/8 in circle", 0, "frame a circle 2-3/8 in"},
      {"frames 30 x 40 in", 1, "No measured die frames"},
      {"measure tidepool rectangles 2, stitched", 0, "3-3/8 x 4-5/8 in"},
      {"measure tidepool rectangles 2, stitched --size '3-3/8 x 4-5/8 in' --read-to '1/64 in'", 0,
       "confirms"},
      {"measure tidepool rectangles 2, stitched --size '3 x 4 in'", 1, "disagrees"},
      {"measure tidepool rectangles 2, stitched --size '3 x 4 in'", 1, "disagrees"},
      {"measure tidepool rectangles 2, stitched --size '3 x 4 in' --accept", 0, "3 x 4 in"},
      {"measure 'Fencepost Rounds 1' --new --shape circle --size '2 in'", 0, "Fencepost Rounds 1"},
      {"measure 'Fencepost Rounds 1' --new --shape circle --size '2 in'", 2, "is in the book already"},
      {"measure moonrise circles, embossed --sizes ''", 2, "no die of the set has a line called embossed"},
      {"measure dewpond rounds --sizes '95 mm; 80 mm; 70 mm; 60 mm; 50 mm; ; '", 0, "confirms"},
      {"tried fencepost rounds 1 --size '1-7/8 in'", 0, "Recorded."},
      {"tried fencepost rounds 1 --size '7 in'", 0, "cannot lie in it"},
      {"show moonrise circles", 0, "stitched"},
      {"show kettles on", 0, "Kettle's On"},
      {"change \"Kettle's On\" note=seen", 0, "is now seen"},
      {"delete otter", 2, "insetbook delete \"Slide for a Small Otter\""},
      {"delete \"Kettle's On\"", 0, "is deleted"},
      {"undo", 0, "is taken back: deleted Kettle's On"},
      {"undo list", 0, "deleted"},
      {"words show easel", 0, "built to stand"},
      {"words add technique 'ink washing' --broader inking", 0, "ink washing (technique)"},
      {"settings border=1/8in", 0, "border: 1/8 in"},
      {"settings", 0, "cutting step"},
      {"settings today=2026-11-25", 0, "today: 2026-11-25"},
      {"find --explain last spring", 0, "2026-03-01 to 2026-05-31"},
      {"settings hemisphere=south", 0, "hemisphere: southern"},
      {"find --explain last spring", 0, "2025-09-01 to 2025-11-30"},
      {"settings hemisphere=", 0, "hemisphere: northern"},
      {"settings today=", 0, "today: "},
      {"settings hemisphere=east", 2, "\"east\" is no value for \"hemisphere\""},
      {"verify", 0, "The book is whole."},
      {"backup", 0, "copied into"},
      {"convert 2-3/8 in", 0, "60.325 mm"},
      {"convert banana", 2, "banana"},
      {"find how big do I cut a panel for a 3 x 4 in frame so an eighth shows all round", 0,
       "rectangle 2-3/4 x 3-3/4 in, 1/8 in showing on each side. Computed."},
      {"fits 3 x 4 in frame", 0, "An opening as you say it, rectangle 3 x 4 in."},
      {"fits tidepol rectangles 2", 0, "Read as Tidepool Rectangles"},
      {"fits 3 x", 2, "size: \"3 x"},
      {"frames nonsense", 2, "\"nonsense\" is no size, and nothing in the book that has one"},
      {"frames 2-3/8 in circle --limit 1", 0, "The closest of"},
      {"frames 2-3/8 in circle --limit 0", 2, "--limit: \"0\" is no number above zero"},
      {"find which two dies make a frame a quarter inch wide", 0, "in it: a frame 1/4 in"},
      {"find how big is the second largest tidepool rectangle", 0, "3 x 4 in"},
      {"find have I got a 2-3/8 circle die", 0, "Moonrise Circles 4 (fourth largest), cut: circle 2-3/8 in."},
      {"find do I have a 3 inch circle die", 0,
       "No die cuts just that, but this line is: Snowmelt Scallops 2 (second largest), embossed: circle 3 "
       "in."},
      {"find do I have a 9 inch circle die", 1,
       "None is just that. The nearest is Moonrise Circles 1 (largest), cut: circle 3-7/8 in, 5-1/8 in "
       "smaller."},
      {"find what was too tight", 0,
       "rectangle 79 x 122 mm: too tight (the newest of 7). Kelpwick Frames 1 (largest), window."},
      {"find what size is the frame on fog horn", 0, "rectangle 3-5/8 x 4-7/8 in: frame on Fog Horn."},
      {"find what colour is wet slate", 0, "Value: #5b6770"},
      {"find what did I use the moth stamps for", 0, "4 samples:"},
      {"fits kelpwick frames 2, window", 0,
       "Covers the window from behind: rectangle 2-5/8 x 4-5/16 in (1/8 in overlap all round)."},
      {"fits kelpwick frames 2", 0,
       "No line was named: the innermost that is no window is meant, cut. There is too: Kelpwick Frames 2, "
       "window (rectangle 56 x 99 mm was tried in it)."},
      {"measure moonrise circles 5 --size '1-7/8 in'", 0,
       "Note: by the sizes of its set the stitched line is about 1-5/8 in, and the cut line about 1-7/8 in. "
       "If "
       "it is that one: insetbook undo, then insetbook measure \"Moonrise Circles 5, cut\" --size \"1-7/8 "
       "in\"."},
      {"measure 'moonrise circles 5, cut' --size '1-7/8 in'", 0,
       "Note: the stitched line (1-7/8 in) lies inside the cut edge (1-7/8 in) and cannot be as large: one "
       "of "
       "the two is wrong."},
      {"undo 1", 2, "later changes rest on it"},
      {"find 8-1/2 x 5-1/2 base, side fold", 0, "base (8-1/2 x 5-1/2 in, base)"},
      {"find side fold", 0, "more: --limit"},
      {"find exactly four circles", 0, "exactly four = exactly 4; circles = shape circle"},
      {"find 'photo or photo'", 1, "What leaves nothing: photo\n"},
      {"find pond weed", 1, "\"pond weed\" is not in the book. Did you mean \"pondweed\"?"},
      {"find shape:circl", 1, "\"circl\" is no shape of the vocabulary; did you mean \"circle\"?"},
      {"find 'like:#zzz'", 1, "the book has no colour \"#zzz\""},
      {"find which dies are not measured yet", 0, "lines in the book are not measured yet"},
      {"find where are the Hedge and Ditch stamps", 0, "stamp tin 2. All 4 of that name."},
      {"find where is the guillotine trimmer", 0, "no place is recorded"},
      {"find nearest to sage", 0, "lichen: much the same on a card"},
      {"nearest sage --limit 2", 0, "lichen: much the same on a card"},
      {"nearest '#a55030'", 0, "rusted gate: not to be told apart"},
      {"nearest nonsense", 2, "nonsense"},
      {"find what do I use instead of bilberry stain", 0,
       "Recorded to stand in for bilberry stain: card stock, heavy card: plum stone heavy card."},
      {"find 3-7/16 in mm", 0, "87.3125 mm"},
      {"find 60 mm in inches", 0, "about 2-3/8 in to the nearest sixteenth."},
      {"find show me the moonrise circles", 0, "Moonrise Circles"},
      {"find where is the wild goose", 1, "no die, set or supply is called"},
      {"pairs tidepool rectangles 2", 0, "goes into it: "},
      {"pairs tidepool rectangles 2 --border 1/64", 0, "No other die makes an even border 1/64 in wide in"},
      {"pairs", 2, "pairs needs OPENING"},
      {"check kettle", 0, "Kettle's On: "},
      {"base easel --finished 6x6in", 0, "easel: cut 6 x 12 in"},
      {"layers 4x5in --border 1/8", 0, "3-3/4 x 4-3/4 in."},
      {"resize kettle", 2, "resize needs the new base"},
      {"cut kettle", 2, "cut is not there yet"},
      {"nonsense", 2, "there is no command"},
      {"", 2, "Commands:"},
      {"--version", 0, "insetbook"},
  };
  for (const Row& row : table) {
    const Ran ran = run(row.words);
    EXPECT_EQ(ran.status, row.status) << row.words << "\n" << ran.out;
    EXPECT_NE(ran.out.find(row.says), std::string::npos) << row.words << "\n" << ran.out;
  }
}

TEST_F(Program, OtherQuestionsHaveTheirCommandsFields) {
  import_samples();
  EXPECT_TRUE(json("find what fits a 3 x 4 in frame").at("fits").at("invented").get<bool>());
  EXPECT_FALSE(json("find which die frames a 3 x 4 in panel").at("frames").at("openings").empty());
  EXPECT_EQ(json("find how big is tidepool rectangles 2").at("measure").at("lines").size(), 2u);
  EXPECT_EQ(json("find which dies are not measured").at("unmeasured").at("dies").size(), 9u);
  EXPECT_EQ(json("find where is the sage ink").at("kept").at("things").at(0).at("stored_in"), "ink tray");
  EXPECT_EQ(json("find nearest to sage").at("nearest").at("colours").at(0).at("name"), "lichen");
  EXPECT_EQ(json("find 3-7/16 in mm").at("convert").at("nm").at(0), 87312500);
  EXPECT_EQ(json("find show me the moonrise circles").at("show").at("kind"), "set");
  const Json nearest = json("nearest sage").at("colours").at(0);
  EXPECT_EQ(nearest.at("srgb"), "#c3cf9e");
  EXPECT_EQ(nearest.at("status"), "current");
  EXPECT_GT(nearest.at("delta_e").get<double>(), 0);
}

TEST_F(Program, EveryHelpHasAnExample) {
  for (const Command& command : commands()) {
    const Ran ran = run(std::string(command.name) + " --help");
    EXPECT_EQ(ran.status, 0);
    EXPECT_NE(ran.out.find("For example: insetbook " + std::string(command.example)), std::string::npos)
        << ran.out;
  }
}

TEST_F(Program, AFolderWithoutABookSaysWhatToDo) {
  const Ran ran = run("find sage");
  EXPECT_EQ(ran.status, 3) << ran.out;
  EXPECT_NE(ran.out.find("insetbook new"), std::string::npos) << ran.out;
}

TEST_F(Program, ABookOfANewerVersionIsRefused) {
  ASSERT_EQ(run("new").status, 0);
  ASSERT_EQ(shell("sqlite3 '" + (book() / "book.db").string() + "' 'PRAGMA user_version = 9999' 2>&1").status,
            0);
  const Ran ran = run("find sage");
  EXPECT_EQ(ran.status, 3) << ran.out;
  EXPECT_NE(ran.out.find("9999"), std::string::npos) << ran.out;
}

TEST_F(Program, MistakesAreListedAndTheGoodRowsGoIn) {
  import_samples();
  const Json report = json("import " + std::string(INSETBOOK_SOURCE_DIR) + "/sample-data/with-mistakes.csv");
  EXPECT_EQ(report.at("files").at(0).at("added"), 2);
  EXPECT_EQ(report.at("files").at(0).at("refused"), 8);
  for (const Json& row : report.at("refused")) {
    EXPECT_FALSE(row.at("what").get<std::string>().empty());
    EXPECT_GT(row.at("row").get<int>(), 1);
  }
}

TEST_F(Program, ADryRunMakesNoBook) {
  const fs::path dies = file("dies.csv", "set,die,line,shape,size\nA Set,1,cut,circle,2 in\n");
  EXPECT_EQ(run("import '" + dies.string() + "' --dry-run").status, 0);
  EXPECT_FALSE(fs::exists(book()));
  EXPECT_EQ(run("import '" + dies.string() + "'").status, 0);
  EXPECT_TRUE(fs::exists(book() / "book.db"));
}

TEST_F(Program, AProblemIsJsonToo) {
  ASSERT_EQ(run("new").status, 0);
  const Json error = json("fits nothing").at("error");
  EXPECT_TRUE(error.contains("what") && error.contains("where") && error.contains("expected")) << error;
  const Json place = json("frames '2-9/8 in circle'").at("error").at("where");
  EXPECT_EQ(place.at("at"), 0) << place;
  EXPECT_EQ(place.at("text"), "2-9/8 in circle") << place;
}

TEST_F(Program, ConvertAnswersEveryLine) {
  const Ran ran = shell("printf '2-3/8\\n\\n60 mm\\n' | '" + std::string(INSETBOOK_PROGRAM) +
                        "' --json convert - 2>/dev/null");
  EXPECT_EQ(ran.status, 2);
  EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\n'), 3) << ran.out;
}

TEST_F(Program, ARestoreBringsTheCopyBack) {
  import_samples();
  const fs::path copy = folder_ / "copy.db";
  ASSERT_EQ(run("backup '" + copy.string() + "'").status, 0);
  ASSERT_EQ(run("delete \"Kettle's On\"").status, 0);
  ASSERT_EQ(run("restore '" + copy.string() + "'").status, 0);
  EXPECT_EQ(run("show \"Kettle's On\"").status, 0);
  EXPECT_EQ(run("verify").status, 0);
}

}  // namespace
}  // namespace insetbook::cli
