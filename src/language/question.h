// SPDX-License-Identifier: GPL-3.0-or-later
//
// A question as it was understood: the tree between the reader (language/read_question.h) and the search
// (search/plan.h). The tree says what is asked, never how it is looked up. `print` gives the form that `find
// --explain` shows and that the table tests compare; `print_as_fields` gives a question that reads back to
// the same tree.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "language/goes.h"
#include "language/vocabulary.h"
#include "measure/size.h"
#include "text/problem.h"

namespace insetbook {

// Where in the question something stands: bytes, half-open. {0, 0}: nowhere (it was added by a rule).
struct Span {
  std::size_t begin = 0;
  std::size_t end = 0;
  bool operator==(const Span&) const = default;
};

// How a length is compared. Tolerances: exact 1/32 in or 0.8 mm, about 1/8 in or 3 mm, by the unit it was
// asked in.
enum class Relation { exact, about, under, over, at_least, at_most, between };

// --- what may be said of one piece ---

struct SizeIs {
  Relation relation = Relation::exact;
  // One figure: the width or height asked (either side for exact and about, both sides for under and over).
  // Two: both. between: low and high in `low`/`high`, one figure.
  bool one_figure = true;
  Length low, high;     // the first figure, or the range
  Length second;        // the second figure of a two-sided size (relation then holds for both)
  bool placed = false;  // orientation was said: first figure is the width
  bool height = false;  // one figure and placed: the figure is the height ("3 in tall"), not the width
  std::optional<Length> tolerance;  // "±1/16 in"
  Unit unit = Unit::inch;
  bool operator==(const SizeIs&) const = default;
};
struct ShapeIs {
  std::vector<std::string> terms;
  bool operator==(const ShapeIs&) const = default;
};  // the term and its narrower ones
// What a piece is for, as it was recorded, or as its own name says: a die cut called "oval frame" is a frame
// too. `called`: the labels of the term that was asked for, folded, singular and plural, none within another.
struct RoleIs {
  std::vector<std::string> terms;
  std::vector<std::string> called = {};
  bool operator==(const RoleIs&) const = default;
};
enum class ColourUse { paper, ink, either };
struct ColourIs {
  ColourUse use = ColourUse::either;
  std::vector<std::int64_t>
      colours;       // ids of colour records: one named, or all of a basic colour word or `like:`
  std::string said;  // "sage", "green (by value)", "like sage, within 10"
  bool operator==(const ColourIs&) const = default;
};
struct TechniqueIs {
  std::vector<std::string> terms;
  bool operator==(const TechniqueIs&) const = default;
};  // of the piece, or of the sample where it stands alone
struct MaterialIs {
  std::vector<std::string> terms;
  bool operator==(const MaterialIs&) const = default;
};
struct SupplyIs {
  std::vector<std::int64_t> supplies;
  std::string said;
  bool operator==(const SupplyIs&) const = default;
};
// A die set, with the order or label of a die and a line where they were said. How: cut by it, or lying in
// it.
struct DieIs {
  std::vector<std::int64_t> dies;  // die ids that were meant (all of the set when none was singled out)
  std::string line;                // "stitched", or empty
  bool lies_in = false;            // "in the second largest …": the piece lies in that line
  std::string said;
  // Sets that were meant whole: pieces that name only the set are meant too, and a set may have no dies yet.
  std::vector<std::int64_t> sets = {};
  bool any = false;  // by whatever die: "cut with a die"
  bool operator==(const DieIs&) const = default;
};
struct SideIs {
  std::string side;
  bool operator==(const SideIs&) const = default;
};  // front, inside, back
struct CountIs {
  int least = 1;
  bool operator==(const CountIs&) const = default;
};  // "two 2 in circles": so many pieces, counts added up

// How the piece is stuck. `keys` are those of all labels of the terms (schema/label_key.h), sorted: what was
// written of glue is held against them.
struct GlueIs {
  std::vector<std::string> terms;
  std::vector<std::string> keys = {};
  bool operator==(const GlueIs&) const = default;
};

// Where it sits: "high of centre", "in the bottom right corner". The words that tell one place from another
// (place_words), held against those of what was written of the piece's place.
struct PlaceIs {
  std::vector<std::string> words;
  bool operator==(const PlaceIs&) const = default;
};

// How the piece goes with another: the constraint of a `goes` node.
struct GoesIs {
  GoesHow how = GoesHow::on;
  bool operator==(const GoesIs&) const = default;
};

// --- what may be said of the sample ---

struct FoldIs {
  std::vector<std::string> terms;
  std::string said;
  bool operator==(const FoldIs&) const = default;
};
struct FeatureIs {
  std::vector<std::string> terms;
  bool operator==(const FeatureIs&) const = default;
};
struct OccasionIs {
  std::vector<std::string> terms;
  bool operator==(const OccasionIs&) const = default;
};
struct ClosedSizeIs {  // "5 x 7 cards", "A6 card", "square cards", "landscape"
  std::optional<SizeIs> size;
  enum class Form { any, square, landscape, portrait } form = Form::any;
  std::string said;
  bool operator==(const ClosedSizeIs&) const = default;
};
struct MadeIn {
  std::string from, to;
  bool operator==(const MadeIn&) const = default;
};  // ISO dates, both included; empty = open
struct WordsAre {
  std::vector<std::string> words;
  bool phrase = false;
  bool on_card = false;  // in the words that the card says, not anywhere in the record
  bool operator==(const WordsAre&) const = default;
};  // free text: all required, by stem; or a phrase
struct BasedOn {
  std::int64_t sample = 0;
  std::string said;
  bool operator==(const BasedOn&) const = default;
};
struct TitleIs {
  std::int64_t sample = 0;
  std::string said;
  bool operator==(const TitleIs&) const = default;
};
struct HasNo {
  std::string field;
  bool operator==(const HasNo&) const = default;
};  // "no photo" and the like: field is empty
// "in a C6 envelope", "4-3/8 x 5-3/4 in envelope": by its size, by a name of schema/papers/envelopes.json, or
// by words of what was written down. A name and its size find the same samples, however these were written.
struct EnvelopeIs {
  std::optional<SizeIs> size;
  std::vector<std::string> words = {};  // folded; of a name, those of the name
  std::string said = {};                // of a name, the name as the table has it
  bool named = false;                   // `said` is a name of the table
  bool operator==(const EnvelopeIs&) const = default;
};
// "more like Harbour Easel": samples that have much in common with it, those with most first; never itself.
struct AlikeTo {
  std::int64_t sample = 0;
  std::string said;
  bool operator==(const AlikeTo&) const = default;
};

using Says = std::variant<SizeIs, ShapeIs, RoleIs, ColourIs, TechniqueIs, MaterialIs, SupplyIs, DieIs, SideIs,
                          CountIs, FoldIs, FeatureIs, OccasionIs, ClosedSizeIs, MadeIn, WordsAre, BasedOn,
                          TitleIs, HasNo, GoesIs, AlikeTo, GlueIs, EnvelopeIs, PlaceIs>;

struct Constraint {
  Says says;
  std::string text;   // the words of the question, as typed: "2-3/8 in"
  std::string means;  // how it was read: "size 2-3/8 in, within 1/32 in"
  Span span;
};

// A node of the tree.
//   one     a constraint that the sample must meet (a technique alone: the sample or any piece of it)
//   piece   one piece that meets all children at once; children are `one` nodes, or `any` / `none` of `one`
//   nodes
//           (a colour or a technique excluded or offered within the piece)
//   goes    in a piece only: the piece goes with another one in the way of its GoesIs; its child is that
//   other piece, or
//           an `any` of such; no child: it goes so with anything ("a ribbon around the front"). The other
//           piece may be one that is asked for besides.
//   all     every child;  any: at least one child;  none: no child
struct Node {
  enum class Kind { one, piece, all, any, none, goes } kind = Kind::all;
  std::vector<Constraint> constraint;  // exactly one for `one` and `goes`, else empty
  std::vector<Node> children;
};

// Which answer the question is for.
//   samples     find's own
//   fits, frames, pairs   `subject` is the opening, or the size and shape
//   measured    "how big is …", "have I measured …": `subject` is a die, a set or an opening
//   unmeasured  "which dies are not measured yet"
//   kept        "where is …": where a set, a die or a supply is stored
//   nearest     colours near one
//   convert     "3-7/16 in mm": `subject` is the length or size, `unit` what it is wanted in
//   show        a record by name
//   dies        "do I have a 3 inch circle die": `subject` is the size and shape, as a question says them
//   tried       "what did I try in tidepool 2": `subject` is the opening, or empty; `result` as recorded
//   used        "what did I use the moth stamps for": samples that use what `subject` names, all or in part
enum class Asks {
  samples,
  fits,
  frames,
  pairs,
  measured,
  unmeasured,
  kept,
  nearest,
  convert,
  show,
  dies,
  tried,
  used
};

struct Ignored {
  std::string word;  // as typed
  std::string why;   // "filler"
  Span span;
};

// A reading that was not taken but could have been: "A2: an American envelope card, 4-1/4 x 5-1/2 in; or the
// ISO sheet".
struct OtherReading {
  std::string text;
  std::string taken;
  std::string other;
};

// "newest easels", "the last five cards": in the order of their dates, and so many of them.
struct AskedOrder {
  bool oldest_first = false;
  std::optional<int> most;
};

struct Question {
  std::string text;  // as typed
  Asks asks = Asks::samples;
  Node tree;                        // samples: kind `all` at the top
  std::optional<AskedOrder> order;  // samples: where one was said
  std::vector<Problem> problems;    // what could not be read, each with its place; the tree is of the rest
  std::vector<Ignored> ignored;
  std::vector<OtherReading> other_readings;
  std::vector<std::string> notes;  // anything a person should know of the reading ("today is 2026-11-25")
  std::string subject;             // see Asks
  std::optional<Unit> unit;        // convert: the unit wanted
  bool centimetres = false;        // convert: mm are wanted as cm
  std::string border;              // fits, frames: a border as said, or empty
  std::string panel_shape;         // fits: "which circle fits …": the shape word, or empty
  std::string opening_shape;       // frames: "which circle goes round …": the term, or empty
  bool goes_round = false;         // frames: something is to show all round
  std::string panel;               // fits: "does a 3 x 4 in panel fit …": that panel, or empty
  std::string in_set;              // frames: "which tidepool rectangle frames …": the set's name, or empty
                                   // (dies: only dies of this set)
  bool colour = false;             // show: its colour is asked
  std::string result;              // tried: fits, too tight or too loose, or empty
};

// How far from the figure a piece may be: exact 1/32 in or 0.8 mm, about 1/8 in or 3 mm, else what was said;
// 0 for the other relations.
Length tolerance(const SizeIs& size);

// Whether they ask the same, in whatever words.
bool asks_the_same(const Node& a, const Node& b);

// The same figure with another unit: 2 in → 2 mm, for a figure written without one.
Length in_unit(Length figure, Unit from, Unit to);

// "all(piece(size=2-3/8in ±1/32in, shape=circle), fold=stand up fold)"
std::string print(const Node& node);
std::string print(const Question& question);
// "with:(shape:circle size:2-3/8in) fold:stand-up"
std::string print_as_fields(const Question& question);

}  // namespace insetbook
