// SPDX-License-Identifier: GPL-3.0-or-later
//
// The limits of the letter post, row by row of postal_letter_limits.csv (its rows name the documents): at
// each limit, and the least bit past it.
#include "card/post.h"

#include <gtest/gtest.h>

#include <set>

#include "measure/read.h"
#include "outside/data_rows.h"
#include "outside/outside_data.h"

namespace insetbook {
namespace {

enum class Figure { length, width, thickness, mass };
enum class Past { over, under };

struct Probe {
  const char* service;
  const char* row;        // the value of the row, as the file has it
  const char* item;       // an item that is inside but for the figure in question
  const char* thickness;  // of it
  double grams;           // of it
  Figure figure;
  const char* limit;  // as a length; for mass the milligrams
  const char* at;     // the format at the limit
  Past past;
  const char* beyond;  // the format past it; "surcharge": the same format, and more; "" for none
};

const char* const usps_least = "5 in length; 3.5 in height; 0.007 in thick";
const char* const usps_most = "11.5 in length; 6.125 in height; 0.25 in thick";
const char* const usps_aspect = "aspect ratio length/height less than 1.3 or more than 2.5";
const char* const usps_thin = "more than 4.25 in high or 6 in long and thinner than 0.009 in";
const char* const standard =
    "length 140-235 mm; width 90-125 mm; thickness up to 5 mm; up to 20 g; length >= 1.4 x width";
const char* const kompakt = "length 100-235 mm; width 70-125 mm; up to 10 mm; up to 50 g";
const char* const gross = "length 100-353 mm; width 70-250 mm; up to 20 mm; up to 500 g";

const Probe probes[] = {
    {"USPS", usps_least, "5 x 3.6 in", "0.01 in", 9, Figure::length, "5 in", "letter", Past::under, ""},
    {"USPS", usps_least, "5.5 x 3.5 in", "0.01 in", 9, Figure::width, "3.5 in", "letter", Past::under, ""},
    {"USPS", usps_least, "5.5 x 4 in", "0.01 in", 9, Figure::thickness, "0.007 in", "letter", Past::under,
     ""},
    {"USPS", usps_most, "11 x 5 in", "0.1 in", 9, Figure::length, "11.5 in", "letter", Past::over,
     "large envelope"},
    {"USPS", usps_most, "9 x 6 in", "0.1 in", 9, Figure::width, "6.125 in", "letter", Past::over,
     "large envelope"},
    {"USPS", usps_most, "9 x 6 in", "0.1 in", 9, Figure::thickness, "0.25 in", "letter", Past::over,
     "large envelope"},
    // 3.5 oz is 99.2233… g (an ounce is 28.349523125 g exactly).
    {"USPS", "3.5 oz", "9 x 6 in", "0.1 in", 9, Figure::mass, "99223", "letter", Past::over,
     "large envelope"},
    {"USPS", usps_aspect, "7 x 5 in", "0.1 in", 9, Figure::length, "6.5 in", "letter", Past::under,
     "surcharge"},
    {"USPS", usps_aspect, "9 x 4 in", "0.1 in", 9, Figure::length, "10 in", "letter", Past::over,
     "surcharge"},
    {"USPS", "0.009 in", "8 x 5 in", "0.1 in", 9, Figure::thickness, "0.009 in", "letter", Past::under,
     "surcharge"},
    {"USPS", usps_thin, "5.8 x 4.2 in", "0.008 in", 9, Figure::length, "6 in", "letter", Past::over,
     "surcharge"},
    {"USPS", usps_thin, "5.9 x 4 in", "0.008 in", 9, Figure::width, "4.25 in", "letter", Past::over,
     "surcharge"},
    {"USPS", "15 x 12 x 0.75 in", "14 x 11 in", "0.1 in", 9, Figure::length, "15 in", "large envelope",
     Past::over, ""},
    {"USPS", "15 x 12 x 0.75 in", "14 x 11 in", "0.1 in", 9, Figure::width, "12 in", "large envelope",
     Past::over, ""},
    {"USPS", "15 x 12 x 0.75 in", "14 x 11 in", "0.1 in", 9, Figure::thickness, "0.75 in", "large envelope",
     Past::over, ""},
    {"Royal Mail", "240 x 165 x 5 mm; 100 g", "162 x 114 mm", "1 mm", 9, Figure::length, "240 mm", "letter",
     Past::over, "large letter"},
    {"Royal Mail", "240 x 165 x 5 mm; 100 g", "200 x 114 mm", "1 mm", 9, Figure::width, "165 mm", "letter",
     Past::over, "large letter"},
    {"Royal Mail", "240 x 165 x 5 mm; 100 g", "162 x 114 mm", "1 mm", 9, Figure::thickness, "5 mm", "letter",
     Past::over, "large letter"},
    {"Royal Mail", "240 x 165 x 5 mm; 100 g", "162 x 114 mm", "1 mm", 9, Figure::mass, "100000", "letter",
     Past::over, "large letter"},
    {"Royal Mail", "353 x 250 x 25 mm; 750 g", "300 x 200 mm", "1 mm", 9, Figure::length, "353 mm",
     "large letter", Past::over, ""},
    {"Royal Mail", "353 x 250 x 25 mm; 750 g", "300 x 200 mm", "1 mm", 9, Figure::width, "250 mm",
     "large letter", Past::over, ""},
    {"Royal Mail", "353 x 250 x 25 mm; 750 g", "300 x 200 mm", "1 mm", 9, Figure::thickness, "25 mm",
     "large letter", Past::over, ""},
    {"Royal Mail", "353 x 250 x 25 mm; 750 g", "300 x 200 mm", "1 mm", 9, Figure::mass, "750000",
     "large letter", Past::over, ""},
    {"Canada Post", "140 x 90 x 0.18 mm", "162 x 114 mm", "1 mm", 9, Figure::length, "140 mm",
     "standard Lettermail", Past::under, ""},
    {"Canada Post", "140 x 90 x 0.18 mm", "162 x 114 mm", "1 mm", 9, Figure::width, "90 mm",
     "standard Lettermail", Past::under, ""},
    {"Canada Post", "140 x 90 x 0.18 mm", "162 x 114 mm", "1 mm", 9, Figure::thickness, "0.18 mm",
     "standard Lettermail", Past::under, ""},
    {"Canada Post", "245 x 156 x 5 mm; 50 g (min 2 g)", "162 x 114 mm", "1 mm", 9, Figure::length, "245 mm",
     "standard Lettermail", Past::over, "non-standard and oversize Lettermail"},
    {"Canada Post", "245 x 156 x 5 mm; 50 g (min 2 g)", "200 x 114 mm", "1 mm", 9, Figure::width, "156 mm",
     "standard Lettermail", Past::over, "non-standard and oversize Lettermail"},
    {"Canada Post", "245 x 156 x 5 mm; 50 g (min 2 g)", "162 x 114 mm", "1 mm", 9, Figure::thickness, "5 mm",
     "standard Lettermail", Past::over, "non-standard and oversize Lettermail"},
    {"Canada Post", "245 x 156 x 5 mm; 50 g (min 2 g)", "162 x 114 mm", "1 mm", 9, Figure::mass, "50000",
     "standard Lettermail", Past::over, "non-standard and oversize Lettermail"},
    {"Canada Post", "245 x 156 x 5 mm; 50 g (min 2 g)", "162 x 114 mm", "1 mm", 9, Figure::mass, "2000",
     "standard Lettermail", Past::under, "non-standard and oversize Lettermail"},
    {"Canada Post", "380 x 270 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::length, "380 mm",
     "non-standard and oversize Lettermail", Past::over, ""},
    {"Canada Post", "380 x 270 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::width, "270 mm",
     "non-standard and oversize Lettermail", Past::over, ""},
    {"Canada Post", "380 x 270 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::thickness, "20 mm",
     "non-standard and oversize Lettermail", Past::over, ""},
    {"Canada Post", "380 x 270 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::mass, "500000",
     "non-standard and oversize Lettermail", Past::over, ""},
    {"Deutsche Post", standard, "162 x 95 mm", "1 mm", 9, Figure::length, "140 mm", "Standardbrief",
     Past::under, "Kompaktbrief"},
    {"Deutsche Post", standard, "162 x 114 mm", "1 mm", 9, Figure::length, "235 mm", "Standardbrief",
     Past::over, "Grossbrief"},
    {"Deutsche Post", standard, "162 x 114 mm", "1 mm", 9, Figure::width, "90 mm", "Standardbrief",
     Past::under, "Kompaktbrief"},
    {"Deutsche Post", standard, "200 x 114 mm", "1 mm", 9, Figure::width, "125 mm", "Standardbrief",
     Past::over, "Grossbrief"},
    {"Deutsche Post", standard, "162 x 114 mm", "1 mm", 9, Figure::thickness, "5 mm", "Standardbrief",
     Past::over, "Kompaktbrief"},
    {"Deutsche Post", standard, "162 x 114 mm", "1 mm", 9, Figure::mass, "20000", "Standardbrief", Past::over,
     "Kompaktbrief"},
    // 1.4 x 110 mm = 154 mm; a Kompaktbrief asks for the same
    {"Deutsche Post", standard, "162 x 110 mm", "1 mm", 9, Figure::length, "154 mm", "Standardbrief",
     Past::under, "Grossbrief"},
    {"Deutsche Post", kompakt, "162 x 71 mm", "7 mm", 30, Figure::length, "100 mm", "Kompaktbrief",
     Past::under, ""},
    {"Deutsche Post", kompakt, "162 x 114 mm", "7 mm", 30, Figure::length, "235 mm", "Kompaktbrief",
     Past::over, "Grossbrief"},
    {"Deutsche Post", kompakt, "162 x 114 mm", "7 mm", 30, Figure::width, "70 mm", "Kompaktbrief",
     Past::under, ""},
    {"Deutsche Post", kompakt, "200 x 114 mm", "7 mm", 30, Figure::width, "125 mm", "Kompaktbrief",
     Past::over, "Grossbrief"},
    {"Deutsche Post", kompakt, "162 x 114 mm", "7 mm", 30, Figure::thickness, "10 mm", "Kompaktbrief",
     Past::over, "Grossbrief"},
    {"Deutsche Post", kompakt, "162 x 114 mm", "7 mm", 30, Figure::mass, "50000", "Kompaktbrief", Past::over,
     "Grossbrief"},
    {"Deutsche Post", gross, "162 x 95 mm", "15 mm", 90, Figure::length, "100 mm", "Grossbrief", Past::under,
     ""},
    {"Deutsche Post", gross, "162 x 114 mm", "15 mm", 90, Figure::length, "353 mm", "Grossbrief", Past::over,
     ""},
    {"Deutsche Post", gross, "162 x 114 mm", "15 mm", 90, Figure::width, "70 mm", "Grossbrief", Past::under,
     ""},
    {"Deutsche Post", gross, "300 x 114 mm", "15 mm", 90, Figure::width, "250 mm", "Grossbrief", Past::over,
     ""},
    {"Deutsche Post", gross, "162 x 114 mm", "15 mm", 90, Figure::thickness, "20 mm", "Grossbrief",
     Past::over, ""},
    {"Deutsche Post", gross, "162 x 114 mm", "15 mm", 90, Figure::mass, "500000", "Grossbrief", Past::over,
     ""},
    {"Australia Post", "130 x 240 x 5 mm; 250 g", "162 x 114 mm", "1 mm", 9, Figure::length, "240 mm",
     "small letter", Past::over, "large letter"},
    {"Australia Post", "130 x 240 x 5 mm; 250 g", "162 x 114 mm", "1 mm", 9, Figure::width, "130 mm",
     "small letter", Past::over, "large letter"},
    {"Australia Post", "130 x 240 x 5 mm; 250 g", "162 x 114 mm", "1 mm", 9, Figure::thickness, "5 mm",
     "small letter", Past::over, "large letter"},
    {"Australia Post", "130 x 240 x 5 mm; 250 g", "162 x 114 mm", "1 mm", 9, Figure::mass, "250000",
     "small letter", Past::over, "large letter"},
    {"Australia Post", "260 x 360 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::length, "360 mm",
     "large letter", Past::over, ""},
    {"Australia Post", "260 x 360 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::width, "260 mm",
     "large letter", Past::over, ""},
    {"Australia Post", "260 x 360 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::thickness, "20 mm",
     "large letter", Past::over, ""},
    {"Australia Post", "260 x 360 x 20 mm; 500 g", "300 x 200 mm", "1 mm", 9, Figure::mass, "500000",
     "large letter", Past::over, ""},
};

// Rows that hold no figure of their own that an item of known size, thickness and mass could be held against.
const std::set<std::string> not_figures{
    "rectangular, four square corners, parallel sides; cardstock card-type may have corner radius up to "
    "0.125 in",
    "polybagged, polywrapped, enclosed in plastic, or exterior surface not paper (paper-envelope windows are "
    "fine)",
    "clasps, strings, buttons or similar closure devices",
    "pens, pencils, keys, coins that make thickness uneven; loose items",
    "too rigid: does not bend easily at 40 lb belt tension around an 11 in diameter turn",
    "delivery address parallel to the shorter side",
    // follows from the least length and the aspect; tested below
    "minimum square envelope 5 x 5 in; always nonmachinable (aspect 1.0)",
    // commercial prices, with the limit of an earlier edition
    "3.5 oz now; 3.3 oz in the 2010-11-01 edition",
    "flexible items only, else parcel",
};

Length length(const char* text) {
  const auto read = read_length(text, Unit::mm);
  EXPECT_TRUE(read) << text;
  return read ? read->length : Length();
}

PostItem item_of(const Probe& probe) {
  const auto size = read_size(probe.item, Unit::mm);
  EXPECT_TRUE(size) << probe.item;
  PostItem item{size->width, size->height, size->unit, length(probe.thickness),
                static_cast<std::int64_t>(probe.grams * 1000)};
  return item;
}

// The item with the figure in question at its limit, or `by` past it.
PostItem moved(const Probe& probe, std::int64_t by) {
  PostItem item = item_of(probe);
  if (probe.past == Past::under) by = -by;
  if (probe.figure == Figure::mass)
    item.mass_mg = static_cast<std::int64_t>(number(probe.limit)) + by;
  else if (probe.figure == Figure::thickness)
    item.thickness = length(probe.limit) + Length::nm(by);
  else
    (probe.figure == Figure::length ? item.width : item.height) = length(probe.limit) + Length::nm(by);
  return item;
}

std::string said(const char* service, const PostItem& item) {
  for (const PostAnswer& answer : post(item)) {
    if (answer.service != service) continue;
    return answer.outcome == PostOutcome::surcharge ? "surcharge" : answer.format;
  }
  return "no such service";
}

TEST(PostOutside, LimitsHoldToTheLastBit) {
  for (const Probe& probe : probes) {
    const std::string what = std::string(probe.service) + ": " + probe.row + ": " + probe.limit;
    EXPECT_EQ(said(probe.service, item_of(probe)), probe.at) << what << ", inside";
    EXPECT_EQ(said(probe.service, moved(probe, 0)), probe.at) << what << ", at it";
    EXPECT_EQ(said(probe.service, moved(probe, -1)), probe.at) << what << ", short of it";
    EXPECT_EQ(said(probe.service, moved(probe, 1)), probe.beyond) << what << ", past it";
    // Either way round.
    PostItem turned = moved(probe, 1);
    std::swap(turned.width, turned.height);
    EXPECT_EQ(said(probe.service, turned), probe.beyond) << what << ", turned";
  }
}

TEST(PostOutside, EveryRowOfTheTableIsHeldAgainstOurs) {
  const auto path = outside_data("postal_letter_limits.csv");
  if (!path) GTEST_SKIP() << "postal_letter_limits.csv is not here";
  std::set<std::string> known = not_figures;
  for (const Probe& probe : probes) known.insert(probe.row);
  std::set<std::string> seen;
  for (const auto& row : data_rows(*path)) {
    EXPECT_TRUE(known.contains(row[3])) << row[0] << ", " << row[1] << ": " << row[3];
    seen.insert(row[3]);
  }
  EXPECT_EQ(seen, known);
}

// Source: postal_letter_limits.source.txt: a No. 10 envelope (9.5 / 4.125 = 2.30) is machinable, a square one
// is not; the smallest square is 5 x 5 in. The aspects of common envelopes are computed there.
TEST(PostOutside, CommonEnvelopes) {
  const auto by_usps = [](const char* envelope) {
    const auto size = read_size(envelope, Unit::inch);
    return said("USPS", {size->width, size->height, size->unit, Length::mm(1), 20'000});
  };
  for (const char* envelope :
       {"4-1/8 x 9-1/2 in", "4-3/8 x 5-3/4 in", "4-3/4 x 6-1/2 in", "5-1/4 x 7-1/4 in", "5-3/4 x 8-3/4 in",
        "3-7/8 x 8-7/8 in", "114 x 162 mm", "110 x 220 mm", "5 x 6-1/2 in"})
    EXPECT_EQ(by_usps(envelope), "letter") << envelope;
  EXPECT_EQ(by_usps("6 x 6 in"), "surcharge");
  EXPECT_EQ(by_usps("5 x 5 in"), "surcharge");
  EXPECT_EQ(by_usps("4-7/8 x 4-7/8 in"), "");
}

}  // namespace
}  // namespace insetbook
