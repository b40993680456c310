// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <string>

#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
namespace {

std::string shown(const std::string& text, const ScannedMeasurement& scanned) {
  const auto& [begin, end, value] = scanned.found;
  std::string out = "{" + text.substr(begin, end - begin);
  if (scanned.bare) out += " bare";
  if (const auto* size = std::get_if<Size>(&value)) out += ": " + write_said(*size);
  if (std::holds_alternative<Range>(value)) out += ": range";
  return out + "}";
}

// Asks at the beginning of every word that no measurement before it holds.
std::string scan(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    if (at == 0 || text[at - 1] == ' ') {
      const auto scanned = scan_measurement(text, at, Unit::inch);
      if (scanned && !*scanned)
        return out + "!" + scanned->error().what + " at " + std::to_string(*scanned->error().where.at);
      if (scanned) {
        out += shown(text, **scanned);
        at = (*scanned)->found.end;
        continue;
      }
    }
    ++at;
  }
  return out;
}

struct Row {
  const char* text;
  const char* found;
};

TEST(Scan, FindsWhatIsAMeasurementAndNoMore) {
  for (const Row& row : {
           Row{"designs using a 2-3/8 in circle with a stand-up fold", "{2-3/8 in}"},
           Row{"5 x 7 cards", "{5 x 7: 5 x 7 in}"},
           Row{"a circle of 2 inches across", "{2 inches across: 2 in}"},
           Row{"1/8 in border", "{1/8 in}"},
           Row{"2 in sage circle", "{2 in}"},
           Row{"2-inch circle", "{2-inch}"},
           Row{"one-inch circle", "{one-inch}"},
           Row{"2\" circle", "{2\"}"},
           Row{"2 ⅜\" circle", "{2 ⅜\"}"},
           Row{"4,5 cm circle", "{4,5 cm}"},
           Row{"6 in square", "{6 in}"},
           Row{"2 in. circle.", "{2 in.}"},
           Row{"2 in wide 3 in tall rectangle", "{2 in wide 3 in tall: W 2 x H 3 in}"},
           Row{"3 in by 4 in panels", "{3 in by 4 in: 3 x 4 in}"},
           Row{"W 2 H 3 in mat", "{W 2 H 3 in: W 2 x H 3 in}"},
           Row{"diameter 2 in circle", "{diameter 2 in: 2 in}"},
           Row{"4 x 6 tall card", "{4 x 6 tall: W 4 x H 6 in}"},
           Row{"between 2 and 3 in circle", "{between 2 and 3 in: range}"},
           Row{"2-3 in circle", "{2-3 in: range}"},
           Row{"5 to 6-1/2 in", "{5 to 6-1/2 in: range}"},
           Row{"a quarter inch smaller", "{a quarter inch}"},
           Row{"an inch and a half wide strip", "{an inch and a half}"},
           Row{"two and a half inch circle", "{two and a half inch}"},
           Row{"three quarter inch strip", "{three quarter inch}"},
       })
    EXPECT_EQ(scan(row.text), row.found) << row.text;
}

TEST(Scan, LeavesWordsThatAreNotPartOfIt) {
  for (const Row& row : {
           Row{"2 to the left", "{2 bare}"},
           Row{"2 by hand", "{2 bare}"},
           Row{"2 and a circle", "{2 bare}"},
           Row{"2 in wide strip", "{2 in}"},
           Row{"6 x 4 in tall card", "{6 x 4 in: 6 x 4 in}"},
           Row{"2 x 3 in high of centre", "{2 x 3 in: 2 x 3 in}"},
           Row{"2-3/8 in high of centre", "{2-3/8 in}"},
           Row{"2 in across the front", "{2 in}"},
           Row{"2-3/8 in circle, speckled", "{2-3/8 in}"},
           Row{"2 in -speckled", "{2 in}"},
           Row{"2 in -3 in", "{2 in}"},
           Row{"2 \"low tide\" circles", "{2 bare}"},
           Row{"circle of 2.", "{2 bare}"},
           Row{"3 in circle and a half", "{3 in}"},
       })
    EXPECT_EQ(scan(row.text), row.found) << row.text;
}

TEST(Scan, MarksBareNumbers) {
  for (const Row& row : {
           Row{"two strips", "{two bare}"},
           Row{"2023", "{2023 bare}"},
           Row{"from 2019 to 2021", "{from 2019 to 2021 bare: range}"},
           Row{"2019-2021", "{2019-2021 bare: range}"},
           Row{"two 2 in circles", "{two bare}{2 in}"},
           Row{"2 3 in circles", "{2 bare}{3 in}"},
           Row{"2 and 3 in circles", "{2 bare}{3 in}"},
           Row{"2, 3 and 4 in", "{2 bare}{3 bare}{4 in}"},
           Row{"two 1/2 inch strips", "{two bare}{1/2 inch}"},
           Row{"two quarter inch strips", "{two bare}{quarter inch}"},
           Row{"12x 2-7/8 x 4-1/8 in, sage", "{12x bare}{2-7/8 x 4-1/8 in: 2-7/8 x 4-1/8 in}"},
           Row{"2x circle", "{2x bare}"},
       })
    EXPECT_EQ(scan(row.text), row.found) << row.text;
}

TEST(Scan, FindsNothingWhereNothingIs) {
  for (const char* text :
       {"a circle", "half fold card", "one half fold", "quarter sheet", "third largest rectangle",
        "3D flower 2nd largest A2 card", "made 2026-11-25", "8-Mar", "3/8/2026", "at 10:30", "10%", "2's",
        "z-fold 2-step 3-fold", "110lb", "20231125", "1e3 0x10", "", "in", "x"})
    EXPECT_TRUE(scan(text) == "" || scan(text) == "{one bare}") << text << ": " << scan(text);
}

TEST(Scan, RefusesWhatIsSurelyMeantAsALength) {
  for (const Row& row : {
           Row{"sage 2-9/8 in circle",
               "!\"2-9/8\" has a whole number and a fraction that is not below one at 5"},
           Row{"½ in and 2 in 3 cm strip", "{½ in}!\"2 in 3 cm\" mixes units in one length at 14"},
           Row{"2,500 mm", "!\"2,500 mm\" can be read as 2.5 mm or as 2500 mm at 0"},
           Row{"3/0 in", "!\"3/0\" has a fraction over zero at 0"},
           Row{"2-3/8-3 in", "!\"2-3/8-\" has a dash that can be read two ways at 5"},
           Row{"2 x 3 x 4 in", "!\"2 x 3 x\" has more than two figures at 6"},
           Row{"2 km", "{2 bare}"},
           Row{"2000 m ribbon", "!\"2000 m\" is more than 1 km at 0"},
       })
    EXPECT_EQ(scan(row.text), row.found) << row.text;
}

TEST(FractionMadeADate, NamesTheFraction) {
  for (const Row& row : {
           Row{"8-Mar", "3/8"},
           Row{"08-Mar", "3/8"},
           Row{"Mar 8", "3/8"},
           Row{"8. Mrz", "3/8"},
           Row{"3-Aug", "3/8"},
           Row{"8-Mar-26", "3/8"},
           Row{"03/08/2026", "3/8"},
           Row{"3/8/26", "3/8"},
           Row{"08/03/2026", "3/8"},
           Row{"08.03.2026", "3/8"},
           Row{"2026-03-08", "3/8"},
           Row{"2026-08-03", "3/8"},
           Row{"2-Jan", "1/2"},
           Row{"16-May", "5/16"},
           Row{"16-November", "11/16"},
           Row{"Jan-32", "1/32"},
           Row{"Mar-64", "3/64"},
           Row{"1932-01-01", "1/32"},
           Row{"2008-02-03", "2-3/8"},
           Row{"2026-03-08 00:00:00", "3/8"},
           Row{"2026-03-08T00:00:00", "3/8"},
           Row{" 8-Mar ", "3/8"},
       }) {
    const auto fraction = fraction_made_a_date(row.text);
    EXPECT_EQ(fraction.value_or("none"), row.found) << row.text;
  }
  for (const char* text :
       {"", "3/8", "2-3/8", "2 3/8", "60 mm", "8-Marigold", "2026", "1/2/3", "8-Mar-2026-1", "40/50/2026",
        "Mar-Apr", "March", "8 x 3", "2026-03-08 noon", "1.5", "2-3"})
    EXPECT_EQ(fraction_made_a_date(text).value_or("none"), "none") << text;
}

}  // namespace
}  // namespace insetbook
