// SPDX-License-Identifier: GPL-3.0-or-later
//
// The records of the book as plain structs, one for each table a person keeps, and the functions that put
// them in, inside a change. `put_…` finds the record by what tells it apart (4-tables: set + die + line, kind
// + set + name + colour, sample, sample + element), writes it when it is new or differs, and says which it
// was. Nothing here reads text a person typed: readers of files and of lines hand in finished values. Every
// field of a row is written, blank ones too: who has only some of the fields reads the record first.
// (put_line is the exception: see there.)
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "book/evidence.h"

namespace insetbook {

enum class PutResult { added, changed, same };

struct SizeOnRecord {  // a size of a supply, base or piece; empty width: none known
  std::optional<Length> width, height;
  Unit unit = Unit::inch;
  bool placed = false;
  std::string text;  // as written
  bool operator==(const SizeOnRecord&) const = default;
};

// The size of a piece as it is kept. One figure is both sides of a circle or a square; of any other shape,
// and where none is said, it is a width alone (of a ribbon, a strip).
bool one_figure_is_both(std::string_view shape);
SizeOnRecord size_of_piece(const Size& size, std::string_view shape, std::string text);

struct LineRow {            // one row of the dies table
  std::string set, die;     // die: its label as recorded ("2")
  std::optional<int> rank;  // where the label is an order
  std::string line;         // name: "stitched", "window 2"
  std::string line_kind;
  std::string shape, figures, outline, outline_unit;
  std::optional<Measured> measured;  // empty: not yet measured
  std::string maker, code, stored_in, status, note;
};
struct PutLine {
  PutResult result = PutResult::same;
  std::int64_t line_id = 0;
  std::optional<MeasureOutcome> measurement;
};
// A blank maker, code, place, status, note, shape, figures or outline leaves what is there. Where rows of one
// change give a set two makers, or a die two codes, the first one stands. Code, place and status that the
// die's set has already are not said again at the die; the row that makes a set says them of the set.
Result<PutLine> put_line(Change& change, const LineRow& row);

struct TriedRow {
  std::int64_t line_id = 0;
  std::string shape;
  Length width, height;
  Unit unit = Unit::inch;
  std::string result;  // fits, too tight, too loose
  std::string date;
  std::optional<std::int64_t> sample_id;
  std::string note;
};
// Tried twice on one day with two results, it is two pieces of evidence: both are kept, in the order in which
// they were put in.
Result<PutResult> put_tried(Change& change, const TriedRow& row);
// A row of a table, where one that says another result than before was corrected: it takes the place of a
// record that no other row of the change speaks of. Two rows with two results are two records here too.
Result<PutResult> put_tried_of_table(Change& change, const TriedRow& row);

struct SupplyRow {
  std::string kind, set_name, name, words;
  std::string colour;                         // name of the colour record, made when it is new; empty: none
  std::optional<std::uint32_t> colour_value;  // 0xrrggbb: becomes the value of the colour
  SizeOnRecord size;
  std::string weight_text;
  std::optional<std::int64_t> weight_mg_m2;
  std::optional<Length> thickness;
  std::string from_date, until_date, status, have, cut_by, instead, stored_in, price, note;
  std::string uuid;  // from another book; empty: a new one is made. A record that is there keeps its own
};
// How a supply is told apart, and the folded names under which it is found.
std::string supply_key(std::string_view kind, std::string_view set_name, std::string_view name,
                       std::string_view colour);
struct SupplyNameKeys {
  std::string name;  // its name, or its colour where it has none
  std::string full;  // its set and that
};
SupplyNameKeys supply_name_keys(std::string_view set_name, std::string_view name, std::string_view colour);
Result<PutResult> put_supply(Change& change, const SupplyRow& row);

// What is said of a sample or a piece: see the table `mention`.
struct Mention {
  std::string kind;  // fold, technique, feature, occasion, material, paper, ink, supply
  std::optional<std::string> term;
  std::optional<std::int64_t> colour_id, supply_id;
  std::string written;
  bool operator==(const Mention&) const = default;
};

struct PhotoOnRecord {
  std::string file_name, hash;
  bool operator==(const PhotoOnRecord&) const = default;
};

struct SampleRow {
  std::string title, made;
  SizeOnRecord base;
  std::string scores;  // '; ' between them
  std::string finished_text;
  std::optional<Length> closed_width, closed_height;
  Unit closed_unit = Unit::inch;
  std::string words, envelope, steps, based_on, note;
  std::vector<Mention> mentions;  // of the sample itself, in order
  std::vector<PhotoOnRecord> photos;
  std::string meant;  // see set_meant
  std::string uuid;   // as in SupplyRow
};
Result<std::pair<PutResult, std::int64_t>> put_sample(Change& change, const SampleRow& row);

struct ElementRow {
  std::int64_t sample_id = 0;
  int position = 0;  // 0: after the last one, or where it is
  std::string name, role, side, shape;
  SizeOnRecord size;
  std::optional<std::int64_t> set_id, die_id, line_id, in_line_id, goes_to;
  std::string goes, goes_how, at, glue, note;
  int count = 1;
  std::vector<Mention> mentions;
  std::string meant;  // see set_meant
};
Result<std::pair<PutResult, std::int64_t>> put_element(Change& change, const ElementRow& row);

// Problems of the card check that the person has answered "meant": codes, '; ' between them, of a piece or of
// the card as a whole. They are no part of what tables and lines say, so put_sample and put_element leave
// them. Whether anything changed.
bool set_meant(Change& change, std::int64_t sample_id, std::optional<std::int64_t> element_id,
               std::string_view codes);

// Reading back, in the order a person would list them.
std::optional<SampleRow> sample(const Book& book, std::int64_t id);
std::vector<std::pair<std::int64_t, ElementRow>> elements_of(const Book& book, std::int64_t sample_id);
std::optional<SupplyRow> supply(const Book& book, std::int64_t id);

std::optional<std::int64_t> sample_titled(const Book& book, std::string_view folded);
std::optional<std::int64_t> set_named(const Book& book, std::string_view folded);
std::optional<std::int64_t> colour_named(const Book& book, std::string_view folded);
// The colour of that name, made when it is new.
Result<std::int64_t> put_colour(Change& change, std::string_view name, std::optional<std::uint32_t> srgb);

}  // namespace insetbook
