// SPDX-License-Identifier: GPL-3.0-or-later
//
// Between cover and tree: the chosen offers as items, with what neighbours say of each other settled. A
// colour before "paper" or "ink", or after a technique and "in", gets its use; two neighbours of one kind
// with "or" between them become one item; a bracket around one item falls away, unless it is a single field
// of a colour, technique or other property: "circle (technique:stamping)" says nothing of the circle. A
// preposition before a piece, or before a bracket that begins with one, says how pieces go together ("inside"
// too, where a piece stands before it); before a bare colour how that is used; before what is said of the
// card ("circle on a white card") that is put into a bracket, so that nothing of it is said of the piece;
// "around", "behind" and "through" may stand alone ("a ribbon around the front"); any other falls away. The
// steps have files of their own: colour_uses, parallel_phrases, or_neighbours, settle_prepositions,
// offer_as_text.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/pieces.h"
#include "language/seen.h"

namespace insetbook {

struct Item {
  enum class Kind {
    says,
    joins,
    comma,
    either,
    excludes,
    opens,
    group,
    closes,
    preposition,
    card,
    tall,
    wide,
    number,
    each  // one of those counted before: gone when the items are settled
  } kind = Kind::says;
  std::vector<Constraint> offered;  // says: one, or those bound by "or"; number: as a size
  FieldName of = FieldName::text;   // says: what it is about; paper and ink as `colour`, glue as `technique`
  std::string word;
  bool article = false;                 // an article stood before it
  bool field = false;                   // said as a field
  bool by = false;                      // a die after "from" or "in"
  std::optional<GoesHow> how;           // preposition, group: how the piece before goes with what follows
  bool back = false;                    // preposition: "behind it", with the piece before
  bool alone = false;                   // preposition: with no piece that is said, "around the front"
  bool dash = false, outright = false;  // excludes
  bool same_piece = false;              // colour: of the piece that the one before is of
  bool unsure = false;                  // a word that more often is no term: looked for as text as well
  bool term = false;                    // of a vocabulary
  bool counted = false;                 // a supply of that name, which also is a word for a role
  bool exactly = false;                 // number: "exactly", "only" or "just" stood before it
  std::vector<Constraint> also;  // says: the same word read otherwise, all of it: the role as a material
  bool whole = false;            // number: may be a count
  bool pieces = false;           // number: of pieces of whatever kind
  int number = 0;
  int most = 0;  // number: of a range, "2 to 3"; else 0
  Span span;
};

struct Itemised {
  std::vector<Item> items;
  std::optional<AskedOrder> order;
  std::vector<Ignored> ignored;
  std::vector<OtherReading> other;
  std::vector<std::string> notes;
};

Itemised itemise(std::string_view text, const std::vector<Piece>& pieces, std::vector<Seen> seen);

// Whether it is said of a piece; the others are said of the sample.
bool says_of_piece(const Item& item);
// Shapes, roles and dies that are named outright: what a phrase about a piece turns on.
bool is_head(const Item& item);
// Whether a phrase of the piece that begins at `at` has a head in it, a few items ahead.
bool head_ahead(const std::vector<Item>& items, std::size_t at);

// Words that are looked for as text; several are a phrase.
WordsAre text_of(std::string_view folded);

// Tells that the item falls away.
void ignore_item(std::string_view text, Itemised& out, const Item& item, std::string why);

Constraint constraint_of(std::string_view text, Span span, Says says, std::string means);

}  // namespace insetbook
