// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/words.h"

#include <xapian.h>

#include <unordered_map>

#include "text/utf8.h"

namespace insetbook {
namespace {

enum class Part { none, of_word, alone };

Part part_of_word(char32_t code) {
  if (code < 0x80) {
    const bool letter = (code | 0x20U) >= 'a' && (code | 0x20U) <= 'z';
    return letter || (code >= '0' && code <= '9') ? Part::of_word : Part::none;
  }
  const auto c = static_cast<unsigned>(code);
  if (Xapian::Unicode::get_category(c) == Xapian::Unicode::OTHER_SYMBOL) return Part::alone;
  return Xapian::Unicode::is_wordchar(c) ? Part::of_word : Part::none;
}

// The longest term of the index is 245 bytes, in which a zero byte counts twice; words hold none.
constexpr std::size_t longest_term = 240;

std::string cut(std::string_view word) {
  std::size_t end = std::min(word.size(), longest_term);
  while (end > 0 && end < word.size() && (static_cast<unsigned char>(word[end]) & 0xC0U) == 0x80U) --end;
  return std::string(word.substr(0, end));
}

// Calls `use` with the place of each word of a text.
template <class Use>
void for_each_place(std::string_view all, Use use) {
  std::size_t begin = 0;
  bool inside = false;
  const auto end_at = [&](std::size_t end) {
    if (inside) use(begin, end);
    inside = false;
  };
  for (std::size_t at = 0; at < all.size();) {
    const Character c = character_at(all, at);
    const Part part = part_of_word(c.code);
    if (part != Part::of_word) end_at(c.begin);
    if (part == Part::alone) use(c.begin, c.end);
    if (part == Part::of_word && !inside) {
      begin = c.begin;
      inside = true;
    }
    at = c.end;
  }
  end_at(all.size());
}

}  // namespace

void for_each_word(std::string_view text, const std::function<void(std::string_view)>& use) {
  const std::string folded = fold(text);
  const std::string_view all = folded;
  for_each_place(all, [&](std::size_t begin, std::size_t end) { use(all.substr(begin, end - begin)); });
}

std::vector<PlacedWord> placed_words(std::string_view text) {
  std::vector<PlacedWord> words;
  for_each_place(text, [&](std::size_t begin, std::size_t end) {
    for_each_word(text.substr(begin, end - begin), [&](std::string_view word) {
      words.push_back({std::string(word), begin, end});
    });
  });
  return words;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for_each_word(text, [&](std::string_view word) { words.emplace_back(word); });
  return words;
}

struct Stemmer::Parts {
  Xapian::Stem stem{"english"};
  std::unordered_map<std::string, std::string> known;
};

Stemmer::Stemmer() : parts_(std::make_unique<Parts>()) {}
Stemmer::~Stemmer() = default;

const std::string& Stemmer::stem(std::string_view word) {
  constexpr std::size_t most_remembered = 100'000;
  if (parts_->known.size() > most_remembered) parts_->known.clear();
  const auto [place, added] = parts_->known.try_emplace(std::string(word));
  if (added)
    place->second = cut(word.size() > longest_term ? std::string(word) : parts_->stem(std::string(word)));
  return place->second;
}

}  // namespace insetbook
