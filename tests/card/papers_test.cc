// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/papers.h"

#include <gtest/gtest.h>

#include "measure/write.h"

namespace insetbook {
namespace {

std::string read(std::string_view text) {
  const auto paper = read_paper(text, Unit::inch);
  return paper ? write_size(paper->width, paper->height, paper->unit) + " (" + paper->name + ")" : "";
}

TEST(Papers, AreReadByNameOrFigures) {
  EXPECT_EQ(read("A4"), "210 x 297 mm (ISO A4)");
  EXPECT_EQ(read("iso a4 paper"), "210 x 297 mm (ISO A4)");
  EXPECT_EQ(read("A2"), "420 x 594 mm (ISO A2)");
  EXPECT_EQ(read("Letter"), "8-1/2 x 11 in (letter)");
  EXPECT_EQ(read("letter sheets"), "8-1/2 x 11 in (letter)");
  EXPECT_EQ(read("half-letter"), "5-1/2 x 8-1/2 in (half letter)");
  EXPECT_EQ(read("legal"), "8-1/2 x 14 in (legal)");
  EXPECT_EQ(read("12 x 12"), "12 x 12 in (12 x 12)");
  EXPECT_EQ(read("12x12"), "12 x 12 in (12 x 12)");
  EXPECT_EQ(read("B5"), "176 x 250 mm (ISO B5)");
  EXPECT_EQ(read("11 x 8-1/2 in"), "11 x 8-1/2 in ()");
}

TEST(Papers, AreNoEnvelopesAndNoSingleFigures) {
  EXPECT_EQ(read("A2 envelope"), "");
  EXPECT_EQ(read("C6"), "");
  EXPECT_EQ(read("8 in"), "");
  EXPECT_EQ(read("sheet"), "");
  EXPECT_EQ(read(""), "");
}

TEST(Papers, AreFoundByTheirSize) {
  const auto names = [](Length width, Length height, Length within) {
    std::string all;
    for (const PaperSize* paper : papers_of_size(width, height, within))
      all += (all.empty() ? "" : "; ") + std::string(paper->name);
    return all;
  };
  EXPECT_EQ(names(Length::mm(210), Length::mm(148), Length()), "ISO A5");
  EXPECT_EQ(names(Length::inches(11), Length::inch_fraction(17, 2), Length()), "letter; 8-1/2 x 11");
  EXPECT_EQ(names(Length::mm(211), Length::mm(148), Length()), "");
  EXPECT_EQ(names(Length::mm(211), Length::mm(147), Length::mm(1)), "ISO A5");
  EXPECT_EQ(names(Length::mm(211), Length::mm(147), Length::nm(999'999)), "");
}

TEST(Papers, SayWhereTheirSizeComesFrom) {
  ASSERT_TRUE(read_paper("A4", Unit::mm));
  EXPECT_EQ(read_paper("A4", Unit::mm)->source,
            "ISO 216:2007, by two public tables of paper sizes (PWG 5101.1 media names and libpaper), which "
            "agree (2007), second hand");
  EXPECT_EQ(read_paper("12 x 12", Unit::mm)->source, "common practice, no source");
  for (const PaperSize& paper : papers()) EXPECT_FALSE(paper.from.source.empty()) << paper.name;
}

}  // namespace
}  // namespace insetbook
