// SPDX-License-Identifier: GPL-3.0-or-later
#include "text/utf8.h"

#include <gtest/gtest.h>

#include <string>

namespace insetbook {
namespace {

TEST(Characters, GiveCodesAndTheirBytes) {
  const auto all = characters("a½\xF0\x9F\x82\xA1");
  ASSERT_EQ(all.size(), 3u);
  EXPECT_EQ(all[0].code, U'a');
  EXPECT_EQ(all[1].code, U'½');
  EXPECT_EQ(all[1].begin, 1u);
  EXPECT_EQ(all[1].end, 3u);
  EXPECT_EQ(all[2].code, char32_t{0x1F0A1});
  EXPECT_EQ(all[2].end, 7u);
  EXPECT_TRUE(characters("").empty());
}

TEST(Characters, EveryByteThatIsNoUtf8IsOneReplacement) {
  struct Row {
    std::string bytes;
    std::size_t count;
  };
  // Lone continuation, overlong slash, surrogate, above U+10FFFF, cut-off sequence, 0xFF.
  for (const Row& row : {Row{"\x80", 1}, Row{"\xC0\xAF", 2}, Row{"\xED\xA0\x80", 3},
                         Row{"\xF4\x90\x80\x80", 4}, Row{"\xE2\x82", 2}, Row{"\xFF", 1}}) {
    const auto all = characters(row.bytes);
    EXPECT_EQ(all.size(), row.count) << row.bytes.size();
    for (const Character& c : all) {
      EXPECT_EQ(c.code, char32_t{0xFFFD});
      EXPECT_EQ(c.end, c.begin + 1);
    }
    EXPECT_FALSE(valid_utf8(row.bytes));
    EXPECT_FALSE(valid_utf8("fine " + row.bytes + " fine"));
  }
  EXPECT_TRUE(valid_utf8("fine ½ ″ \xF0\x9F\x82\xA1"));
  EXPECT_TRUE(valid_utf8(""));
}

TEST(Characters, AreCountedBeforeAByte) {
  EXPECT_EQ(characters_before("½½a", 0), 0u);
  EXPECT_EQ(characters_before("½½a", 2), 1u);
  EXPECT_EQ(characters_before("½½a", 4), 2u);
  EXPECT_EQ(characters_before("½½a", 99), 3u);
}

TEST(Characters, AreWrittenAsTheyWereRead) {
  for (char32_t code : {U'a', U'½', U'⅜', char32_t{0x1F0A1}, char32_t{0x10FFFF}}) {
    std::string out;
    append_utf8(out, code);
    EXPECT_EQ(character_at(out, 0).code, code);
    EXPECT_EQ(character_at(out, 0).end, out.size());
  }
  std::string out;
  append_utf8(out, 0xD800);
  EXPECT_EQ(out, "\xEF\xBF\xBD");
}

TEST(Fold, MakesAlikeWhatIsMeantAlike) {
  struct Row {
    const char* text;
    const char* folded;
  };
  for (const Row& row : {
           Row{"Z-Fold", "z fold"},
           Row{"z fold", "z fold"},
           Row{"Ｚ　fold", "z fold"},
           Row{"z\u2010fold", "z fold"},
           Row{"z \u2014 fold", "z fold"},
           Row{"z_fold", "z fold"},
           Row{"  Z\t\nFOLD\u00A0 ", "z fold"},
           Row{"Tidepool\u2019s", "tidepools"},
           Row{"Tidepool's", "tidepools"},
           Row{"\u201CTidepool\u201D", "tidepool"},
           Row{"\"Tidepool\"", "tidepool"},
           Row{"tide\u00ADpool", "tidepool"},
           Row{"Crème Brûlée", "creme brulee"},
           Row{"cre\u0300me", "creme"},
           Row{"STRASSE", "strasse"},
           Row{"straße", "strasse"},
           Row{"İstanbul", "istanbul"},
           Row{"ﬁne", "fine"},
           Row{"a & b, c.", "a & b, c."},
           Row{"---", ""},
           Row{"", ""},
           Row{"½", "1\u20442"},
       })
    EXPECT_EQ(fold(row.text), row.folded) << row.text;
}

TEST(Fold, FoldingTwiceChangesNothingForAnyCharacter) {
  int asked = 0;
  for (char32_t code = 1; code <= 0x10FFFF; ++code) {
    if (code >= 0xD800 && code <= 0xDFFF) continue;
    std::string text = "x";
    append_utf8(text, code);
    text += "y";
    const std::string once = fold(text);
    ASSERT_EQ(fold(once), once) << std::hex << static_cast<unsigned>(code);
    ++asked;
  }
  EXPECT_GT(asked, 1'000'000);
}

TEST(Fold, TakesAnyBytes) {
  EXPECT_EQ(fold("a\xFF"
                 "b"),
            "a\xEF\xBF\xBD"
            "b");
  EXPECT_EQ(fold(std::string("a\0b", 3)), "a b");
}

TEST(Trim, TakesUnicodeSpaceFromBothEnds) {
  EXPECT_EQ(trim("  a b\t\r\n"), "a b");
  EXPECT_EQ(trim("\u00A0\u3000½\u2003"), "½");
  EXPECT_EQ(trim("\uFEFFname"), "name");
  EXPECT_EQ(trim(" \u2003 "), "");
  EXPECT_EQ(trim(""), "");
  EXPECT_EQ(trim(" \x80 "), "\x80");
}

TEST(EditDistance, CountsInsertionsRemovalsReplacementsAndSwaps) {
  struct Row {
    const char *a, *b;
    std::size_t limit, distance;
  };
  for (const Row& row : {
           Row{"tidepool", "tidepool", 2, 0},
           Row{"tidepool", "tidpool", 2, 1},
           Row{"tidepool", "tidepools", 2, 1},
           Row{"tidepool", "tydepool", 2, 1},
           Row{"tidepool", "itdepool", 2, 1},
           Row{"tidepool", "itdpeool", 2, 2},
           Row{"ca", "abc", 5, 3},
           Row{"", "abc", 5, 3},
           Row{"", "", 0, 0},
           Row{"abc", "xyz", 1, 2},
           Row{"abc", "xyz", 0, 1},
           Row{"abcdefgh", "h", 3, 4},
           Row{"crème", "creme", 2, 1},
       }) {
    EXPECT_EQ(edit_distance(row.a, row.b, row.limit), row.distance) << row.a << " " << row.b;
    EXPECT_EQ(edit_distance(row.b, row.a, row.limit), row.distance) << row.b << " " << row.a;
  }
}

}  // namespace
}  // namespace insetbook
