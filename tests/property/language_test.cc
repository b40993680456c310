// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of the reader of questions, on generated questions: what is printed as fields reads back to the same
// tree; the ways of saying one thing give one tree; the order of words inside a piece does not matter; no
// word is dropped; the number of look-ups stays under a constant times the length.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "language/read_question.h"
#include "language/table_names.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using Random = std::mt19937;

const std::string& one_of(Random& random, const std::vector<std::string>& list) {
  return list[std::uniform_int_distribution<std::size_t>(0, list.size() - 1)(random)];
}
bool chance(Random& random, int percent) {
  return std::uniform_int_distribution<int>(1, 100)(random) <= percent;
}

class Language : public testing::Test {
 protected:
  Result<Question> read(std::string_view text) const {
    return read_question(text, {vocabulary_, names_, Unit::inch, "2026-11-25"});
  }
  Vocabulary vocabulary_;
  CountedNames names_;
};

// A tree whatever the order in which its parts were said.
std::string in_any_order(const Node& node) {
  if (node.kind == Node::Kind::one) return print(node);
  std::vector<std::string> parts;
  for (const Node& child : node.children) parts.push_back(in_any_order(child));
  std::ranges::sort(parts);
  Node empty;
  empty.kind = node.kind;
  std::string out = print(empty);
  for (const std::string& part : parts) out += part + ";";
  return out;
}

const std::vector<std::string> words = {
    "circle",
    "circles",
    "square",
    "oval",
    "panel",
    "mat",
    "strip",
    "frame",
    "sage",
    "navy",
    "green",
    "lichen grey",
    "kelp",
    "speckled",
    "stitched",
    "dry embossed",
    "heat embossed",
    "stamped",
    "vellum",
    "ribbon",
    "2 in",
    "2-3/8 in",
    "60 mm",
    "3 x 4 in",
    "about 2 in",
    "under 3 in",
    "over 1 in",
    "2 to 3 in",
    "2 in or more",
    "tall",
    "wide",
    "a",
    "the",
    "with",
    "and",
    "or",
    "not",
    "no",
    "without",
    "plus",
    ",",
    "on",
    "in",
    "behind",
    "inside",
    "on the front",
    "easel",
    "stand-up fold",
    "gate fold",
    "shaker",
    "birthday",
    "christmas",
    "card",
    "cards",
    "A6 card",
    "landscape",
    "square cards",
    "5 x 7 cards",
    "made in 2023",
    "last spring",
    "since march",
    "two",
    "3",
    "ink",
    "paper",
    "tidepool rectangles 2",
    "second largest tidepool rectangle",
    "moonrise circle",
    "in the largest moonrise circle",
    "garden gate",
    "like sage",
    "\"happy birthday\"",
    "zorblax",
    "frob-nitz",
    "house",
    "shape:circle",
    "size:2in",
    "colour:sage",
    "ink:navy",
    "fold:easel",
    "technique:speckling",
    "-easel",
    "-shape:square",
    "with:(shape:circle size:2in)",
    "(circle or square)",
    "(easel birthday)",
    "-(circle easel)",
    "text:happy",
    "no:photo",
    "no photo",
    "but not",
    "using",
    "or more",
    "designs",
    "from",
    "around a",
    "at least",
};

std::string question_of(Random& random, int most) {
  std::string text;
  const int count = std::uniform_int_distribution<int>(1, most)(random);
  for (int i = 0; i < count; ++i) text += (i > 0 ? " " : "") + one_of(random, words);
  return text;
}

TEST_F(Language, FieldsReadBackToTheSameTree) {
  Random random(20261125);
  int refused = 0;
  for (int i = 0; i < 20'000; ++i) {
    const std::string text = question_of(random, i % 2 == 0 ? 5 : 12);
    const auto question = read(text);
    if (!question) {  // "1 in 60 mm" mixes units
      ++refused;
      continue;
    }
    if (question->asks != Asks::samples) continue;
    const std::string fields = print_as_fields(*question);
    const auto again = read(fields);
    ASSERT_TRUE(again) << text << "\n  as fields: " << fields << ": " << again.error().what;
    ASSERT_EQ(print(*again), print(*question)) << text << "\n  as fields: " << fields;
  }
  EXPECT_LT(refused, 1'000);
}

TEST_F(Language, NoWordIsDropped) {
  Random random(7);
  for (int i = 0; i < 5'000; ++i) {
    const std::string before = question_of(random, 6);
    const std::string after = question_of(random, 6);
    const std::string text = before + " quuxly " + after;
    const auto question = read(text);
    if (!question) continue;
    if (question->asks != Asks::samples) {
      EXPECT_NE(question->subject.find("quuxly"), std::string::npos) << text;
      continue;
    }
    EXPECT_NE(print(*question).find("quuxly"), std::string::npos) << text;
  }
}

struct Said {
  std::vector<std::string> ways;
};

TEST_F(Language, WaysOfSayingOneThing) {
  const std::vector<Said> things = {
      {{"2-3/8 in circle", "circle 2-3/8 in", "a circle of 2-3/8 inches", "circle 2⅜\" across",
        "2.375 in circle", "shape:circle size:2-3/8in", "with:(size:\"2 3/8 in\" shape:circle)",
        "circle measuring 2-3/8 in", "a 2-3/8\" circle", "circle, 2-3/8 in",
        "two and three eighths inch circle"}},
      {{"sage circle speckled", "speckled sage circle", "a sage circle with speckling",
        "circle, sage, speckled", "a splattered circle in sage",
        "paper:sage shape:circle technique:speckling"}},
      {{"stand-up fold", "standup fold", "fold:stand-up", "a stand up fold", "using a stand-up fold"}},
      {{"circle without speckling", "circle not speckled", "a circle but not speckled",
        "with:(shape:circle -technique:speckling)"}},
      {{"no easel", "not easel", "without an easel", "-easel", "-fold:easel", "with no easel"}},
      {{"two sage circles", "2 sage circles", "a pair of sage circles",
        "with:(shape:circle paper:sage count:2)"}},
      {{"circle or square in navy", "navy circle or square",
        "with:(paper:navy (shape:square or shape:circle))"}},
      {{"5 x 7 in cards", "card 5 x 7 in", "cards that are 5 by 7 in", "closed:\"5 x 7 in\"",
        "5\" x 7\" card", "card size 5 x 7 in"}},
      {{"made in 2023", "from 2023", "2023", "made:2023", "dated 2023", "in 2023"}},
      {{"circle from 2 to 3 in", "circle between 2 and 3 in", "2-3 in circle", "circle 2 in to 3 in",
        "circle 2..3 in"}},
      {{"navy ink circle", "circle in navy ink", "with:(shape:circle ink:navy)"}},
  };
  for (const Said& thing : things) {
    const auto first = read(thing.ways.front());
    ASSERT_TRUE(first) << thing.ways.front();
    for (const std::string& way : thing.ways) {
      const auto question = read(way);
      ASSERT_TRUE(question) << way;
      EXPECT_EQ(in_any_order(question->tree), in_any_order(first->tree)) << way;
    }
  }
}

TEST_F(Language, OrderOfWordsInsideAPieceDoesNotMatter) {
  const std::vector<std::string> sizes = {"2-3/8 in", "about 60 mm", "under 3 in", "3 x 4 in"};
  const std::vector<std::string> shapes = {"circle", "square", "rounded rectangle"};
  const std::vector<std::string> colours = {"sage", "lichen grey", "green"};
  const std::vector<std::string> techniques = {"speckled", "dry embossed", "stitched"};
  Random random(99);
  for (int i = 0; i < 2'000; ++i) {
    std::vector<std::string> parts = {one_of(random, shapes)};
    if (chance(random, 70)) parts.push_back(one_of(random, sizes));
    if (chance(random, 60)) parts.push_back(one_of(random, colours));
    if (chance(random, 60)) parts.push_back(one_of(random, techniques));
    const auto joined = [&] {
      std::string text;
      for (const std::string& part : parts) text += (text.empty() ? "" : " ") + part;
      return text;
    };
    const std::string one_way = joined();
    std::ranges::shuffle(parts, random);
    const std::string other_way = joined();
    EXPECT_EQ(in_any_order(read(one_way)->tree), in_any_order(read(other_way)->tree))
        << one_way << " / " << other_way;
  }
}

TEST_F(Language, LookUpsStayUnderAConstantTimesTheLength) {
  for (const std::string_view part :
       {"tidepool ", "sage or ", "circle with a ", "no a, ", "second largest ", "like sage, within ",
        "2 in x ", "\"a\" ", "-x", "tidepool rectangles large tag ", "size:2in ", "( ",
        "in the tidepool rectangles, "}) {
    for (const std::size_t length : {std::size_t{4'000}, std::size_t{32'000}}) {
      std::string text;
      while (text.size() < length) text += part;
      names_.calls = 0;
      (void)read(text);
      EXPECT_LT(names_.calls, 16 * text.size()) << part;
    }
  }
}

TEST_F(Language, AnyBytesAreReadOrRefusedWithAPlace) {
  Random random(3);
  const std::string marks = "\"'()-:,;/&+<>=~#*?!.abc 12\xC2\xBD\xE2\x80\x9C\xFF\n";
  for (int i = 0; i < 20'000; ++i) {
    std::string text;
    const int length = std::uniform_int_distribution<int>(0, 24)(random);
    for (int j = 0; j < length; ++j)
      text += chance(random, 20)
                  ? one_of(random, words)
                  : std::string(
                        1, marks[std::uniform_int_distribution<std::size_t>(0, marks.size() - 1)(random)]);
    const auto question = read(text);
    if (question) continue;
    ASSERT_TRUE(question.error().where.at.has_value()) << text;
    EXPECT_LE(*question.error().where.at + question.error().where.length, characters(text).size()) << text;
    EXPECT_FALSE(question.error().what.empty());
  }
}

}  // namespace
}  // namespace insetbook
