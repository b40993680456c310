// SPDX-License-Identifier: GPL-3.0-or-later
//
// A base: a sheet with its creases, each with the way it folds, in the order in which they are folded.
//
// Rules ("Folds, faces and the card check"): the fold's entry in the vocabulary says which way its creases
// fold and in which order; a score that says mountain or valley itself is taken at its word. A single score
// of which nothing is known is a valley. An accordion of any number goes to and fro, beginning as its entry
// does. A score with no side named that contradicts the finished size, and suits it along the other side, is
// read along the other side.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/closed_size.h"
#include "card/scores.h"
#include "text/problem.h"

namespace insetbook {

// A crease right across the sheet: upright ones are `at` from the left, level ones from the top. The way is
// seen from the inside.
struct SheetCrease {
  bool upright = true;
  Length at;
  bool mountain = false;
  bool operator==(const SheetCrease&) const = default;
};

struct Base {
  Length width, height;              // as it lies open, inside up
  std::vector<SheetCrease> creases;  // in folding order
  bool turned = false;               // the figures were written the other way round
  bool other_side = false;  // the scores were read along the short side, because of the finished size
  bool operator==(const Base&) const = default;
};

// A crease of a fold's entry in the vocabulary, a part of the sheet from its left or top.
struct EntryCrease {
  bool upright = true;
  bool mountain = false;
  int part = 1, of = 2;
  bool operator==(const EntryCrease&) const = default;
};

// What the vocabulary says of a fold.
struct FoldEntry {
  std::string term;                  // folded; empty: the card says no fold
  std::vector<EntryCrease> creases;  // in folding order; empty: no one form is known, or the card is flat
  bool to_and_fro = false;           // an accordion, of any number of sections
};

struct BaseAsWritten {
  std::vector<std::string> folds;  // terms of the vocabulary of folds
  FoldEntry entry;                 // of the one fold, where it is one
  std::optional<Length> width, height;
  std::string scores;
  Unit unit = Unit::inch;
  std::optional<Length> finished_width, finished_height;  // the closed size, as the card stands
};

// Why a base is not worked out.
struct BaseNotLaid {
  enum class Why {
    unknown_size,  // neither a sheet nor a finished size
    not_checked,   // slits, folds with no one form, scores that are not understood
    impossible,    // figures that contradict each other
  };
  Why why;
  std::string what;  // a sentence without a full stop
  std::string mend;
  bool operator==(const BaseNotLaid&) const = default;
};

tl::expected<Base, BaseNotLaid> lay_base(const BaseAsWritten& written);

// The sheet that closes to width x height under the fold as its entry has it, with the scores that make it.
// `tuck`: how much shorter the tucked flap of a letter tri-fold is; `gap`: between the doors of a gate;
// `sections` of an accordion.
struct BaseFigures {
  Length tuck, gap;
  int sections = 4;
};
tl::expected<Base, BaseNotLaid> base_that_closes_to(const BaseAsWritten& fold, Length width, Length height,
                                                    const BaseFigures& figures);

// The same from a sheet: its own size, scored as the entry says.
tl::expected<Base, BaseNotLaid> base_from_sheet(const BaseAsWritten& fold, Length width, Length height,
                                                const BaseFigures& figures);

}  // namespace insetbook
