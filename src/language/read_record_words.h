// SPDX-License-Identifier: GPL-3.0-or-later
//
// The words that a record's lines begin with, folded: what may stand before a colon, headings, and what is
// done in a step.
#pragma once

#include <array>
#include <string_view>

namespace insetbook {

enum class RecordKey {
  title,
  base,
  scores,
  finished,
  made,
  words,
  envelope,
  step,
  note,
  term,
  supply,
  based_on,
  side
};
enum class RecordMode { pieces, steps, supplies, notes };

struct RecordKeyWord {
  std::string_view words;
  RecordKey key;
};
// What may stand before a colon, folded.
inline constexpr RecordKeyWord record_key_words[] = {
    {"title", RecordKey::title},
    {"name of the card", RecordKey::title},
    {"card base", RecordKey::base},
    {"base", RecordKey::base},
    {"scores", RecordKey::scores},
    {"score", RecordKey::scores},
    {"score lines", RecordKey::scores},
    {"scored", RecordKey::scores},
    {"finished", RecordKey::finished},
    {"finished size", RecordKey::finished},
    {"card size", RecordKey::finished},
    {"closed size", RecordKey::finished},
    {"closed", RecordKey::finished},
    {"made", RecordKey::made},
    {"date", RecordKey::made},
    {"date made", RecordKey::made},
    {"words", RecordKey::words},
    {"text", RecordKey::words},
    {"envelope", RecordKey::envelope},
    {"step", RecordKey::step},
    {"note", RecordKey::note},
    {"notes", RecordKey::note},
    {"nb", RecordKey::note},
    {"tip", RecordKey::note},
    {"technique", RecordKey::term},
    {"techniques", RecordKey::term},
    {"occasion", RecordKey::term},
    {"occasions", RecordKey::term},
    {"fold", RecordKey::term},
    {"folds", RecordKey::term},
    {"feature", RecordKey::term},
    {"features", RecordKey::term},
    {"supply", RecordKey::supply},
    {"supplies", RecordKey::supply},
    {"materials", RecordKey::supply},
    {"adhesive", RecordKey::supply},
    {"adhesives", RecordKey::supply},
    {"glue", RecordKey::supply},
    {"based on", RecordKey::based_on},
    {"front", RecordKey::side},
    {"inside", RecordKey::side},
    {"back", RecordKey::side},
    {"on the front", RecordKey::side},
    {"on the inside", RecordKey::side},
    {"on the back", RecordKey::side},
    {"outside", RecordKey::side},
    {"card front", RecordKey::side},
    {"inside left", RecordKey::side},
    {"inside right", RecordKey::side},
    {"inside the card", RecordKey::side},
};

struct RecordHeading {
  std::string_view words;
  RecordMode mode;
};
inline constexpr RecordHeading record_headings[] = {
    {"steps", RecordMode::steps},         {"instructions", RecordMode::steps},
    {"directions", RecordMode::steps},    {"method", RecordMode::steps},
    {"how to", RecordMode::steps},        {"to make it", RecordMode::steps},
    {"making it", RecordMode::steps},     {"supplies", RecordMode::supplies},
    {"materials", RecordMode::supplies},  {"stamps", RecordMode::supplies},
    {"inks", RecordMode::supplies},       {"ink", RecordMode::supplies},
    {"tools", RecordMode::supplies},      {"adhesive", RecordMode::supplies},
    {"adhesives", RecordMode::supplies},  {"supplies used", RecordMode::supplies},
    {"notes", RecordMode::notes},         {"note", RecordMode::notes},
    {"tips", RecordMode::notes},          {"pieces", RecordMode::pieces},
    {"parts", RecordMode::pieces},        {"layers", RecordMode::pieces},
    {"elements", RecordMode::pieces},     {"cut", RecordMode::pieces},
    {"cutting list", RecordMode::pieces}, {"cut list", RecordMode::pieces},
    {"measurements", RecordMode::pieces}, {"dimensions", RecordMode::pieces},
    {"sizes", RecordMode::pieces},        {"you will need", RecordMode::pieces},
    {"you need", RecordMode::pieces},     {"card stock", RecordMode::pieces},
    {"cardstock", RecordMode::pieces},    {"paper", RecordMode::pieces},
    {"card", RecordMode::pieces},
};

// The entry of exactly these words; "step 3" too. Null when there is none.
inline const RecordKeyWord* record_key(std::string_view folded) {
  for (const RecordKeyWord& each : record_key_words)
    if (each.words == folded) return &each;
  if (folded.starts_with("step ") && folded.find_first_not_of("0123456789", 5) == std::string_view::npos)
    return record_key("step");
  return nullptr;
}

// What a step begins with, when its line is numbered, or the next word shows that it is no name ("glue the").
inline constexpr auto doing_words = std::to_array<std::string_view>(
    {"add",    "adhere",  "apply",    "arrange",  "assemble", "attach", "blend",   "bring",  "burnish",
     "choose", "close",   "colour",   "color",    "cover",    "crease", "cut",     "dab",    "decorate",
     "die",    "draw",    "dry",      "emboss",   "fasten",   "finish", "fit",     "flip",   "fold",
     "glue",   "heat",    "hold",     "ink",      "insert",   "join",   "layer",   "lay",    "leave",
     "let",    "line",    "make",     "mark",     "mask",     "mat",    "measure", "mount",  "open",
     "paint",  "peel",    "place",    "position", "press",    "print",  "pull",    "punch",  "push",
     "put",    "remove",  "repeat",   "rub",      "run",      "score",  "secure",  "set",    "slide",
     "snip",   "speckle", "splatter", "spray",    "sprinkle", "stamp",  "stick",   "stitch", "take",
     "tape",   "tear",    "thread",   "tie",      "trim",     "tuck",   "turn",    "use",    "wipe",
     "wrap",   "write"});
inline constexpr auto then_words = std::to_array<std::string_view>(
    {"the", "a", "an", "it", "them", "your", "both", "each", "all", "every", "this", "down", "together"});

}  // namespace insetbook
