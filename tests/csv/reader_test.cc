// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/csv/reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "importers/csv/encoding.h"
#include "importers/csv/writer.h"

namespace insetbook {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Rows rows_of(std::string_view text, char delimiter = ',') {
  CsvReader reader(text, delimiter);
  CsvRow row;
  Rows rows;
  while (reader.next(row)) {
    EXPECT_FALSE(row.problem) << row.problem->what;
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < row.size(); ++i) cells.emplace_back(row.cell(i));
    rows.push_back(std::move(cells));
  }
  return rows;
}

// RFC 4180, section 2 (from memory): the rules and their samples.
TEST(CsvReader, ReadsWhatTheStandardShows) {
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows_of("aaa,bbb,ccc\r\nzzz,yyy,xxx"), (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows_of("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows_of("\"aaa\",\"b \r\nbb\",\"ccc\"\r\n"), (Rows{{"aaa", "b \r\nbb", "ccc"}}));
  EXPECT_EQ(rows_of("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}}));
  EXPECT_EQ(rows_of(" a , b "), (Rows{{" a ", " b "}})) << "spaces are part of a cell";
}

TEST(CsvReader, KeepsOddCells) {
  EXPECT_EQ(rows_of(""), Rows{});
  EXPECT_EQ(rows_of("\n\r\n\r"), Rows{});
  EXPECT_EQ(rows_of("a,"), (Rows{{"a", ""}}));
  EXPECT_EQ(rows_of("a,\n"), (Rows{{"a", ""}}));
  EXPECT_EQ(rows_of(","), (Rows{{"", ""}}));
  EXPECT_EQ(rows_of("\"\""), (Rows{{""}}));
  EXPECT_EQ(rows_of("\"\"\"\""), (Rows{{"\""}}));
  EXPECT_EQ(rows_of("\"\"\"a\"\"\",b"), (Rows{{"\"a\"", "b"}}));
  EXPECT_EQ(rows_of("2 3/8\",x"), (Rows{{"2 3/8\"", "x"}})) << "inches in a plain cell";
  EXPECT_EQ(rows_of("a,b\rc,d\r\ne,f\ng,h"), (Rows{{"a", "b"}, {"c", "d"}, {"e", "f"}, {"g", "h"}}));
  EXPECT_EQ(rows_of("a,b\n1\n1,2,3"), (Rows{{"a", "b"}, {"1"}, {"1", "2", "3"}}));
}

TEST(CsvReader, CountsRowsAsASpreadsheetDoes) {
  const std::string text = "set,die\n\n\"a\nb\",2\n\r\nc,3\n";
  CsvReader reader(text, ',');
  CsvRow row;
  std::vector<std::int64_t> numbers;
  std::vector<std::size_t> places;
  while (reader.next(row)) {
    numbers.push_back(row.number);
    places.push_back(row.begin);
  }
  EXPECT_THAT(numbers, testing::ElementsAre(1, 3, 5));
  reader.go_to(places[1], numbers[1]);
  ASSERT_TRUE(reader.next(row));
  EXPECT_EQ(row.number, 3);
  EXPECT_EQ(row.cell(0), "a\nb");
  EXPECT_EQ(row.cell(1), "2");
  EXPECT_EQ(row.cell(7), "");
}

TEST(CsvReader, FindsTheDelimiter) {
  EXPECT_EQ(csv_delimiter("set,die,size"), ',');
  EXPECT_EQ(csv_delimiter("set;die;\"size, in mm\"\n1,2;3,5;4,5"), ';');
  EXPECT_EQ(csv_delimiter("set;die;size, in mm\n"), ';');
  EXPECT_EQ(csv_delimiter("\n\nset\tdie\tsize\n"), '\t');
  EXPECT_EQ(csv_delimiter("sample\n\"a;b;c\""), ',');
  EXPECT_EQ(csv_delimiter(""), ',');
}

struct Refused {
  std::string text;
  std::size_t cell;
  std::string what;
};

TEST(CsvReader, SaysWhatCannotBeRead) {
  const Refused cases[] = {
      {"a,\"b", 1, "the quotation mark that opens the cell is never closed"},
      {"a,\"b\nc,d\n", 1, "the quotation mark that opens the cell is never closed; it takes in 2 more lines"},
      {"a,\"b\n", 1, "the quotation mark that opens the cell is never closed; it takes in 1 more line"},
      {"\"2 3/8\" x 4\",ruler", 0, "text stands behind the closing quotation mark of the cell"},
      {"a,0123456789abcdef0", 1, "the cell has 17 bytes"},
      {"1,2,3,4,5,6", 5, "the row has more than 5 cells"},
  };
  for (const Refused& c : cases) {
    CsvReader reader(c.text, ',', {.cell_bytes = 16, .cells = 5});
    CsvRow row;
    ASSERT_TRUE(reader.next(row)) << c.text;
    ASSERT_TRUE(row.problem) << c.text;
    EXPECT_EQ(row.problem->what, c.what) << c.text;
    EXPECT_EQ(row.problem_cell, c.cell) << c.text;
    EXPECT_LE(row.size(), 5u);
  }
}

TEST(CsvReader, GoesOnBehindABadRow) {
  CsvReader reader("\"a\"b,1\nc,2\n", ',');
  CsvRow row;
  ASSERT_TRUE(reader.next(row));
  EXPECT_TRUE(row.problem);
  ASSERT_TRUE(reader.next(row));
  EXPECT_FALSE(row.problem);
  EXPECT_EQ(row.cell(0), "c");
  EXPECT_EQ(row.number, 2);
  EXPECT_FALSE(reader.next(row));
}

TEST(CsvWriter, QuotesWhatMustBe) {
  const auto written = [](std::vector<std::string> cells) {
    std::string out;
    append_csv_row(out, cells);
    return out;
  };
  EXPECT_EQ(written({"a", "b c", ""}), "a,b c,\r\n");
  EXPECT_EQ(written({"a,b", "2\"", "x\ny", " z", "p;q"}), "\"a,b\",\"2\"\"\",\"x\ny\",\" z\",\"p;q\"\r\n");
  EXPECT_EQ(written({""}), "\"\"\r\n");
}

struct Encoded {
  std::string bytes;
  std::string text;
  TextEncoding encoding;
};

TEST(Encoding, Recognised) {
  using namespace std::string_literals;
  const Encoded cases[] = {
      {"", "", TextEncoding::utf8},
      {"a,b", "a,b", TextEncoding::utf8},
      {"\xEF\xBB\xBF"
       "a,b",
       "a,b", TextEncoding::utf8},
      {"2⅜", "2⅜", TextEncoding::utf8},
      {"\xFF\xFE"
       "a\0\xBD\0"s,
       "a½", TextEncoding::utf16le},
      {"\xFE\xFF"
       "\0a\0\xBD"s,
       "a½", TextEncoding::utf16be},
      {"s\0e\0t\0,\0d\0i\0e\0"s, "set,die", TextEncoding::utf16le},
      {"\0s\0e\0t\0,\0d\0i\0e"s, "set,die", TextEncoding::utf16be},
      {"\xFF\xFE\x3C\xD8\x19\xDF"s, "\xF0\x9F\x8C\x99", TextEncoding::utf16le},
      {"2\xBD \x97 caf\xE9", "2½ — café", TextEncoding::windows1252},
      {"\x80 10", "€ 10", TextEncoding::windows1252},
  };
  for (const Encoded& c : cases) {
    const auto decoded = decode_text(c.bytes);
    ASSERT_TRUE(decoded) << decoded.error().what;
    EXPECT_EQ(decoded->text, c.text);
    EXPECT_EQ(decoded->encoding, c.encoding) << c.text;
  }
}

TEST(Encoding, Refused) {
  using namespace std::string_literals;
  const std::pair<std::string, std::string> cases[] = {
      {"a\nb\x81", "line 2 of the file: the byte 0x81 is neither UTF-8 nor Windows-1252"},
      {"é\na\xE9,", "line 2 of the file: the byte 0xe9 is no UTF-8, the rest of the file is"},
      {"\xEF\xBB\xBF"
       "a\xE9",
       "line 1 of the file: the byte 0xe9 is no UTF-8, which the file says it is"},
      {"\xFF\xFE"
       "a\0b"s,
       "the file is UTF-16, but is torn at byte 2"},
      {"\xFF\xFE\x3C\xD8"s, "the file is UTF-16, but is torn at byte 0"},
      {"\xFF\xFE\x19\xDF"s, "the file is UTF-16, but is torn at byte 0"},
  };
  for (const auto& [bytes, what] : cases) {
    const auto decoded = decode_text(bytes);
    ASSERT_FALSE(decoded) << what;
    EXPECT_EQ(decoded.error().what, what);
  }
}

}  // namespace
}  // namespace insetbook
