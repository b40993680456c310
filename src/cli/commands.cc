// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/commands.h"

#include <algorithm>
#include <array>

#include "cli/run.h"
#include "text/utf8.h"

namespace insetbook::cli {
namespace {

constexpr Option every_command[] = {
    {"book", "DIR", "the book's folder (else INSETBOOK, else the usual place for data)"},
    {"json", "", "one JSON object in place of text"},
    {"help", "", "what the command does, its options and an example"},
    {"version", "", "the program's version"},
};

constexpr Option import_options[] = {
    {"as", "KIND",
     "what the tables are: dies, tried, supplies, samples or elements (else seen from the columns)"},
    {"all-or-nothing", "", "keep nothing if one row is refused"},
    {"refused", "FILE", "write the refused rows as a table to mend"},
    {"dry-run", "", "only tell what would be done"},
    {"dates", "dmy|mdy", "how to read dates such as 3/8/2026"},
    {"set", "NAME", "a drawing: what the set is called (its title or the file's name unless said)"},
    {"scale", "LENGTH", "a drawing without real units: the length of one, \"1 mm\", or \"96 = 1 in\""},
    {"lines", "LINES", "a drawing: what a stroke, class or name is, \"red = stitched; guide = pierced\""},
};
constexpr Option find_options[] = {
    {"limit", "N", "show at most N samples (20 unless asked)"},
    {"sort", "ORDER", "best, newest, oldest or title (best unless asked)"},
    {"facets", "", "say how many of them have each fold, technique, colour, occasion, year and closed size"},
    {"explain", "", "show each stage of the reading and of the search"},
};
constexpr Option fits_options[] = {
    {"border", "LENGTH", "the border that shows on each side"},
    {"shape", "SHAPE", "only panels of this shape"},
    {"width", "LENGTH", "a panel of this width: how high may it be"},
    {"height", "LENGTH", "a panel of this height: how wide may it be"},
    {"because", "", "say what holds each computed panel: where the line is nearest to it"},
    {"cut-step", "LENGTH", "round down to this mark of the trimmer (the setting otherwise)"},
};
constexpr Option frames_options[] = {
    {"shape", "SHAPE", "the panel's shape (circle for one figure, rectangle for two)"},
    {"border", "LENGTH", "at least this border on each side (0 unless asked)"},
    {"in", "SET", "only dies of this set"},
    {"limit", "N", "show at most N openings (40 unless asked)"},
};
constexpr Option pairs_options[] = {
    {"border", "LENGTH", "only pairs whose strip is so wide"},
    {"limit", "N", "show at most N around it and N in it (20 unless asked)"},
};
constexpr Option measure_options[] = {
    {"size", "SIZE", "the new figure; without it: what is known"},
    {"sizes", "SIZES", "a whole set in one line, largest first, \"; \" between them"},
    {"method", "METHOD",
     "ruler, callipers, scan, drawing, maker's figure or estimated (a ruler unless said)"},
    {"read-to", "LENGTH", "the mark it was read to: 1/16 in, 0.5 mm"},
    {"accept", "", "the new figure counts from now on; the old one is kept as an earlier one"},
    {"new", "", "the die, or its set, is not in the book yet"},
    {"shape", "SHAPE", "with --new: the shape of the line"},
};
constexpr Option tried_options[] = {
    {"size", "SIZE", "the panel's size"},
    {"shape", "SHAPE", "the panel's shape (the line's own unless said)"},
    {"result", "RESULT", "fits, too-tight or too-loose (fits unless said)"},
};
constexpr Option record_options[] = {
    {"strict", "", "keep nothing where something could not be read, or a date can be read two ways"},
    {"dry-run", "", "only tell how it is read"},
};
constexpr Option words_options[] = {
    {"means", "LABEL", "add: the word is another label of this term"},
    {"broader", "TERM", "add: the broader term"},
    {"stands", "HOW", "add, for folds: \"built to stand\", \"part-open\" or \"no\""},
};
constexpr Option export_options[] = {
    {"to", "DIR", "the folder to write into (made if it is not there)"},
    {"format", "json|csv", "json: everything, to be imported again; csv: the five tables (json unless said)"},
};
constexpr Option nearest_options[] = {
    {"limit", "N", "show at most N colours (10 unless asked)"},
};
constexpr Option resize_options[] = {
    {"base", "SIZE", "the new base: \"A5\", \"7 x 10 in\""},
};
constexpr Option copy_options[] = {
    {"as", "TITLE", "what the copy is called"},
};
constexpr Option check_options[] = {
    {"meant", "PIECE", "what the check says about this piece (or \"the card\") is meant: it stays quiet"},
};
constexpr Option base_options[] = {
    {"finished", "SIZE", "the closed size: \"4-1/4 x 5-1/2 in\", \"A6\""},
    {"from", "SIZE", "a sheet to fold: \"A4\", \"8-1/2 x 5-1/2 in\""},
    {"sections", "N", "of an accordion (4 unless said)"},
    {"gap", "LENGTH", "between the doors of a gate (none unless said)"},
    {"tuck", "LENGTH", "how much shorter the tucked flap of a letter tri-fold is (1/16 in unless said)"},
};
constexpr Option layers_options[] = {
    {"border", "LENGTH", "what shows on each side; several times: from the outside in"},
    {"count", "N", "how many layers besides the one given (1 unless said)"},
    {"outwards", "", "the size given is the innermost one"},
};
constexpr Option convert_options[] = {
    {"unit", "in|mm", "the unit of figures without one (inches unless said)"},
};

constexpr Command table[] = {
    {"new", "", "make an empty book", "import makes one too where there is none.", "new", {}, 0, run_new},
    {"import", "FILE…", "take in tables (CSV), an exported book (JSON) or a drawing of dies (SVG)",
     "Good rows go in, all in one change that can be taken back; refused rows are listed with what would be "
     "right, and "
     "the exit status is then 2. Files given together may refer to each other. Importing a file again "
     "changes only what "
     "differs.",
     "import dies.csv samples.csv elements.csv", import_options, 1, run_import},
    {"find", "QUESTION…", "find samples by size, shape, fold, technique, colour, words …",
     "Other questions in the same words get their answer too: \"what fits inside a 3 x 4 in frame\", \"which "
     "die "
     "frames a 2-3/8 in circle\", \"how big is the largest moonrise circle\", \"what still needs "
     "measuring\", "
     "\"where is the sage ink\", \"nearest to sage\", \"3-7/16 in mm\", \"show low tide\". A word that "
     "starts "
     "with - (\"-white\") goes after --.",
     "find designs using a 2-3/8 in circle with a stand-up fold", find_options, 1, run_find},
    {"fits", "OPENING…", "what fits inside this frame",
     "A die of the book, or a size and shape: \"3 x 4 in frame\". What was tried comes first, then what is "
     "computed, then what is estimated.",
     "fits second largest tidepool rectangle --border 1/8", fits_options, 1, run_fits},
    {"frames", "SIZE…", "which dies frame a panel of this size",
     "A size and shape, or a die or stamp of the book that has one. The closest frame comes first.",
     "frames 3 x 4 in", frames_options, 1, run_frames},
    {"pairs", "OPENING…", "which cut shapes make an even border in or around one",
     "Two of a drawer's dies whose cut shapes leave a strip that is as wide everywhere, narrowest first; "
     "with "
     "--border, those whose strip is that wide. \"find which two dies make a frame 1/4 in wide\" looks "
     "through "
     "the whole drawer.",
     "pairs tidepool rectangles 2", pairs_options, 1, run_pairs},
    {"measure", "OPENING…", "what is known of a line's size, or a new measurement",
     "A figure that agrees is a confirmation; one that does not is kept as a conflict (exit status 1) until "
     "--accept "
     "settles it.",
     "measure tidepool rectangles 2, stitched --size \"3-1/4 x 4-1/4 in\"", measure_options, 1, run_measure},
    {"tried", "OPENING…", "record a panel that was tried in an opening", "",
     "tried tidepool rectangles 1, stitched --size \"3-5/8 x 4-5/8 in\" --result fits", tried_options, 1,
     run_tried},
    {"record", "[TITLE] [FILE|-]", "a sample, one line a piece",
     "A piece: \"sage circle 2-3/8 in, speckled, from moonrise circles 3, on the grey panel, high of "
     "centre\". Of "
     "the card: \"easel fold\", \"base white 8-1/2 x 5-1/2 in, scored at 4-1/4 in\", \"birthday\", \"made "
     "today\", "
     "\"words: …\", \"step: …\", \"note: …\"; \"Inside:\" says the side of the lines below it. What is not "
     "understood is kept in the note of its piece. Without FILE the lines are typed, and an empty one ends "
     "them.",
     "record low tide low-tide.txt", record_options, 0, run_record},
    {"show",
     "NAME…",
     "all that is known of a die, set, supply, colour or sample",
     "",
     "show low tide",
     {},
     1,
     run_show},
    {"change",
     "NAME… FIELD=VALUE",
     "change a field of a record",
     "",
     "change low tide made=2026-03-02",
     {},
     2,
     run_change},
    {"delete",
     "NAME…",
     "delete a record and its parts",
     "It can be taken back with undo.",
     "delete low tide",
     {},
     1,
     run_delete},
    {"undo",
     "[CHANGE]",
     "take the last change back, or the one named",
     "Again goes further back. undo list shows the last changes.",
     "undo",
     {},
     0,
     run_undo},
    {"words", "add|list|show …", "the vocabularies and your own words",
     "words list [VOCABULARY]; words show WORD; words add VOCABULARY WORD [--means LABEL] [--broader TERM].",
     "words add technique \"ink washing\" --broader inking", words_options, 1, run_words},
    {"settings",
     "[NAME=VALUE]",
     "the settings of the book",
     "Alone it lists them, with what each is for; NAME shows one; NAME= goes back to what it was at first.",
     "settings border=1/8in",
     {},
     0,
     run_settings},
    {"check", "SAMPLE…", "the card check: closes, stands, envelope, post, glue",
     "Every piece is put where the record says, and what would glue the card shut, crease a piece, show past "
     "the "
     "closed card or keep it out of its envelope is listed with what mends it. Exit status 1 where there is "
     "a "
     "problem.",
     "check low tide", check_options, 1, run_check},
    {"base", "FOLD", "cut size and scores of a base",
     "From the finished size or from a sheet: where to score and which way each score folds, how many a "
     "sheet "
     "of "
     "the paper at hand gives, which way the grain runs, and scores that lie on no groove of the scoring "
     "board.",
     "base easel --finished \"6 in square\"", base_options, 1, run_base},
    {"layers", "SIZE…", "a stack of mats and panels",
     "A size, a paper's name or an opening of the book. The border shows on each side of every layer, so "
     "that "
     "an "
     "eighth makes the next one a quarter smaller.",
     "layers 4-1/4 x 5-1/2 in --border 1/8 --count 3", layers_options, 1, run_layers},
    {"resize", "SAMPLE…", "the same design on another base",
     "Layers keep their borders, everything else its size; what no longer suits the die it was cut by is "
     "listed "
     "with the nearest that does. Nothing is recorded.",
     "resize low tide --base A5", resize_options, 1, run_resize},
    {"copy", "SAMPLE… [CHANGE…]", "the same with changes, linked",
     "A change is \"plum for sage\" (a colour or a supply), a fold or an occasion, each in quotes where it "
     "has "
     "several words. The copy names the sample it is based on.",
     "copy low tide \"plum for sage\" easel --as \"high tide\"", copy_options, 1, run_copy},
    {"cut",
     "PIECES… | SAMPLE…",
     "a cut plan",
     "",
     "cut \"4x 4-1/4 x 5-1/2 in\" --stock \"8-1/2 x 11 in\"",
     {},
     1,
     nullptr},
    {"kit", "SAMPLE…", "what goes into each bag, and in all", "", "kit low tide --cards 12", {}, 1, nullptr},
    {"nearest", "COLOUR…", "nearest colours, current ones first",
     "A colour of the book, or a value such as #a55030. The difference is CIEDE2000: about 1 is just seen "
     "side by "
     "side, up to 10 is much the same colour on a card.",
     "nearest sage", nearest_options, 1, run_nearest},
    {"handout",
     "SAMPLE…",
     "the printed page of a design",
     "",
     "handout low tide --to low-tide.pdf",
     {},
     1,
     nullptr},
    {"chart",
     "SET…",
     "the printed page of a die set",
     "",
     "chart tidepool rectangles --to chart.pdf",
     {},
     1,
     nullptr},
    {"export", "", "write the book as JSON or CSV", "", "export --to ../tables --format csv", export_options,
     0, run_export},
    {"backup",
     "[FILE]",
     "copy the whole book, photographs included, into one file",
     "",
     "backup",
     {},
     0,
     run_backup},
    {"restore",
     "FILE",
     "put a backup in place of the book",
     "The book as it is now is backed up first.",
     "restore studio.backup",
     {},
     1,
     run_restore},
    {"verify", "", "check that the book is whole", "", "verify", {}, 0, run_verify},
    {"convert", "TEXT… | -", "read lengths or sizes; - takes one a line", "No book is needed.",
     "convert 2-3/8 in", convert_options, 1, run_convert},
    {"serve", "", "the local page", "", "serve", {}, 0, nullptr},
};

}  // namespace

std::span<const Command> commands() {
  return table;
}

std::span<const Option> options_of_every_command() {
  return every_command;
}

const Command* find_command(std::string_view name) {
  for (const Command& command : table)
    if (command.name == name) return &command;
  return nullptr;
}

std::vector<std::string> commands_like(std::string_view name) {
  std::vector<std::string> near;
  for (const Command& command : table)
    if (edit_distance(name, command.name, 2) <= 2) near.emplace_back(command.name);
  return near;
}

}  // namespace insetbook::cli
