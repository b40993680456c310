// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "book/openings.h"
#include "csv/table_book.h"
#include "importers/import.h"

namespace insetbook {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

namespace fs = std::filesystem;

const std::string in_mm =
    R"svg(<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">)svg";

struct DrawingBook {
  fs::path folder = new_folder();
  Book book = *Book::create(folder / "book");
  DrawingBook() = default;
  DrawingBook(const DrawingBook&) = delete;
  DrawingBook& operator=(const DrawingBook&) = delete;
  ~DrawingBook() { fs::remove_all(folder); }

  Result<ImportReport> import(const std::string& svg, const ImportOptions& options = {}) {
    const fs::path path = folder / "Harbour Shapes.svg";
    std::ofstream(path, std::ios::binary) << svg;
    return import_files(book, {path}, options, Vocabulary());
  }
  // Every line of the book: "set die, line: shape size".
  std::vector<std::string> lines() {
    std::vector<std::string> all;
    Statement& row = book.statement(
        "SELECT s.name, d.label, l.name, l.kind, l.shape, m.width_nm, m.height_nm, m.method, l.figures FROM "
        "line l "
        "JOIN die d ON d.id = l.die_id JOIN die_set s ON s.id = d.set_id JOIN measurement m ON m.line_id = "
        "l.id AND m.standing = 'current' ORDER BY l.id");
    while (row.step())
      all.push_back(
          std::string(row.text(0)) + " " + std::string(row.text(1)) + ", " + std::string(row.text(2)) + "/" +
          std::string(row.text(3)) + ": " + std::string(row.text(4)) + " " + std::to_string(row.integer(5)) +
          "x" + std::to_string(row.integer(6)) + (row.text(8).empty() ? "" : " " + std::string(row.text(8))));
    return all;
  }
};

TEST(Drawing, GroupsAreDiesAndNestedOutlinesTheirLines) {
  DrawingBook table;
  const auto report = table.import(in_mm + R"svg(
    <title>Gull Tags</title>
    <g id="layer1">
      <g aria-label="big gull">
        <path d="M0 0h40v30h-40z"/><path id="stitched" d="M2 2h36v26h-36z"/><circle cx="20" cy="10" r="3"/>
      </g>
      <rect id="plain" x="50" y="0" width="20" height="10" rx="2"/>
      <g id="g77"><ellipse cx="90" cy="10" rx="10" ry="5"/></g>
    </g></svg>)svg");
  ASSERT_TRUE(report) << report.error().what;
  EXPECT_THAT(table.lines(),
              ElementsAre("Gull Tags big gull, cut/cut: outline 40000000x30000000",
                          "Gull Tags big gull, stitched/stitched: outline 36000000x26000000",
                          "Gull Tags big gull, window/window: circle 6000000x6000000",
                          "Gull Tags 2, cut/cut: oval 20000000x10000000",
                          "Gull Tags plain, cut/cut: rounded rectangle 20000000x10000000 radius 2 mm"));
  ASSERT_EQ(report->files.size(), 1u);
  EXPECT_EQ(report->files[0].kind, "drawing");
  EXPECT_EQ(report->files[0].added, 5);
  ASSERT_EQ(report->notes.size(), 1u);
  EXPECT_THAT(report->notes[0], HasSubstr("taken for windows"));
}

TEST(Drawing, ImportedTwiceNothingChanges) {
  DrawingBook table;
  const std::string svg = in_mm + "<path d='M0 0h40v30h-40z'/><path d='M50 0h30v20q-5 5 -30 0z'/></svg>";
  ASSERT_TRUE(table.import(svg));
  const auto before = table.lines();
  EXPECT_THAT(before, ElementsAre("Harbour Shapes 1, cut/cut: outline 40000000x30000000",
                                  "Harbour Shapes 2, cut/cut: outline 30000000x22500000"));
  const auto again = table.import(svg);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->files[0].same, 2);
  EXPECT_EQ(again->files[0].added + again->files[0].changed, 0);
  EXPECT_EQ(table.lines(), before);
}

TEST(Drawing, ScaleIsWorkedOutOrAskedFor) {
  struct Case {
    std::string head, scale;
    std::int64_t width;
  };
  const Case cases[] = {
      {R"svg(<svg width="100mm" height="50mm" viewBox="0 0 200 100">)svg", "", 10'000'000},
      {R"svg(<svg width="4in" height="2in" viewBox="0 0 400 200">)svg", "", 5'080'000},
      {R"svg(<svg width="4in" height="2in">)svg", "", 5'291'667},  // a unit is 1/96 in
      {R"svg(<svg width="100mm" height="100mm" viewBox="0 0 200 100">)svg", "",
       10'000'000},  // the lesser scale
      {R"svg(<svg viewBox="0 0 200 100">)svg", "1 mm", 20'000'000},
      {R"svg(<svg width="200" height="100">)svg", "72 = 1 in", 7'055'556},
      {R"svg(<svg width="200px" height="100px">)svg", "1/2 mm", 10'000'000},
  };
  for (const Case& one : cases) {
    DrawingBook table;
    ImportOptions options;
    options.drawing_scale = one.scale;
    const auto report = table.import(one.head + "<rect width='20' height='10'/></svg>", options);
    ASSERT_TRUE(report) << one.head << report.error().what;
    EXPECT_THAT(table.lines(), ElementsAre(HasSubstr(" " + std::to_string(one.width) + "x"))) << one.head;
  }
  for (const std::string head :
       {"<svg>", "<svg width='200' height='100'>", "<svg width='200px' height='9px'>",
        "<svg width='100%' height='100%' viewBox='0 0 1 1'>"}) {
    DrawingBook table;
    const auto report = table.import(head + "<rect width='20' height='10'/></svg>");
    ASSERT_FALSE(report) << head;
    EXPECT_THAT(report.error().what, HasSubstr("does not say how large it is"));
    EXPECT_THAT(report.error().expected, HasSubstr("--scale"));
    EXPECT_THAT(table.lines(), IsEmpty());
  }
}

TEST(Drawing, TransformsUseAndNestedDrawings) {
  DrawingBook table;
  const auto report = table.import(in_mm + R"svg(
    <defs><path id="leaf" d="M0 0h10v4h-10z"/><symbol id="box" viewBox="0 0 2 1"><rect width="2" height="1"/></symbol></defs>
    <use href="#leaf" aria-label="turned" transform="rotate(90)"/>
    <use href="#leaf" aria-label="wide" transform="scale(3 1)" x="5"/>
    <use href="#box" id="boxed" width="30" height="15"/>
    <svg x="50" width="20" height="20" viewBox="0 0 10 10"><rect id="inner" width="5" height="5"/></svg>
    </svg>)svg");
  ASSERT_TRUE(report) << report.error().what;
  EXPECT_THAT(table.lines(),
              testing::UnorderedElementsAre("Harbour Shapes turned, cut/cut: outline 4000000x10000000",
                                            "Harbour Shapes wide, cut/cut: outline 30000000x4000000",
                                            "Harbour Shapes boxed, cut/cut: rectangle 30000000x15000000",
                                            "Harbour Shapes inner, cut/cut: square 10000000x10000000"));
}

TEST(Drawing, LinesByStrokeAndClass) {
  DrawingBook table;
  ImportOptions options;
  options.drawing_lines = "#f00 = pierced; guide = scored";
  options.drawing_set = "Quay Frames";
  const auto report = table.import(in_mm + R"svg(
    <g id="arch"><g stroke="#F00"><rect x="5" y="5" width="20" height="20"/></g>
      <rect class="thin guide" x="8" y="8" width="10" height="12"/>
      <rect width="30" height="40" style="stroke: #000; fill: none"/></g></svg>)svg",
                                   options);
  ASSERT_TRUE(report) << report.error().what;
  EXPECT_THAT(table.lines(), ElementsAre("Quay Frames arch, cut/cut: rectangle 30000000x40000000",
                                         "Quay Frames arch, pierced/pierced: square 20000000x20000000",
                                         "Quay Frames arch, scored/scored: rectangle 10000000x12000000"));
  EXPECT_THAT(report->notes, IsEmpty());
}

TEST(Drawing, LayersOfLinesAreNoDies) {
  DrawingBook table;
  const auto report = table.import(in_mm + R"svg(
    <g aria-label="cut"><rect width="30" height="40"/><rect id="small" x="50" width="20" height="20"/></g>
    <g aria-label="stitched"><rect x="52" y="2" width="16" height="16"/><rect x="2" y="2" width="26" height="36"/></g>
    </svg>)svg");
  ASSERT_TRUE(report) << report.error().what;
  EXPECT_THAT(table.lines(),
              ElementsAre("Harbour Shapes 1, cut/cut: rectangle 30000000x40000000",
                          "Harbour Shapes 1, stitched/stitched: rectangle 26000000x36000000",
                          "Harbour Shapes small, cut/cut: square 20000000x20000000",
                          "Harbour Shapes small, stitched/stitched: square 16000000x16000000"));
}

// A frame with two windows is one die where a person named it; rings in one another are a set of dies.
TEST(Drawing, ALoneNamedGroupThatHoldsWindowsIsADie) {
  const std::string windows =
      "<rect width='40' height='50'/><rect x='4' y='4' width='12' height='16'/><rect x='20' y='20' "
      "width='16' height='16'/></g></svg>";
  DrawingBook named;
  ASSERT_TRUE(named.import(in_mm + "<g id='window card'>" + windows));
  EXPECT_THAT(named.lines(),
              ElementsAre("Harbour Shapes window card, cut/cut: rectangle 40000000x50000000",
                          "Harbour Shapes window card, window/window: square 16000000x16000000",
                          "Harbour Shapes window card, window 2/window: rectangle "
                          "12000000x16000000"));
  DrawingBook unnamed;
  ASSERT_TRUE(unnamed.import(in_mm + "<g>" + windows));
  EXPECT_EQ(unnamed.lines().size(), 3u);
  EXPECT_THAT(unnamed.lines().front(), HasSubstr("Harbour Shapes 1, cut/cut"));
  EXPECT_THAT(unnamed.lines().back(), HasSubstr("Harbour Shapes 3, cut/cut"));
  DrawingBook rings;
  ASSERT_TRUE(rings.import(in_mm +
                           "<g id='squares'><rect width='40' height='40'/><rect x='4' y='4' width='32' "
                           "height='32'/><rect x='8' y='8' width='24' height='24'/></g></svg>"));
  EXPECT_THAT(rings.lines().back(), HasSubstr("Harbour Shapes 3, cut/cut"));
}

TEST(Drawing, ContoursOfOnePathAreLines) {
  DrawingBook table;
  ASSERT_TRUE(
      table.import(in_mm + "<path id='frame' d='M0 0h40v30h-40z M5 5h10v10h-10z M20 5h10v10h-10z'/></svg>"));
  EXPECT_THAT(table.lines(), ElementsAre("Harbour Shapes frame, cut/cut: outline 40000000x30000000",
                                         "Harbour Shapes frame, window/window: outline 10000000x10000000",
                                         "Harbour Shapes frame, window 2/window: outline 10000000x10000000"));
}

TEST(Drawing, WhatIsBesideIsRefusedAndTheRestGoesIn) {
  DrawingBook table;
  const auto report =
      table.import(in_mm +
                   "<g id='two'><rect width='5' height='5'/>\n<rect x='9' width='5' height='5'/></g>"
                   "<rect id='good' width='7' height='5'/><text>hello</text></svg>");
  ASSERT_TRUE(report);
  EXPECT_THAT(table.lines(), ElementsAre("Harbour Shapes good, cut/cut: rectangle 7000000x5000000"));
  ASSERT_EQ(report->refused.size(), 1u);
  EXPECT_EQ(report->refused[0].what, "the outline of line 2 does not lie in the largest one of \"two\"");
  EXPECT_THAT(report->notes, ElementsAre(HasSubstr("not used: 1 of text")));
}

TEST(Drawing, OfTheStudio) {
  DrawingBook table;
  ImportOptions options;
  options.drawing_lines = "#c00 = pierced";
  const auto report =
      import_files(table.book, {fs::path(INSETBOOK_SOURCE_DIR) / "sample-data" / "quayside-shapes.svg"},
                   options, Vocabulary());
  ASSERT_TRUE(report) << report.error().what;
  EXPECT_THAT(
      table.lines(),
      ElementsAre(
          "Quayside Shapes lighthouse, cut/cut: outline 36000000x90000000",
          "Quayside Shapes lighthouse, window/window: outline 6000000x9000000",
          "Quayside Shapes lighthouse, window 2/window: circle 6000000x6000000",
          "Quayside Shapes pebble tag, cut/cut: rounded rectangle 45000000x70000000 radius 8 mm",
          "Quayside Shapes pebble tag, pierced/pierced: rounded rectangle 39000000x64000000 radius 5 mm",
          "Quayside Shapes pebble tag, window/window: circle 5000000x5000000",
          "Quayside Shapes harbour arch, cut/cut: outline 40000000x50000000",
          "Quayside Shapes harbour arch, pierced/pierced: outline 32000000x42000000",
          HasSubstr("Quayside Shapes gull, cut/cut: outline ")));
  EXPECT_THAT(report->notes, testing::Contains(HasSubstr("not used: 1 of text")));
}

TEST(Drawing, RefusedWhole) {
  struct Case {
    std::string body, what;
  };
  const Case cases[] = {
      {"<script>1</script>", "line 1: the drawing holds a script"},
      {"<rect onclick='x()' width='1' height='1'/>", "line 1: the drawing holds a script, in \"onclick\""},
      {"<a href='#x'><rect width='1' height='1'/></a>", "line 1: the drawing holds a link"},
      {"<image href='http://example.org/a.png'/>",
       "line 1: \"http://example.org/a.png\" leads out of the drawing"},
      {"<use href='other.svg#a'/>", "line 1: \"other.svg#a\" leads out of the drawing"},
      {"<use href='#none'/>", "line 1: use of \"#none\", which is not there"},
      {"<g id='a'><use href='#a'/></g>", "line 1: use of \"#a\" goes round in a circle or too deep"},
      {"<rect width='1em' height='1'/>", "line 1: width of rect: \"1em\" is no length of a drawing"},
      {"<polygon points='1 2 3'/>", "line 1: the points of a polygon cannot be read"},
      {"<g transform='spin(3)'/>", "line 1: transform \"spin(3)\" cannot be read"},
      {"<rect transform='scale(0)' width='1' height='1'/>", "line 1: a transform makes the outline vanish"},
      {"<text>nothing</text>", "\"Harbour Shapes.svg\" holds no closed outline"},
  };
  for (const Case& one : cases) {
    DrawingBook table;
    const auto report = table.import(in_mm + one.body + "</svg>");
    ASSERT_FALSE(report) << one.body;
    EXPECT_THAT(report.error().what, HasSubstr(one.what.substr(0, one.what.find("Harbour")))) << one.body;
    EXPECT_THAT(table.lines(), IsEmpty());
  }
}

// A picture to draw over is often left in: nothing of the dies is lost with it.
TEST(Drawing, APictureIsToldToBeTakenOut) {
  DrawingBook table;
  const auto report = table.import(in_mm + "<image href='scan.jpg'/><rect width='20' height='30'/></svg>");
  ASSERT_FALSE(report);
  EXPECT_EQ(report.error().what, "line 1: \"scan.jpg\" leads out of the drawing");
  EXPECT_EQ(report.error().expected,
            "the drawing without this picture: take it out, no outline is lost with it");
}

// Each `use` of a level draws the level below ten times: a few lines that would be a thousand million
// outlines.
TEST(Drawing, UseUponUseIsBounded) {
  std::string svg = in_mm + "<defs><g id='l0'><rect width='1' height='1'/></g>";
  for (int level = 1; level <= 9; ++level) {
    svg += "<g id='l" + std::to_string(level) + "'>";
    for (int i = 0; i < 10; ++i) svg += "<use href='#l" + std::to_string(level - 1) + "'/>";
    svg += "</g>";
  }
  DrawingBook table;
  const auto report = table.import(svg + "</defs><use href='#l9'/></svg>");
  ASSERT_FALSE(report);
  EXPECT_THAT(report.error().what, HasSubstr("too many outlines"));
}

TEST(Drawing, UseUponUseOfNothingIsBounded) {
  std::string svg = in_mm + "<defs><g id='l0'/>";
  for (int level = 1; level <= 30; ++level) {
    const std::string before = "<use href='#l" + std::to_string(level - 1) + "'/>";
    svg += "<g id='l" + std::to_string(level) + "'>" + before + before + "</g>";
  }
  DrawingBook table;
  const auto report = table.import(svg + "</defs><use href='#l30'/></svg>");
  ASSERT_FALSE(report);
  EXPECT_THAT(report.error().what, HasSubstr("too many elements"));
}

// SVG 2, 8.2: "meet" takes the smaller scale and "slice" the larger; the box lies in the middle of what is
// left, or where it is said to.
TEST(Drawing, TheBoxLiesInItsViewportAsIsSaid) {
  const auto lines = [](const std::string& aspect) {
    DrawingBook table;
    const auto report = table.import(
        "<svg xmlns='http://www.w3.org/2000/svg' width='60mm' height='40mm' viewBox='0 0 60 40'>"
        "<g id='frame'><rect width='60' height='40'/>"
        "<svg width='40' height='20' viewBox='0 0 10 10' preserveAspectRatio='" +
        aspect + "'><rect id='stitched' width='10' height='5'/></svg></g></svg>");
    EXPECT_TRUE(report) << report.error().what;
    return table.lines();
  };
  EXPECT_THAT(lines("xMidYMid").back(), HasSubstr("rectangle 20000000x10000000"));
  EXPECT_THAT(lines("xMinYMin meet").back(), HasSubstr("rectangle 20000000x10000000"));
  EXPECT_THAT(lines("xMinYMin slice").back(), HasSubstr("rectangle 40000000x20000000"));
  EXPECT_THAT(lines("none").back(), HasSubstr("rectangle 40000000x10000000"));
}

// A window in a nested drawing stands in the middle of its viewport, so that it lies in the frame round that.
TEST(Drawing, ANestedDrawingStandsInTheMiddle) {
  DrawingBook table;
  const auto report =
      table.import(in_mm +
                   "<g id='card'><rect x='25' y='5' width='30' height='30'/>"
                   "<svg width='80' height='40' viewBox='0 0 20 20'><rect id='window' x='5' y='5' width='10' "
                   "height='10'/></svg></g><rect id='small' x='60' width='5' height='5'/></svg>");
  ASSERT_TRUE(report) << report.error().what;
  EXPECT_THAT(table.lines(), ElementsAre("Harbour Shapes card, cut/cut: square 30000000x30000000",
                                         "Harbour Shapes card, window/window: square 20000000x20000000",
                                         "Harbour Shapes small, cut/cut: square 5000000x5000000"));
}

}  // namespace
}  // namespace insetbook
