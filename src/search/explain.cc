// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/finder.h"
#include "search/search.h"

namespace insetbook {

std::string explain_search(const Book& book, const Question& question) {
  const Node all = normal_form(question.tree);
  std::string said = "normal form: " + print(all) + "\n";
  Stemmer stemmer;
  const Divided asked = divided(all, stemmer);
  const Relaxed as_asked;
  if (!asked.structured.children.empty() || !asked.asks_text) {
    Structure structure(book, asked.structured, as_asked,
                        [](const Node&) { return std::vector<std::int64_t>(); });
    said += structure.explain();
  }
  if (asked.asks_text) said += "words: " + print(asked.text) + "\n";
  return said;
}

}  // namespace insetbook
