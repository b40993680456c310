// SPDX-License-Identifier: GPL-3.0-or-later
//
// The tables of schema/papers as the build compiles them: sizes of paper and envelopes, the basic sizes
// behind pounds of a grade, typical thickness, the limits of the letter post. Constant, found by name in
// place; nothing is read or built when the program starts. schema/README.md describes the files. What the
// figures mean for a card is worked out in src/card (papers.h, envelopes.h, paper_weight.h, post.h).
//
// Every size stands upright (width ≤ height) and keeps the text and the unit it was written in; every figure
// says where it comes from and how surely.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "measure/size.h"

namespace insetbook {

// How a figure is known, in the order of known_words.
enum class Known {
  read,             // in the document named
  second_hand,      // in somebody else's copy or account of it
  recalled,         // from memory: no document was found
  common_practice,  // what people do; there is no document
};
inline constexpr std::string_view known_words[] = {"read", "second hand", "recalled", "common practice"};

struct FigureSource {
  std::string_view source;
  int year = 0;            // of the document
  bool year_read = false;  // the document has no date: the year it was read in
  Known known = Known::read;
  bool operator==(const FigureSource&) const = default;
};

// "DMM 101.1.1 (2021)", "… (undated, read 2026), second hand"
std::string write_source(const FigureSource& source);

struct PaperSize {
  std::string_view name;
  std::span<const std::string_view> others;
  std::string_view written;  // "210 x 297 mm"
  Length width, height;
  Unit unit;
  FigureSource from;
};

inline constexpr std::uint16_t no_envelope = 0xFFFF;

struct EnvelopeSize {
  std::string_view name;
  std::span<const std::string_view> others;
  std::string_view written;
  Length width, height;
  Unit unit;
  std::string_view takes;          // the card that is put into it, as written; empty where nobody says
  Length card_width, card_height;  // of that card; zero without one
  std::uint16_t also_meant;        // the place of the envelope that some mean by this name, or no_envelope
  FigureSource from;
};

// A name said of a card, and what it is read as.
struct CardName {
  std::string_view name;  // folded
  Length width, height;   // the card, upright
  Unit unit;
  std::string_view means;  // what it was read as
  std::string_view other;  // what else it could be, or empty
  std::string_view asks;   // a question for that
};

struct PaperGrade {
  std::string_view name;
  std::span<const std::string_view> others;
  std::string_view written;  // the basic size
  Length width, height;
  std::int64_t sheets;  // how many of that size weigh the pounds
  FigureSource from;
};

struct CaliperEntry {
  std::string_view stock;
  std::int64_t mg_m2;
  Length thickness;
  FigureSource from;
};

// What a postal limit is of, in the order of limit_words.
enum class LimitOf { length, width, thickness, mass, aspect };
inline constexpr std::string_view limit_words[] = {"length", "width", "thickness", "mass", "aspect"};

struct PostLimit {
  LimitOf of;
  bool most;                 // at most; else at least. Reached is kept
  std::int64_t figure;       // nm or mg; for aspect hundredths
  std::string_view written;  // "6-1/8 in", "3.5 oz"
  // Holds only for an item that is longer or wider than these; both zero: for all.
  Length if_longer, if_wider;
  std::string_view otherwise;  // the verdict where it is not kept; empty: the item is not of this format
  FigureSource from;
};

struct PostFormat {
  std::string_view name, verdict;
  std::span<const PostLimit> limits;
  std::span<const std::string_view> also;  // what has to be looked at by hand
  FigureSource from;
};

struct PostService {
  std::string_view name, country;
  std::span<const PostLimit> least;  // for all formats
  std::string_view below;            // the verdict where one of these is not kept
  std::span<const PostFormat> formats;
  std::string_view beyond;  // the verdict where no format takes it
  std::span<const std::string_view> also;
  FigureSource from;
};

// A name of an entry of a table, as label_key (schema/label_key.h) has it.
struct NameAt {
  std::string_view key;
  std::uint16_t at;
};

struct PaperTables {
  std::span<const PaperSize> papers;
  std::span<const NameAt> paper_names;  // by key
  std::span<const EnvelopeSize> envelopes;
  std::span<const NameAt> envelope_names;
  std::span<const CardName> card_names;
  std::span<const PaperGrade> grades;
  std::span<const CaliperEntry> calipers;  // lightest first, thicker with each
  std::span<const PostService> services;
};
const PaperTables& paper_tables();

// Null where nothing has that name. Small and capital letters, hyphens and plurals do not matter, nor does
// "paper" or "sheet" behind a paper, "envelope" before or behind an envelope. "A2" is the ISO sheet among the
// papers and the American envelope among the envelopes; "A2 envelope" is no paper.
const PaperSize* paper_size_named(std::string_view text);
const EnvelopeSize* envelope_named(std::string_view text);
const CardName* card_named(std::string_view folded);

}  // namespace insetbook
