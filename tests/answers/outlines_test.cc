// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "answers/fits.h"
#include "answers/frames.h"
#include "answers/import_tables.h"
#include "answers/measure.h"
#include "answers/sample_book.h"
#include "book/openings.h"

namespace insetbook {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

namespace fs = std::filesystem;

FitsAnswer fits(const Book& book, FitsAsked asked) {
  const Result<FitsAnswer> answer = what_fits(book, asked);
  EXPECT_TRUE(answer) << answer.error().what;
  return answer ? *answer : FitsAnswer{};
}

// Words that tell two answers apart.
std::vector<std::string> panels(const FitsAnswer& answer) {
  std::vector<std::string> all;
  for (const FittingPanel& panel : answer.panels)
    all.push_back(panel.shape + " " + std::to_string(panel.width.nm()) + " " +
                  std::to_string(panel.height.nm()) + " " + std::to_string(panel.border.nm()) + " " +
                  std::to_string(panel.left.nm()) + " " + std::to_string(panel.top.nm()) + " " +
                  std::to_string(panel.centred) + " " + panel.verdict + " " + panel.note);
  return all;
}

struct Studio {
  fs::path folder;
  Studio() {
    std::string name = (fs::temp_directory_path() / "insetbook-outlines-XXXXXX").string();
    folder = mkdtemp(name.data());
    const fs::path data = fs::path(INSETBOOK_SOURCE_DIR) / "sample-data";
    ImportOptions options;
    options.drawing_lines = "#c00 = pierced";
    const auto report =
        import_into(folder / "book", {data / "quayside-shapes.svg", data / "dies.csv"}, options);
    EXPECT_TRUE(report) << report.error().what;
  }
  Studio(const Studio&) = delete;
  Studio& operator=(const Studio&) = delete;
  ~Studio() { fs::remove_all(folder); }
  Book book() const { return *Book::open(folder / "book", Book::Use::write); }
};

TEST(Outlines, TheSecondTimeIsALookUpWithTheSameAnswer) {
  const Studio studio;
  const Book book = studio.book();
  for (const std::string opening : {"quayside shapes gull", "driftgate arches 1", "nettlewing hearts 2"}) {
    const FitsAnswer first = fits(book, {.opening = opening});
    EXPECT_THAT(panels(first), Not(IsEmpty()));
    EXPECT_TRUE(fs::exists(studio.folder / "book" / "derived.db"));
    EXPECT_EQ(panels(fits(book, {.opening = opening})), panels(first));
    EXPECT_NE(panels(fits(book, {.opening = opening, .border = "1/8 in"})), panels(first));
    fs::remove(studio.folder / "book" / "derived.db");
    EXPECT_EQ(panels(fits(book, {.opening = opening})), panels(first));
  }
}

TEST(Outlines, ANewMeasurementIsAnotherAnswer) {
  const Studio studio;
  Book book = studio.book();
  const FitsAnswer first = fits(book, {.opening = "driftgate arches 1", .border = "0.2 in"});
  const auto changed = book.change("measured", [&](Change& change) -> Result<void> {
    change.book()
        .statement(
            "UPDATE measurement SET width_nm = width_nm - 3175000 WHERE line_id = ? AND standing = 'current'")
        .bind(1, first.opening.line_id)
        .run();
    return {};
  });
  ASSERT_TRUE(changed);
  EXPECT_NE(panels(fits(book, {.opening = "driftgate arches 1", .border = "0.2 in"})), panels(first));
}

TEST(Outlines, APanelThatIsNotInTheMiddleSaysWhere) {
  const Studio studio;
  const FitsAnswer answer = fits(studio.book(), {.opening = "quayside shapes gull", .shape = "circle"});
  ASSERT_FALSE(answer.panels.empty());
  EXPECT_FALSE(answer.panels.front().centred);
  EXPECT_GT(answer.panels.front().left, Length());
  EXPECT_THAT(answer.panels.front().touches, IsEmpty());
}

TEST(Outlines, BecauseSaysWhatHoldsIt) {
  const FitsAnswer answer =
      fits(sample_book(), {.opening = "driftgate arches 1", .shape = "square", .because = true});
  ASSERT_FALSE(answer.panels.empty());
  const auto& touches = answer.panels.back().touches;
  ASSERT_FALSE(touches.empty());
  EXPECT_THAT(touches.front(), HasSubstr("in away at "));
}

// The middle of a star drawn in one line is gone round twice: inside by SVG's own rule, and a hole by
// even-odd. Each time it is said how it was taken, when the answer was kept too.
TEST(Outlines, HowPathDataIsTakenIsSaid) {
  const Studio studio;
  const fs::path table = studio.folder / "stars.csv";
  std::ofstream(table) << "set,die,line,shape,size,figures,outline\n"
                          "Saltmere Stars,whole,cut,outline,94 x 90 mm,,M50 0L79 90L3 35H97L21 90Z\n"
                          "Saltmere Stars,holed,cut,outline,94 x 90 mm,even-odd,M50 0L79 90L3 35H97L21 90Z\n";
  ASSERT_TRUE(import_into(studio.folder / "book", {table}, {}));
  const Book book = studio.book();
  Length widest[2];
  for (const bool holed : {false, true}) {
    const std::string opening = holed ? "saltmere stars holed" : "saltmere stars whole";
    for (int time = 0; time < 2; ++time) {
      const FitsAnswer answer = fits(book, {.opening = opening, .shape = "circle"});
      ASSERT_FALSE(answer.panels.empty());
      ASSERT_EQ(answer.warnings.size(), 1u);
      EXPECT_THAT(answer.warnings.front(), HasSubstr("the outline crosses or overlaps itself at "));
      EXPECT_THAT(answer.warnings.front(),
                  HasSubstr(holed ? "an odd number of lines go round" : "the lines go round, all told"));
      widest[holed ? 1 : 0] = answer.panels.front().width;
    }
  }
  EXPECT_GT(widest[0], Length::mm(30));
  EXPECT_LT(widest[1], Length::mm(20));
}

// A heart is no smaller by the same all round when its box is: what was tried shows what `fits` would leave.
TEST(Outlines, WhatWasTriedShowsItsBorderNotThatOfItsBox) {
  const FitsAnswer answer = fits(sample_book(), {.opening = "nettlewing hearts 1"});
  ASSERT_FALSE(answer.panels.empty());
  const FittingPanel& tried = answer.panels.front();
  EXPECT_EQ(tried.status, PanelStatus::tried);
  EXPECT_LT(tried.border, Length::inch_fraction(11, 64));  // beside its box it is 7/32
  EXPECT_GT(tried.border, Length::inch_fraction(1, 8));
  const FitsAnswer more =
      fits(sample_book(), {.opening = "nettlewing hearts 1", .border = "11/64", .shape = "heart"});
  for (const FittingPanel& panel : more.panels) {
    if (panel.status == PanelStatus::computed) {
      EXPECT_TRUE(panel.width < tried.width || panel.height < tried.height);
    }
  }
}

TEST(Outlines, WhatCoversAWindowStaysWithinTheDie) {
  const Studio studio;
  const fs::path table = studio.folder / "windows.csv";
  std::ofstream(table) << "set,die,line,shape,size\nLedge,1,cut,square,4 in\nLedge,1,window,square,3-7/8 in\n"
                          "Ledge,2,cut,square,3 in\nLedge,2,window,square,3-1/4 in\n"
                          "Ledge,3,cut,square,2 in\nLedge,3,window,square,1 in\n";
  ASSERT_TRUE(import_into(studio.folder / "book", {table}, {}));
  const Book book = studio.book();
  const auto warnings = [&](const char* die) {
    return fits(book, {.opening = std::string("ledge ") + die + " window"}).warnings;
  };
  EXPECT_THAT(warnings("1"), testing::Contains(HasSubstr("shows past the cut edge of the die, 4 in")));
  EXPECT_THAT(warnings("2"), testing::Contains(HasSubstr("larger than the cut edge of its die, 3 in")));
  EXPECT_THAT(warnings("3"), IsEmpty());
}

TEST(Outlines, AMissingFigureIsNamed) {
  EXPECT_EQ(
      fits(sample_book(), {.opening = "ferrymoss banners 1"}).not_computed,
      "the depth of the notch is missing; wanted: the depth of the notch in the figures of the banner, which "
      "are written \"notch 1/2 in\", \"at the right\", \"both ends\"");
}

TEST(Outlines, FramesAreComputedToo) {
  const Result<FramesAnswer> answer = what_frames(sample_book(), {.size = "arch 3 x 4-1/4 in"});
  ASSERT_TRUE(answer);
  const auto arch = std::find_if(answer->openings.begin(), answer->openings.end(), [](const auto& found) {
    return found.opening.set == "Driftgate Arches" && found.opening.die == "1" &&
           found.opening.line == "stitched";
  });
  ASSERT_NE(arch, answer->openings.end());
  // The line is 3-1/2 x 4-3/4 in: 1/4 in all round.
  EXPECT_EQ(arch->framing.greatest_border, Length::inch_fraction(1, 4));
  EXPECT_TRUE(arch->framing.even_strip);
}

// A whole number behind words is an order of a die that the book does not have, and no circle of two inches.
TEST(Outlines, AnOrderIsNoSize) {
  const Studio studio;
  const Book book = studio.book();
  for (const std::string opening : {"window 2", "card 2"}) {
    const Result<FitsAnswer> answer = what_fits(book, {.opening = opening});
    ASSERT_FALSE(answer) << opening;
    EXPECT_EQ(answer.error().what, "no die answers to \"" + opening + "\"");
  }
  EXPECT_TRUE(fits(book, {.opening = "window 2-3/8"}).invented);
  EXPECT_TRUE(fits(book, {.opening = "window 2 in"}).invented);
}

std::vector<std::string> framing_openings(const FramesAnswer& answer) {
  std::vector<std::string> all;
  for (const FramingOpening& found : answer.openings)
    all.push_back(describe(found.opening) + " " + std::to_string(found.framing.greatest_border.nm()) + " " +
                  std::to_string(found.framing.turned) + " " + found.tried);
  return all;
}

// A heart that was tried in vain says nothing of one that is as high as that was wide.
TEST(Outlines, WhatWasTriedRefutesThatShapeOnly) {
  const Studio studio;
  Book book = studio.book();
  const auto tried = record_tried(book, {.opening = "nettlewing hearts 1, cut",
                                         .size = "1 x 1-1/4 in",
                                         .shape = "heart",
                                         .result = "too-tight"});
  ASSERT_TRUE(tried) << tried.error().what;
  const auto refuted = [&](const std::string& size) {
    const Result<FramesAnswer> answer =
        what_frames(book, {.size = size, .shape = "heart", .in_set = "nettlewing hearts"});
    EXPECT_TRUE(answer) << answer.error().what;
    int count = 0;
    if (answer)
      for (const FramingOpening& found : answer->openings) count += found.refuted;
    return count;
  };
  EXPECT_EQ(refuted("1 x 1-1/4 in"), 1);
  EXPECT_EQ(refuted("1-1/4 x 1 in"), 0);
}

// The first few are found without computing the rest: they are those of the whole list, and as many are
// counted.
TEST(Outlines, TheFirstFewThatFrameAPanelAreTheFirstOfAll) {
  const Studio studio;
  const Book book = studio.book();
  for (const std::string size :
       {"1 in circle", "2 x 3 in", "1-1/2 in heart", "arch 1 x 1-1/4 in", "3/4 in square"}) {
    for (const std::optional<std::string>& border :
         {std::optional<std::string>(), std::optional<std::string>("1/8 in")}) {
      const Result<FramesAnswer> whole = what_frames(book, {.size = size, .border = border});
      ASSERT_TRUE(whole) << whole.error().what;
      const std::vector<std::string> all = framing_openings(*whole);
      ASSERT_GT(all.size(), 5u) << size;
      for (const std::size_t most : {1u, 5u}) {
        for (int turn = 0; turn < 2; ++turn) {  // the second time the room in each is a look-up
          const Result<FramesAnswer> few = what_frames(book, {.size = size, .border = border, .most = most});
          ASSERT_TRUE(few) << few.error().what;
          EXPECT_EQ(few->total, all.size()) << size;
          EXPECT_EQ(few->not_computed, whole->not_computed) << size;
          const std::vector<std::string> first(
              all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(most, all.size())));
          EXPECT_EQ(framing_openings(*few), first) << size << ", the first " << most;
        }
      }
    }
  }
}

}  // namespace
}  // namespace insetbook
