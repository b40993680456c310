// SPDX-License-Identifier: GPL-3.0-or-later
//
// The fields that a question can name, in one table: parsing, help, `print_as_fields` and the index read it.
// To add a field: a line here, what it says in question.h, a reader in field_values.cc, a printed form in
// print_fields.cc. Each example is asked by a test. `slot` is the number under which the index keeps the
// field's value; it is written out and never used for another field again.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace insetbook {

enum class FieldName {
  size,
  shape,
  role,
  colour,
  paper,
  ink,
  like,
  technique,
  material,
  supply,
  die,
  in,
  side,
  count,
  fold,
  feature,
  occasion,
  closed,
  made,
  text,
  based,
  title,
  no,
  with,
  on,
  behind,
  around,
  through,
  alike,
  words,
  glue,
  envelope,
  at,
};

enum class FieldKind { term, size, date, text, name, number, group };

struct Field {
  FieldName id;
  std::string_view name;
  std::string_view other_names;  // separated by spaces
  FieldKind kind;
  bool of_piece;            // else of the sample
  std::string_view stored;  // where its value is kept: table.column
  int slot;
  std::string_view help;     // one line
  std::string_view example;  // a question that uses it
};

inline constexpr Field fields[] = {
    {FieldName::size, "size", "measures", FieldKind::size, true, "element.width_nm, element.height_nm", 1,
     "the size of a piece: exact, about, under, over, a range", "size:2-3/8in"},
    {FieldName::shape, "shape", "shapes", FieldKind::term, true, "element.shape", 2, "the shape of a piece",
     "shape:circle"},
    {FieldName::role, "role", "piece element", FieldKind::term, true, "element.role", 3,
     "what a piece is for", "role:mat"},
    {FieldName::colour, "colour", "color colours colors", FieldKind::name, true, "mention.colour_id", 4,
     "a colour of paper or ink, by name or by a basic colour word", "colour:sage"},
    {FieldName::paper, "paper", "papers", FieldKind::name, true, "mention.colour_id of kind paper", 5,
     "the colour of the paper", "paper:white"},
    {FieldName::ink, "ink", "inks", FieldKind::name, true, "mention.colour_id of kind ink", 6,
     "the colour of the ink", "ink:navy"},
    {FieldName::like, "like", "", FieldKind::name, true, "colour.srgb", 7,
     "a colour near one by name or value, within 10 unless said", "like:sage"},
    {FieldName::technique, "technique", "techniques how", FieldKind::term, true,
     "mention.term of kind technique", 8, "how a piece, or the whole card, was treated",
     "technique:\"dry embossing\""},
    {FieldName::material, "material", "materials", FieldKind::term, true, "mention.term of kind material", 9,
     "what a piece is made of", "material:vellum"},
    {FieldName::supply, "supply", "supplies", FieldKind::name, true, "mention.supply_id", 10,
     "a supply by its name", "supply:\"garden gate\""},
    {FieldName::die, "die", "dies set cut", FieldKind::name, true, "element.die_id", 11,
     "the die or set a piece was cut by", "die:\"moonrise circles 3\""},
    {FieldName::in, "in", "inside", FieldKind::name, true, "element.in_line_id", 12,
     "the die in whose line a piece lies", "in:\"tidepool rectangles 2\""},
    {FieldName::side, "side", "where", FieldKind::term, true, "element.side", 13, "front, inside or back",
     "side:inside"},
    {FieldName::count, "count", "", FieldKind::number, true, "element.count", 14, "at least so many pieces",
     "with:(shape:circle count:2)"},
    {FieldName::fold, "fold", "folds", FieldKind::term, false, "mention.term of kind fold", 15,
     "how the card is folded", "fold:stand-up"},
    {FieldName::feature, "feature", "features", FieldKind::term, false, "mention.term of kind feature", 16,
     "a moving part, a window, a pocket", "feature:shaker"},
    {FieldName::occasion, "occasion", "occasions", FieldKind::term, false, "mention.term of kind occasion",
     17, "what the card is for", "occasion:birthday"},
    {FieldName::closed, "closed", "card finished", FieldKind::size, false,
     "sample.closed_width_nm, sample.closed_height_nm", 18,
     "the size of the closed card, or square, landscape, portrait", "closed:\"5 x 7 in\""},
    {FieldName::made, "made", "date year", FieldKind::date, false, "sample.made", 19,
     "when it was made: a day, a month, a year, a span", "made:2023"},
    {FieldName::text, "text", "word", FieldKind::text, false, "the index", 20,
     "a word anywhere in the record", "text:\"happy birthday\""},
    {FieldName::based, "based", "from", FieldKind::name, false, "sample.based_on", 21,
     "the sample it is based on", "based:\"harbour easel\""},
    {FieldName::title, "title", "sample", FieldKind::name, false, "sample.title", 22,
     "the sample of that name", "title:\"harbour easel\""},
    {FieldName::no, "no", "without missing", FieldKind::term, false, "the field named", 23,
     "nothing is recorded there: photo, envelope, made, note, steps, words, occasion, fold", "no:photo"},
    {FieldName::with, "with", "", FieldKind::group, true, "", 24, "what one piece has, all of it",
     "with:(shape:circle size:2-3/8in)"},
    {FieldName::on, "on", "upon", FieldKind::group, true, "element.goes_to", 25, "the piece it lies on",
     "with:(shape:circle on:(shape:square))"},
    {FieldName::behind, "behind", "under", FieldKind::group, true, "element.goes_to", 26,
     "the piece it lies behind", "with:(role:mat behind:(shape:circle))"},
    {FieldName::around, "around", "round", FieldKind::group, true, "element.goes_to", 27,
     "the piece it goes around", "with:(role:ribbon around:(role:mat))"},
    {FieldName::through, "through", "", FieldKind::group, true, "element.goes_to", 28,
     "the piece it goes through", "with:(role:ribbon through:(role:panel))"},
    {FieldName::alike, "alike", "", FieldKind::name, false, "the sample's pieces and terms", 29,
     "samples that have much in common with that one", "alike:\"harbour easel\""},
    {FieldName::words, "words", "says saying sentiment", FieldKind::text, false, "sample.words", 30,
     "what the card says", "words:\"happy birthday\""},
    {FieldName::glue, "glue", "adhesive adhesives stuck", FieldKind::term, true, "element.glue", 31,
     "what a piece is stuck with", "glue:foam"},
    {FieldName::envelope, "envelope", "envelopes", FieldKind::text, false, "sample.envelope", 32,
     "the envelope it goes into, by its size or by words of it", "envelope:C6"},
    {FieldName::at, "at", "place placed", FieldKind::text, true, "element.at", 33,
     "where on the card or on another piece it sits", "at:\"high of centre\""},
};

const Field& field(FieldName id);
// By its name or another name of it, folded; null when there is none.
const Field* field_named(std::string_view folded);
// The names nearest to a misspelt one, nearest first, at most three.
std::vector<std::string> fields_like(std::string_view folded);

}  // namespace insetbook
