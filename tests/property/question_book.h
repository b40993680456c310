// SPDX-License-Identifier: GPL-3.0-or-later
//
// A generated book, kept twice: as a book that was imported from tables, and as the plain records that the
// tables were written from. What is asked of the book can so be held against the records, which know nothing
// of the program but its vocabularies.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "language/goes.h"

namespace insetbook {

// What the tables of the book are written from. Lengths in nanometres; a circle or a square has its figure
// twice.
struct PieceRecord {
  std::string name;
  std::string role, side, shape;  // ids of terms; side: front, inside, back
  std::optional<std::int64_t> width, height;
  std::string paper, ink;  // names of colours, or empty
  std::vector<std::string> techniques;
  std::string supply;
  std::string place;  // as written
  int die = 0;        // 1 to 4: a die of the one set
  int count = 1;
  std::optional<GoesHow> goes;
  std::size_t other = 0;  // the piece it goes with, if it goes
};
struct SampleRecord {
  std::string title, made, fold, occasion, word, envelope;
  std::optional<std::int64_t> width, height;  // of the closed card
  std::vector<std::string> techniques;
  std::vector<PieceRecord> pieces;
};

struct ColourRecord {
  std::string name;
  std::uint32_t srgb;
};

// What the records choose from. None of the words stands in a vocabulary but as the term it names.
extern const std::vector<ColourRecord> book_colours;
extern const std::vector<std::string> book_shapes, book_roles, book_techniques, book_folds, book_occasions,
    book_words, book_supplies;
// As they are written down. The first of each list is a name, the rest its size; of the last list are none.
extern const std::vector<std::vector<std::string>> book_envelopes;
extern const std::string book_set;  // its dies are numbered 1 to 4, the largest first
extern const std::vector<std::int64_t> book_figures;

struct QuestionBook {
  Book book;
  std::vector<SampleRecord> samples;
};

// Made once for the test program from a fixed seed, removed at its end; 150 samples.
const QuestionBook& question_book();

std::string fraction(std::int64_t nm);  // "2-3/8", of a whole number of 64ths of an inch

}  // namespace insetbook
