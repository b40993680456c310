// SPDX-License-Identifier: GPL-3.0-or-later
//
// Ways into the tables: for each thing a question asks, the indexes that lead to the rows which might meet
// it. The search follows one of them, the one with the fewest rows, and checks everything else on the samples
// it comes to.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "search/conditions.h"

namespace insetbook {

// One walk along one index: "FROM … WHERE …", and the column that holds the sample's id.
struct Seek {
  Sql from;
  std::string_view sample_column;
  Sql counted = {};  // the same rows, or somewhat more, without a join: for counting; empty: `from`
};

struct Path {
  std::string name;             // "shape and width", for `find --explain`
  int order = 0;                // which path is tried first: the one that leads to few rows in most books
  std::vector<Seek> seeks;      // together they lead to every sample that meets the node
  const Node* piece = nullptr;  // the piece whose elements the seeks walk (as `e`), if it is one
  std::int64_t rows = -1;       // as counted; -1: not counted
  const Node* met =
      nullptr;  // the constraint (of the piece, where there is one) that every row meets already
};

// Every path that leads to all samples which meet the node; none where only the whole table does.
std::vector<Path> paths_to(const Node& node, const Book& book, const Relaxed& relaxed);

// "FROM … WHERE …" of the rows that are counted for it.
const Sql& counted_rows(const Seek& seek);

// The path with the fewest rows among those to any child of the `all`. Counts stop at `enough`.
struct ChosenPath {
  Path path;
  const Node* child = nullptr;
};
std::optional<ChosenPath> choose_path(const Node& all, const Book& book, const Relaxed& relaxed,
                                      std::int64_t enough);

}  // namespace insetbook
