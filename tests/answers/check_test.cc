// SPDX-License-Identifier: GPL-3.0-or-later
//
// The card check of the studio's own samples: sizes, papers and places by hand from sample-data.
#include "answers/check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "answers/base.h"
#include "answers/layers.h"
#include "answers/sample_book.h"
#include "book/changes.h"
#include "book/temporary_folder.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

CheckAnswer checked(const std::string& sample) {
  const Result<CheckAnswer> answer = check(sample_book(), sample);
  EXPECT_TRUE(answer) << answer.error().what;
  return answer ? *answer : CheckAnswer{};
}

std::vector<std::string> codes(const CheckAnswer& answer) {
  std::vector<std::string> all;
  for (const CardProblem& problem : answer.checked.problems)
    all.push_back(
        problem.code +
        (problem.piece < 0 ? "" : " " + answer.card.pieces[static_cast<std::size_t>(problem.piece)].name));
  return all;
}

std::string figures(const CheckAnswer& answer, const std::string& piece) {
  for (std::size_t i = 0; i < answer.card.pieces.size(); ++i)
    if (answer.card.pieces[i].name == piece && answer.checked.seats[i])
      return answer.checked.seats[i]->figures;
  return "";
}

TEST(Check, AZFoldThatIsGluedAsItShouldBe) {
  const CheckAnswer answer = checked("Wide Belt, Narrow Boat");
  EXPECT_THAT(codes(answer), IsEmpty());
  EXPECT_EQ(write_size(*answer.closed_width, *answer.closed_height, Unit::inch), "4-1/4 x 5-1/2 in");
  EXPECT_EQ(answer.stands, Stands::built_to_stand);
  ASSERT_TRUE(answer.envelope);
  EXPECT_TRUE(answer.envelope->fits);
  EXPECT_TRUE(answer.envelope->recorded);
  // the belt is 2-3/8 in high on 5-1/2 in
  EXPECT_EQ(figures(answer, "belt"),
            "flush left and right, 1-9/16 in from the top and the bottom, of the card");
  EXPECT_GE(answer.post.size(), 4u);
  for (const PostAnswer& service : answer.post) EXPECT_FALSE(service.sources.empty()) << service.service;
}

TEST(Check, APanelOverBothHalvesOfAnEaselLiesOnTheCard) {
  const CheckAnswer answer = checked("Dinghy Standing By");
  EXPECT_THAT(codes(answer), IsEmpty());
  EXPECT_EQ(figures(answer, "front panel"), "flush left and right, flush top and bottom, of the card");
  EXPECT_EQ(figures(answer, "stop"), "3/8 in from both sides, 1 in from the bottom");
  EXPECT_THAT(answer.said, Contains(HasSubstr("it may be tight")));  // foam that nobody measured
}

TEST(Check, WhatLiesOverTheOpeningOfAGateLiesOnTheCard) {
  const CheckAnswer answer = checked("Shut the Gate, Mind the Hens");
  EXPECT_THAT(codes(answer), IsEmpty());
  EXPECT_THAT(figures(answer, "latch"), HasSubstr("15/16 in from both sides"));
}

TEST(Check, AFoldWithoutOneFormIsNotChecked) {
  const CheckAnswer answer = checked("Bare Trees, Warm Wishes");
  EXPECT_THAT(answer.checked.not_checked, Contains(HasSubstr("a shutter does not simply lie flat")));
  ASSERT_TRUE(answer.closed_width);  // its finished size is recorded
  EXPECT_EQ(*answer.closed_width, Length::inch_fraction(17, 4));
}

TEST(Check, AThickPieceWithoutASizeIsUnknown) {
  EXPECT_THAT(codes(checked("Gull over Low Water")), ElementsAre("unknown-size gull"));
}

// In a copy of the book, which the other tests do not see.
TEST(Check, WhatIsMeantStaysQuietUntilItIsTakenBack) {
  TemporaryFolder folder;
  std::filesystem::copy(sample_book().folder(), folder.path() / "book",
                        std::filesystem::copy_options::recursive);
  Result<Book> book = Book::open(folder.path() / "book", Book::Use::write);
  ASSERT_TRUE(book) << book.error().what;
  const auto codes_now = [&] { return codes(*check(*book, "Gull over Low Water")); };
  ASSERT_THAT(codes_now(), ElementsAre("unknown-size gull"));
  EXPECT_FALSE(answer_meant(*book, "Gull over Low Water", "heron"));
  EXPECT_FALSE(answer_meant(*book, "Gull over Low Water", "mat"));
  ASSERT_TRUE(answer_meant(*book, "Gull over Low Water", "Gull"));
  EXPECT_THAT(codes_now(), IsEmpty());
  ASSERT_TRUE(undo(*book, std::nullopt));
  EXPECT_THAT(codes_now(), ElementsAre("unknown-size gull"));
}

TEST(Check, ATagIsItsOwnBase) {
  const CheckAnswer answer = checked("Bookmark for a Slow Reader");
  EXPECT_THAT(codes(answer), IsEmpty());
  EXPECT_EQ(write_size(*answer.closed_width, *answer.closed_height, Unit::inch), "1-1/2 x 6 in");
}

TEST(Check, AnUnknownSampleIsRefused) {
  EXPECT_FALSE(check(sample_book(), "no such card anywhere"));
}

TEST(BaseFigures, SaysSheetScoresAndHowMany) {
  BaseQuestion question;
  question.fold = "easel";
  question.finished = "6 in square";
  const Result<BaseAnswer> answer = base_figures(sample_book(), question);
  ASSERT_TRUE(answer) << answer.error().what;
  EXPECT_EQ(write_size(answer->base.width, answer->base.height, Unit::inch), "6 x 12 in");
  ASSERT_EQ(answer->papers.size(), 2u);
  EXPECT_EQ(answer->papers[0].count, 0);
  EXPECT_EQ(answer->papers[1].count, 2);  // 12 x 12 in
  EXPECT_TRUE(answer->off_marks.empty());

  question = {};
  question.fold = "Z";
  question.from = "A4";
  const Result<BaseAnswer> metric = base_figures(sample_book(), question);
  ASSERT_TRUE(metric) << metric.error().what;
  EXPECT_EQ(write_size(metric->base.width, metric->base.height, metric->unit), "297 x 210 mm");
  EXPECT_EQ(metric->off_marks.size(), 2u);  // a board with inch grooves

  question.finished = "A6";
  EXPECT_FALSE(base_figures(sample_book(), question));  // both
  question = {};
  question.fold = "bridge";
  question.finished = "A6";
  EXPECT_FALSE(base_figures(sample_book(), question));
  question.fold = "no such fold";
  EXPECT_FALSE(base_figures(sample_book(), question));
}

std::vector<std::string> sizes(const LayersQuestion& question) {
  const Result<LayersAnswer> answer = layer_sizes(sample_book(), question);
  EXPECT_TRUE(answer) << answer.error().what;
  std::vector<std::string> all;
  if (answer)
    for (const LayerShown& layer : answer->layers)
      all.push_back(write_size(layer.size.width, layer.size.height, answer->unit));
  return all;
}

// An eighth that shows on each side makes the next layer a quarter smaller (common practice, no source).
TEST(Layers, FromABaseAnOpeningAndTheInsideOut) {
  EXPECT_THAT(sizes({"4-1/4 x 5-1/2 in", {"1/8"}, 3, false}),
              ElementsAre("4-1/4 x 5-1/2 in", "4 x 5-1/4 in", "3-3/4 x 5 in", "3-1/2 x 4-3/4 in"));
  EXPECT_THAT(sizes({"4-1/4 x 5-1/2 in", {"1/8", "1/16"}, 2, false}),
              ElementsAre("4-1/4 x 5-1/2 in", "4 x 5-1/4 in", "3-7/8 x 5-1/8 in"));
  EXPECT_THAT(sizes({"2 x 3 in", {"1/8", "1/16"}, 2, true}),
              ElementsAre("2-3/8 x 3-3/8 in", "2-1/8 x 3-1/8 in", "2 x 3 in"));
  // the stitched line of the second is 3-3/8 x 4-5/8
  EXPECT_THAT(sizes({"second largest tidepool rectangle", {"1/8"}, 1, false}),
              ElementsAre("3-3/8 x 4-5/8 in", "3-1/8 x 4-3/8 in"));
  EXPECT_FALSE(layer_sizes(sample_book(), {"1 x 1 in", {"1/2"}, 1, false}));
  EXPECT_FALSE(layer_sizes(sample_book(), {"2-3/88 in", {}, 1, false}));
  EXPECT_FALSE(layer_sizes(sample_book(), {"2 x 2 in", {}, 0, false}));
  const Result<LayersAnswer> named = layer_sizes(sample_book(), {"4-1/4 x 5-1/2 in", {"1/8"}, 1, false});
  ASSERT_TRUE(named);
  EXPECT_THAT(named->layers[1].dies, Contains("Tidepool Rectangles 1"));  // cut edge 4 x 5-1/4
}

}  // namespace
}  // namespace insetbook
