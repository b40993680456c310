// SPDX-License-Identifier: GPL-3.0-or-later
//
// The names of a book, as the reader of questions asks for them (language/names.h): sets, dies, supplies,
// colours and samples. Every call is an index look-up, but those by colour value, which read the colours
// once, by kind of supply, which read the kinds once, and by status, which read all supplies or dies. With
// them, what else of a book the reader has to know: its unit, its hemisphere, the day it is.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "language/names.h"
#include "language/read_question.h"

namespace insetbook {

class BookNames : public Names {
 public:
  explicit BookNames(const Book& book) : book_(book) {}

  std::vector<NamedRecord> exactly(std::string_view folded) const override;
  bool begins(std::string_view folded) const override;
  std::vector<NamedRecord> sets_begun(std::string_view folded) const override;
  std::vector<NamedRecord> like(std::string_view folded, std::size_t limit) const override;
  std::vector<std::int64_t> colours_of_word(std::string_view basic_word) const override;
  std::vector<std::int64_t> colours_of_shade(std::string_view basic_word, Shade shade) const override;
  std::vector<std::int64_t> colours_like(std::int64_t colour, double delta_e) const override;
  std::vector<std::int64_t> colours_like_value(std::uint32_t srgb, double delta_e) const override;
  std::vector<NamedRecord> supplies_of_set(std::string_view folded) const override;
  std::vector<NamedRecord> adhesives() const override;
  std::vector<NamedRecord> sets_of_maker(std::string_view folded) const override;
  std::string supply_kind(std::string_view folded) const override;
  std::vector<std::int64_t> colours_with_status(const Statuses& statuses, ColourUse use) const override;
  std::vector<std::int64_t> supplies_with_status(const Statuses& statuses,
                                                 std::string_view kind) const override;
  std::vector<std::int64_t> dies_with_status(const Statuses& statuses) const override;
  std::vector<std::int64_t> sets_with_status(const Statuses& statuses) const override;
  std::vector<std::int64_t> dies_said(std::string_view text) const override;
  std::vector<std::int64_t> dies_of(std::int64_t set) const override;
  std::optional<std::int64_t> die_labelled(std::int64_t set, std::string_view folded) const override;

 private:
  // Colours that have a value: ids and values side by side.
  struct Values {
    std::vector<std::int64_t> ids;
    std::vector<std::uint32_t> srgb;
  };
  const Values& values() const;

  // Ids of the rows of a question for (id, status, from, until) that have one of the statuses today.
  std::vector<std::int64_t> with_status(Statement& rows, const Statuses& statuses) const;

  const Book& book_;
  mutable std::optional<std::multimap<std::string, NamedRecord, std::less<>>> makers_;  // folded
  // In the singular, folded; and as recorded.
  mutable std::optional<std::vector<std::pair<std::vector<std::string>, std::string>>> kinds_;
  mutable std::optional<Values> values_;
};

// How questions and records are read in this book. `vocabulary` and `names` must outlive it.
ReadingContext reading_context(const Book& book, const Vocabulary& vocabulary, const Names& names);

}  // namespace insetbook
