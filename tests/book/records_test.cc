// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/records.h"

#include <gtest/gtest.h>

#include "book/changes.h"
#include "book/invented.h"

namespace insetbook {
namespace {

std::string text_of(const Book& book, std::string_view sql) {
  Statement& row = book.statement(sql);
  std::string text = row.step() ? std::string(row.text(0)) : "no row";
  row.reset();
  return text;
}

// What happens when the same work is done twice.
void expect_twice_changes_nothing(TestBook& test, const std::function<void(Change&)>& work) {
  test.change("once", work);
  const std::int64_t last = test.book.last_change();
  const std::string before = dump(test.book);
  test.change("twice", work);
  EXPECT_EQ(test.book.last_change(), last);
  EXPECT_EQ(dump(test.book), before);
}

TEST(PutLine, MakesSetDieLineAndMeasurement) {
  TestBook test;
  expect_twice_changes_nothing(test,
                               [](Change& change) { put_nested_set(change, "Tidepool Rectangles", 3); });
  EXPECT_EQ(text_of(test.book, "SELECT count(*) FROM die"), "3");
  EXPECT_EQ(text_of(test.book, "SELECT count(*) FROM line"), "6");
  EXPECT_EQ(text_of(test.book, "SELECT count(*) FROM measurement"), "6");
}

TEST(PutLine, AChangedSizeIsANewMeasurement) {
  TestBook test;
  LineRow row = line_row("Moonrise Circles", "1", "cut", "circle");
  row.measured = measured(Length::inches(2), Length::inches(2));
  test.change("first", [&](Change& change) { EXPECT_EQ(put_line(change, row)->result, PutResult::added); });
  row.measured = measured(Length::inches(3), Length::inches(3));
  test.change("second", [&](Change& change) {
    const auto put = put_line(change, row);
    EXPECT_EQ(put->result, PutResult::changed);
    EXPECT_EQ(put->measurement->result, MeasureResult::conflict);
  });
  EXPECT_EQ(text_of(test.book, "SELECT width_nm FROM measurement WHERE standing = 'current'"), "50800000");
}

TEST(PutLine, SetAndDieAttributesSettle) {
  TestBook test;
  // Rows that contradict each other: the first stands, each time.
  expect_twice_changes_nothing(test, [](Change& change) {
    LineRow row = line_row("Big Label", "large", "cut", "rectangle");
    row.maker = "A";
    row.code = "100";
    EXPECT_TRUE(put_line(change, row));
    row.line = row.line_kind = "stitched";
    row.maker = "B";
    row.code = "200";
    EXPECT_TRUE(put_line(change, row));
    row.code = "300";
    row.line = row.line_kind = "scored";
    EXPECT_TRUE(put_line(change, row));
  });
  EXPECT_EQ(text_of(test.book, "SELECT maker FROM die_set"), "A");
  EXPECT_EQ(text_of(test.book, "SELECT code FROM die_set"), "100");
  EXPECT_EQ(text_of(test.book, "SELECT code FROM die"), "");  // the first row's, which its set says already
  test.change("another die", [](Change& change) {
    LineRow row = line_row("Big Label", "small", "cut", "rectangle");
    row.code = "200";
    EXPECT_TRUE(put_line(change, row));
  });
  EXPECT_EQ(text_of(test.book, "SELECT code FROM die WHERE label = 'small'"), "200");
}

TEST(PutLine, BlankCellsTakeNothingAway) {
  TestBook test;
  LineRow row = line_row("Big Label", "large", "cut", "rounded rectangle");
  row.maker = "A";
  row.figures = "radius 1/4 in";
  row.note = "bent";
  test.change("first", [&](Change& change) { EXPECT_TRUE(put_line(change, row)); });
  row.maker = row.figures = row.note = "";
  test.change("second", [&](Change& change) { EXPECT_EQ(put_line(change, row)->result, PutResult::same); });
  row.figures = "radius 3/8 in";
  test.change("third", [&](Change& change) { EXPECT_EQ(put_line(change, row)->result, PutResult::changed); });
  EXPECT_EQ(text_of(test.book, "SELECT figures || '|' || note FROM line"), "radius 3/8 in|bent");
}

using PutTriedFunction = Result<PutResult> (*)(Change&, const TriedRow&);

struct TriedBook {
  TestBook test;
  TriedRow row;
  TriedBook() {
    test.change("set", [&](Change& change) {
      row.line_id = put_line(change, line_row("Big Label", "large", "cut", "rectangle"))->line_id;
    });
    row.shape = "rectangle";
    row.width = Length::inches(2);
    row.height = Length::inches(3);
    row.result = "fits";
  }
  void put(PutTriedFunction how, PutResult expected) {
    test.change("tried", [&](Change& change) { EXPECT_EQ(*how(change, row), expected); });
  }
  std::string results() {
    return text_of(test.book, "SELECT group_concat(result || coalesce(note, ''), '; ') FROM tried");
  }
};

TEST(PutTried, TwoResultsOfOneDayAreBothKept) {
  TriedBook of;
  of.put(put_tried, PutResult::added);
  of.put(put_tried, PutResult::same);
  of.row.result = "too tight";
  of.put(put_tried, PutResult::added);
  of.row.result = "fits";
  of.put(put_tried, PutResult::same);
  of.row.note = ", with force";
  of.put(put_tried, PutResult::changed);
  EXPECT_EQ(of.results(), "fits, with force; too tight");
  of.row.date = "2026-02-01";
  of.put(put_tried, PutResult::added);
  of.row.height = Length::inches(4);
  of.put(put_tried, PutResult::added);
  EXPECT_EQ(text_of(of.test.book, "SELECT count(*) FROM tried"), "4");
}

TEST(PutTriedOfTable, ARowThatSaysAnotherResultIsACorrection) {
  TriedBook of;
  of.put(put_tried_of_table, PutResult::added);
  of.put(put_tried_of_table, PutResult::same);
  of.row.result = "too tight";
  of.put(put_tried_of_table, PutResult::changed);
  EXPECT_EQ(of.results(), "too tight");
  of.row.date = "2026-02-01";
  of.put(put_tried_of_table, PutResult::added);
  EXPECT_EQ(of.results(), "too tight; too tight");
}

TEST(PutTriedOfTable, TwoRowsWithTwoResultsAreTwoRecords) {
  TriedBook of;
  const auto put_both = [&](PutResult expected) {
    of.test.change("tried", [&](Change& change) {
      for (const char* result : {"too tight", "fits"}) {
        of.row.result = result;
        EXPECT_EQ(*put_tried_of_table(change, of.row), expected);
      }
    });
  };
  put_both(PutResult::added);
  put_both(PutResult::same);
  EXPECT_EQ(of.results(), "too tight; fits");
}

TEST(PutSupply, IsToldApartByKindSetNameAndColour) {
  TestBook test;
  SupplyRow row;
  row.kind = "ink";
  row.set_name = "Harbour Inks";
  row.colour = "Kelp";
  row.colour_value = 0x5a7a4a;
  row.size = {Length::inches(3), Length::inches(2), Unit::inch, false, "3 x 2 in"};
  row.weight_text = "80 lb cover";
  row.weight_mg_m2 = 216'000;
  row.thickness = Length::nm(250'000);
  const auto put = [&](PutResult expected) {
    test.change("supply", [&](Change& change) { EXPECT_EQ(*put_supply(change, row), expected); });
  };
  put(PutResult::added);
  put(PutResult::same);
  row.kind = "INK";  // spelt otherwise, the same supply
  put(PutResult::changed);
  row.have = "half a pad";
  put(PutResult::changed);
  row.colour = "Sand";
  row.colour_value = 0xd8c8a0;
  put(PutResult::added);
  EXPECT_EQ(text_of(test.book, "SELECT count(*) FROM supply"), "2");
  EXPECT_EQ(text_of(test.book, "SELECT count(*) FROM colour"), "2");

  const std::optional<SupplyRow> back = supply(test.book, 1);
  ASSERT_TRUE(back);
  EXPECT_EQ(back->colour, "Kelp");
  EXPECT_EQ(back->colour_value, 0x5a7a4au);
  EXPECT_EQ(back->size, row.size);
  EXPECT_EQ(back->weight_mg_m2, 216'000);
  EXPECT_EQ(back->thickness, Length::nm(250'000));
  EXPECT_EQ(back->have, "half a pad");
  EXPECT_EQ(supply(test.book, 99).has_value(), false);
}

SampleRow full_sample(std::int64_t colour_id) {
  SampleRow row;
  row.title = "Moonrise birthday";
  row.made = "2026-03-08";
  row.base = {Length::inch_fraction(17, 2), Length::inch_fraction(11, 2), Unit::inch, true,
              "8-1/2 x 5-1/2 in"};
  row.scores = "4-1/4 in";
  row.finished_text = "4-1/4 x 5-1/2 in";
  row.closed_width = Length::inch_fraction(17, 4);
  row.closed_height = Length::inch_fraction(11, 2);
  row.words = "for you; “quoted” \"too\" \\ and\ttab";
  row.steps = "score; fold";
  row.note = "ünïcode ½";
  row.mentions = {{"fold", "side fold", std::nullopt, std::nullopt, "side fold"},
                  {"paper", std::nullopt, colour_id, std::nullopt, "kelp"}};
  row.photos = {{"front.jpg", std::string(64, 'a')}, {"inside.jpg", std::string(64, 'b')}};
  return row;
}

TEST(PutSample, IsReadBackAsItWasPut) {
  TestBook test;
  SampleRow row;
  test.change("sample", [&](Change& change) {
    row = full_sample(*put_colour(change, "Kelp", std::nullopt));
    EXPECT_EQ(put_sample(change, row)->first, PutResult::added);
    EXPECT_EQ(put_sample(change, row)->first, PutResult::same);
  });
  const std::optional<SampleRow> back = sample(test.book, 1);
  ASSERT_TRUE(back);
  EXPECT_EQ(back->title, row.title);
  EXPECT_EQ(back->base, row.base);
  EXPECT_EQ(back->closed_height, row.closed_height);
  EXPECT_EQ(back->words, row.words);
  EXPECT_EQ(back->note, row.note);
  EXPECT_EQ(back->mentions, row.mentions);
  EXPECT_EQ(back->photos, row.photos);
  EXPECT_EQ(back->uuid.size(), 36u);
}

TEST(PutSample, MentionsAreRewrittenOnlyWhereTheyDiffer) {
  TestBook test;
  SampleRow row;
  test.change("sample", [&](Change& change) {
    row = full_sample(*put_colour(change, "Kelp", std::nullopt));
    EXPECT_TRUE(put_sample(change, row));
  });
  row.mentions.pop_back();
  test.change("fewer",
              [&](Change& change) { EXPECT_EQ(put_sample(change, row)->first, PutResult::changed); });
  EXPECT_EQ(sample(test.book, 1)->mentions, row.mentions);
  row.photos.erase(row.photos.begin());
  test.change("photo",
              [&](Change& change) { EXPECT_EQ(put_sample(change, row)->first, PutResult::changed); });
  EXPECT_EQ(sample(test.book, 1)->photos, row.photos);
  EXPECT_EQ(changes(test.book, 1).front().rows, 3);  // two deleted, one put
}

TEST(PutSample, AUuidFromAnotherBookIsKeptAndFindsARenamedSample) {
  TestBook test;
  SampleRow row;
  row.title = "Kelp thanks";
  row.uuid = "11111111-2222-4333-8444-555555555555";
  test.change("first", [&](Change& change) { EXPECT_TRUE(put_sample(change, row)); });
  row.title = "Kelp thank-you";
  test.change("second", [&](Change& change) {
    EXPECT_EQ(*put_sample(change, row), std::pair(PutResult::changed, std::int64_t{1}));
  });
  EXPECT_EQ(sample(test.book, 1)->uuid, row.uuid);
}

TEST(PutElement, PlacesFollowEachOther) {
  TestBook test;
  test.change("sample", [](Change& change) {
    ElementRow piece;
    piece.sample_id = put_titled(change, "One");
    for (const char* name : {"mat", "frame", "panel"}) {
      piece.name = name;
      EXPECT_TRUE(put_element(change, piece));
    }
  });
  test.change("more", [](Change& change) {
    ElementRow piece;
    piece.sample_id = 1;
    piece.name = "bow";
    EXPECT_TRUE(put_element(change, piece));
    piece.name = "frame";  // keeps its place
    piece.role = "die cut";
    EXPECT_EQ(put_element(change, piece)->first, PutResult::changed);
  });
  std::string order;
  for (const auto& [id, piece] : elements_of(test.book, 1))
    order += piece.name + std::to_string(piece.position) + " ";
  EXPECT_EQ(order, "mat1 frame2 panel3 bow4 ");
}

TEST(PutElement, ASizeWithoutAWayUpIsKeptNarrowSideFirst) {
  TestBook test;
  test.change("sample", [](Change& change) {
    ElementRow piece;
    piece.sample_id = put_titled(change, "One");
    piece.name = "strip";
    piece.size = {Length::inches(5), Length::inches(1), Unit::inch, false, "5 x 1 in"};
    EXPECT_TRUE(put_element(change, piece));
    EXPECT_EQ(put_element(change, piece)->first, PutResult::same);
    piece.name = "wide strip";
    piece.size.placed = true;
    EXPECT_TRUE(put_element(change, piece));
  });
  const auto pieces = elements_of(test.book, 1);
  EXPECT_EQ(pieces[0].second.size.width, Length::inches(1));
  EXPECT_EQ(pieces[0].second.size.text, "5 x 1 in");
  EXPECT_EQ(pieces[1].second.size.width, Length::inches(5));
}

TEST(Records, SetsAreFoundInEitherNumber) {
  TestBook test;
  test.change("sets", [](Change& change) {
    for (const char* name : {"Tidepool Rectangles", "Nested Box", "Small Tags", "Cherries"}) {
      EXPECT_TRUE(put_line(change, line_row(name, "1", "cut", "rectangle")));
    }
  });
  EXPECT_EQ(set_named(test.book, "tidepool rectangles"), 1);
  EXPECT_EQ(set_named(test.book, "tidepool rectangle"), 1);
  EXPECT_EQ(set_named(test.book, "nested boxes"), 2);
  EXPECT_EQ(set_named(test.book, "small tag"), 3);
  EXPECT_EQ(set_named(test.book, "cherry"), 4);
  EXPECT_EQ(set_named(test.book, "tidepool"), std::nullopt);
}

}  // namespace
}  // namespace insetbook
