// SPDX-License-Identifier: GPL-3.0-or-later
//
// "The same card with changes." A sample copied under another title, linked to the one it is based on:
// "plum for sage" puts one colour or supply in the place of another, a fold or an occasion takes the place of
// what was recorded. Photographs, and what was answered "meant", stay with the original.
#pragma once

#include <string>
#include <vector>

#include "book/records.h"

namespace insetbook {

struct CopyAsked {
  std::vector<std::string> words;  // the sample's name, then changes: each a word or a quoted phrase
  std::string title;
};

struct CopyDifference {
  std::string what;                 // "paper", "ink", "supply", "fold", "occasion"
  std::string was, is;              // is: empty where it fell away
  std::vector<std::string> pieces;  // empty: of the card
};

struct CopyAnswer {
  std::string from, title;
  std::vector<CopyDifference> differences;
  std::vector<std::string> notes;  // words the book has no record of
};

// Fails where the title is taken, the sample is not there, or a change is not understood or changes nothing:
// then nothing is kept.
Result<CopyAnswer> copy_sample(Book& book, const CopyAsked& asked);

// Puts the sample and its pieces as a new record, pieces that others go with by their places in the list.
Result<void> put_whole_sample(Change& change, const SampleRow& sample, std::vector<ElementRow> elements,
                              const std::vector<int>& goes_with);

// For each element the place in the list of the one it goes with, -1 for none.
std::vector<int> places_of_targets(const std::vector<std::pair<std::int64_t, ElementRow>>& elements);

}  // namespace insetbook
