// SPDX-License-Identifier: GPL-3.0-or-later
//
// Bases and pieces written as a person writes them, for the tests of src/card.
#pragma once

#include <string>
#include <vector>

#include "card/check.h"
#include "language/vocabulary.h"
#include "measure/read.h"

namespace insetbook::cards {

inline FoldEntry entry_of(const std::string& fold) {
  static const Vocabulary vocabulary;
  FoldEntry entry;
  entry.term = fold;
  entry.to_and_fro = fold == "accordion" || fold == "fan fold";
  const auto term = vocabulary.term(VocabularyName::fold, fold);
  if (!term || !term->creases) return entry;
  for (const Crease& one : *term->creases)
    entry.creases.push_back({one.upright, one.mountain, one.part, one.of});
  return entry;
}

inline BaseAsWritten written(const std::string& fold, const std::string& base, const std::string& scores,
                             const std::string& finished = "") {
  BaseAsWritten out;
  if (!fold.empty()) {
    out.folds = {fold};
    out.entry = entry_of(fold);
  }
  if (!base.empty()) {
    const auto size = read_size(base, Unit::inch);
    out.width = size->width;
    out.height = size->height;
    out.unit = size->unit;
  }
  if (!finished.empty()) {
    const auto size = read_size(finished, Unit::inch);
    out.finished_width = size->width;
    out.finished_height = size->height;
    out.unit = size->unit;
  }
  out.scores = scores;
  return out;
}

inline FoldedBase folded(const std::string& fold, const std::string& base, const std::string& scores,
                         const std::string& finished = "") {
  const BaseAsWritten as_written = written(fold, base, scores, finished);
  const auto laid = lay_base(as_written);
  if (!laid) return {};
  return fold_flat(*laid, as_written.unit).value_or(FoldedBase{});
}

inline Length inches(std::int64_t whole, std::int64_t part = 0, std::int64_t of = 1) {
  return Length::inches(whole) + Length::inch_fraction(part, of);
}

}  // namespace insetbook::cards
