// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/words.h"

#include <gmock/gmock.h>

#include "search/text_asked.h"
#include "search/trees.h"

namespace insetbook {
namespace {

using testing::ElementsAre;

TEST(Words, are_cut_at_marks_and_folded) {
  EXPECT_THAT(words_of("Stand-up fold, Café & 3/8 in"),
              ElementsAre("stand", "up", "fold", "cafe", "3", "8", "in"));
  EXPECT_THAT(words_of("don\u2019t"), ElementsAre("dont"));
  EXPECT_THAT(words_of("for you ❤❤!"), ElementsAre("for", "you", "❤", "❤"));
  EXPECT_THAT(words_of(" ,;. "), ElementsAre());
  EXPECT_THAT(words_of(""), ElementsAre());
}

TEST(Words, stems_are_english_and_fit_the_index) {
  Stemmer stemmer;
  EXPECT_EQ(stemmer.stem("glittering"), stemmer.stem("glitter"));
  EXPECT_EQ(stemmer.stem("speckled"), stemmer.stem("speckles"));
  EXPECT_LE(stemmer.stem(std::string(1'000, 'q')).size(), 245U);
  std::string accents;
  for (int i = 0; i < 300; ++i) accents += "ж";
  EXPECT_EQ(stemmer.stem(accents).size() % 2, 0U) << "cut within a character";
}

TEST(Words, what_the_index_is_asked) {
  Stemmer stemmer;
  const Node tree = of_kind(
      Node::Kind::all,
      {asks(WordsAre{{"glittering", "owls"}, false}, ""), asks(WordsAre{{"snow", "flakes"}, true}, ""),
       asks(WordsAre{{"3/8"}, false}, ""), none({asks(WordsAre{{"moon"}, false}, "")})});
  EXPECT_EQ(print(text_asked(tree, stemmer)),
            "((glitter AND owl) AND (\"snow flake\") AND (\"3 8\") AND NOT ((moon)))");
}

}  // namespace
}  // namespace insetbook
