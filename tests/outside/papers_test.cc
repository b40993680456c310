// SPDX-License-Identifier: GPL-3.0-or-later
//
// Papers and envelopes against published tables and against the rules of their series.
#include "card/papers.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <utility>

#include "card/envelopes.h"
#include "outside/data_rows.h"
#include "outside/outside_data.h"

namespace insetbook {
namespace {

std::string number_of(int n) {
  return std::string(n < 10 ? "" : "1") + static_cast<char>('0' + n % 10);
}

// Source: ISO 216: A0 has one square metre and B0 is 1000 mm wide, both in the proportion of 1 to the root of
// 2, so 841 x 1189 and 1000 x 1414 mm; each next size is the one before cut in half across its long side,
// fractions of a millimetre dropped.
TEST(PapersOutside, IsoSizesAreHalvesByConstruction) {
  const std::map<std::string, std::pair<int, int>> first{{"A", {841, 1189}}, {"B", {1000, 1414}}};
  for (const auto& [series, sides] : first) {
    auto [width, height] = sides;
    for (int n = 0; n <= 10; ++n) {
      const PaperSize* paper = paper_size_named("ISO " + series + number_of(n));
      ASSERT_NE(paper, nullptr) << series << n;
      EXPECT_EQ(paper->width, Length::mm(width)) << series << n;
      EXPECT_EQ(paper->height, Length::mm(height)) << series << n;
      EXPECT_EQ(paper_size_named(series + number_of(n)), paper);
      height = std::exchange(width, height / 2);
    }
  }
}

// Source: ISO 269 / DIN 678: a C size takes the unfolded A size of its number; C0 is 917 x 1297 mm, the next
// ones by halving as above. How much is left is not in the standards: at least 2 mm of each side is common
// practice, no source.
TEST(PapersOutside, IsoEnvelopesTakeTheirSheets) {
  int width = 917, height = 1297;
  for (int n = 0; n <= 10; ++n) {
    const EnvelopeSize* envelope = envelope_named("C" + number_of(n));
    const PaperSize* sheet = paper_size_named("ISO A" + number_of(n));
    ASSERT_TRUE(envelope != nullptr && sheet != nullptr) << n;
    EXPECT_EQ(envelope->width, Length::mm(width)) << n;
    EXPECT_EQ(envelope->height, Length::mm(height)) << n;
    EXPECT_EQ(envelope->card_width, sheet->width) << n;
    EXPECT_EQ(envelope->card_height, sheet->height) << n;
    EXPECT_TRUE(
        fit_in_envelope({sheet->width, sheet->height, {}}, envelope->width, envelope->height, Length::mm(2))
            .goes_in)
        << n;
    height = std::exchange(width, height / 2);
  }
  // DL: A4 folded twice, 99 x 210 mm.
  const EnvelopeSize* dl = envelope_named("DL");
  ASSERT_NE(dl, nullptr);
  EXPECT_EQ(dl->card_width, Length::mm(99));
  EXPECT_TRUE(
      fit_in_envelope({dl->card_width, dl->card_height, {}}, dl->width, dl->height, Length::mm(3)).goes_in);
}

// Source: common practice, no source: the card of an American announcement envelope is 1/4 in smaller each
// way but for the width of the A2 one; all leave the 1/8 in of the setting.
TEST(PapersOutside, AmericanEnvelopesTakeTheirCards) {
  const std::map<std::string, std::string> cards{{"A1", "3-1/2 x 4-7/8 in"}, {"A2", "4-1/4 x 5-1/2 in"},
                                                 {"A6", "4-1/2 x 6-1/4 in"}, {"A7", "5 x 7 in"},
                                                 {"A8", "5-1/4 x 7-7/8 in"}, {"A9", "5-1/2 x 8-1/2 in"}};
  for (const auto& [name, card] : cards) {
    const EnvelopeSize* envelope = envelope_named(name + " envelope");
    ASSERT_NE(envelope, nullptr) << name;
    EXPECT_EQ(envelope->takes, card) << name;
    EXPECT_TRUE(fit_in_envelope({envelope->card_width, envelope->card_height, {}}, envelope->width,
                                envelope->height, Length::inch_fraction(1, 8))
                    .goes_in)
        << name;
  }
}

// The name under which a row of the published table stands in ours; empty for what ours leaves out.
std::string our_name(const std::string& row) {
  static const std::map<std::string, std::string> names{
      {"Letter / ANSI A", "letter"},
      {"Tabloid / ANSI B", "tabloid"},
      {"Half letter / Statement", "half letter"},
      {"Monarch envelope", "monarch"},
      {"Personal / No. 6-3/4 envelope", "No. 6-3/4"},
      {"Index 3x5", "3 x 5 index card"},
      {"Index 4x6", "4 x 6 index card"},
      {"Index 5x8", "5 x 8 index card"},
      {"5x7", "5 x 7 photo"},
      {"A1 / 4-Bar envelope", "4 bar"},
      {"Slim announcement envelope", "slimline"},
      {"A10 announcement envelope (variant 1)", ""},  // its sources disagree
      {"A10 announcement envelope (variant 2)", ""},
  };
  if (const auto found = names.find(row); found != names.end()) return found->second;
  std::string name = row.substr(0, row.find(" envelope"));
  if (name.ends_with(" announcement")) name.erase(name.size() - 13);
  return name;
}

// Source: paper_envelope_sizes.csv: two or three public tables of paper sizes that agree, but for those that
// ours marks otherwise.
TEST(PapersOutside, SizesAreThoseOfThePublishedTable) {
  const auto path = outside_data("paper_envelope_sizes.csv");
  if (!path) GTEST_SKIP() << "paper_envelope_sizes.csv is not here";
  int papers_seen = 0, envelopes_seen = 0;
  for (const auto& row : data_rows(*path)) {
    const std::string name = our_name(row[0]);
    if (name.empty()) continue;
    const bool inches = row[4] == "in";
    const auto nm = [&](const std::string& text) {
      return Length::nm(std::llround(number(text) * (inches ? 25'400'000 : 1'000'000)));
    };
    const bool envelope = row[0].find("envelope") != std::string::npos ||
                          row[1].find("envelopes") != std::string::npos || row[1] == "ISO 269 / DIN 678";
    const EnvelopeSize* its =
        envelope ? envelope_named(name.rfind("ISO ", 0) == 0 ? name.substr(4) : name) : nullptr;
    const PaperSize* sheet = envelope ? nullptr : paper_size_named(name);
    ASSERT_TRUE(its != nullptr || sheet != nullptr) << row[0];
    EXPECT_EQ(its ? its->width : sheet->width, nm(row[2])) << row[0];
    EXPECT_EQ(its ? its->height : sheet->height, nm(row[3])) << row[0];
    EXPECT_EQ(its ? its->unit : sheet->unit, inches ? Unit::inch : Unit::mm) << row[0];
    if (its && row[5].rfind("RECALLED", 0) == 0) {
      EXPECT_EQ(its->from.known, Known::recalled) << row[0];
    }
    ++(envelope ? envelopes_seen : papers_seen);
  }
  EXPECT_EQ(papers_seen, 37);
  EXPECT_EQ(envelopes_seen, 28);
}

}  // namespace
}  // namespace insetbook
