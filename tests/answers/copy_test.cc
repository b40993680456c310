// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/copy.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "answers/resize.h"
#include "answers/sample_book.h"
#include "answers/show.h"
#include "book/temporary_folder.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class Copy : public testing::Test {
 protected:
  Copy() {
    std::filesystem::copy(sample_book().folder(), folder_.path() / "book",
                          std::filesystem::copy_options::recursive);
    book_.emplace(*Book::open(folder_.path() / "book", Book::Use::write));
  }
  ShownSample shown(const std::string& title) {
    const Result<ShowAnswer> answer = show(*book_, title);
    return answer ? std::get<ShownSample>(answer->shown) : ShownSample{};
  }
  static std::vector<std::string> papers(const ShownSample& sample) {
    std::vector<std::string> all;
    for (const ShownElement& element : sample.elements)
      for (const Mention& mention : element.row.mentions)
        if (mention.kind == "paper") all.push_back(element.row.name + " " + mention.written);
    return all;
  }

  TemporaryFolder folder_;
  std::optional<Book> book_;
};

TEST_F(Copy, WithAnotherColourAndAnotherFold) {
  const ShownSample original = shown("Wide Belt, Narrow Boat");
  const Result<CopyAnswer> answer = copy_sample(
      *book_, {{"wide", "belt,", "narrow", "boat", "kraft for moonrise", "easel"}, "Narrow Belt, Wide Boat"});
  ASSERT_TRUE(answer) << answer.error().what;
  EXPECT_EQ(answer->from, "Wide Belt, Narrow Boat");
  ASSERT_EQ(answer->differences.size(), 2u);
  EXPECT_EQ(answer->differences[0].was, "moonrise");
  EXPECT_THAT(answer->differences[0].pieces, ElementsAre("belt"));
  EXPECT_EQ(answer->differences[1].was, "Z fold");
  EXPECT_EQ(answer->differences[1].is, "easel");
  const ShownSample copy = shown("Narrow Belt, Wide Boat");
  EXPECT_EQ(copy.row.based_on, "Wide Belt, Narrow Boat");
  EXPECT_THAT(papers(copy), ElementsAre("base navy", "belt kraft", "boat round white", "inside panel white",
                                        "greeting white"));
  ASSERT_EQ(copy.elements.size(), original.elements.size());
  for (std::size_t i = 0; i < copy.elements.size(); ++i) {
    EXPECT_EQ(copy.elements[i].row.size.text, original.elements[i].row.size.text);
    EXPECT_EQ(copy.elements[i].row.goes, original.elements[i].row.goes);
    EXPECT_EQ(copy.elements[i].row.goes_to.has_value(), original.elements[i].row.goes_to.has_value());
  }
  EXPECT_TRUE(copy.row.photos.empty());
}

TEST_F(Copy, KeepsNothingWhereAChangeIsNotUnderstood) {
  EXPECT_FALSE(copy_sample(*book_, {{"Wide Belt, Narrow Boat", "wibble"}, "x"}));
  EXPECT_FALSE(copy_sample(*book_, {{"Wide Belt, Narrow Boat", "navy for lichen"}, "x"}));  // no lichen in it
  EXPECT_FALSE(copy_sample(*book_, {{"Wide Belt, Narrow Boat"}, ""}));
  EXPECT_FALSE(copy_sample(*book_, {{"Wide Belt, Narrow Boat"}, "Kettle's On"}));  // taken
  EXPECT_FALSE(show(*book_, "x"));
}

std::vector<std::string> sizes(const ResizeAnswer& answer) {
  std::vector<std::string> all;
  for (const ResizedPiece& piece : answer.pieces)
    if (piece.width && piece.height)
      all.push_back(piece.name + " " + write_size(*piece.width, *piece.height, Unit::inch));
  return all;
}

// By hand: closed 4-1/4 x 5-1/2 becomes 5 x 7. The mat of 4-1/8 x 5-3/8 keeps its 1/16 on each side, the
// frame of 3-5/8 x 4-7/8 its 1/4 on the mat, the sky of 3-1/4 x 4-1/2 its 3/16 on the frame.
TEST(Resize, LayersKeepTheirBorders) {
  const Result<ResizeAnswer> answer = resize_sample(sample_book(), "Gull over Low Water", "10 x 7 in");
  ASSERT_TRUE(answer) << answer.error().what;
  EXPECT_EQ(write_size(answer->folded.width, answer->folded.height, Unit::inch), "5 x 7 in");
  EXPECT_THAT(sizes(*answer), ElementsAre("base 10 x 7 in", "mat 4-7/8 x 6-7/8 in", "frame 4-3/8 x 6-3/8 in",
                                          "sky 4 x 6 in"));
  EXPECT_THAT(answer->pieces[2].die, HasSubstr("Tidepool Rectangles 2"));
  // Wanted is 111 x 162 mm.
  EXPECT_THAT(answer->pieces[2].nearest_die, HasSubstr("Kelpwick Frames 1, 100 x 143 mm"));
}

// The belt of the Z crosses the card; the round on it keeps its size.
TEST(Resize, WhatIsNoLayerKeepsItsSize) {
  const Result<ResizeAnswer> answer = resize_sample(sample_book(), "Wide Belt, Narrow Boat", "A4");
  ASSERT_TRUE(answer) << answer.error().what;
  EXPECT_EQ(write_size(answer->folded.width, answer->folded.height, Unit::mm), "148.5 x 210 mm");
  const auto all = sizes(*answer);
  EXPECT_EQ(all[2], "boat round 3 x 3 in");
  EXPECT_THAT(answer->checked.problems, IsEmpty());
  EXPECT_FALSE(resize_sample(sample_book(), "Wide Belt, Narrow Boat", "somewhat larger"));
  EXPECT_FALSE(resize_sample(sample_book(), "Bare Trees, Warm Wishes", "A4"));  // a shutter is not worked out
}

}  // namespace
}  // namespace insetbook
