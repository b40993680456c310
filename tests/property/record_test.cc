// SPDX-License-Identifier: GPL-3.0-or-later
//
// Laws of the reader of records, on generated lines: a piece written as a line, its parts in any order, reads
// back to the same piece; nothing of a line is lost.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "language/read_record_text.h"
#include "language/table_names.h"
#include "measure/write.h"
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
int number(Random& random, int least, int most) {
  return std::uniform_int_distribution<int>(least, most)(random);
}

// A piece and the phrases that say it.
struct Written {
  std::string line;
  std::string said;  // as `print` gives it
};

std::string inches(Random& random) {
  return write_figure(Length::inch_fraction(number(random, 4, 90), 16), Unit::inch);
}

Written written(Random& random) {
  static const std::vector<std::string> colours{"sage", "navy", "fern", "lichen grey", "chalk white"};
  static const std::vector<std::string> techniques{"speckled", "dry embossed", "stamped", "stencilled",
                                                   "hand cut"};
  static const std::vector<std::string> terms{"speckling", "dry embossing", "stamping", "stencilling",
                                              "hand cutting"};
  static const std::vector<std::string> circles{"circle", "square"}, panels{"panel", "mat", "strip", "frame"};
  static const std::vector<std::string> hows{"on", "in", "behind", "around"};
  static const std::vector<std::string> targets{"grey panel", "mat", "navy circle 2", "big strip"};
  static const std::vector<std::string> places{"high of centre",
                                               "centred",
                                               "left 1/4 in",
                                               "1/2 in from the bottom",
                                               "in the top left corner",
                                               "hanging off the right edge by 1/8 in"};
  static const std::vector<std::string> glues{"foam", "none", "left 2 in"};
  static const std::vector<std::string> said_glues{"on foam", "no glue", "glue left 2 in"};
  const bool round = chance(random, 50);
  std::string head = one_of(random, round ? circles : panels);
  std::string said, size;
  const auto say = [&](std::string_view name, const std::string& value) {
    said += (said.empty() ? "" : ", ") + std::string(name) + "=" + value;
  };
  const int count = chance(random, 20) ? number(random, 2, 9) : 1;
  if (count > 1) say("count", std::to_string(count));
  say(round ? "shape" : "role", head);
  size = round ? inches(random) + " in" : inches(random) + " x " + inches(random) + " in";
  say("size", size);
  std::string core;
  if (chance(random, 70)) {
    const std::string& colour = one_of(random, colours);
    say("paper", colour);
    core = colour + " ";
  }
  core += head;
  std::vector<std::string> parts;
  const bool count_first = chance(random, 50);
  if (count > 1 && !count_first) parts.push_back("x" + std::to_string(count));
  // "7 x 3/4 in square" would be a size.
  if (count > 1 && count_first)
    core = std::to_string(count) + " x " + core + " " + size;
  else
    core = chance(random, 50) ? core + " " + size : size + " " + core;
  if (chance(random, 40)) {
    const auto which = static_cast<std::size_t>(number(random, 0, static_cast<int>(terms.size()) - 1));
    parts.push_back(techniques[which]);
    say("technique", terms[which]);
  }
  if (chance(random, 40)) {
    const int rank = number(random, 1, 8);
    parts.push_back("from moonrise circles " + std::to_string(rank));
    say("from", "Moonrise Circles " + std::to_string(rank));
  }
  if (chance(random, 60)) {
    const std::string& how = one_of(random, hows);
    const std::string& target = one_of(random, targets);
    parts.push_back(how + " the " + target);
    say("goes", how + " " + target);
  }
  if (chance(random, 50)) {
    const std::string& place = one_of(random, places);
    parts.push_back(place);
    say("at", place);
  }
  if (chance(random, 40)) {
    const auto which = static_cast<std::size_t>(number(random, 0, static_cast<int>(glues.size()) - 1));
    parts.push_back(said_glues[which]);
    say("glue", glues[which]);
  }
  parts.push_back(core);
  std::shuffle(parts.begin(), parts.end(), random);
  std::string line;
  for (std::size_t i = 0; i < parts.size(); ++i) line += (i > 0 ? ", " : "") + parts[i];
  return {line, said};
}

TEST(RecordLaws, APieceReadsBackInAnyOrder) {
  const Vocabulary vocabulary;
  const TableNames names;
  const ReadingContext context{vocabulary, names, Unit::inch, "2026-11-25"};
  Random random(20'261'125);
  for (int turn = 0; turn < 3000; ++turn) {
    const Written piece = written(random);
    ASSERT_EQ(print(read_line(piece.line, context)), piece.said) << piece.line;
  }
}

// All that stands in a line, folded to its letters and figures, in the order of its bytes.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : fold(text)) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::move(word));
      word.clear();
    }
  }
  if (!word.empty()) words.push_back(std::move(word));
  return words;
}

// A word that means nothing is in what was not read, wherever it is put.
TEST(RecordLaws, AWordThatMeansNothingIsNeverLost) {
  const Vocabulary vocabulary;
  const TableNames names;
  const ReadingContext context{vocabulary, names, Unit::inch, "2026-11-25"};
  Random random(7);
  for (int turn = 0; turn < 2000; ++turn) {
    std::string line = written(random).line;
    std::vector<std::size_t> gaps;
    for (std::size_t at = line.find(", "); at != std::string::npos; at = line.find(", ", at + 1))
      gaps.push_back(at);
    const std::size_t gap =
        gaps.empty() ? line.size()
                     : gaps[static_cast<std::size_t>(number(random, 0, static_cast<int>(gaps.size()) - 1))];
    line.insert(gap, ", qwopz");
    const Result<RecordSaid> record = read_record("Title", line, context);
    ASSERT_TRUE(record) << line;
    ASSERT_EQ(record->pieces.size(), 1u) << line;
    const auto& left_over = record->pieces[0].left_over;
    const bool kept = std::ranges::any_of(left_over, [](const std::string& text) {
      const auto words = words_of(text);
      return std::ranges::find(words, "qwopz") != words.end();
    });
    EXPECT_TRUE(kept) << line;
  }
}

}  // namespace
}  // namespace insetbook
