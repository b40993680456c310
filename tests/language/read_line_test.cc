// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line.h"

#include <gtest/gtest.h>

#include "language/read_record_text.h"
#include "table_names.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

const Vocabulary vocabulary;
const TableNames names;
const ReadingContext context{vocabulary, names, Unit::inch, "2026-11-25"};

std::string printed(std::string_view line) {
  return print(read_line(line, context));
}

TEST(ReadLine, Pieces) {
  struct Case {
    const char* line;
    const char* said;
  };
  const Case cases[] = {
      {"sage circle 2-3/8 in, speckled, from moonrise circles 3, on the grey panel, high of centre",
       "shape=circle, size=2-3/8 in, paper=sage, technique=speckling, from=Moonrise Circles 3, goes=on grey "
       "panel, "
       "at=high of centre"},
      // the same without commas, and in another order
      {"sage circle 2-3/8 in speckled from moonrise circles 3 on the grey panel high of centre",
       "shape=circle, size=2-3/8 in, paper=sage, technique=speckling, from=Moonrise Circles 3, goes=on grey "
       "panel, "
       "at=high of centre"},
      {"on the grey panel, high of centre, 2-3/8 in sage circle, from moonrise circles 3, speckled",
       "shape=circle, size=2-3/8 in, paper=sage, technique=speckling, from=Moonrise Circles 3, goes=on grey "
       "panel, "
       "at=high of centre"},
      // the colour behind a technique that brings one is the ink's, as in a question
      {"white circle stamped navy", "shape=circle, paper=white, ink=navy, technique=stamping"},
      {"white panel ink blended navy and kelp",
       "role=panel, paper=white, ink=navy+kelp, technique=ink blending"},
      {"stamped navy circle", "shape=circle, paper=navy, technique=stamping"},
      // words that stand on it
      {"sage circle saying happy birthday",
       "shape=circle, paper=sage, occasion=birthday, words=happy birthday"},
      {"white panel that says Warm Wishes", "role=panel, paper=white, words=Warm Wishes"},
      {"greeting happy birthday", "role=sentiment, occasion=birthday, words=happy birthday"},
      {"birthday greeting", "role=sentiment, occasion=birthday"},
      // a set by its first word, and a die of it
      {"circle moonrise 4 sage", "shape=circle, paper=sage, from=Moonrise Circles 4"},
      {"circle moonrise 4 in", "shape=circle, size=4 in, not read=\"moonrise\" is not understood"},
      // circles have one figure
      {"circle 2 3/8 x2 white", "count=2, shape=circle, size=2 3/8 in, paper=white"},
      {"panel 2 3/8 x2", "role=panel, size=2 3/8 x2 in"},
      {"ribbon thru the tag", "role=ribbon, material=ribbon, goes=through tag"},
      {"C6 envelope", "envelope=C6"},
      {"envelope 4 3/8 x 5 3/4", "envelope=4 3/8 x 5 3/4"},
      // sizes
      {"2-3/8 circle", "shape=circle, size=2-3/8 in"},
      {"navy ring 3 in", "role=ring, shape=ring, size=3 in, paper=navy"},
      {"navy circle ring 3 in", "role=ring, shape=circle, size=3 in, paper=navy"},
      {"circle 60mm", "shape=circle, size=60mm"},
      {"panel 4 x 5-1/4", "role=panel, size=4 x 5-1/4 in"},
      {"panel 4 in wide 5 in tall", "role=panel, size=4 in wide 5 in tall"},
      {"about 2 in circle", "shape=circle, size=2 in, note=about 2 in"},
      {"circle under 2 in", "shape=circle, not read=\"under 2 in\" is no one size"},
      // counts
      {"3 x sage circle 1 in", "count=3, shape=circle, size=1 in, paper=sage"},
      {"3x sage circle 1 in", "count=3, shape=circle, size=1 in, paper=sage"},
      {"three sage circles 1 in", "count=3, shape=circle, size=1 in, paper=sage"},
      {"a pair of sage circles", "count=2, shape=circle, paper=sage"},
      {"sage circle 1 in, x3", "count=3, shape=circle, size=1 in, paper=sage"},
      {"3 circles", "count=3, shape=circle"},
      // colours
      {"white circle stamped in navy", "shape=circle, paper=white, ink=navy, technique=stamping"},
      {"white panel, navy ink", "role=panel, paper=white, ink=navy"},
      {"sage and navy circle", "shape=circle, paper=sage+navy"},
      {"sage or navy circle", "shape=circle, not read=\"sage or navy\" is a choice"},
      // dies
      {"frame from tidepool rectangles 2", "role=frame, from=Tidepool Rectangles 2"},
      {"panel in tidepool rectangles 2, stitched line", "role=panel, in=Tidepool Rectangles 2 stitched"},
      {"circle from moonbeam circles 3",
       "shape=circle, not read=no die set is called \"moonbeam circles 3\""},
      {"circle from moonrise circles 3 in the middle",
       "shape=circle, from=Moonrise Circles 3, at=in the middle"},
      {"circle from moonrise circles 3 in the frame", "shape=circle, from=Moonrise Circles 3, goes=in frame"},
      {"sage circle in moonrise circles", "shape=circle, paper=sage, in=Moonrise Circles"},
      {"white circle cut from sage card stock", "shape=circle, paper=white+sage"},
      // how it goes
      {"panel in the frame", "role=panel, goes=in frame"},
      {"panel in the frame, stitched", "role=panel, goes=in frame (stitched)"},
      {"mat behind the circle", "role=mat, goes=behind circle"},
      {"navy ribbon wrapped around the front", "role=ribbon, paper=navy, material=ribbon, goes=around front"},
      {"circle on the front", "shape=circle, side=front, goes=on front"},
      {"circle on section 2", "shape=circle, goes=on section 2"},
      {"bow in baker's twine", "role=bow, supply=baker's twine"},
      {"bow in navy ribbon", "role=bow, paper=navy, material=ribbon"},
      {"panel in ribbon slot", "role=panel, goes=in ribbon, not read=\"slot\" is not understood"},
      {"gem on the gull", "role=gem, material=gems, goes=on gull"},
      {"gem on circle 2", "role=gem, material=gems, goes=on circle 2"},
      {"ribbon through the slot", "role=ribbon, material=ribbon, goes=through slot"},
      {"panel inside left", "role=panel, side=inside, at=left"},
      // places
      {"circle on the panel, left 1/4 in", "shape=circle, goes=on panel, at=left 1/4 in"},
      {"circle, 1/4 in from the left and 1/2 in from the top",
       "shape=circle, at=1/4 in from the left and 1/2 in from the top"},
      {"circle centred on the panel", "shape=circle, goes=on panel, at=centred"},
      {"banner hanging off the left edge by 1/4 in", "shape=banner, at=hanging off the left edge by 1/4 in"},
      {"circle 2 in, same border at top and sides",
       "shape=circle, size=2 in, at=same border at top and sides"},
      {"gem in the top left corner", "role=gem, material=gems, at=in the top left corner"},
      {"circle beside the grey panel", "shape=circle, at=beside the grey panel"},
      {"panel 3 in wide 4 in high", "role=panel, size=3 in wide 4 in high"},
      // glue
      {"circle on foam, on the panel", "shape=circle, goes=on panel, glue=foam"},
      {"strip glue left 2 in", "role=strip, glue=left 2 in"},
      {"strip, glued with foam, left 2 in", "role=strip, glue=foam, left 2 in"},
      {"strip, no glue", "role=strip, glue=none"},
      {"circle with foam tape", "shape=circle, glue=foam tape"},
      {"circle glued to the panel", "shape=circle, goes=on panel"},
      // names, notes, words
      {"white circle 3 in called boat round", "name=boat round, shape=circle, size=3 in, paper=white"},
      {"circle 2 in, note: leave a white edge", "shape=circle, size=2 in, note=leave a white edge"},
      {"\"happy birthday\" greeting", "role=sentiment, words=happy birthday"},
      {"greeting stamped \"happy birthday\" in navy",
       "role=sentiment, ink=navy, technique=stamping, words=happy birthday"},
      {"greeting stamped with \"happy birthday\" in navy on sage",
       "role=sentiment, paper=sage, ink=navy, technique=stamping, words=happy birthday"},
      {"greeting die cut \"hello\" in navy",
       "role=sentiment, paper=navy, technique=die cutting, words=hello"},
      {"circle stamped with \"garden gate\"", "shape=circle, technique=stamping, supply=garden gate"},
      // what is not read
      {"circle 2-9/8 in sage",
       "shape=circle, paper=sage, not read=\"2-9/8\" has a whole number and a fraction that is not below "
       "one"},
      {"circle wibble the wubble sage",
       "shape=circle, paper=sage, not read=\"wibble the wubble\" is not understood"},
      {"circle without a border", "shape=circle, not read=\"without a border\" says what is not there"},
      {"sage circle, navy square", "shape=circle, paper=sage+navy, not read=a second shape, \"square\""},
      {"circle \"unfinished",
       "shape=circle, not read=a quote begins here and does not end, not read=\"unfinished\" is not "
       "understood"},
      {"sage circle 2-3/8 in on white",
       "shape=circle, size=2-3/8 in, paper=sage, not read=\"on white\" names no piece"},
      {"image stamped in navy on white", "role=stamped image, paper=white, ink=navy, technique=stamping"},
      {"white panel, must find the other glue",
       "role=panel, paper=white, not read=\"must find the other glue\" is not understood"},
      {"white panel, and my wibble, glue left 1 in",
       "role=panel, paper=white, glue=left 1 in, not read=\"and my wibble\" is not understood"},
      {"strip 12 ft x 3", "count=3, role=strip, size=12 ft"},
      {"", ""},
      {", ; ...", ""},
  };
  for (const Case& c : cases) EXPECT_EQ(printed(c.line), c.said) << c.line;
}

TEST(ReadLine, LinesOfTheCard) {
  EXPECT_EQ(printed("easel fold"), "fold=easel");
  EXPECT_EQ(printed("birthday"), "occasion=birthday");
  EXPECT_EQ(printed("5 x 7 in card"), "closed=5 x 7 in");
  EXPECT_EQ(printed("A2 card"), "closed=4-1/4 x 5-1/2 in");
  EXPECT_EQ(printed("base 8-1/2 x 5-1/2 in, scored at 2-1/8 in and 4-1/4 in"),
            "role=base, size=8-1/2 x 5-1/2 in, scores=2-1/8 in; 4-1/4 in");
  EXPECT_EQ(printed("dry embossing"), "technique=dry embossing");
}

// Every word of the line is in a field, in a filler or in what was not read: blanks are all that is left.
TEST(ReadLine, PlacesPointIntoTheLine) {
  const std::string line = "sage cïrcle wibble, 2-9/8 in, from nowhere circles 3";
  for (const NotRead& lost : read_line(line, context).not_read) {
    EXPECT_LT(lost.span.begin, lost.span.end);
    EXPECT_LE(lost.span.end, line.size());
  }
  const LineSaid said = read_line("circle wibble", context);
  ASSERT_EQ(said.not_read.size(), 1u);
  EXPECT_EQ(said.not_read[0].span, (Span{7, 13}));
  EXPECT_EQ(said.not_read[0].expected, "a word of the vocabularies or a name in the book");
}

TEST(ReadLine, AnUnknownSetOffersTheNearest) {
  const LineSaid said = read_line("circle from moonrize circles 3", context);
  ASSERT_EQ(said.not_read.size(), 1u);
  EXPECT_EQ(said.not_read[0].candidates, std::vector<std::string>{"Moonrise Circles"});
}

TEST(ReadLine, LongLines) {
  std::string line = "sage circle 2-3/8 in";
  while (line.size() < longest_line - 40) line += ", on the grey panel, on foam, wibble 3";
  EXPECT_EQ(read_line(line, context).piece.shape, "circle");
  const LineSaid over = read_line(std::string(longest_line + 1, 'x'), context);
  ASSERT_EQ(over.not_read.size(), 1u);
  EXPECT_EQ(over.not_read[0].what, "the line is 65537 bytes long");
}

TEST(ReadDay, Days) {
  EXPECT_EQ(read_day("2024-03-02", nullptr)->day, "2024-03-02");
  EXPECT_EQ(read_day("today", &context)->day, "2026-11-25");
  EXPECT_EQ(read_day("Yesterday", &context)->day, "2026-11-24");
  ASSERT_FALSE(read_day("March 2024", &context));
  EXPECT_EQ(read_day("March 2024", &context).error().what, "\"March 2024\" is no whole date");
  EXPECT_FALSE(read_day("today", nullptr));
  ReadingContext metric = context;
  metric.unit = Unit::mm;
  struct Case {
    const char* said;
    DaySaid in_inches, in_millimetres;
  };
  const Case cases[] = {
      {"03/04/2026", {"2026-03-04", "2026-04-03"}, {"2026-04-03", "2026-03-04"}},
      {"made on 3.4.2026", {"2026-03-04", "2026-04-03"}, {"2026-04-03", "2026-03-04"}},
      {"3-4-2026", {"2026-03-04", "2026-04-03"}, {"2026-04-03", "2026-03-04"}},
      {"04/04/2026", {"2026-04-04", ""}, {"2026-04-04", ""}},
      {"25/12/2025", {"2025-12-25", ""}, {"2025-12-25", ""}},
      {"March 4, 2026", {"2026-03-04", ""}, {"2026-03-04", ""}},
      {"4 Mar. 2026", {"2026-03-04", ""}, {"2026-03-04", ""}},
  };
  for (const Case& c : cases) {
    EXPECT_EQ(read_day(c.said, &context).value_or(DaySaid()), c.in_inches) << c.said;
    EXPECT_EQ(read_day(c.said, &metric).value_or(DaySaid()), c.in_millimetres) << c.said;
  }
  for (const char* none : {"30/02/2026", "03/04", "03/04/2026 wibble", "since 03/04/2026", "13/13/2026"})
    EXPECT_FALSE(read_day(none, &context)) << none;
}

// ---- whole records

RecordSaid record_of(std::string_view text, std::string_view title = "Low Tide") {
  const Result<RecordSaid> record = read_record(title, text, context);
  EXPECT_TRUE(record) << (record ? "" : record.error().what);
  return record.value_or(RecordSaid());
}

std::string goes_of(const RecordSaid& record, std::size_t i) {
  const auto& to = record.pieces[i].goes_to;
  return record.pieces[i].name + (to ? " > " + record.pieces[*to].name : "");
}

// A day by itself is the day it was made, and no number of pieces; an envelope and a sheet are no finished
// size.
TEST(ReadRecordText, LinesOfTheCardWithoutAColon) {
  for (const char* day : {"8 nov", "Nov 8", "8 November"}) {
    const RecordSaid record = record_of(std::string(day) + "\nsage circle 2 in\n");
    EXPECT_EQ(record.sample.made, "2026-11-08") << day;
    EXPECT_EQ(record.pieces.size(), 1u) << day;
  }
  EXPECT_EQ(record_of("3 hearts\n").sample.made, "");
  EXPECT_EQ(record_of("C6 envelope\nsage circle 2 in\n").sample.envelope, "C6");
  EXPECT_EQ(record_of("envelope 4-3/8 x 5-3/4 in\n").sample.envelope, "4-3/8 x 5-3/4 in");
  const RecordSaid cut = record_of("white base cut from A4\n");
  EXPECT_EQ(cut.sample.closed_text, "");
  EXPECT_FALSE(cut.not_read.empty());
}

TEST(ReadRecordText, SampleAndPieces) {
  const RecordSaid record = record_of(
      "\xEF\xBB\xBF"
      "easel fold\r\n"
      "base white 8-1/2 x 5-1/2 in, scored at 2-1/8 in and 4-1/4 in\r\n"
      "\r\n"
      "finished 4-1/4 x 5-1/2 in\r\n"
      "birthday\r\nmade 2024-03-02\r\nwords: happy birthday\r\nenvelope: A2\r\n"
      "technique: speckling\r\nbased on Harbour Easel\r\nnote: for Otter\r\nstep: Score it\r\n"
      "1. Fold the base; press\r\n"
      "Front:\r\n"
      "\xE2\x80\xA2\tgrey panel 4 x 5-1/4 in\r\n"
      "2) sage circle 2-3/8 in on the grey panel\r\n"
      "Inside: white panel 4 x 5-1/4 in\r\n"
      "navy circle 1 in\r\n");
  const SampleOfRecord& sample = record.sample;
  EXPECT_EQ(sample.title, "Low Tide");
  EXPECT_EQ(sample.base_text, "8-1/2 x 5-1/2 in");
  EXPECT_EQ(sample.scores, "2-1/8 in; 4-1/4 in");
  EXPECT_EQ(sample.closed_text, "4-1/4 x 5-1/2 in");
  EXPECT_EQ(sample.made, "2024-03-02");
  EXPECT_EQ(sample.words, std::vector<std::string>{"happy birthday"});
  EXPECT_EQ(sample.envelope, "A2");
  EXPECT_EQ(sample.based_on, "Harbour Easel");
  EXPECT_EQ(sample.notes, std::vector<std::string>{"for Otter"});
  EXPECT_EQ(sample.steps, (std::vector<std::string>{"Score it", "Fold the base, press"}));
  ASSERT_EQ(sample.terms.size(), 3u);
  EXPECT_EQ(sample.terms[0].term, "easel");
  EXPECT_EQ(sample.terms[1].term, "birthday");
  EXPECT_EQ(sample.terms[2].term, "speckling");
  ASSERT_EQ(record.pieces.size(), 5u);
  EXPECT_EQ(record.pieces[0].name, "white base");
  EXPECT_EQ(record.pieces[1].said.piece.side, "front");
  EXPECT_EQ(goes_of(record, 2), "sage circle > grey panel");
  EXPECT_EQ(record.pieces[3].said.piece.side, "inside");
  EXPECT_EQ(record.pieces[4].said.piece.side, "front");
  EXPECT_EQ(record.pieces[4].line, 18);
  EXPECT_TRUE(record.not_read.empty());
}

TEST(ReadRecordText, WhichPieceIsMeant) {
  const RecordSaid record = record_of(
      "gem, on the circle\n"  // a later one
      "grey panel 4 x 5 in\n"
      "sage circle 2 in, on the panel\n"       // by role
      "navy circle 2 in, on the grey panel\n"  // by colour and role
      "gem, on the sage circle\n"
      "gem, on the circle\n"  // two: the nearest before
      "die cut frame 3 x 4 in called big window\n"
      "panel 2 x 3 in, in the big window\n"
      "layer 2 x 3 in, in the frame\n"
      "bow, on the pond\n");
  EXPECT_EQ(goes_of(record, 0), "gem > sage circle");
  EXPECT_EQ(goes_of(record, 2), "sage circle > grey panel");
  EXPECT_EQ(goes_of(record, 3), "navy circle > grey panel");
  EXPECT_EQ(goes_of(record, 4), "gem 2 > sage circle");
  EXPECT_EQ(goes_of(record, 5), "gem 3 > navy circle");
  EXPECT_EQ(goes_of(record, 7), "panel > big window");
  EXPECT_EQ(goes_of(record, 8), "layer > big window");
  EXPECT_EQ(goes_of(record, 9), "bow");
  ASSERT_EQ(record.not_read.size(), 1u);
  EXPECT_EQ(record.not_read[0].problem.what, "no piece of this sample is \"pond\"");
  EXPECT_EQ(record.not_read[0].problem.where.row, 10);
}

TEST(ReadRecordText, BasesAndPiecesOfSupplies) {
  const RecordSaid record = record_of(
      "Card base: navy, 8-1/2 x 5-1/2 in; score at 4-1/4 in\n"
      "garden gate, stamped, cut out by hand, on foam\n"
      "garden gate\n"
      "Mat: sage, 4 x 5 in\n");
  EXPECT_EQ(record.sample.base_text, "8-1/2 x 5-1/2 in");
  EXPECT_EQ(record.sample.scores, "4-1/4 in");
  EXPECT_EQ(record.sample.supplies, std::vector<std::string>{"garden gate"});
  ASSERT_EQ(record.pieces.size(), 3u);
  EXPECT_EQ(record.pieces[0].name, "navy base");
  EXPECT_EQ(record.pieces[1].name, "garden gate");
  EXPECT_EQ(record.pieces[1].said.glue, "foam");
  EXPECT_EQ(record.pieces[2].name, "Mat");
  const RecordSaid plain = record_of("card base 8-1/2 x 5-1/2 in, scored at 4-1/4 in\n");
  EXPECT_EQ(plain.sample.base_text, "8-1/2 x 5-1/2 in");
  EXPECT_FALSE(plain.sample.closed);
  EXPECT_TRUE(plain.pieces.empty());
}

TEST(ReadRecordText, MisspeltWordsGetASuggestion) {
  const RecordSaid record = record_of("circle 2 in, speckeld, fren\n");
  ASSERT_EQ(record.not_read.size(), 2u);
  EXPECT_EQ(record.not_read[0].problem.candidates.front(), "speckled");
  EXPECT_EQ(record.not_read[1].problem.candidates.front(), "Fern");
}

// Colours that the book does not have: kept as they are written.
TEST(ReadRecordText, ColoursInOrdinarySpeech) {
  const RecordSaid record = record_of(
      "base russet 8-1/2 x 5-1/2 in\nslate cirle 2-7/8 in\nochre ring 2-7/8 in\nplum image 2 in, stamped in "
      "rust "
      "ink\nmat mauve taupe 4 x 5 in\nblorby panel 3 x 4 in\n");
  std::vector<std::string> papers;
  for (const PieceOfRecord& piece : record.pieces)
    papers.push_back(piece.said.piece.paper.empty() ? "" : piece.said.piece.paper.front());
  EXPECT_EQ(papers, (std::vector<std::string>{"russet", "slate", "ochre", "plum", "mauve taupe", ""}));
  ASSERT_EQ(record.not_read.size(), 2u);
  EXPECT_EQ(record.not_read[0].problem.what, "\"cirle\" is not understood");
  EXPECT_EQ(record.not_read[0].problem.candidates.front(), "circle");
  EXPECT_EQ(record.not_read[1].problem.what, "\"blorby\" is not understood");
  const RecordSaid grey = record_of("mat taupe grey 4 x 5 in\n");
  EXPECT_EQ(grey.pieces.front().said.piece.paper, std::vector<std::string>{"taupe grey"});
}

TEST(ReadRecordText, PiecesInACircle) {
  const RecordSaid record = record_of("sage circle 2 in, on the square\nnavy square 3 in, on the circle\n");
  ASSERT_EQ(record.not_read.size(), 1u);
  EXPECT_EQ(record.not_read[0].problem.what,
            "the pieces go round in a circle: \"sage circle\" goes with this one");
}

TEST(ReadRecordText, NamesAreNumbered) {
  const RecordSaid record = record_of("circle\ncircle\ncircle\nboat: circle 2 in\n");
  ASSERT_EQ(record.pieces.size(), 4u);
  EXPECT_EQ(record.pieces[0].name, "circle");
  EXPECT_EQ(record.pieces[1].name, "circle 2");
  EXPECT_EQ(record.pieces[2].name, "circle 3");
  EXPECT_EQ(record.pieces[3].name, "boat");
}

TEST(ReadRecordText, WhatIsRefused) {
  const auto refused = [](std::string_view title, std::string_view text) {
    const Result<RecordSaid> record = read_record(title, text, context);
    return record ? std::string("read") : record.error().what;
  };
  EXPECT_EQ(refused("Tide", ""), "there is nothing to record");
  EXPECT_EQ(refused("Tide", " \n\t\r\n"), "there is nothing to record");
  EXPECT_EQ(refused("", "sage circle 2 in\n"), "the sample has no title");
  EXPECT_EQ(refused("Tide", "sage circle\ngrey \xFF panel\n"), "line 2 has a byte that is no UTF-8");
  const Result<RecordSaid> bytes = read_record("Tide", "sage \xFF panel", context);
  EXPECT_EQ(bytes.error().where.at, 5u);
}

TEST(ReadRecordText, TheFirstLineIsTheTitle) {
  EXPECT_EQ(record_of("Low Tide at Noon\nsage circle 2 in\n", "").sample.title, "Low Tide at Noon");
  EXPECT_EQ(record_of("# Low Tide\nsage circle 2 in\n", "").sample.title, "Low Tide");
  EXPECT_EQ(record_of("title: Low Tide\nsage circle 2 in\n", "").sample.title, "Low Tide");
}

TEST(ReadRecordText, ManyLines) {
  std::string text;
  for (int i = 0; i < 10'000; ++i) text += "sage circle 2 in, on the circle\n";
  EXPECT_EQ(record_of(text).pieces.size(), 10'000u);
}

}  // namespace
}  // namespace insetbook
