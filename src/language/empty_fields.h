// SPDX-License-Identifier: GPL-3.0-or-later
//
// What of a sample may have nothing recorded, in one table: the value of the field `no`, and the words by
// which a question says it ("no photo", "with a photo"). What is empty of each is in search/conditions.cc.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

namespace insetbook {

struct EmptyField {
  std::string_view name;
  std::string_view words;  // separated by spaces; none: only as a field
  bool also_with = true;   // "with a fold", "with words" say something else
};

inline constexpr EmptyField empty_fields[] = {
    {"photo", "photo photos photograph photographs picture pictures"},
    {"made", "date"},
    {"words", "words", false},
    {"steps", "steps instructions"},
    {"note", "note notes"},
    {"envelope", "envelope"},
    {"based on", ""},
    {"scores", ""},
    {"base", ""},
    {"closed", ""},
    {"fold", "fold", false},
    {"technique", "technique techniques", false},
    {"feature", "", false},
    {"occasion", "occasion occasions", false},
    {"material", ""},
    {"supply", "supplies", false},
    {"colour", ""},
    {"ink", ""},
    {"element", ""},
};

// By a word for it, folded; null when there is none.
constexpr const EmptyField* empty_field_of_word(std::string_view folded) {
  for (const EmptyField& each : empty_fields) {
    for (std::string_view rest = each.words; !rest.empty();) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      if (rest.substr(0, end) == folded) return &each;
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
  }
  return nullptr;
}

// By its name, or a word for it.
constexpr const EmptyField* empty_field(std::string_view folded) {
  for (const EmptyField& each : empty_fields)
    if (each.name == folded) return &each;
  return empty_field_of_word(folded);
}

// "photo, made, words …": for what a message would accept.
std::string names_of_empty_fields();

}  // namespace insetbook
