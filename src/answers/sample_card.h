// SPDX-License-Identifier: GPL-3.0-or-later
//
// A sample as src/card takes it: its base laid and folded, its pieces with where they lie, and what each is
// made of. What the record does not say is said to be taken as typical, never as measured.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/records.h"
#include "book/settings.h"
#include "card/check.h"
#include "language/vocabulary.h"

namespace insetbook {

// Paper of a piece or of the base. A figure that nobody recorded is typical.
struct PaperOfPiece {
  std::int64_t mg_m2 = 0;
  bool weight_is_typical = false;
  Length thickness;
  bool thickness_is_typical = false;
  Length raised_by;  // foam under it
  bool raise_is_typical = false;
};

struct SampleCard {
  std::int64_t id = 0;
  SampleRow row;
  std::vector<std::int64_t> element_ids;
  std::vector<ElementRow> elements;
  Unit unit = Unit::inch;
  std::vector<std::string> folds;  // labels, as the vocabulary has them
  Stands stands = Stands::not_said;
  bool easel = false;
  std::vector<std::string> moving;  // features that are not checked: pop-ups, sliders
  BaseAsWritten written;
  int own_base = -1;  // the piece that is the base of a flat card: a tag, a bookmark
  tl::expected<Base, BaseNotLaid> base;
  tl::expected<FoldedBase, BaseNotLaid> folded;
  std::vector<CardPiece> pieces;     // one for each element
  std::vector<PaperOfPiece> papers;  // one for each element
  PaperOfPiece base_paper;
};

SampleCard sample_card(const Book& book, const Vocabulary& vocabulary, const Settings& settings,
                       std::int64_t sample_id);

// "over-a-crease; glued-shut"
std::vector<std::string> codes_of(const std::string& meant);

// The fold's entry as src/card takes it: of one fold only.
FoldEntry fold_entry(const Vocabulary& vocabulary, const std::vector<std::string>& terms);

}  // namespace insetbook
