// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/snippet.h"

#include <algorithm>

namespace insetbook {
namespace {

constexpr std::size_t longest = 80;  // bytes
constexpr std::string_view cut_off = "…";

std::size_t character_begin(std::string_view text, std::size_t at) {
  while (at > 0 && at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) --at;
  return at;
}

std::vector<Span> places(const std::vector<PlacedWord>& words,
                         const std::vector<std::vector<std::string>>& phrases, Stemmer& stemmer) {
  std::vector<std::string> stems;
  for (const PlacedWord& each : words) stems.push_back(stemmer.stem(each.word));
  std::vector<Span> out;
  for (const auto& phrase : phrases) {
    if (phrase.empty()) continue;
    for (auto at = stems.begin();; ++at) {
      at = std::search(at, stems.end(), phrase.begin(), phrase.end());
      if (at == stems.end()) break;
      const auto first = static_cast<std::size_t>(at - stems.begin());
      out.push_back({words[first].begin, words[first + phrase.size() - 1].end});
    }
  }
  return out;
}

// In order, and those that touch each other's letters made one.
std::vector<Span> merged(std::vector<Span> spans) {
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) {
    return a.begin != b.begin ? a.begin < b.begin : a.end < b.end;
  });
  std::vector<Span> out;
  for (const Span& each : spans) {
    if (!out.empty() && each.begin < out.back().end) {
      out.back().end = std::max(out.back().end, each.end);
    } else {
      out.push_back(each);
    }
  }
  return out;
}

// Where the part that is shown begins: at a word a little before the first one found.
std::size_t shown_from(const std::vector<PlacedWord>& words, const std::vector<Span>& marks) {
  constexpr std::size_t before = 30;
  if (marks.empty() || marks.front().end <= longest) return 0;
  const std::size_t first = marks.front().begin;
  for (const PlacedWord& each : words) {
    if (each.begin + before >= first) return each.begin;
  }
  return first;
}

}  // namespace

Snippet snippet_of(std::string_view text, const std::vector<std::vector<std::string>>& phrases,
                   Stemmer& stemmer) {
  const std::vector<PlacedWord> words = placed_words(text);
  Snippet shown;
  const std::vector<Span> marks = merged(places(words, phrases, stemmer));
  if (text.size() <= longest) return {std::string(text), marks};
  const std::size_t from = shown_from(words, marks);
  const std::size_t end = character_begin(text, std::min(text.size(), from + longest));
  if (from > 0) shown.text += cut_off;
  const std::size_t before = shown.text.size();
  shown.text += text.substr(from, end - from);
  if (end < text.size()) shown.text += cut_off;
  for (const Span& each : marks) {
    if (each.begin >= from && each.end <= end)
      shown.marks.push_back({each.begin - from + before, each.end - from + before});
  }
  return shown;
}

}  // namespace insetbook
