// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/near_label.h"

#include <algorithm>
#include <vector>

#include "language/single_words.h"
#include "text/near_word.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

// The sum of mistakes; empty where a word is another one.
std::optional<std::size_t> mistakes(std::string_view written, std::string_view label) {
  const std::vector<std::string> a = single_words(written), b = single_words(label);
  if (a.size() != b.size()) return std::nullopt;
  std::size_t sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] == b[i]) continue;
    const std::optional<std::size_t> distance = slip_distance(a[i], b[i]);
    if (!distance) return std::nullopt;
    sum += *distance;
  }
  return sum == 0 ? std::nullopt : std::optional(sum);
}

}  // namespace

std::optional<std::string> near_label(const Vocabulary& vocabulary, VocabularyName in,
                                      std::string_view text) {
  const std::string written = fold(text);
  std::optional<std::string> best;
  std::size_t fewest = 0;
  const auto offer = [&](const std::string& label) {
    const std::optional<std::size_t> made = mistakes(written, fold(label));
    if (!made || (best && *made >= fewest)) return;
    best = label;
    fewest = *made;
  };
  const std::vector<Term> terms = vocabulary.terms(in);
  for (const Term& term : terms) offer(term.label);
  for (const Term& term : terms)
    for (const std::string& label : term.labels) offer(label);
  return best;
}

}  // namespace insetbook
