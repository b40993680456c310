// SPDX-License-Identifier: GPL-3.0-or-later
//
// What a recogniser sees in a run of pieces: one offer. The cover (cover.h) chooses among the offers; what
// they stand for in the book is looked up only for those chosen.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/fields.h"
#include "language/names.h"
#include "language/question.h"
#include "language/vocabulary.h"

namespace insetbook {

enum class As {
  text,      // understood as nothing: looked for as a word
  phrase,    // in quotes
  filler,    // falls away, and is said to
  article,   // a filler that shows that something new begins
  mark,      // punctuation
  joins,     // and, with, plus, using
  comma,     // , ;
  either,    // or
  excludes,  // not, no, without, a minus sign before a word
  opens,
  closes,       // brackets
  group,        // with: before a bracket
  preposition,  // on, in, behind …
  card,         // the card itself: a size beside it is its closed size
  pieces,       // pieces of whatever kind: what the number before it counts
  paper,
  ink,  // say how the colour before them is used
  tall,
  wide,
  order,   // "newest", "the last five cards"
  within,  // how far from the size before it a piece may be
  each,    // one of those counted before
  number,  // a whole number that may be a count or a size
  term,    // of a vocabulary
  named,   // a colour or a supply of the book
  like,    // a colour near another
  says,    // finished: sizes, dates, dies, sides, fields …
  unread,  // a field or a day that cannot be: it falls away, and is told as a problem
};

// The word of an `unread` that is no field, but a day the calendar has not.
inline constexpr std::string_view no_such_day = "no such day";
// "smallest card": samples are put into no such order.
inline constexpr std::string_view no_such_order = "no such order";
// "smallest circle", where no set of dies has that name: nor are pieces.
inline constexpr std::string_view no_such_order_of_pieces = "no such order of pieces";

// Among offers of equal cover: what was said outright comes before what has to be guessed.
namespace priority_of {
inline constexpr int number = 1;
inline constexpr int name = 2;
inline constexpr int term = 3;
inline constexpr int own_name = 4;  // a name of the book that is also a word for a material or a role
inline constexpr int small_word = 4;
inline constexpr int size = 5;
inline constexpr int side = 6;
inline constexpr int date = 7;
inline constexpr int field = 9;
}  // namespace priority_of

// What a status is said of: "retired colours", "withdrawn stamps".
enum class StatusOf { colours, papers, inks, dies, supplies, kind };
struct StatusNoun {
  std::size_t last = 0;  // the piece behind it
  StatusOf of = StatusOf::supplies;
  std::string kind;  // kind: of supply, as recorded
};

struct Seen {
  As as = As::text;
  std::size_t first = 0, last = 0;  // pieces, half-open
  Span span;
  int weight = 0;    // how much is understood: 2 for a piece, 1 where it may yet come to nothing, 0 for text
  int priority = 0;  // among offers of equal cover
  std::string word;  // folded
  std::vector<TermMatch> terms;    // term: the meanings, likeliest first
  std::vector<NamedRecord> named;  // named, like
  std::optional<Says> says;
  std::vector<Says> also;  // term: what else the word says of a piece: a material of a role, "inside panel"
  std::string also_means;  // where one says does not tell all
  std::vector<Says> besides;  // any of them meets what was asked as well: glue where a piece is popped up
  std::optional<StatusNoun> of_status;  // term: of the vocabulary of statuses
  std::optional<Shade> shade;           // term: of a basic colour word
  std::string means;                    // how it was read, where the says does not tell all
  bool bare = false;                    // number, size: no unit was said
  int number = 0;                       // also of an order: so many, or 0
  int most = 0;                         // number: of a range, "2 to 3"; else 0
  bool oldest = false;                  // order: the oldest first
  bool exactly = false;                 // number: "exactly", "only" or "just" stood before it
  bool whole = true;                    // number: may be a count ("two"), not only a size ("2.5")
  bool counted = false;                 // named: of the supply, several behind a number
  bool field = false;                   // said as a field
  bool dash = false;                    // excludes: a minus sign
  bool outright = false;                // excludes: "no" or a minus sign: never said of the piece before
  bool excluded = false;                // says: not so; "with a photo" is that there is no lack of one
  bool by = false;  // die: "from", "cut by", "in" stood before it: it is said of the piece before
  std::vector<OtherReading> other;
  std::vector<std::string> notes;
  std::vector<Seen> more;  // die: the others of its set that stand behind it, with what joins them
};

std::string print(const std::vector<Seen>& seen, std::string_view text);

}  // namespace insetbook
