// SPDX-License-Identifier: GPL-3.0-or-later
//
// The tree of a question as SQL. A condition of a sample speaks of the sample's id as `id_column` says and of
// its other columns as `s.…`; a condition of a piece speaks of `e.…`, one row of `element`. Columns stand
// behind a unary plus wherever SQLite could choose a worse index than the one that leads to the row. facts.cc
// says the same in C++, for one sample in memory.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "book/book.h"
#include "language/question.h"
#include "search/goes_ways.h"
#include "search/normal_form.h"
#include "search/size_rules.h"
#include "search/sql_text.h"

namespace insetbook {

// What a die reference comes to in this book.
struct DieMeaning {
  std::vector<std::int64_t> dies;
  std::vector<std::int64_t>
      sets;  // sets whose dies were all meant: pieces that name the set alone are meant too
  std::vector<std::int64_t> lines;  // lying in a line, or a line was said: the lines meant
  bool by_line = false;
};
DieMeaning die_meaning(const Book& book, const DieIs& die);

// The supplies whose kind is one of these materials: what is made with them is of that material.
std::vector<std::int64_t> supplies_of_material(const Book& book, const MaterialIs& material);

// Samples that are based on this one.
std::vector<std::int64_t> based_on(const Book& book, std::int64_t sample);

// The condition that a field of the sample is empty, as SQL on `s`; unknown field: an empty text.
std::string_view empty_field_condition(std::string_view field);

class Conditions {
 public:
  // Ids of the samples that meet a node about free words or about what is alike, sorted: where conditions mix
  // these with others.
  using TextIds = std::function<std::vector<std::int64_t>(const Node&)>;

  Conditions(const Book& book, const Relaxed& relaxed, std::string id_column, TextIds text_ids);

  Sql of_sample(const Node& node);
  // Every child, with pieces told apart. `except`: a child that is met already, or null; the telling apart
  // stays.
  Sql of_children(const Node& all, const Node* except);
  // The children of a piece, of row `e`; `except` as before.
  Sql of_piece(const Node& piece, const Node* except = nullptr);

  // Whether the distance of the node says anything; the largest distance that is an exact size.
  bool ranks(const Node& node) const;
  std::int64_t exact(const Node& node) const;
  Sql distance_of_sample(const Node& node);  // of a node that the sample meets
  Sql distance_of_piece(const Node& node);   // of row `e`

  // Whether anything so far spoke of `s`.
  bool speaks_of_sample() const { return speaks_of_sample_; }

 private:
  class Deeper;
  // For what is too much for SQL (normal_form.h): lets too much pass, and the caller looks at each hit
  // (facts.h).
  Sql left_open() const { return Sql(excluded_ ? "0" : "1"); }
  Sql linked(const GoesWays& ways, const std::string& a, const std::string& b);
  Sql on_a_face(const std::string& piece);
  Sql is_base(const std::string& piece);
  Sql others(const GoesWays& ways, const std::string& a, const Node& asked);
  Sql any_other(const GoesWays& ways, const std::string& a, const Node& asked);
  template <class Use>
  Sql of_another(Use use);
  Sql goes_with(const GoesWays& ways, const Node& asked);
  Sql of_goes(const Node& node);
  Sql of_slot(const Slot& slot);
  Sql told_apart(const std::vector<Slot>& slots, const std::vector<std::size_t>& group);
  Sql sample_says(const Says& says, const Node& node);
  Sql piece_says(const Says& says, const Node& node);
  Sql field_says(const Says& says);
  Sql mentioned(const Says& says, bool of_piece);
  const std::vector<std::int64_t>& supplies_of(const MaterialIs& material);
  Sql closed_size(const ClosedSizeIs& closed);
  Sql cut_or_lies(const DieIs& die);
  Sql has_role(const RoleIs& role);
  Sql nearest(const Node& any, bool of_piece);

  const Book& book_;
  const Relaxed& relaxed_;
  std::string id_;
  std::string e_ = "e";  // the row that a condition of a piece speaks of: another one within `goes`
  int others_ = 0;
  int depth_ = 0;
  bool excluded_ = false;  // within an odd number of `none`
  TextIds text_ids_;
  std::map<std::vector<std::string>, std::vector<std::int64_t>> supplies_of_;
  bool speaks_of_sample_ = false;
};

// The index and the terms of a mention that a constraint asks for: kind(s), and the column with its values.
bool is_mention(const Says& says);
// "kind = ? AND term IN (…)" of the alias m, each column behind `plus` ("" or "+").
Sql mention_terms(const Says& says, std::string_view plus);

}  // namespace insetbook
