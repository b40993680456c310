// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/names.h"

#include <gtest/gtest.h>

#include "book/invented.h"
#include "book/plural.h"

namespace insetbook {
namespace {

// Sets, dies, supplies, colours and samples of an invented studio.
struct Studio : TestBook {
  Studio() {
    change("made", [](Change& change) {
      put_nested_set(change, "Tidepool Rectangles", 3);
      put_nested_set(change, "Moonrise Circles", 2);
      EXPECT_TRUE(put_line(change, line_row("Sailor's Knots", "Big Label", "cut", "tag")));
      for (const char* colour : {"Kelp", "Sand"}) {
        SupplyRow row;
        row.kind = "ink";
        row.set_name = "Harbour Inks";
        row.colour = colour;
        EXPECT_TRUE(put_supply(change, row));
      }
      SupplyRow stamp;
      stamp.kind = "stamp";
      stamp.set_name = "Harbour Greetings";
      stamp.name = "with love";
      EXPECT_TRUE(put_supply(change, stamp));
      for (const char* title : {"Moonrise birthday", "Kelp thank-you", "Ünder the sea", "Moonrise"}) {
        put_titled(change, title);
      }
    });
  }
  std::string found(std::string_view text, std::optional<RecordKind> kind = std::nullopt) {
    static constexpr const char* how[] = {"exact", "words", "like"};
    std::string all;
    for (const NameHit& hit : find_names(book, text, kind, 20)) {
      all += (all.empty() ? "" : "; ") + std::string(record_kind_word(hit.kind)) + " " + hit.name + " (" +
             how[static_cast<int>(hit.how)] + ")";
    }
    return all;
  }
};

TEST(Plural, WordsInEitherNumberAreAlike) {
  for (const auto& [one, many] : std::vector<std::pair<const char*, const char*>>{{"rectangle", "rectangles"},
                                                                                  {"box", "boxes"},
                                                                                  {"cherry", "cherries"},
                                                                                  {"branch", "branches"},
                                                                                  {"brush", "brushes"},
                                                                                  {"glass", "glasses"},
                                                                                  {"cactus", "cactus"},
                                                                                  {"2", "2"}}) {
    EXPECT_EQ(singular_word(one), singular_word(many)) << many;
  }
  EXPECT_NE(singular_word("car"), singular_word("card"));
}

TEST(Names, Found) {
  Studio studio;
  struct Row {
    const char* text;
    const char* found;
  };
  const std::vector<Row> rows{
      {"Tidepool Rectangles", "set Tidepool Rectangles (exact)"},
      {"tidepool rectangle", "set Tidepool Rectangles (exact)"},
      {"TIDEPOOL-RECTANGLES 2", "die Tidepool Rectangles 2 (exact)"},
      {"sailors knots", "set Sailor's Knots (exact)"},
      {"big label", "die Sailor's Knots Big Label (exact)"},
      {"with love", "supply stamp, Harbour Greetings, with love (exact)"},
      {"harbour inks kelp", "supply ink, Harbour Inks, Kelp (exact)"},
      {"ink, Harbour Inks, kelp", "supply ink, Harbour Inks, Kelp (exact)"},
      {"kelp", "supply ink, Harbour Inks, Kelp (exact); colour Kelp (exact)"},
      {"colour kelp", "colour Kelp (exact)"},
      {"moonrise", "sample Moonrise (exact)"},
      {"set moonrise", "set Moonrise Circles (words)"},
      {"under the sea", "sample Ünder the sea (exact)"},
      {"birth", "sample Moonrise birthday (words)"},
      {"birthday moon", "sample Moonrise birthday (words)"},
      {"tidpool rectangels",
       "set Tidepool Rectangles (like); die Tidepool Rectangles 1 (like); die Tidepool "
       "Rectangles 2 (like); die Tidepool Rectangles 3 (like)"},
      {"tidpool rectangels 2", "die Tidepool Rectangles 2 (like)"},
      {"monrise birthdy", "sample Moonrise birthday (like)"},
      {"granite hexagons", ""},
      {"", ""},
      {"\" OR * NEAR( ^", ""},
      {"🎉", ""},
      {"kelp•sand", ""},
  };
  for (const Row& row : rows) {
    EXPECT_EQ(studio.found(row.text), row.found) << row.text;
  }
}

TEST(Names, OfOneKindOnly) {
  Studio studio;
  EXPECT_EQ(studio.found("moonrise", RecordKind::set), "set Moonrise Circles (words)");
  EXPECT_EQ(studio.found("kelp", RecordKind::colour), "colour Kelp (exact)");
  EXPECT_EQ(studio.found("tidpool", RecordKind::set), "set Tidepool Rectangles (like)");
}

TEST(Names, TheOneMeant) {
  Studio studio;
  const auto one = find_name(studio.book, "tidepool", std::nullopt);
  ASSERT_TRUE(one) << one.error().what;
  EXPECT_EQ(one->name, "Tidepool Rectangles");  // not each of its dies

  const auto several = find_name(studio.book, "kelp", std::nullopt);
  ASSERT_FALSE(several);
  EXPECT_EQ(several.error().kind, ProblemKind::ambiguous);
  EXPECT_EQ(several.error().what, "\"kelp\" names 2 records");
  EXPECT_EQ(several.error().candidates, (std::vector<std::string>{"ink, Harbour Inks, Kelp", "Kelp"}));

  const auto like = find_name(studio.book, "tidpool rectangels 3", std::nullopt);
  ASSERT_FALSE(like);
  EXPECT_EQ(like.error().kind, ProblemKind::unknown_name);
  EXPECT_EQ(like.error().what, "there is no record \"tidpool rectangels 3\" in the book");
  EXPECT_EQ(like.error().expected, "one of the names like it");
  EXPECT_EQ(like.error().candidates, std::vector<std::string>{"Tidepool Rectangles 3"});

  const auto none = find_name(studio.book, "granite", RecordKind::set);
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().what, "there is no set \"granite\" in the book");
}

TEST(Names, WhatAQuestionAsksForEachWord) {
  Studio studio;
  EXPECT_TRUE(names_begin(studio.book, "tidepool"));
  EXPECT_TRUE(names_begin(studio.book, "tidepool rectangle"));
  EXPECT_TRUE(names_begin(studio.book, "harbour inks"));
  EXPECT_TRUE(names_begin(studio.book, "with"));
  EXPECT_FALSE(names_begin(studio.book, "granite"));
  EXPECT_EQ(names_exactly(studio.book, "tidepool rectangle").size(), 1u);
  EXPECT_EQ(names_exactly(studio.book, "tidepool").size(), 0u);
  EXPECT_EQ(names_exactly(studio.book, "kelp").size(), 2u);
  EXPECT_EQ(names_exactly(studio.book, "big label").size(), 1u);
  EXPECT_EQ(names_exactly(studio.book, "2").size(), 0u);
}

TEST(Names, TypeAhead) {
  Studio studio;
  const auto names = [&](std::string_view beginning) {
    std::string all;
    for (const NameHit& hit : complete(studio.book, beginning, 4)) all += hit.name + "; ";
    return all;
  };
  EXPECT_EQ(names("t"),
            "Tidepool Rectangles; Tidepool Rectangles 1; Tidepool Rectangles 2; Kelp thank-you; ");
  EXPECT_EQ(names("moonr"), "Moonrise Circles; Moonrise; Moonrise birthday; Moonrise Circles 1; ");
  EXPECT_EQ(names("rectangles"),
            "Tidepool Rectangles; Tidepool Rectangles 1; Tidepool Rectangles 2; Tidepool "
            "Rectangles 3; ");
  EXPECT_EQ(names(""), "");
  EXPECT_EQ(names("\"*"), "");
}

}  // namespace
}  // namespace insetbook
