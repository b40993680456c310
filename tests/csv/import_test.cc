// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "book/changes.h"
#include "book/openings.h"
#include "book/records.h"
#include "book/settings.h"
#include "csv/table_book.h"
#include "importers/csv/export_csv.h"
#include "importers/csv/import_csv.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr const char* dies_table =
    "set,die,line,shape,size,method,read to\n"
    "Tidepool Rectangles,1,cut,rectangle,4 x 5 in,ruler,1/16 in\n"
    "Tidepool Rectangles,1,stitched,rectangle,3-3/4 x 4-3/4 in,ruler,1/16 in\n"
    "Tidepool Rectangles,second largest,cut,rectangle,3-1/2 x 4-1/2 in,ruler,1/16 in\n"
    "Tidepool Rectangles,2nd largest,stitched,rectangle,3-1/4 x 4-1/4 in,ruler,1/16 in\n"
    "Moonrise Circles,1,cut,circle,2-1/2 in,ruler,1/16 in\n";
constexpr const char* supplies_table =
    "kind,set,name,colour,colour value,size,weight\n"
    "card stock,,,sage,#8aa37b,8-1/2 x 11 in,80 lb cover\n"
    "ink,Harbour Inks,,kelp,#3d5a45,,\n"
    "ribbon,,seam ribbon,,,3 rolls,\n";
constexpr const char* samples_table =
    "sample,made,occasion,fold,base,scores\n"
    "low tide,2026-03-02,birthday,easel,8-1/2 x 5-1/2 in,2-1/8; 4-1/4\n"
    "high tide,2025-07-09,thank you,side fold,8-1/2 x 5-1/2 in,4-1/4\n";
constexpr const char* elements_table =
    "sample,element,role,side,shape,size,colour,ink,supply,die set,die,goes,technique,count\n"
    "low tide,moon,die cut,front,circle,2-3/8 in,sage,kelp,,Moonrise Circles,1,in frame,speckling,\n"
    "low tide,frame,die cut,front,rectangle,3-1/4 x 4-1/4,sage,,,Tidepool Rectangles,2,on front,,\n"
    "high tide,bow,bow,,,,,,seam ribbon,,,on frame of air,,2\n";
constexpr const char* tried_table =
    "set,die,line,shape,size,result,date,sample\n"
    "Tidepool Rectangles,2,stitched,rectangle,3-1/8 x 4-1/8 in,fits,2026-03-02,low tide\n";

TEST(ImportTables, AllFiveInAnyOrder) {
  TableBook book;
  const ImportReport report = book.import({{"tried.csv", tried_table},
                                           {"elements.csv", elements_table},
                                           {"samples.csv", samples_table},
                                           {"supplies.csv", supplies_table},
                                           {"dies.csv", dies_table}});
  EXPECT_THAT(refused(report), IsEmpty());
  EXPECT_THAT(counts(report), ElementsAre("tried.csv tried +1 ~0 =0 !0", "elements.csv elements +3 ~0 =0 !0",
                                          "samples.csv samples +2 ~0 =0 !0",
                                          "supplies.csv supplies +3 ~0 =0 !0", "dies.csv dies +5 ~0 =0 !0"));
  EXPECT_THAT(report.notes,
              ElementsAre("size \"3 rolls\" kept as text (row 4 of supplies.csv)",
                          "unknown piece \"frame of air\" kept as text (row 4 of elements.csv)"));
  const auto low_tide = sample_titled(book.book, "low tide");
  ASSERT_TRUE(low_tide);
  const auto pieces = elements_of(book.book, *low_tide);
  ASSERT_EQ(pieces.size(), 2u);
  const ElementRow& moon = pieces[0].second;
  EXPECT_EQ(moon.name, "moon");
  EXPECT_EQ(moon.shape, "circle");
  EXPECT_EQ(moon.size.width, Length::inch_fraction(19, 8));
  EXPECT_EQ(moon.goes_how, "in");
  EXPECT_EQ(moon.goes_to, pieces[1].first);
  ASSERT_TRUE(moon.in_line_id);
  EXPECT_EQ(opening(book.book, *moon.in_line_id)->line, "stitched");
  EXPECT_EQ(moon.mentions.size(), 3u);
  EXPECT_TRUE(moon.mentions[0].colour_id);
  EXPECT_EQ(moon.mentions[1].kind, "ink");
  EXPECT_TRUE(moon.mentions[1].colour_id);
  EXPECT_EQ(pieces[1].second.size.text, "3-1/4 x 4-1/4 in") << "a figure without a unit gets the book's";
  const auto bow = elements_of(book.book, *sample_titled(book.book, "high tide"));
  EXPECT_EQ(bow[0].second.count, 2);
  EXPECT_TRUE(bow[0].second.mentions[0].supply_id);
  EXPECT_EQ(changes(book.book, 10).size(), 1u) << "one entry in the change log";
}

TEST(ImportTables, TwiceChangesNothing) {
  TableBook book;
  const std::vector<Table> tables = {{"dies.csv", dies_table},
                                     {"supplies.csv", supplies_table},
                                     {"samples.csv", samples_table},
                                     {"elements.csv", elements_table},
                                     {"tried.csv", tried_table}};
  book.import(tables);
  const ImportReport again = book.import(tables);
  EXPECT_THAT(counts(again), ElementsAre("dies.csv dies +0 ~0 =5 !0", "supplies.csv supplies +0 ~0 =3 !0",
                                         "samples.csv samples +0 ~0 =2 !0",
                                         "elements.csv elements +0 ~0 =3 !0", "tried.csv tried +0 ~0 =1 !0"));
  EXPECT_EQ(changes(book.book, 10).size(), 1u);
}

TEST(ImportTables, AChangedRowChangesItsRecord) {
  TableBook book;
  book.import({{"samples.csv", samples_table}});
  const ImportReport report = book.import(
      {{"samples.csv", "sample,made,note\nlow tide,2026-03-04,for the fair\nhigh tide,2025-07-09,\n"}});
  EXPECT_THAT(counts(report), ElementsAre("samples.csv samples +0 ~1 =1 !0"));
  const auto row = sample(book.book, *sample_titled(book.book, "low tide"));
  EXPECT_EQ(row->made, "2026-03-04");
  EXPECT_EQ(row->note, "for the fair");
  EXPECT_EQ(row->scores, "2-1/8 in; 4-1/4 in") << "a column that the table does not have stays";
  EXPECT_EQ(row->mentions.size(), 2u);
}

struct Refused {
  const char* table;
  std::vector<std::string> refused;  // "row column: what / expected"
};

TEST(ImportTables, RowsThatCannotBeUnderstood) {
  const Refused cases[] = {
      {"set,die,line,shape,size\nTidepool Rectangles,3,cut,rectangle,8-Mar\nTidepool "
       "Rectangles,4,cut,rectangle,2 x 3 in\n",
       {"2 size: \"8-Mar\" is a date; it was probably typed as 3/8 / 3/8 in, in a cell that the spreadsheet "
        "keeps as text"}},
      {"set,die,shape,size\n,1,rectangle,2 x 3\nA,,rectangle,2 x 3\nA,1,,2 x 3\n",
       {"2 set: the row names no set / the name of the die set",
        "3 die: the row names no die / its number, 1 = the largest, or what it is called",
        "4 shape: the line has no shape / circle, rectangle, …, or any other name of a shape"}},
      {"set,die,line,shape,size,method,measured\nA,1,dotted,circle,2 in,sextant,02/03/2026\n",
       {"2 line: \"dotted\" is no line of a die / cut, stitched, pierced, scored, embossed or window, with a "
        "number where there are several",
        "2 method: \"sextant\" is no way of measuring that is known / ruler, callipers, scan, drawing, "
        "maker's figure or estimated",
        "2 measured: \"02/03/2026\" can be read two ways / 2026-03-02 or 2026-02-03; --dates dmy or --dates "
        "mdy says it for all"}},
      {"set,die,shape,size\nA,1,circle,2 in\nA,1,oval,2 x 3 in\n",
       {"3 shape: \"oval\" contradicts row 2 of table.csv, which has the same line / \"circle\" in both, or "
        "another line"}},
      {"kind,name,colour,colour value\nink,,,\nink,,kelp,green\nink,kelp pad,,#123456\n",
       {"2 name: the supply has neither a name nor a colour / what it is called",
        "3 colour value: \"green\" is no colour value / #rrggbb, such as #8aa37b",
        "4 colour value: a colour value without the name of the colour / the name in the column colour"}},
      {"sample,made,based on\n,2026-01-01,\na,yesterday,\nb,,a\nc,,nothing known\nd,,d\ne,,b\n",
       {"2 sample: the row names no sample / what the card is called",
        "3 made: \"yesterday\" is no whole date / a date like 2026-03-02",
        "4 based on: the sample it is based on was refused: row 3 of table.csv / that row first",
        "5 based on: no sample is called \"nothing known\" / a sample in the book or in a table of this "
        "import; anything else goes into the note",
        "6 based on: the sample is based on itself / another sample, or nothing",
        "7 based on: the sample it is based on was refused: row 4 of table.csv / that row first"}},
      {"sample,element,size\nnobody,x,2 in\n,x,2 in\n",
       {"2 sample: no sample is called \"nobody\" / a sample in the book or in a table of this import",
        "3 sample: the row names no sample / the card that the piece is part of"}},
      {"set,die,shape,size,result\nNobody's Set,1,circle,2 in,fits\n",
       {"2 die: no die set is called \"Nobody's Set\" / the name of a set in the book or in a dies table of "
        "this import"}},
      {"who,what\n1,2\n", {}},
      {"sample,made\n\"a\"b,2026-01-01\nc,\"2026-01-01\n",
       {"2 sample: text stands behind the closing quotation mark of the cell / a quotation mark inside a "
        "quoted cell is written twice",
        "3 made: the quotation mark that opens the cell is never closed; it takes in 1 more line / a closing "
        "quotation mark"}},
  };
  for (const Refused& c : cases) {
    TableBook book;
    const ImportReport report = book.import({{"table.csv", c.table}});
    if (c.refused.empty()) {
      ASSERT_EQ(report.refused.size(), 1u);
      EXPECT_EQ(report.refused[0].what, "the headings \"who\", \"what\" are those of no table");
      continue;
    }
    EXPECT_THAT(refused(report), testing::ElementsAreArray(c.refused)) << c.table;
  }
}

TEST(ImportTables, RowsThatReferToRefusedOnes) {
  TableBook book;
  const ImportReport report = book.import(
      {{"dies.csv",
        "set,die,line,shape,size\nA,1,cut,circle,3 in\nA,1,stitched,circle,8-Mar\nA,2,cut,circle,2 in\n"},
       {"tried.csv",
        "set,die,line,shape,size,result\nA,1,,circle,2 in,fits\nA,1,cut,circle,2 "
        "in,fits\nA,1,stitched,circle,2 in,fits\n"
        "A,2,,circle,1 in,fits\nA,9,,circle,1 in,fits\n"},
       {"samples.csv", "sample,made\nx,2026-13-01\ny,2026-01-01\n"},
       {"elements.csv",
        "sample,element,size,goes\nx,a,2 x 3 in,\ny,top,1 x 1 in,on middle\ny,middle,1 x 1 in,on "
        "lowest\ny,lowest,2-9/8 in,\n"
        "y,one,1 x 1 in,on other\ny,other,1 x 1 in,on one\ny,self,1 x 1 in,on self\ny,good,1 x 1 in,\n"}});
  EXPECT_THAT(refused(report),
              ElementsAre("3 size: \"8-Mar\" is a date; it was probably typed as 3/8 / 3/8 in, in a cell "
                          "that the spreadsheet keeps as text",
                          "2 made: \"2026-13-01\" is no day of the calendar / a date like 2026-03-02",
                          "2 sample: the sample was refused: row 2 of samples.csv / that row first",
                          testing::StartsWith("5 size: "),
                          "4 goes: the piece \"lowest\" was refused: row 5 of elements.csv / that row first",
                          "3 goes: the piece \"middle\" was refused: row 4 of elements.csv / that row first",
                          "7 goes: the pieces go round in a circle: \"one\" goes with this one / one piece "
                          "that lies under the others",
                          "6 goes: the piece \"other\" was refused: row 7 of elements.csv / that row first",
                          "8 goes: the piece goes with itself / another piece",
                          "2 die: the die it names was refused: row 3 of dies.csv / that row first",
                          "4 die: the die it names was refused: row 3 of dies.csv / that row first",
                          "6 die: the set \"A\" has no die \"9\" / 1, 2"));
  EXPECT_EQ(elements_of(book.book, *sample_titled(book.book, "y")).size(), 1u);
}

TEST(ImportTables, OtherHeadingsAndUnits) {
  TableBook book;
  const ImportReport report =
      book.import({{"a.csv",
                    "Die Set;Order;Edge;Shape;W (mm);H (mm);Step;Kept in;Shop\nFern "
                    "Ovals;largest;;Oval;60;82,5;0,5 mm;drawer 2;corner\n"
                    "Fern Ovals;smallest;;Oval;40;50;;;\nFern Ovals;2nd largest;;Oval;50;70;;;\n"},
                   {"b.csv", "Card\tDate made\tColor\nfern\t2026-01-05\tgreen\n"},
                   {"c.csv", "card,piece,face,sits in\nfern,leaf,on the inside,frame\nfern,frame,,\n"}});
  EXPECT_THAT(refused(report), IsEmpty());
  EXPECT_THAT(report.notes, testing::Contains("a.csv: kept as notes: \"Shop\""));
  EXPECT_THAT(report.notes, testing::Contains("b.csv: kept as notes: \"Color\""));
  const auto set = set_named(book.book, "fern ovals");
  ASSERT_TRUE(set);
  const auto lines = openings_of_set(book.book, *set);
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_EQ(write_size(lines[0].width, lines[0].height, lines[0].unit), "60 x 82.5 mm");
  EXPECT_EQ(lines[2].die, "3") << "the smallest of three";
  const auto pieces = elements_of(book.book, *sample_titled(book.book, "fern"));
  EXPECT_EQ(pieces[0].second.side, "inside");
  EXPECT_EQ(pieces[0].second.goes, "in frame");
  EXPECT_EQ(pieces[0].second.goes_to, pieces[1].first);
  EXPECT_EQ(sample(book.book, *sample_titled(book.book, "fern"))->note, "Color: green");
}

TEST(ImportTables, AMisspeltWordOfTheTradeIsToldWithWhatItMayBe) {
  TableBook book;
  const ImportReport report =
      book.import({{"dies.csv", "set,die,line,shape,size\nA,1,cut,circel,3 in\nA,2,cut,blob,2 in\n"},
                   {"samples.csv", "sample,fold\nGoat Day,easle\n"}});
  EXPECT_THAT(
      report.notes,
      ElementsAre("unknown shape \"circel\" kept as text (row 2 of dies.csv); did you mean \"circle\"?",
                  "unknown shape \"blob\" kept as text (row 3 of dies.csv)",
                  "unknown fold \"easle\" kept as text (row 2 of samples.csv); did you mean \"easel\"?"));
}

TEST(ImportTables, MeasuredAnew) {
  TableBook book;
  const std::string head = "set,die,line,shape,size,read to,measured\n";
  book.import({{"dies.csv", head + "A,1,cut,rectangle,3 x 4 in,1/16 in,2026-01-01\n"}});
  const ImportReport confirmed =
      book.import({{"dies.csv", head + "A,1,cut,rectangle,3-1/32 x 4 in,1/16 in,2026-02-01\n"}});
  EXPECT_THAT(counts(confirmed), ElementsAre("dies.csv dies +0 ~1 =0 !0"));
  EXPECT_THAT(confirmed.notes, IsEmpty());
  const ImportReport conflict =
      book.import({{"dies.csv", head + "A,1,cut,rectangle,3-1/4 x 4 in,1/16 in,2026-03-01\n"}});
  EXPECT_THAT(conflict.notes,
              ElementsAre("row 2 of dies.csv: A 1, cut is 3-1/4 x 4 in (ruler, 2026-03-01) "
                          "here, and 3 x 4 in (ruler, 2026-01-01) is recorded: both are kept, "
                          "and the recorded one counts until you settle it"));
  EXPECT_EQ(
      measurements_of(book.book, openings_of_set(book.book, *set_named(book.book, "a"))[0].line_id).size(),
      3u);
}

TEST(ImportTables, NumbersThatContradictSizes) {
  TableBook book;
  const ImportReport report = book.import({{"dies.csv",
                                            "set,die,shape,size\nA,1,circle,2 in\nA,2,circle,3 "
                                            "in\nA,3,circle,1 in\nB,1,circle,3 in\nB,2,circle,3 in\n"}});
  EXPECT_THAT(
      report.notes,
      ElementsAre("A: the numbers contradict the measured sizes, 1 being the largest; by size, from the "
                  "largest: 2 (3 x 3 in), 1 (2 x 2 in), 3 (1 x 1 in)"));
}

TEST(ImportTables, ClosedSize) {
  TableBook book;
  book.options.closed_size = [](const std::vector<std::string>& folds, Length width, Length height,
                                std::string_view scores, Unit) {
    EXPECT_THAT(folds, ElementsAre("easel"));
    EXPECT_EQ(scores, "2-1/8 in; 4-1/4 in");
    return std::optional(ClosedSize{width / 2, height});
  };
  book.import({{"s.csv",
                "sample,fold,base,scores,finished\na,easel,8-1/2 x 5-1/2,2-1/8; 4-1/4,\nb,easel,8-1/2 x "
                "5-1/2,2-1/8; 4-1/4,5 x 7\n"}});
  const auto a = sample(book.book, *sample_titled(book.book, "a")),
             b = sample(book.book, *sample_titled(book.book, "b"));
  EXPECT_EQ(a->closed_width, Length::inch_fraction(17, 4));
  EXPECT_EQ(b->closed_width, Length::inches(5));
  EXPECT_EQ(b->finished_text, "5 x 7 in");
}

TEST(ImportTables, PhotographsBesideTheTable) {
  TableBook book;
  const std::string png("\x89PNG\r\n\x1a\n____", 12);
  std::ofstream(book.folder / "low tide.png", std::ios::binary) << png;
  const ImportReport report = book.import({{"s.csv", "sample,photo\nlow tide,low tide.png; gone.png\n"}});
  ASSERT_EQ(report.refused.size(), 1u);
  EXPECT_TRUE(report.refused[0].row_kept);
  EXPECT_EQ(report.refused[0].column, "photo");
  EXPECT_THAT(report.refused[0].what, testing::HasSubstr("gone.png"));
  const auto row = sample(book.book, *sample_titled(book.book, "low tide"));
  ASSERT_EQ(row->photos.size(), 1u);
  EXPECT_EQ(row->photos[0].file_name, "low tide.png");
}

struct NotSure {
  const char* headings;
  const char* as;
  const char* what;
  const char* expected;
};

TEST(ImportTables, ATableOfNoCertainKindIsRefusedWhole) {
  const NotSure cases[] = {
      {"Name;No.;Which edge;Shape;w;h", "",
       "the kind of table is not certain; as dies, \"No.\", \"Which edge\", \"Shape\", \"w\", \"h\" are "
       "understood, "
       "\"Name\" is not; there is no \"set\"",
       "a heading \"set\"; --as dies if it is that, or --as with another kind: dies, supplies, samples, "
       "elements, "
       "tried"},
      {"Name;No.;Which edge;Shape;w;h", "dies", "the table of dies has no column \"set\"",
       "a heading \"set\""},
      {"set;which;edge;panel;worked;when", "",
       "the kind of table is not certain; as tried, \"set\", \"which\", \"edge\", \"panel\", \"when\" are "
       "understood, "
       "\"worked\" is not; there is no \"result\"",
       "a heading \"result\"; --as tried if it is that, or --as with another kind: dies, supplies, samples, "
       "elements, "
       "tried"},
      {"set;panel;result", "",
       "the kind of table is not certain; as tried, \"set\", \"panel\", \"result\" are understood; there is "
       "no "
       "\"die\"",
       "a heading \"die\"; --as tried if it is that, or --as with another kind: dies, supplies, samples, "
       "elements, "
       "tried"},
      {"card;apples;pears;plums", "",
       "the kind of table is not certain; as samples, \"card\" is understood, \"apples\", \"pears\", "
       "\"plums\" are not",
       "--as samples if it is that, or --as with another kind: dies, supplies, samples, elements, tried"},
      {"name;colour", "supplies", "the table of supplies has no column \"kind\"", "a heading \"kind\""},
      {"size;note", "elements", "the table of elements has no columns \"sample\", \"element\"",
       "the headings \"sample\", \"element\""},
  };
  for (const NotSure& c : cases) {
    TableBook book;
    book.options.as = c.as;
    const ImportReport report = book.import({{"t.csv", std::string(c.headings) + "\na;b;c;d;e;f\n"}});
    ASSERT_EQ(report.refused.size(), 1u) << c.headings;
    EXPECT_EQ(report.refused[0].what, c.what);
    EXPECT_EQ(report.refused[0].expected, c.expected);
    EXPECT_THAT(changes(book.book, 10), IsEmpty());
  }
}

TEST(ImportTables, TheKindSaidOutrightNeedsNoOtherHeadings) {
  TableBook book;
  book.options.as = "samples";
  const ImportReport report = book.import({{"t.csv", "card,apples,pears,plums\nlow tide,1,2,3\n"}});
  EXPECT_THAT(counts(report), ElementsAre("t.csv samples +1 ~0 =0 !0"));
}

TEST(ImportTables, HeadingsAPersonWouldWrite) {
  TableBook book;
  const ImportReport report = book.import(
      {{"dies.csv",
        "Die set,No.,Which edge,Shape,w,h,When measured\nTidepool,1,cut,rect,3-1/2,4-1/2,2026-01-05\n"},
       {"tried.csv",
        "Die set,No,Edge,Panel,OK?,When,Which card\nTidepool,1,cut,2 x 3 in rect,yes,2026-02-01,low tide\n"},
       {"more.csv", "set,number,panel,size,result\nTidepool,1,rect,3 x 3 in,too tight\n"},
       {"supplies.csv", "kind,name,got,price each\nribbon,seam ribbon,2,1.50\n"},
       {"samples.csv", "card\nlow tide\n"},
       {"elements.csv", "Which card,piece\nlow tide,mat\n"}});
  EXPECT_THAT(refused(report), IsEmpty());
  EXPECT_THAT(report.notes, IsEmpty());
  const auto lines = openings_of_set(book.book, *set_named(book.book, "tidepool"));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_EQ(lines[0].shape_word, "rectangle");
  EXPECT_EQ(tried_in(book.book, lines[0].line_id).size(), 2u);
  EXPECT_EQ(tried_in(book.book, lines[0].line_id)[0].sample, "low tide");
}

TEST(ImportTables, ASideCellThatIsNoneIsLeftOutOfItsRow) {
  TableBook book;
  book.options.refused_file = book.folder / "mend.csv";
  book.import({{"before.csv", "sample,made\nlow tide,2023-05-04\n"}});
  const ImportReport report = book.import(
      {{"supplies.csv",
        "kind,name,colour,colour value,from,until\nink,,kelp,mustard,May 2023,2024\nink,,foam,#246,2024-06,\n"
        "ink,,sand,mustard,3/4,\n"},
       {"samples.csv",
        "sample,made\nlow tide,May 2023\nhigh tide,2024-06\nneap tide,6/2024\nebb,02/03/2026\n"},
       {"dies.csv", "set,die,shape,size,measured\nA,1,circle,2 in,spring 2024\nA,2,circle,1 in,2024\n"}});
  EXPECT_THAT(counts(report), ElementsAre("supplies.csv supplies +2 ~0 =0 !1",
                                          "samples.csv samples +2 ~0 =1 !1", "dies.csv dies +1 ~0 =0 !1"));
  std::vector<std::string> kept, lost;
  for (const RefusedRow& row : report.refused)
    (row.row_kept ? kept : lost)
        .push_back(fmt::format("{} {} {}: {} / {}", row.file, row.row, row.column, row.what, row.expected));
  EXPECT_THAT(
      kept,
      ElementsAre("dies.csv 3 measured: \"2024\" is no whole date / the whole date, 2024-MM-DD",
                  "supplies.csv 2 colour value: \"mustard\" is no colour value / #rrggbb, such as #8aa37b",
                  "supplies.csv 2 from: \"May 2023\" is no whole date / the whole date, 2023-05-DD",
                  "supplies.csv 2 until: \"2024\" is no whole date / the whole date, 2024-MM-DD",
                  "supplies.csv 3 from: \"2024-06\" is no whole date / the whole date, 2024-06-DD",
                  "samples.csv 2 made: \"May 2023\" is no whole date / the whole date, 2023-05-DD",
                  "samples.csv 3 made: \"2024-06\" is no whole date / the whole date, 2024-06-DD",
                  "samples.csv 4 made: \"6/2024\" is no whole date / the whole date, 2024-06-DD"));
  EXPECT_THAT(
      lost,
      ElementsAre(
          "dies.csv 2 measured: \"spring 2024\" is no whole date / a date like 2026-03-02",
          "supplies.csv 4 from: \"3/4\" is no whole date / a date like 2026-03-02",
          "supplies.csv 4 colour value: \"mustard\" is no colour value / #rrggbb, such as #8aa37b",
          "samples.csv 5 made: \"02/03/2026\" can be read two ways / 2026-03-02 or 2026-02-03; --dates dmy "
          "or --dates mdy says it for all"));
  EXPECT_EQ(sample(book.book, *sample_titled(book.book, "low tide"))->made, "2023-05-04")
      << "what is known stays";
  EXPECT_EQ(sample(book.book, *sample_titled(book.book, "high tide"))->made, "");
  EXPECT_EQ(contents(book.folder / "mend-samples.csv"),
            "sample,made,refused because\r\nebb,02/03/2026,\"made: \"\"02/03/2026\"\" can be read two ways; "
            "wanted: "
            "2026-03-02 or 2026-02-03; --dates dmy or --dates mdy says it for all\"\r\n")
      << "rows that were taken are not among the refused ones";
}

TEST(ImportTables, ADateThatTellsRowsApartMustBeWhole) {
  TableBook book;
  const ImportReport report =
      book.import({{"dies.csv", "set,die,shape,size\nA,1,circle,2 in\n"},
                   {"tried.csv", "set,die,shape,size,result,date\nA,1,circle,1 in,fits,May 2023\n"}});
  EXPECT_THAT(refused(report), ElementsAre("2 date: \"May 2023\" is no whole date / a date like 2026-03-02"));
  EXPECT_FALSE(report.refused[0].row_kept);
}

TEST(ImportTables, AFractionThatSharesAMetricUnit) {
  TableBook book;
  const ImportReport report = book.import({{"dies.csv", "set,die,shape,size\nA,1,rectangle,2-3/8 x 60mm\n"}});
  EXPECT_THAT(
      refused(report),
      ElementsAre(
          "2 size: \"2-3/8\" in \"2-3/8 x 60mm\" has no unit of its own: it can be meant in inches or "
          "in mm / 2-3/8 mm, or every figure in inches"));
}

TEST(ImportTables, OneFigureOfWhatIsSoldByLengthIsNoNews) {
  TableBook book;
  const ImportReport report = book.import({{"s.csv",
                                            "kind,name,size\nribbon,seam,3/8\nwashi tape,waves,15 "
                                            "mm\nadhesive,red line tape,1/4 in\ntool,bone folder,6 in\n"}});
  EXPECT_THAT(report.notes, ElementsAre("size of one figure \"6 in\" kept as text (row 5 of s.csv)"));
}

TEST(ExportTables, FractionsOfAMetricBookComeBackTheSame) {
  TableBook book;
  ASSERT_TRUE(set_setting(book.book, "unit", "mm"));
  book.import(
      {{"samples.csv", "sample\nlow tide\n"},
       {"elements.csv", "sample,element,size\nlow tide,mat,2-3/8 x 4-1/8\nlow tide,strip,40 x 60\n"}});
  const auto pieces = [](const Book& one) { return elements_of(one, *sample_titled(one, "low tide")); };
  EXPECT_EQ(pieces(book.book)[0].second.size.width, Length::inch_fraction(19, 8));
  EXPECT_EQ(pieces(book.book)[1].second.size.text, "40 x 60 mm");
  ASSERT_TRUE(export_csv(book.book, book.folder / "out"));
  TableBook other;
  const ImportReport report =
      other.import({{"samples.csv", "sample\nlow tide\n"},
                    {"elements.csv", contents(book.folder / "out" / "elements.csv")}});
  EXPECT_THAT(refused(report), IsEmpty());
  EXPECT_EQ(pieces(other.book)[0].second.size, pieces(book.book)[0].second.size);
}

TEST(ExportTables, EarlierFiguresDoNotComeBackAsConflicts) {
  TableBook book;
  book.import({{"dies.csv",
                "set,die,line,shape,size,measured\nA,1,cut,circle,3 in,2026-01-01\n"
                "A,2,cut,circle,2 in,2026-01-01\nA,2,cut,circle,2-1/2 in,2026-02-01\n"}});
  const auto lines = openings_of_set(book.book, *set_named(book.book, "a"));
  Measured anew;
  anew.line_id = lines[0].line_id;
  anew.width = anew.height = Length::inch_fraction(13, 4);
  anew.method = "ruler";
  anew.date = "2026-03-01";
  ASSERT_TRUE(book.book.change("settled", [&](Change& change) -> Result<void> {
    const auto done = record_measurement(change, anew, true);
    return done ? Result<void>() : failure(done.error());
  }));
  ASSERT_TRUE(export_csv(book.book, book.folder / "out"));
  TableBook other;
  const ImportReport report = other.import({{"dies.csv", contents(book.folder / "out" / "dies.csv")}});
  EXPECT_THAT(refused(report), IsEmpty());
  EXPECT_THAT(report.notes,
              ElementsAre(testing::StartsWith("row 4 of dies.csv: A 2, cut is 2-1/2 x 2-1/2 in")))
      << "only what was open is open";
  const auto again = openings_of_set(other.book, *set_named(other.book, "a"));
  EXPECT_EQ(again[0].width, Length::inch_fraction(13, 4));
  EXPECT_EQ(measurements_of(other.book, again[0].line_id).size(), 1u);
}

TEST(ImportTables, ACharacterThatNothingShowsIsRefusedWithItsPlace) {
  TableBook book;
  const ImportReport report =
      book.import({{"s.csv", "sample,note\nlow\a tide,x\nhigh tide,\"two\nlines\"\nebb,x\x7f\n"},
                   {"t.csv", "sam\x0Bple,note\nneap tide,x\n"}});
  EXPECT_THAT(
      refused(report),
      ElementsAre("1 : the heading \"sam\uFFFDple\" holds the character U+000B, which nothing shows / the "
                  "heading without it",
                  "2 sample: the cell holds the character U+0007, which nothing shows, at 3 / the cell "
                  "without it",
                  "4 note: the cell holds the character U+007F, which nothing shows, at 1 / the cell "
                  "without it"));
  EXPECT_TRUE(sample_titled(book.book, "high tide"));
}

TEST(ImportTables, LongTextsComeBackShort) {
  TableBook book;
  const std::string page(5000, 'x');
  const ImportReport report =
      book.import({{"s.csv", "sample,made\nlow tide," + page + "\n"},
                   {"e.csv", "sample,element\n" + page + ",a\n"},
                   {"d.csv", "set,die,line,shape,size\nA,1," + page + ',' + page + "," + page + "\n"},
                   {"t.csv", "set,die,shape,size,result\n" + page + ",1,circle," + page + "," + page + "\n"},
                   {"h.csv", page + "," + page + "\n1,2\n"}});
  EXPECT_GE(report.refused.size(), 8u);
  for (const RefusedRow& row : report.refused) {
    EXPECT_LT(row.what.size(), 400u) << row.what;
    EXPECT_LT(row.expected.size(), 1500u) << row.expected;
  }
}

TEST(ImportTables, ASizeOfOneFigureIsAWidth) {
  TableBook book;
  const ImportReport report = book.import({{"samples.csv", "sample,base\nlow tide,5 in\n"},
                                           {"elements.csv",
                                            "sample,element,shape,size\nlow tide,bow,,3/8 in\nlow "
                                            "tide,moon,circle,2 in\nlow tide,mat,rectangle,2 "
                                            "in\nlow tide,tag,tag,1-1/2 in\n"}});
  EXPECT_THAT(refused(report),
              ElementsAre("4 size: \"2 in\" is one figure; the shape rectangle has two / a width "
                          "and a height: 2 x 3 in"));
  EXPECT_THAT(report.notes, ElementsAre("size of one figure \"5 in\" kept as text (row 2 of samples.csv)"));
  const auto pieces = elements_of(book.book, *sample_titled(book.book, "low tide"));
  ASSERT_EQ(pieces.size(), 3u);
  EXPECT_EQ(pieces[0].second.size.width, Length::inch_fraction(3, 8));
  EXPECT_FALSE(pieces[0].second.size.height);
  EXPECT_EQ(pieces[0].second.size.text, "3/8 in");
  EXPECT_EQ(pieces[1].second.size.height, Length::inches(2));
  EXPECT_EQ(pieces[2].second.size.width, Length::inch_fraction(3, 2));
  EXPECT_FALSE(pieces[2].second.size.height);
  ASSERT_TRUE(export_csv(book.book, book.folder / "out"));
  TableBook other;
  other.import({{"samples.csv", "sample\nlow tide\n"},
                {"elements.csv", contents(book.folder / "out" / "elements.csv")}});
  EXPECT_EQ(elements_of(other.book, 1)[0].second.size, pieces[0].second.size);
}

// A colour or a supply that comes after the pieces that name it, in whatever order the tables are imported.
TEST(ImportTables, WhatComesLaterIsLinked) {
  const Table tables[] = {
      {"supplies.csv",
       "kind,set,name,colour\nink,Harbour Inks,,kelp\ncard stock,,,sage\nribbon,,seam tape,\n"},
      {"samples.csv", "sample,supplies\nlow tide,seam tape\n"},
      {"elements.csv", "sample,element,colour,ink,supply\nlow tide,mat,Sage,kelp,\"kelp, ink\"\n"}};
  const auto mentions = [](const Book& one) {
    std::vector<std::string> all;
    Statement& row = one.statement(
        "SELECT m.kind || ' ' || m.written || ' = ' || coalesce(c.name, s.kind || s.set_name || s.name, '?') "
        "FROM "
        "mention m LEFT JOIN colour c ON c.id = m.colour_id LEFT JOIN supply s ON s.id = m.supply_id ORDER "
        "BY 1");
    while (row.step()) all.emplace_back(row.text(0));
    row.reset();
    return all;
  };
  for (const std::vector<int>& order : {std::vector<int>{0, 1, 2}, {1, 2, 0}, {1, 0, 2}}) {
    TableBook book;
    for (const int i : order) book.import({tables[i]});
    EXPECT_THAT(mentions(book.book),
                ElementsAre("ink kelp = kelp", "paper Sage = sage", "supply kelp, ink = inkHarbour Inks",
                            "supply seam tape = ribbonseam tape"));
    for (const Table& table : tables) EXPECT_THAT(book.import({table}).files[0].changed, 0) << table.name;
  }
}

// The same of a die that a piece lies in, and of a piece that others go with.
TEST(ImportTables, WhatAPieceLiesInMayComeLater) {
  TableBook book;
  book.import(
      {{"samples.csv", "sample\nlow tide\n"},
       {"elements.csv",
        "sample,element,goes\nlow tide,moon,\"in A 1, stitched\"\nlow tide,gull,on mat\nlow tide,sun,in "
        "B 1\n"}});
  book.import({{"dies.csv", "set,die,line,shape,size\nA,1,cut,circle,3 in\nA,1,stitched,circle,2-3/4 in\n"},
               {"more.csv", "sample,element\nlow tide,mat\n"}});
  const auto pieces = elements_of(book.book, *sample_titled(book.book, "low tide"));
  ASSERT_EQ(pieces.size(), 4u);
  ASSERT_TRUE(pieces[0].second.in_line_id);
  EXPECT_EQ(opening(book.book, *pieces[0].second.in_line_id)->line, "stitched");
  EXPECT_EQ(pieces[1].second.goes_to, pieces[3].first);
  EXPECT_FALSE(pieces[2].second.in_line_id);
}

TEST(ImportTables, RefusedRowsAsATableToMend) {
  TableBook book;
  book.options.refused_file = book.folder / "mend.csv";
  book.import({{"a.csv", "set,die,shape,size,shop\nA,1,circle,8-Mar,corner\nA,2,circle,2 in,corner\n"}});
  EXPECT_EQ(contents(book.folder / "mend.csv"),
            "set,die,shape,size,shop,refused because\r\n"
            "A,1,circle,8-Mar,corner,\"size: \"\"8-Mar\"\" is a date; it was probably typed as 3/8; wanted: "
            "3/8 in, in a cell that the "
            "spreadsheet keeps as text\"\r\n");
  const ImportReport mended = book.import(
      {{"mend.csv", "set,die,shape,size,shop,refused because\r\nA,1,circle,3 in,corner,size: …\r\n"}});
  EXPECT_THAT(counts(mended), ElementsAre("mend.csv dies +1 ~0 =0 !0"));
}

TEST(ImportTables, BytesOfOtherEncodings) {
  TableBook book;
  const ImportReport report =
      book.import({{"a.csv", "sample,note\ncaf\xE9,2\xBD\n"}, {"b.xlsx", "PK\x03\x04 and so on"}});
  EXPECT_THAT(report.notes, ElementsAre("a.csv was read as Windows-1252, because it is no UTF-8"));
  EXPECT_EQ(sample(book.book, *sample_titled(book.book, "cafe"))->title, "café");
  ASSERT_EQ(report.refused.size(), 1u);
  EXPECT_EQ(report.refused[0].what, "the file is a spreadsheet, or another packed file, and no CSV");
}

// Path data in a unit of length is the drawing: its box is the size, and give or take is nothing.
TEST(ImportTables, AnOutlineWithoutASizeIsMeasuredByItsDrawing) {
  TableBook book;
  const std::string dies =
      "set,die,line,size,method,outline,unit\n"
      "Sprigs,leaf,cut,,,\"M0 0C20 0 30 10 30 40C10 40 0 30 0 0Z\",mm\n"
      "Sprigs,wedge,cut,,,M0 0H1V2Z,in\n"
      "Sprigs,unit of no length,cut,,,M0 0H1V2Z,px\n"
      "Sprigs,by hand,cut,,ruler,M0 0H1V2Z,in\n"
      "Sprigs,with a size,cut,2 x 4 in,ruler,M0 0H1V2Z,in\n"
      "Sprigs,broken,cut,,,M0 0H,in\n";
  EXPECT_THAT(refused(book.import({{"dies.csv", dies}})),
              ElementsAre("7 outline: the path ends where a number should stand / a number"));
  std::vector<std::string> sizes;
  for (const OpeningRecord& one : measured_openings(book.book, std::nullopt))
    sizes.push_back(one.die + " " + write_size(one.width, one.height, one.unit) + " " +
                    std::to_string(one.give_or_take.nm()));
  EXPECT_THAT(sizes, ElementsAre("leaf 30 x 40 mm 0", "wedge 1 x 2 in 0", "with a size 2 x 4 in 793750"));
  // Again it is the same measurement.
  EXPECT_THAT(counts(book.import({{"dies.csv", dies}})), ElementsAre("dies.csv dies +0 ~0 =5 !1"));
}

// A star drawn in one line goes twice round its middle. What is open by a hundredth of its size was meant to
// be closed; what is open by more, or cannot be read, is refused.
TEST(ImportTables, PathDataIsMendedAndSaidOrRefusedWithThePlace) {
  TableBook book;
  const std::string star = "M50 0L79 90L3 35H97L21 90Z";
  const ImportReport report =
      book.import({{"dies.csv",
                    "set,die,shape,size,figures,outline\n"
                    "Stars,a,outline,94 x 90 mm,," +
                        star +
                        "\n"
                        "Stars,b,outline,47 x 45 mm,even-odd," +
                        star +
                        "\n"
                        "Stars,c,outline,60 x 60 mm,,M0 0H60V60H0L0 0.3\n"
                        "Stars,d,outline,60 x 60 mm,,M0 0H60V60H0\n"
                        "Stars,e,outline,60 x 60 mm,,M0 0H60Q\n"
                        "Stars,f,outline,60 x 60 mm,,M0 0H60V60H0ZM10 10V50H50V10Z\n"}});
  EXPECT_THAT(counts(report), ElementsAre("dies.csv dies +4 ~0 =0 !2"));
  EXPECT_THAT(
      report.notes,
      ElementsAre(testing::MatchesRegex("row 2 of dies.csv: the outline crosses or overlaps itself at "
                                        ".* mm and at 4 more places: what the lines go round, all "
                                        "told, was kept"),
                  testing::MatchesRegex("row 3 of dies.csv: the outline crosses or overlaps itself at "
                                        ".* mm and at 4 more places: what an odd number of lines go "
                                        "round was kept"),
                  "row 4 of dies.csv: the line that starts at 0, 0 mm ended at 0, 0.3 mm: it was closed"));
  EXPECT_THAT(refused(report),
              ElementsAre("5 outline: the line that starts at 0, 0 mm ends at 0, 60 mm and is not closed / a "
                          "line that comes back to its start (\"z\" in path data closes it)",
                          testing::StartsWith("6 outline: ")));
}

// Two figures that are equal are two figures, whatever is read back.
TEST(ImportTables, EqualSidesAreTwoFigures) {
  TableBook book;
  EXPECT_THAT(refused(book.import({{"dies.csv",
                                    "set,die,line,shape,size,figures\n"
                                    "Even,a,cut,rounded rectangle,3 x 3 in,radius 1/4 in\n"
                                    "Even,b,cut,oval,3 x 3 in,\n"
                                    "Even,c,cut,rectangle,3 x 3 in,\n"
                                    "Even,d,cut,circle,3 in,\n"
                                    "Even,e,cut,hexagon,3 in,\n"}})),
              IsEmpty());
  std::vector<std::string> shapes;
  for (const OpeningRecord& one : measured_openings(book.book, std::nullopt)) {
    const Result<Shape> shape = shape_of(one);
    ASSERT_TRUE(shape) << one.die << ": " << shape.error().what;
    shapes.push_back(one.die + " " + write_size(shape->width, shape->height, Unit::mm));
  }
  // A regular hexagon of 3 in, flat on top, is 3 sqrt(3) / 2 high: 65.991136 mm.
  EXPECT_THAT(shapes, ElementsAre("a 76.2 x 76.2 mm", "b 76.2 x 76.2 mm", "c 76.2 x 76.2 mm",
                                  "d 76.2 x 76.2 mm", "e 76.2 x 65.991136 mm"));
}

// One figure of a hexagon is its width: as high as wide it cannot be, and two equal figures are told what a
// ruler gives. A regular octagon flat on top is as high as wide; one of nine sides by less than a ruler sees.
TEST(ImportTables, EqualFiguresOfAPolygon) {
  TableBook book;
  const ImportReport report = book.import({{"dies.csv",
                                            "set,die,line,shape,size,figures\n"
                                            "Combs,a,cut,hexagon,3 in,\n"
                                            "Combs,b,cut,hexagon,3 x 3 in,\n"
                                            "Combs,c,cut,hexagon,3 x 2-5/8 in,\n"
                                            "Combs,d,cut,hexagon,60 x 60 mm,point on top\n"
                                            "Combs,e,cut,octagon,3 x 3 in,\n"
                                            "Combs,f,cut,polygon,1 x 1 in,9 sides\n"}});
  EXPECT_THAT(refused(report),
              ElementsAre("3 size: a regular hexagon 3 in wide is about 2-5/8 in high, and \"3 x 3 in\" says "
                          "otherwise / its width alone, \"3 x 2-5/8 in\", or path data of its outline",
                          "5 size: a regular hexagon 60 mm wide is about 69.5 mm high, and \"60 x 60 mm\" "
                          "says otherwise / its width alone, \"60 x 69.5 mm\", or path data of its outline"));
  std::vector<std::string> shapes;
  for (const OpeningRecord& one : measured_openings(book.book, std::nullopt)) {
    const Result<Shape> shape = shape_of(one);
    ASSERT_TRUE(shape) << one.die << ": " << shape.error().what;
    shapes.push_back(one.die + " " + write_size(shape->width, shape->height, Unit::mm));
  }
  ASSERT_EQ(shapes.size(), 4u);
  EXPECT_EQ(shapes[0], "a 76.2 x 65.991136 mm");
  EXPECT_EQ(shapes[1], "c 76.2 x 66.675 mm");
  EXPECT_EQ(shapes[2], "e 76.2 x 76.2 mm");
  EXPECT_EQ(shapes[3].substr(0, 9), "f 25.4 x ");
  EXPECT_NE(shapes[3], "f 25.4 x 25.4 mm");
  // What is written out goes in again the same.
  ASSERT_TRUE(export_csv(book.book, book.folder / "out"));
  EXPECT_THAT(contents(book.folder / "out" / "dies.csv"), testing::HasSubstr(",hexagon,3 in,"));
}

}  // namespace
}  // namespace insetbook
