// SPDX-License-Identifier: GPL-3.0-or-later
//
// From a question as it was understood to ranked hits. What is said of sizes, shapes, colours, techniques and
// dies is matched in SQLite, where one piece is one row; free words in the index (search/index.h), which is
// only opened when words are asked; the two meet in one order: exact sizes before near ones, then the text's
// relevance (BM25), then the closest size, then the newest, then the title. An answer never misses a
// committed record. Two pieces asked are two different pieces; counts are added up over the elements that
// meet one piece (normal_form.h). A size said with one figure is met by either side (exact, about) or by both
// (under, over, ranges). Nothing found: the smallest set of constraints that empties the answer (emptied.h
// says how far it looks), and what comes nearest without it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "book/book.h"
#include "language/question.h"
#include "language/vocabulary.h"
#include "search/index.h"

namespace insetbook {

// Why a sample is a hit: the words of the question, the piece that met them (empty: the sample itself), and
// what it has.
struct Matched {
  std::string text;
  std::string element;
  std::string why;
  std::vector<Span> marks;  // places in `why` that are what was asked, in order, none within another
  bool operator==(const Matched&) const = default;
};

struct Hit {
  std::int64_t sample = 0;
  std::string uuid, title, made;
  std::vector<Matched> matched;
  std::string
      difference;  // of the nearest: "circle 2-1/4 in: 1/8 in smaller", "does not have: stand-up fold"
};

// How many of all the hits have each value of one field, most first; a value asked for already is left out.
struct FacetValue {
  std::string label;  // "easel", "navy", "2024", "4-1/4 x 5-1/2 in"
  std::string asks;   // what narrows the question to these: "fold:easel"
  std::size_t count = 0;
};
struct Facet {
  std::string name;  // fold, technique, colour, occasion, year, closed size
  std::vector<FacetValue> values;
};

struct Suggestion {
  std::string word;        // as asked
  std::string suggestion;  // a word of the book or of the vocabularies
  bool operator==(const Suggestion&) const = default;
};

enum class Order { best, newest, oldest, title };
std::optional<Order> order_named(std::string_view word);  // "best", "newest", "oldest", "title"

struct SearchOptions {
  std::size_t limit = 20;
  Order order = Order::best;
  Index* index = nullptr;  // kept open between questions; null: opened for this one, if words are asked
  const Vocabulary* vocabulary = nullptr;  // suggestions come from its labels too
  bool facets = false;
  std::size_t nearest = 5;  // so many of what comes nearest, where nothing is found
};

struct Hits {
  std::vector<Hit> hits;
  std::size_t total = 0;
  bool total_is_exact = true;  // false: at least `total` (10 000)
  std::vector<std::string> emptied_by;
  std::vector<Hit> nearest;
  std::vector<Suggestion> suggest;
  std::vector<Facet> facets;  // where asked
};

Result<Hits> search(const Book& book, const Question& question, const SearchOptions& options);

// The plan: normal form, way in, statement, text query; a line each.
std::string explain_search(const Book& book, const Question& question);

}  // namespace insetbook
