// SPDX-License-Identifier: GPL-3.0-or-later
//
// "What still needs measuring?" The lines that have no size yet, set by set, largest die first; dies of which
// no line is recorded and sets without dies are among them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.h"

namespace insetbook {

struct NotMeasured {
  std::string set, die;  // die: its label; empty: the set has none yet
  int rank = 0;          // 0 = not known
  std::vector<std::string> lines;
};

struct UnmeasuredAnswer {
  std::string set;                // only this one was asked
  std::vector<NotMeasured> dies;  // one entry for each die that lacks a size
  std::int64_t lines = 0;         // how many lines that are
  std::int64_t all_lines = 0;     // of so many in the book, or in the set
};

// `set`: a set by name, or empty.
Result<UnmeasuredAnswer> not_measured_yet(const Book& book, const std::string& set);

}  // namespace insetbook
