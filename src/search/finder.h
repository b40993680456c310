// SPDX-License-Identifier: GPL-3.0-or-later
//
// Finds and ranks: joins what SQLite answers (candidates.h) with what the index answers (index.h). Whichever
// leads to fewer samples goes first, and the other is asked about those only.
#pragma once

#include <map>
#include <vector>

#include "search/alike.h"
#include "search/candidates.h"
#include "search/index.h"
#include "search/search.h"
#include "search/text_asked.h"

namespace insetbook {

// Totals are counted up to here.
inline constexpr std::size_t counted_to = 10'000;

// A question in normal form, parted into what SQLite decides, what the index decides, and what is alike.
struct Divided {
  Node structured;  // `all`
  TextAsked text;   // `all`
  bool asks_text = false;
  std::vector<const Node*> alike;  // children that ask what is like a sample
};
Divided divided(const Node& all, Stemmer& stemmer);

struct Found {
  std::vector<Candidate> ranked;
  std::size_t total = 0;
  bool exact = true;
};

class Finder {
 public:
  Finder(const Book& book, Index& index) : book_(book), index_(index) {}

  Found find(const Node& all, const Relaxed& relaxed, Order order, std::size_t limit);
  bool any(const Node& all);
  Stemmer& stemmer() { return stemmer_; }

 private:
  Found find_text_only(const Divided& asked, Order order, std::size_t limit);
  Found find_structured(const Divided& asked, const Relaxed& relaxed, Order order, std::size_t limit);
  Found find_both(const Divided& asked, const Relaxed& relaxed, Order order, std::size_t limit);
  Found find_alike(const Divided& asked, const Relaxed& relaxed, Order order, std::size_t limit);
  const std::vector<Alike>& alike_to(const Node& node);
  std::vector<Candidate> found_by_text(const Divided& asked, const std::vector<Candidate>& candidates);
  Found ranked(std::vector<Candidate> all, Order order, std::size_t limit);
  std::vector<Candidate> told_apart(std::vector<Candidate> all, const Node& structured,
                                    const Relaxed& relaxed);
  std::vector<std::int64_t> text_ids(const Node& node);
  std::size_t about_how_many(const Book& book, const TextAsked& asked);

  const Book& book_;
  Index& index_;
  Stemmer stemmer_;
  std::map<std::int64_t, std::vector<Alike>> alike_;  // by the sample asked for
};

}  // namespace insetbook
