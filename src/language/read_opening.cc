// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_opening.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "language/orders.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

struct LineWord {
  std::string_view word;
  std::string_view kind;
};

constexpr LineWord line_words[] = {
    {"cut", "cut"},
    {"cutting", "cut"},
    {"outer", "cut"},
    {"outside", "cut"},
    {"edge", "cut"},
    {"cut edge", "cut"},
    {"outer edge", "cut"},
    {"outside edge", "cut"},
    {"stitched", "stitched"},
    {"stitch", "stitched"},
    {"stitching", "stitched"},
    {"stitches", "stitched"},
    {"sewn", "stitched"},
    {"pierced", "pierced"},
    {"pierce", "pierced"},
    {"piercing", "pierced"},
    {"pricked", "pierced"},
    {"scored", "scored"},
    {"score", "scored"},
    {"scoring", "scored"},
    {"crease", "scored"},
    {"creased", "scored"},
    {"embossed", "embossed"},
    {"emboss", "embossed"},
    {"embossing", "embossed"},
    {"debossed", "embossed"},
    {"window", "window"},
    {"windows", "window"},
    {"aperture", "window"},
    {"cutout", "window"},
    {"cut out", "window"},
    {"hole", "window"},
};

std::string_view kind_of(std::string_view word) {
  const auto at = std::ranges::find(line_words, word, &LineWord::word);
  return at == std::end(line_words) ? std::string_view() : at->kind;
}

using Words = std::vector<std::string>;

// Folded words; a comma, a semicolon and a bracket end a part and become a word of their own, ",".
Words words_of(std::string_view text) {
  std::string spaced;
  for (const char c : text) {
    if (c == ',' || c == ';' || c == '(' || c == ')')
      spaced += " , ";
    else if (c == '#')
      spaced += " # ";
    else
      spaced += c;
  }
  const std::string folded = fold(spaced);
  Words words;
  std::size_t begin = 0;
  while (begin < folded.size()) {
    std::size_t end = folded.find(' ', begin);
    if (end == std::string::npos) end = folded.size();
    std::string word = folded.substr(begin, end - begin);
    while (!word.empty() && (word.back() == '?' || word.back() == '!' || word.back() == '.')) word.pop_back();
    if (!word.empty()) words.push_back(std::move(word));
    begin = end + 1;
  }
  return words;
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> list) {
  return std::ranges::find(list, word) != list.end();
}

bool is_article(std::string_view word) {
  return is_one_of(word, {"the", "a", "an", "my", "our", "your", "this", "that", "these", "those"});
}

void erase(Words& words, std::size_t first, std::size_t count) {
  words.erase(words.begin() + static_cast<std::ptrdiff_t>(first),
              words.begin() + static_cast<std::ptrdiff_t>(first + count));
}

// A word for a line at `at`, with what belongs to it: "the", "line", "edge", a number where there are several
// of a kind.
struct LineSaid {
  std::size_t first = 0;
  std::size_t last = 0;  // half-open
  std::string line;
};

std::optional<LineSaid> line_at(const Words& words, std::size_t at) {
  LineSaid said{.first = at, .last = at + 1, .line = {}};
  std::string_view kind = kind_of(words[at]);
  if (at + 1 < words.size()) {
    const std::string_view pair = kind_of(words[at] + " " + words[at + 1]);
    if (!pair.empty()) {
      kind = pair;
      said.last = at + 2;
    }
  }
  if (kind.empty()) return std::nullopt;
  said.line = std::string(kind);
  if (said.last < words.size() && is_one_of(words[said.last], {"line", "lines", "edge"})) ++said.last;
  if (said.last < words.size() && plain_number(words[said.last])) said.line += " " + words[said.last++];
  return said;
}

// Whether a line said there cannot be part of the set's name: it ends the text or a part of it, or "of"
// follows.
bool stands_apart(const Words& words, const LineSaid& said) {
  const bool ends = said.last == words.size() || words[said.last] == ",";
  const bool of_follows = said.last < words.size() && is_one_of(words[said.last], {"of", "in"});
  const bool line_word =
      said.last > said.first + 1 && is_one_of(words[said.last - 1], {"line", "lines", "edge"});
  return ends || of_follows || line_word;
}

// Takes the line out of the words. `inside_name`: also a word for a line that stands among the words of the
// name.
std::string take_line(Words& words, bool inside_name) {
  for (std::size_t turn = words.size(); turn-- > 0;) {
    const auto said = line_at(words, turn);
    if (!said || (!inside_name && !stands_apart(words, *said))) continue;
    if (said->last - said->first == words.size() && words.size() == 1) return {};  // the whole text: a name
    std::size_t first = said->first;
    if (first > 0 && line_at(words, first - 1) && line_at(words, first - 1)->last == said->last) continue;
    std::size_t last = said->last;
    if (last < words.size() && is_one_of(words[last], {"of", "in"})) ++last;
    while (first > 0 &&
           (is_article(words[first - 1]) || is_one_of(words[first - 1], {"its", "with", "at", "in", "on"})))
      --first;
    const std::string line = said->line;
    erase(words, first, last - first);
    return line;
  }
  return {};
}

void take_order(Words& words, OpeningPhrase& phrase) {
  for (std::size_t at = 0; at < words.size(); ++at) {
    const auto order = order_at(std::span(words).subspan(at));
    if (!order) continue;
    (order->from_smallest ? phrase.rank_from_smallest : phrase.rank) = order->rank;
    std::size_t last = at + order->words;
    while (last < words.size() && is_one_of(words[last], {"die", "dies", "one", "size", "frame"}) &&
           last + 1 < words.size() && is_one_of(words[last + 1], {"of", "in", "from"}))
      ++last;
    if (last < words.size() && is_one_of(words[last], {"of", "in", "from"})) ++last;
    erase(words, at, last - at);
    return;
  }
}

// What is left is the name: articles at its beginning, words that only say that it is a die, and marks fall
// away.
std::string name_of(const Words& words) {
  std::string name;
  const auto add = [&](std::string_view word) {
    if (!name.empty()) name += ' ';
    name += word;
  };
  bool begins = true;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    const bool number_follows = i + 1 < words.size() && plain_number(words[i + 1]);
    if (word == "," || word == "#") {
      begins = true;
      continue;
    }
    if (begins && (is_article(word) || is_one_of(word, {"of", "in", "from"}))) continue;
    if (number_follows && is_one_of(word, {"die", "no", "number", "size", "nr"})) continue;
    if (i + 1 == words.size() && !name.empty() && is_one_of(word, {"die", "opening"})) continue;
    add(word);
    begins = is_one_of(word, {"of", "in", "from"});
  }
  return name;
}

// "die 2 of tidepool rectangles": the label stands before the set.
void turn_label_of_set(std::string& name) {
  const std::size_t of = name.find(" of ");
  if (of == std::string::npos) return;
  const std::string label = name.substr(0, of);
  if (!plain_number(label)) return;
  name = name.substr(of + 4) + " " + label;
}

OpeningPhrase read_with(std::string_view text, bool line_inside_name) {
  OpeningPhrase phrase;
  phrase.text = std::string(trim(text));
  Words words = words_of(text);
  phrase.line = take_line(words, line_inside_name);
  take_order(words, phrase);
  phrase.name = name_of(words);
  turn_label_of_set(phrase.name);
  return phrase;
}

}  // namespace

OpeningPhrase read_opening(std::string_view text) {
  return read_with(text, false);
}

std::vector<OpeningPhrase> readings_of_opening(std::string_view text) {
  std::vector<OpeningPhrase> readings{read_with(text, false)};
  if (readings.front().line.empty()) {
    OpeningPhrase other = read_with(text, true);
    if (!other.line.empty() && !other.name.empty()) readings.push_back(std::move(other));
  }
  return readings;
}

namespace {

std::optional<RankOrder> whole_order(std::string_view folded) {
  Words words = words_of(folded);
  while (!words.empty() && is_article(words.front())) words.erase(words.begin());
  if (!words.empty() && is_one_of(words.back(), {"die", "one", "size"})) words.pop_back();
  if (words.size() == 2 && is_one_of(words.front(), {"die", "no", "number", "#", "nr"}))
    words.erase(words.begin());
  if (words.size() == 1)
    if (const auto number = plain_number(words.front())) return RankOrder{.words = 1, .rank = *number};
  const auto order = order_at(words);
  if (!order || order->words != words.size()) return std::nullopt;
  return order;
}

}  // namespace

std::optional<int> read_rank(std::string_view folded) {
  const auto order = whole_order(folded);
  if (!order || order->from_smallest) return std::nullopt;
  return order->rank;
}

std::optional<int> read_rank_from_smallest(std::string_view folded) {
  const auto order = whole_order(folded);
  if (!order || !order->from_smallest) return std::nullopt;
  return order->rank;
}

std::string line_kind(std::string_view folded) {
  std::string_view word = folded;
  for (const std::string_view ending : {std::string_view(" line"), std::string_view(" lines")})
    if (word.ends_with(ending)) word.remove_suffix(ending.size());
  std::string_view kind = kind_of(word);
  if (kind.empty() && word.ends_with(" edge")) kind = kind_of(word.substr(0, word.size() - 5));
  return std::string(kind);
}

}  // namespace insetbook
