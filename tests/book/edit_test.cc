// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/edit.h"

#include <gtest/gtest.h>

#include <map>

#include "book/changes.h"
#include "book/invented.h"
#include "book/names.h"

namespace insetbook {
namespace {

// One record of every kind.
struct Kinds : TestBook {
  Kinds() {
    change("made", [](Change& change) {
      put_nested_set(change, "Tidepool Rectangles", 2);
      SupplyRow ink;
      ink.kind = "ink";
      ink.set_name = "Harbour Inks";
      ink.colour = "Kelp";
      EXPECT_TRUE(put_supply(change, ink));
      ink.colour = "Sand";
      EXPECT_TRUE(put_supply(change, ink));
      ElementRow piece;
      piece.sample_id = put_titled(change, "Moonrise birthday");
      piece.name = "frame";
      EXPECT_TRUE(put_element(change, piece));
      piece.name = "panel";
      EXPECT_TRUE(put_element(change, piece));
      put_titled(change, "Kelp thank-you");
    });
  }
  Editable record(std::string_view name) {
    const auto found = find_editable(book, name);
    EXPECT_TRUE(found) << name << ": " << found.error().what;
    return found.value_or(Editable());
  }
  // "changed", "same", or what was wrong.
  std::string set(std::string_view name, std::string_view field, std::string_view value) {
    std::string outcome;
    const Editable one = record(name);
    const Result<void> done = book.change("changed", [&](Change& change) -> Result<void> {
      const auto put = change_field(change, one, field, value);
      if (!put) return failure(put.error());
      outcome = *put == PutResult::changed ? "changed" : "same";
      return {};
    });
    return done ? outcome : done.error().what + " | " + done.error().expected;
  }
  std::string remove(std::string_view name) {
    const Editable one = record(name);
    const Result<void> done =
        book.change("deleted", [&](Change& change) { return delete_record(change, one); });
    return done ? "deleted" : done.error().what;
  }
};

TEST(Edit, RecordsAreNamedAsPeopleNameThem) {
  Kinds kinds;
  const std::map<std::string, std::pair<EditKind, std::string>> rows{
      {"tidepool rectangles", {EditKind::set, "Tidepool Rectangles"}},
      {"tidepool rectangles 2", {EditKind::die, "Tidepool Rectangles 2"}},
      {"tidepool rectangles 2, stitched", {EditKind::line, "Tidepool Rectangles 2, stitched"}},
      {"ink, harbour inks, kelp", {EditKind::supply, "ink, Harbour Inks, Kelp"}},
      {"colour kelp", {EditKind::colour, "Kelp"}},
      {"moonrise birthday", {EditKind::sample, "Moonrise birthday"}},
      {"moonrise birthday, frame", {EditKind::piece, "Moonrise birthday, frame"}},
  };
  for (const auto& [name, expected] : rows) {
    const Editable one = kinds.record(name);
    EXPECT_EQ(one.kind, expected.first) << name;
    EXPECT_EQ(one.name, expected.second) << name;
  }
  const auto none = find_editable(kinds.book, "moonrise birthday, ribbon");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().kind, ProblemKind::unknown_name);
}

TEST(Edit, EveryFieldIsAColumnAndCanBeChangedAndTakenBack) {
  const std::map<EditedKind, std::string> values{
      {EditedKind::text, "something"},      {EditedKind::name, "Another name"},
      {EditedKind::date, "2026-03-08"},     {EditedKind::length, "1/4 in"},
      {EditedKind::size, "2-1/2 x 3 in"},   {EditedKind::count, "7"},
      {EditedKind::colour_value, "#5a7a4a"}};
  const std::map<EditKind, std::string> names{{EditKind::set, "tidepool rectangles"},
                                              {EditKind::die, "tidepool rectangles 2"},
                                              {EditKind::line, "tidepool rectangles 2, stitched"},
                                              {EditKind::supply, "ink, harbour inks, kelp"},
                                              {EditKind::colour, "colour kelp"},
                                              {EditKind::sample, "moonrise birthday"},
                                              {EditKind::piece, "moonrise birthday, frame"}};
  Kinds kinds;
  const std::string before = dump(kinds.book);
  int tried = 0;
  for (const FieldRow& field : field_rows()) {
    const std::string& name = names.at(field.record);
    EXPECT_EQ(kinds.set(name, field.name, values.at(field.kind)), "changed") << name << " " << field.name;
    EXPECT_NE(dump(kinds.book), before) << field.name;
    ASSERT_TRUE(undo(kinds.book, std::nullopt));
    EXPECT_EQ(dump(kinds.book), before) << field.name;
    ++tried;
  }
  EXPECT_GT(tried, 50);
}

TEST(Edit, TheSameValueIsNoChange) {
  Kinds kinds;
  EXPECT_EQ(kinds.set("tidepool rectangles", "maker", "A"), "changed");
  EXPECT_EQ(kinds.set("tidepool rectangles", "maker", "A"), "same");
  EXPECT_EQ(kinds.book.last_change(), 2);
  EXPECT_EQ(kinds.set("tidepool rectangles", "maker", ""), "changed");
}

TEST(Edit, WhatCannotBeIsRefused) {
  Kinds kinds;
  struct Row {
    const char *name, *field, *value, *outcome;
  };
  const std::vector<Row> rows{
      {"tidepool rectangles", "weight", "1", "a set has no field \"weight\" | one of its fields"},
      {"tidepool rectangles", "name", " ", "\"\" is no value for \"name\" | a name"},
      {"moonrise birthday", "name", "kelp  THANK-YOU",
       "there is a sample \"kelp  THANK-YOU\" already | another name"},
      {"moonrise birthday, frame", "name", "Panel", "there is a piece \"Panel\" already | another name"},
      {"tidepool rectangles 2", "name", "1", "there is a die \"1\" already | another name"},
      {"ink, harbour inks, kelp", "colour", "sand", "there is a supply \"sand\" already | another name"},
      {"moonrise birthday", "made", "8.3.2026",
       "\"8.3.2026\" is no value for \"made\" | a date as in 2026-03-08"},
      {"moonrise birthday", "made", "2026-02-29",
       "\"2026-02-29\" is no value for \"made\" | a date as in 2026-03-08"},
      {"moonrise birthday, frame", "count", "0",
       "\"0\" is no value for \"count\" | a whole number from 1 to 10000"},
      {"moonrise birthday, frame", "count", "2x",
       "\"2x\" is no value for \"count\" | a whole number from 1 to 10000"},
      {"colour kelp", "value", "green",
       "\"green\" is no value for \"value\" | six hexadecimal digits, as in #7a9e87"},
  };
  const std::string before = dump(kinds.book);
  for (const Row& row : rows) EXPECT_EQ(kinds.set(row.name, row.field, row.value), row.outcome);
  EXPECT_EQ(dump(kinds.book), before);
}

TEST(Edit, FieldsHaveTheNamesThatTablesHave) {
  for (const auto& [said, name] : std::map<std::string, std::string>{
           {"Stored-in", "stored in"}, {"kept in", "stored in"}, {"notes", "note"}, {"title", "name"}}) {
    const auto field = find_field(EditKind::die, said);
    if (said == "title") continue;
    ASSERT_TRUE(field) << said;
    EXPECT_EQ((*field)->name, name);
  }
  EXPECT_EQ((*find_field(EditKind::sample, "title"))->name, "name");
  EXPECT_EQ((*find_field(EditKind::supply, "color"))->name, "colour");
}

TEST(Edit, RenamingKeepsTheLookUpInStep) {
  Kinds kinds;
  EXPECT_EQ(kinds.set("colour kelp", "name", "Seaweed"), "changed");
  EXPECT_EQ(kinds.record("ink, harbour inks, seaweed").kind, EditKind::supply);
  EXPECT_EQ(names_exactly(kinds.book, "seaweed").size(), 2u);
  EXPECT_EQ(names_exactly(kinds.book, "kelp").size(), 0u);
  EXPECT_EQ(kinds.set("tidepool rectangles", "name", "Rockpool Frames"), "changed");
  EXPECT_EQ(kinds.record("rockpool frame 2").kind, EditKind::die);
  EXPECT_EQ(kinds.set("ink, harbour inks, seaweed", "set", ""), "changed");
  EXPECT_EQ(kinds.record("ink seaweed").name, "ink, Seaweed");
}

TEST(Edit, MentionsOfOneKindAreReplaced) {
  Kinds kinds;
  const Mention easel{"fold", "easel", std::nullopt, std::nullopt, "easel"};
  const Mention tent{"fold", "tent", std::nullopt, std::nullopt, "tent"};
  const Mention inking{"technique", "inking", std::nullopt, std::nullopt, "inked"};
  kinds.change("said", [&](Change& change) {
    EXPECT_EQ(*change_mentions(change, 1, std::nullopt, "fold", {easel}), PutResult::changed);
    EXPECT_EQ(*change_mentions(change, 1, std::nullopt, "technique", {inking}), PutResult::changed);
    EXPECT_EQ(*change_mentions(change, 1, std::nullopt, "fold", {tent}), PutResult::changed);
    EXPECT_EQ(*change_mentions(change, 1, 1, "technique", {inking}), PutResult::changed);
  });
  EXPECT_EQ(sample(kinds.book, 1)->mentions, (std::vector<Mention>{inking, tent}));
  EXPECT_EQ(elements_of(kinds.book, 1)[0].second.mentions, std::vector<Mention>{inking});
}

TEST(Delete, TakesItsPartsAndIsRefusedWhereOthersRefer) {
  Kinds kinds;
  kinds.change("used", [](Change& change) {
    ElementRow piece;
    piece.sample_id = 2;
    piece.name = "frame";
    piece.line_id = 2;
    piece.mentions.push_back({"ink", std::nullopt, 1, std::nullopt, "kelp"});
    piece.mentions.push_back({"supply", std::nullopt, std::nullopt, 1, "the ink"});
    const std::int64_t frame = put_element(change, piece)->second;
    piece = {};
    piece.sample_id = 2;
    piece.name = "label";
    piece.goes_to = frame;
    EXPECT_TRUE(put_element(change, piece));
    TriedRow tried;
    tried.line_id = 1;
    tried.shape = "circle";
    tried.width = tried.height = Length::inches(1);
    tried.result = "fits";
    tried.sample_id = 2;
    EXPECT_TRUE(put_tried(change, tried));
  });
  EXPECT_EQ(kinds.remove("tidepool rectangles"),
            "1 sample refers to set \"Tidepool Rectangles\" and would lose it: nothing was deleted");
  EXPECT_EQ(kinds.remove("tidepool rectangles 1"),
            "1 sample refers to die \"Tidepool Rectangles 1\" and would lose it: nothing was deleted");
  EXPECT_EQ(
      kinds.remove("tidepool rectangles 1, stitched"),
      "1 sample refers to line \"Tidepool Rectangles 1, stitched\" and would lose it: nothing was deleted");
  EXPECT_EQ(kinds.remove("ink, harbour inks, kelp"),
            "1 sample refers to supply \"ink, Harbour Inks, Kelp\" and would lose it: nothing was deleted");
  EXPECT_EQ(kinds.remove("colour kelp"),
            "1 sample refers to colour \"Kelp\" and would lose it: nothing was deleted");
  EXPECT_EQ(kinds.remove("colour sand"),
            "1 supply refers to colour \"Sand\" and would lose it: nothing was deleted");
  EXPECT_EQ(kinds.remove("kelp thank-you, frame"),
            "1 piece refers to piece \"Kelp thank-you, frame\" and would lose it: nothing was deleted");

  EXPECT_EQ(kinds.remove("kelp thank-you, label"), "deleted");
  EXPECT_EQ(kinds.remove("kelp thank-you"), "deleted");
  // What was tried stays, without the card.
  Statement& tried = kinds.book.statement("SELECT count(*) FROM tried WHERE sample_id IS NULL");
  ASSERT_TRUE(tried.step());
  EXPECT_EQ(tried.integer(0), 1);
  tried.reset();
  EXPECT_EQ(kinds.remove("ink, harbour inks, kelp"), "deleted");
  EXPECT_EQ(kinds.remove("kelp"), "deleted");
  EXPECT_EQ(kinds.remove("tidepool rectangles 1, stitched"), "deleted");
  EXPECT_EQ(kinds.remove("tidepool rectangles"), "deleted");
  EXPECT_EQ(find_names(kinds.book, "tidepool", std::nullopt, 5).size(), 0u);
}

}  // namespace
}  // namespace insetbook
