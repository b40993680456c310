// SPDX-License-Identifier: GPL-3.0-or-later
//
// Recording a sample from lines: what becomes of each line, and that what was recorded is found, fits, goes
// out as tables and comes in again as the same.
#include "answers/record.h"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <map>

#include "answers/find.h"
#include "answers/fits.h"
#include "answers/import_tables.h"
#include "book/changes.h"
#include "book/settings.h"
#include "importers/csv/export_csv.h"

namespace insetbook {
namespace {

namespace fs = std::filesystem;

// A book with the dies and supplies of the sample tables, and no samples.
class Record : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "insetbook-record-XXXXXX").string();
    folder_ = mkdtemp(name.data());
    const fs::path data = fs::path(INSETBOOK_SOURCE_DIR) / "sample-data";
    ASSERT_TRUE(import_into(folder_ / "book", {data / "dies.csv", data / "supplies.csv"}, {}));
    book_.emplace(*Book::open(folder_ / "book", Book::Use::write));
    ASSERT_TRUE(set_setting(*book_, "today", "2026-11-25"));
  }
  void TearDown() override {
    book_.reset();
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  RecordAnswer recorded(std::string_view text, RecordAsked asked = {}) {
    if (asked.title.empty()) asked.title = "Low Tide";
    asked.text = text;
    Result<RecordAnswer> answer = record(*book_, asked);
    EXPECT_TRUE(answer) << (answer ? "" : answer.error().what);
    return answer.value_or(RecordAnswer());
  }
  std::vector<std::string> found(const std::string& question) const {
    const Result<FindAnswer> answer = find(*book_, {.question = question});
    std::vector<std::string> titles;
    if (!answer || !std::holds_alternative<Hits>(answer->answer)) return titles;
    for (const Hit& hit : std::get<Hits>(answer->answer).hits) titles.push_back(hit.title);
    return titles;
  }
  std::int64_t samples() const {
    Statement& row = book_->statement("SELECT count(*) FROM sample");
    row.step();
    const std::int64_t count = row.integer(0);
    row.reset();
    return count;
  }

  fs::path folder_;
  std::optional<Book> book_;
};

constexpr std::string_view whole =
    "easel fold\n"
    "base white 8-1/2 x 5-1/2 in, scored at 2-1/8 and 4-1/4\n"
    "birthday\n"
    "made 2024-03-02\n"
    "Front:\n"
    "grey panel 4 x 5-1/4 in rectangle\n"
    "moonrise frame, from tidepool rectangles 2, on the grey panel, high of centre\n"
    "sage panel 3-1/4 x 4-1/2 in rectangle, in the frame, glue left 2 in\n"
    "sage circle 2-3/8 in, speckled, from moonrise circles 4, on the sage panel, left 1/4 in\n"
    "3 x gem, on the circle\n"
    "Inside:\n"
    "white panel 4 x 5-1/4 in\n"
    "\"happy birthday\" greeting stamped in navy, on foam, on the white panel, 1/2 in from the bottom\n"
    "words: many happy returns\n"
    "envelope: A2\n"
    "tape runner\n"
    "1. Score the base at 2-1/8 and 4-1/4 in.\n"
    "2. Glue the panel; let it dry.\n"
    "note: for the class in May\n";

TEST_F(Record, EachLineBecomesItsRow) {
  const RecordAnswer answer = recorded(whole);
  EXPECT_TRUE(answer.kept);
  EXPECT_FALSE(answer.same);
  EXPECT_TRUE(answer.not_read.empty()) << answer.not_read.front().what;
  const auto id = sample_titled(*book_, "low tide");
  ASSERT_TRUE(id);
  const SampleRow row = *sample(*book_, *id);
  EXPECT_EQ(row.title, "Low Tide");
  EXPECT_EQ(row.made, "2024-03-02");
  EXPECT_EQ(row.base.width, Length::inch_fraction(17, 2));
  EXPECT_EQ(row.scores, "2-1/8 in; 4-1/4 in");
  EXPECT_EQ(row.words, "happy birthday; many happy returns");
  EXPECT_EQ(row.envelope, "A2");
  EXPECT_EQ(row.steps, "Score the base at 2-1/8 and 4-1/4 in.; Glue the panel, let it dry.");
  EXPECT_EQ(row.note, "for the class in May");
  ASSERT_EQ(row.mentions.size(), 3u);
  EXPECT_EQ(row.mentions[0].term, "easel");
  EXPECT_EQ(row.mentions[1].term, "birthday");
  EXPECT_TRUE(row.mentions[2].supply_id || row.mentions[2].kind == "supply");

  std::map<std::string, ElementRow> pieces;
  std::map<std::int64_t, std::string> names;
  for (auto& [piece, element] : elements_of(*book_, *id)) {
    names[piece] = element.name;
    pieces[element.name] = element;
  }
  ASSERT_EQ(pieces.size(), 8u);
  const ElementRow& circle = pieces.at("sage circle");
  EXPECT_EQ(circle.shape, "circle");
  EXPECT_EQ(circle.size.text, "2-3/8 in");
  EXPECT_EQ(circle.size.width, Length::inch_fraction(19, 8));
  EXPECT_EQ(circle.side, "front");
  EXPECT_EQ(circle.at, "left 1/4 in");
  EXPECT_EQ(circle.goes, "on sage panel");
  EXPECT_EQ(names[*circle.goes_to], "sage panel");
  EXPECT_TRUE(circle.die_id);
  ASSERT_EQ(circle.mentions.size(), 2u);
  EXPECT_EQ(circle.mentions[0].kind, "paper");
  EXPECT_TRUE(circle.mentions[0].colour_id);
  EXPECT_EQ(circle.mentions[1].term, "speckling");
  EXPECT_EQ(pieces.at("moonrise frame").shape, "rectangle");
  EXPECT_EQ(pieces.at("gem").count, 3);
  EXPECT_EQ(pieces.at("greeting").glue, "foam");
  EXPECT_EQ(pieces.at("greeting").side, "inside");
  EXPECT_EQ(pieces.at("sage panel").glue, "left 2 in");
  EXPECT_TRUE(pieces.at("sage panel").in_line_id);
}

TEST_F(Record, IsFoundByWhatWasRecorded) {
  recorded(whole);
  recorded("navy square 2 in\n", {.title = "Another"});
  const std::vector<std::string> low_tide{"Low Tide"};
  for (const char* question :
       {"2-3/8 in circle", "sage circle", "speckled circle", "easel", "birthday", "moonrise circles 4",
        "2-3/8 in circle with a stand-up fold", "many happy returns", "made in 2024", "greeting in navy ink"})
    EXPECT_EQ(found(question), low_tide) << question;
  EXPECT_EQ(found("navy square"), std::vector<std::string>{"Another"});
}

TEST_F(Record, APieceInALineIsAnInsetTried) {
  const auto tried = [&] {
    const Result<FitsAnswer> fits = what_fits(*book_, {.opening = "tidepool rectangles 2"});
    std::vector<std::string> panels;
    if (fits)
      for (const FittingPanel& panel : fits->panels)
        if (panel.status == PanelStatus::tried)
          panels.push_back(panel.evidence.empty() ? "" : panel.evidence.front());
    return panels;
  };
  EXPECT_TRUE(tried().empty());
  recorded(whole);
  const std::vector<std::string> once = tried();
  ASSERT_EQ(once.size(), 1u);
  EXPECT_NE(once.front().find("Low Tide"), std::string::npos) << once.front();
  recorded(whole);  // the same again is no second time
  EXPECT_EQ(tried(), once);
  recorded("panel 3-1/4 x 4-1/2 in rectangle, in tidepool rectangles 2\n", {.title = "By the die alone"});
  EXPECT_EQ(tried().size(), 1u);
}

TEST_F(Record, GoesOutAsTablesAndComesInTheSame) {
  recorded(whole);
  recorded("note: only this\ncircle 2-9/8 in, wibble\nsage moonbeam thing\nbow on the pond\n",
           {.title = "Odd"});
  const fs::path tables = folder_ / "tables", again = folder_ / "again";
  ASSERT_TRUE(export_csv(*book_, tables));
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(tables))
    if (entry.path().extension() == ".csv") files.push_back(entry.path());
  const Result<ImportReport> report = import_into(again, files, {});
  ASSERT_TRUE(report) << report.error().what;
  for (const RefusedRow& row : report->refused)
    ADD_FAILURE() << row.file << " " << row.row << ": " << row.what;
  const Book other = *Book::open(again, Book::Use::read);
  for (const char* title : {"low tide", "odd"}) {
    const auto here = sample_titled(*book_, title), there = sample_titled(other, title);
    ASSERT_TRUE(here && there) << title;
    const SampleRow a = *sample(*book_, *here), b = *sample(other, *there);
    EXPECT_EQ(a.base, b.base);
    EXPECT_EQ(a.scores, b.scores);
    EXPECT_EQ(a.closed_width, b.closed_width);
    EXPECT_EQ(a.words, b.words);
    EXPECT_EQ(a.steps, b.steps);
    EXPECT_EQ(a.note, b.note);
    EXPECT_EQ(a.made, b.made);
    EXPECT_EQ(a.envelope, b.envelope);
    ASSERT_EQ(a.mentions.size(), b.mentions.size());
    for (std::size_t i = 0; i < a.mentions.size(); ++i) EXPECT_EQ(a.mentions[i].term, b.mentions[i].term);
    const auto pieces = elements_of(*book_, *here), others = elements_of(other, *there);
    ASSERT_EQ(pieces.size(), others.size());
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const ElementRow &x = pieces[i].second, &y = others[i].second;
      SCOPED_TRACE(x.name);
      EXPECT_EQ(x.name, y.name);
      EXPECT_EQ(x.role, y.role);
      EXPECT_EQ(x.side, y.side);
      EXPECT_EQ(x.shape, y.shape);
      EXPECT_EQ(x.size, y.size);
      EXPECT_EQ(x.goes, y.goes);
      EXPECT_EQ(x.goes_how, y.goes_how);
      EXPECT_EQ(x.goes_to.has_value(), y.goes_to.has_value());
      EXPECT_EQ(x.in_line_id.has_value(), y.in_line_id.has_value());
      EXPECT_EQ(x.die_id.has_value(), y.die_id.has_value());
      EXPECT_EQ(x.at, y.at);
      EXPECT_EQ(x.glue, y.glue);
      EXPECT_EQ(x.count, y.count);
      EXPECT_EQ(x.note, y.note);
      ASSERT_EQ(x.mentions.size(), y.mentions.size());
      for (std::size_t m = 0; m < x.mentions.size(); ++m) {
        EXPECT_EQ(x.mentions[m].kind, y.mentions[m].kind);
        EXPECT_EQ(x.mentions[m].term, y.mentions[m].term);
        EXPECT_EQ(x.mentions[m].written, y.mentions[m].written);
      }
    }
  }
}

TEST_F(Record, WhatIsNotReadStaysInTheNote) {
  const RecordAnswer answer = recorded("sage circle wibble 2-3/8 in\nmumbling away\n", {.file = "tide.txt"});
  ASSERT_EQ(answer.not_read.size(), 2u);
  EXPECT_EQ(answer.not_read[0].what, "\"wibble\" is not understood");
  EXPECT_EQ(answer.not_read[0].where.file, "tide.txt");
  EXPECT_EQ(answer.not_read[0].where.row, 1);
  EXPECT_EQ(answer.not_read[0].where.text, "sage circle wibble 2-3/8 in");
  EXPECT_EQ(answer.not_read[0].where.at, 12u);
  EXPECT_EQ(answer.not_read[0].where.length, 6u);
  EXPECT_EQ(answer.pieces[0].shown.row.note, "not read: wibble");
  EXPECT_EQ(answer.sample.note, "not read: mumbling away");
  EXPECT_EQ(found("wibble"), std::vector<std::string>{"Low Tide"});
}

TEST_F(Record, ASetWithoutADieStaysInTheNote) {
  const RecordAnswer answer = recorded("sage circle 2 in, in moonrise circles\n");
  ASSERT_EQ(answer.not_read.size(), 1u);
  EXPECT_EQ(answer.not_read[0].what, "Moonrise Circles has 8 dies, and none is named");
  EXPECT_EQ(answer.pieces[0].shown.row.note, "not read: in Moonrise Circles");
}

TEST_F(Record, WhatIsSaidTwiceIsKeptOnce) {
  const RecordAnswer answer = recorded("white circle 2 in, white, speckled, speckled\n");
  std::vector<std::string> written;
  for (const Mention& mention : answer.pieces.at(0).shown.row.mentions) written.push_back(mention.written);
  EXPECT_EQ(written, (std::vector<std::string>{"white", "speckled"}));
}

TEST_F(Record, StrictKeepsNothing) {
  const RecordAnswer answer = recorded("sage circle wibble\nnavy square wubble 2-9/8 in\n", {.strict = true});
  EXPECT_FALSE(answer.kept);
  EXPECT_EQ(answer.not_read.size(), 3u);
  EXPECT_EQ(samples(), 0);
  EXPECT_TRUE(recorded("sage circle\n", {.strict = true}).kept);
}

// However the line says it, both readings of a date are told, and --strict keeps nothing.
TEST_F(Record, ADateThatCanBeReadTwoWays) {
  struct Case {
    const char* line;
    const char* date;
  };
  const Case cases[] = {{"made 03/04/2026", "03/04/2026"},
                        {"made on 03/04/2026", "03/04/2026"},
                        {"date: 03/04/2026", "03/04/2026"},
                        {"birthday card, made 03/04/2026", "made 03/04/2026"},
                        {"sage circle, made 03/04/2026", "made 03/04/2026"}};
  for (const Case& c : cases) {
    const std::string said = "\"" + std::string(c.date) + "\"";
    const RecordAnswer told = recorded(c.line, {.dry_run = true});
    EXPECT_EQ(told.sample.made, "2026-03-04") << c.line;
    EXPECT_TRUE(told.not_read.empty()) << c.line;
    ASSERT_EQ(told.notes.size(), 1u) << c.line;
    EXPECT_EQ(told.notes[0],
              "line 1: " + said +
                  " was read as 2026-03-04, the month first as in a book in inches; it could be "
                  "2026-04-03");
    const RecordAnswer strict = recorded(c.line, {.strict = true});
    EXPECT_FALSE(strict.kept) << c.line;
    ASSERT_EQ(strict.not_read.size(), 1u) << c.line;
    EXPECT_EQ(strict.not_read[0].what, said + " can be read two ways");
    EXPECT_EQ(strict.not_read[0].expected, "2026-03-04 or 2026-04-03");
    EXPECT_EQ(strict.not_read[0].where.row, 1);
  }
  EXPECT_EQ(samples(), 0);
  EXPECT_TRUE(recorded("made 13/04/2026", {.strict = true}).kept);
  ASSERT_TRUE(set_setting(*book_, "unit", "mm"));
  EXPECT_EQ(
      recorded("made 03/04/2026", {.title = "High Tide", .dry_run = true}).notes[0],
      "line 1: \"03/04/2026\" was read as 2026-04-03, the day first as in a book in millimetres; it could "
      "be 2026-03-04");
}

TEST_F(Record, DryRunKeepsNothing) {
  const RecordAnswer answer = recorded(whole, {.dry_run = true});
  EXPECT_FALSE(answer.kept);
  EXPECT_EQ(answer.pieces.size(), 8u);
  EXPECT_EQ(samples(), 0);
}

TEST_F(Record, TheSameTitleAgain) {
  recorded(whole);
  const std::int64_t change = book_->last_change();
  const RecordAnswer again = recorded(whole);
  EXPECT_TRUE(again.same);
  EXPECT_EQ(book_->last_change(), change);
  for (const std::string_view other : {"sage circle 2 in\n", "easel fold\n"}) {
    const Result<RecordAnswer> refused = record(*book_, {.title = "low tide", .text = std::string(other)});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().kind, ProblemKind::refused);
    EXPECT_EQ(refused.error().what, "there is a sample called \"low tide\" already, and it is not the same");
  }
  EXPECT_EQ(recorded(whole).pieces.size(), 8u);
  EXPECT_TRUE(recorded(whole).same);
}

TEST_F(Record, UndoTakesItBack) {
  recorded(whole);
  EXPECT_EQ(samples(), 1);
  ASSERT_TRUE(undo(*book_, std::nullopt));
  EXPECT_EQ(samples(), 0);
  EXPECT_TRUE(found("sage circle").empty());
}

TEST_F(Record, WhatCannotBeIsTold) {
  const RecordAnswer answer = recorded(
      "rectangle 2 in\ncircle from moonbeam circles 3\npanel 9 x 9 in, in tidepool rectangles 2\n"
      "circle from moonrise circles 3, embossed line\nbased on Nowhere\n");
  std::vector<std::string> told;
  for (const Problem& problem : answer.not_read) told.push_back(problem.what);
  EXPECT_EQ(told, (std::vector<std::string>{"no sample is called \"Nowhere\"",
                                            "\"2 in\" is one figure; the shape rectangle has two",
                                            "no die set is called \"moonbeam circles 3\"",
                                            "Moonrise Circles 3 has no line \"embossed\""}));
  const bool too_large = std::ranges::any_of(answer.notes, [](const std::string& note) {
    return note.find("cannot lie in it") != std::string::npos;
  });
  EXPECT_TRUE(too_large);
}

TEST_F(Record, AMetricBook) {
  ASSERT_TRUE(set_setting(*book_, "unit", "mm"));
  const RecordAnswer answer = recorded("sage circle 60, left 5, glue left 20\npanel 100 x 130\n");
  EXPECT_EQ(answer.pieces[0].shown.row.size.text, "60 mm");
  EXPECT_EQ(answer.pieces[0].shown.row.size.width, Length::mm(60));
  EXPECT_EQ(answer.pieces[0].shown.row.glue, "left 20 mm");
  EXPECT_EQ(answer.pieces[1].shown.row.size.text, "100 x 130 mm");
}

}  // namespace
}  // namespace insetbook
