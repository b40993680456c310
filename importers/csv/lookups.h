// SPDX-License-Identifier: GPL-3.0-or-later
//
// What names in cells mean, during one import: terms of the vocabulary, colours, supplies, dies and their
// lines. Every name is looked up once. The kinds of table are imported in an order in which what is looked up
// is already there, so what was found stays right.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "book/openings.h"
#include "book/supply_names.h"
#include "language/vocabulary.h"

namespace insetbook {

struct OpeningFound {
  std::int64_t set_id = 0;
  std::optional<std::int64_t> die_id;
  std::optional<std::int64_t> line_id;
};

// Which line is meant where the cell is blank.
enum class BlankLine { none, innermost };

class Lookups {
 public:
  Lookups(const Book& book, const Vocabulary& vocabulary) : book_(book), vocabulary_(vocabulary) {}

  // The id of the term, or empty.
  const std::optional<std::string>& term(VocabularyName in, std::string_view text);
  // What a word that is no term of any of these was probably meant to be, or empty.
  std::string perhaps(std::string_view what, std::string_view text) const;
  std::optional<std::int64_t> colour(std::string_view name);
  // By its name, or by kind, set, name and colour in the usual orders. Several supplies of one name: none of
  // them.
  std::optional<std::int64_t> supply(std::string_view name);

  // The cells of a row as they stand. A Problem: an unknown set, die or line, with what there is.
  const Result<OpeningFound>& opening(std::string_view set, std::string_view die, std::string_view line,
                                      BlankLine blank);
  // An opening in one text: "Tidepool Rectangles 2, stitched".
  const Result<OpeningFound>& opening(std::string_view text);
  // The line of a die by its name or kind; blank: the innermost one that is no window.
  std::optional<std::int64_t> line_of(std::int64_t die_id, std::string_view line);
  // The shape recorded for any line of this die, or empty.
  std::string shape_of_die(std::string_view set_key, std::string_view die_key) const;

  // Rows of this import that were refused, so that what refers to them says why it is refused too.
  void refuse_line(std::string_view set_key, std::string_view die_key, std::string_view line,
                   std::string_view row);

 private:
  template <class T>
  using ByText = std::unordered_map<std::string, T>;

  Result<OpeningFound> find(std::string_view set, std::string_view die, std::string_view line,
                            BlankLine blank);
  Result<OpeningFound> find(std::string_view text);
  Result<OpeningFound> unknown_set(std::string_view text) const;
  const std::vector<OpeningRecord>& lines_of_set(std::int64_t set_id);
  const std::vector<OpeningRecord>& lines_of_die(std::int64_t die_id);
  std::optional<Problem> refused_line(std::string_view set_key, std::string_view die_key,
                                      std::string_view line) const;

  const Book& book_;
  const Vocabulary& vocabulary_;
  std::map<VocabularyName, ByText<std::optional<std::string>>> terms_;
  ByText<std::optional<std::int64_t>> colours_;
  std::optional<SupplyNames> supplies_;  // read when the first one is asked for
  ByText<std::optional<std::int64_t>> supplies_asked_;
  ByText<Result<OpeningFound>> openings_;
  std::unordered_map<std::int64_t, std::vector<OpeningRecord>> sets_, dies_;
  std::map<std::string, std::map<std::string, std::string>> refused_;  // set and die → line → row
};

}  // namespace insetbook
