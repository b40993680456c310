// SPDX-License-Identifier: GPL-3.0-or-later
#include "schema/label_key.h"

#include <algorithm>
#include <cstddef>

namespace insetbook {
namespace {

struct Pair {
  std::string_view from;
  std::string_view to;
};

constexpr Pair irregular_plurals[] = {
    {"leaves", "leaf"},     {"knives", "knife"},   {"halves", "half"},     {"shelves", "shelf"},
    {"scarves", "scarf"},   {"wolves", "wolf"},    {"geese", "goose"},     {"mice", "mouse"},
    {"feet", "foot"},       {"children", "child"}, {"canvases", "canvas"}, {"lenses", "lens"},
    {"vertices", "vertex"}, {"radii", "radius"},   {"statuses", "status"}, {"christmases", "christmas"},
};

// Words whose last letter is no plural.
constexpr std::string_view singular_words[] = {"canvas", "lens",  "christmas", "gas",
                                               "bias",   "atlas", "mrs",       "twas"};

// American spelling stands for both. Each is replaced wherever it occurs in a word.
constexpr Pair spellings[] = {
    {"colour", "color"}, {"centre", "center"},     {"grey", "gray"},   {"lling", "ling"},
    {"lled", "led"},     {"jewellery", "jewelry"}, {"fibre", "fiber"}, {"mould", "mold"},
    {"ised", "ized"},    {"ising", "izing"},       {"plough", "plow"}, {"cheque", "check"},
};

// Those that can be told in either direction.
constexpr Pair spellings_of_names[] = {
    {"colour", "color"},       {"centre", "center"},  {"grey", "gray"},          {"harbour", "harbor"},
    {"jewellery", "jewelry"},  {"fibre", "fiber"},    {"mould", "mold"},         {"plough", "plow"},
    {"favourite", "favorite"}, {"flavour", "flavor"}, {"neighbour", "neighbor"}, {"savoury", "savory"},
};

bool ends(std::string_view word, std::string_view with) {
  return word.size() > with.size() && word.substr(word.size() - with.size()) == with;
}

void cut(std::string& word, std::size_t letters) {
  word.resize(word.size() - letters);
}

void make_singular(std::string& word) {
  for (const Pair& plural : irregular_plurals) {
    if (word == plural.from) {
      word = plural.to;
      return;
    }
  }
  for (std::string_view singular : singular_words) {
    if (word == singular) return;
  }
  if (word.size() < 4) return;
  if (ends(word, "ies") && word.size() > 4) {
    cut(word, 3);
    word += 'y';
  } else if (ends(word, "ie")) {
    // "cookies" cannot be told from "berries", so that "cookie" goes the same way.
    cut(word, 2);
    word += 'y';
  } else if (ends(word, "sses") || ends(word, "shes") || ends(word, "ches") || ends(word, "xes") ||
             ends(word, "zzes")) {
    cut(word, 2);
  } else if (ends(word, "s") && !ends(word, "ss") && !ends(word, "us") && !ends(word, "is")) {
    cut(word, 1);
  }
}

void make_american(std::string& word) {
  for (const Pair& spelling : spellings) {
    for (std::size_t at = word.find(spelling.from); at != std::string::npos;
         at = word.find(spelling.from, at + spelling.to.size())) {
      word.replace(at, spelling.from.size(), spelling.to);
    }
  }
}

}  // namespace

std::string label_key(std::string_view folded) {
  std::string key;
  key.reserve(folded.size());
  std::string word;
  while (!folded.empty()) {
    const std::size_t end = std::min(folded.find(' '), folded.size());
    word.assign(folded.substr(0, end));
    make_singular(word);
    make_american(word);
    key += word;
    folded.remove_prefix(end < folded.size() ? end + 1 : end);
  }
  return key;
}

std::optional<std::string> other_spelling(std::string_view folded) {
  std::string other(folded);
  const auto replaced = [&](std::string_view from, std::string_view to) {
    bool found = false;
    for (std::size_t at = other.find(from); at != std::string::npos; at = other.find(from, at + to.size())) {
      other.replace(at, from.size(), to);
      found = true;
    }
    return found;
  };
  bool american = false;
  for (const Pair& each : spellings_of_names) american = replaced(each.from, each.to) || american;
  if (american) return other;
  bool british = false;
  for (const Pair& each : spellings_of_names) british = replaced(each.to, each.from) || british;
  return british ? std::optional(std::move(other)) : std::nullopt;
}

}  // namespace insetbook
