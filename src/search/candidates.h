// SPDX-License-Identifier: GPL-3.0-or-later
//
// The samples that meet the part of a question that SQLite decides, with how far their sizes are from what
// was asked.
#pragma once

#include <cstdint>
#include <vector>

#include "search/conditions.h"
#include "search/paths.h"

namespace insetbook {

struct Candidate {
  std::int64_t sample = 0;
  std::int64_t beyond = 0;    // how far the sizes are from exact ones, added up over the pieces asked
  std::int64_t distance = 0;  // how far they are from the figures
  double weight = 0;          // of the text
  std::int64_t alike = 0;     // what it has in common with the sample asked for
};

// A question's conjuncts for SQLite: the tree in normal form without its text-only children.
class Structure {
 public:
  Structure(const Book& book, const Node& all, const Relaxed& relaxed, Conditions::TextIds text_ids);

  bool ranks() const { return ranks_; }
  bool empty() const { return all_.children.empty(); }
  bool telling_apart_left() const { return telling_apart_left_; }
  // Rows that the way in leads to, as far as they were counted: what it costs to ask SQLite first. `most`
  // ends the count.
  std::int64_t rows(std::int64_t most);
  // Whether walking them is all: nothing else is asked of the samples.
  bool rows_are_all();

  // Every sample, by its id; stops after `most` of them.
  std::vector<Candidate> find(std::size_t most);
  // Of these samples, those that meet everything.
  std::vector<Candidate> check(const std::vector<Candidate>& samples);
  // The first `limit` in order of `order_by` ("s.made DESC, s.key").
  std::vector<Candidate> first(std::string_view from_sample, std::string_view order_by, std::size_t limit);

  // The way in and the statement, for `find --explain`.
  std::string explain();

 private:
  void choose();
  const Node* driven_piece() const;
  Sql find_statement();
  Sql selected(Conditions& conditions, const Node* driven) const;
  Candidate read(const Statement& row) const;

  const Book& book_;
  const Node& all_;
  const Relaxed& relaxed_;
  Conditions::TextIds text_ids_;
  std::vector<const Node*> ranked_;  // children whose distance counts
  std::vector<std::int64_t> exact_;  // the largest exact distance of each
  bool ranks_ = false;
  bool telling_apart_left_ = false;
  bool chosen_ = false;
  std::optional<ChosenPath> path_;
};

}  // namespace insetbook
