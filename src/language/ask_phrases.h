// SPDX-License-Identifier: GPL-3.0-or-later
//
// The phrases by which questions for other answers are told (ask_phrase.h says how a phrase is written), in
// the order in which they are tried. To add a way of asking: a line here, and a question in
// tests/language/hand_over_test.cc.
#pragma once

#include <algorithm>
#include <string_view>

#include "language/ask_phrase_lists.h"
#include "language/question.h"

namespace insetbook {

// When a phrase counts: always; or where its subject is known, and is offered where it is not; or only where
// it is; or where a frame or a border is made; or where it has a colour.
enum class Sure { always, offered, known, made, coloured };

struct Phrase {
  Asks asks;
  Sure sure;
  std::string_view words;  // ask_phrase.h
};

inline constexpr Phrase phrases[] = {
    // a length in another unit
    {Asks::convert, Sure::known,
     "[what|whats|is|are|convert|how|much|many|the|turn|change]* +x in|to|into|as|= @unit +end"},
    {Asks::convert, Sure::known,
     "how many @unit [is|are|in|to|make|makes|does|do|there|an|a|equal|equals]* +x [make|be|equal]* +end"},
    {Asks::convert, Sure::known, "@what is|are +x in @unit +end"},

    // two dies that make a frame
    {Asks::pairs, Sure::made,
     "[@what|find|me|the|is|are|there|of|my]* two|pair|pairs [of|+set|@die|+shape]* "
     "[that|which|@want|i|together|to|combine|nest|use]* make|makes|give|gives|cut|cuts|form|forms|leave|"
     "leaves|produce|produces [a|an|me|the|with]* +x +end"},
    {Asks::pairs, Sure::made,
     "@what [of|my|the]* +set|@die|+shape [@die|+shape|cut]* [that|which|@want|i|together|combine|nest]* "
     "make|makes|give|"
     "gives|cut|cuts|form|leave|leaves [a|an|me|the]* +x +end"},
    {Asks::pairs, Sure::known,
     "@what [of|my]* die|dies|cutter|cutters [that|which|@want]* fit|fits|nest|nests|go|goes @in +x +end"},
    {Asks::pairs, Sure::known, "[@what]* pairs|pair|nests|nest for|with +x +end"},
    // "a pair of hearts" is two of them on a card.
    {Asks::pairs, Sure::known, "@what pairs|pair|nests|nest of +x +end"},
    {Asks::pairs, Sure::known, "pairs|nests|nest of +x +end"},

    // what fits inside
    {Asks::fits, Sure::always,
     "how @big [@the|@i|@want|be|is|are|it|+shape|@panel]* cut|trim|make [@the|it|@panel|+shape]* "
     "for|to|@in [fit|fill|go|sit|lie|@in|behind|for]* +x +end"},
    {Asks::fits, Sure::always,
     "how @big [@the|@i|@want|be|is|are|it|+shape|@panel|piece]* fit|fits|fill|fills [@well]* [@in|behind]* "
     "+x "
     "+end"},
    {Asks::fits, Sure::offered,
     "how @big [@the|@i|@want|be|is|are|it|+shape|@panel]* go|goes|sit|sits|lie|lies [@well]* @in|behind +x "
     "+end"},
    {Asks::fits, Sure::offered,
     "how @big [@the|@want|@i]* @panel|+shape [@want|@i|be|is|it|have]* for|behind|@in [fit|@in]* +x [be]* "
     "+end"},
    {Asks::fits, Sure::always,
     "[to]* @what [is|are]* [right|best|cutting|cut]* size|sizes|dimensions|measurements|width|height "
     "[for|@the|@want|@i|be|is|are|it|+shape|@panel]* cut|trim|make [@the|it|@panel|+shape]* for|to|@in "
     "[fit|fill|go|sit|@in|behind|for]* +x +end"},
    {Asks::fits, Sure::offered,
     "@what [is|are|@the]* size|sizes|dimensions [@the|is|are|@want|@i|be]* @panel|+shape "
     "[@want|@i|is|are|be|use|have|that|which]* for|fit|fits|go|goes|fill|fills|behind|@in [fit|@in]* +x "
     "[be]* "
     "+end"},
    {Asks::fits, Sure::offered,
     "@what size|sizes [@want|@i]* [use|have|be|is|right|it]* for|fit|fits|goes|fills|@in [@in]* +x +end"},
    {Asks::fits, Sure::always,
     "@what [@want|@i]* cut|trim [@the|it|@panel|+shape]* for|to|@in [fit|fill|go|sit|@in|behind|for]* +x "
     "+end"},
    {Asks::fits, Sure::offered,
     "[@what|is|the]* cut|cutting|trim size|sizes|dimensions [of|@panel|the|a]* for|of|to [fit|fill|@in]* +x "
     "+end"},
    {Asks::fits, Sure::always,
     "@what [is|are|the|@want]* [size|sizes|shape|shapes|big|biggest|largest|large|widest|tallest|kind|sort|"
     "possible|other|else|@the|+shape|@panel]* [that|which|@want|@i|be|just]* fit|fits|fitting [@well]* "
     "!@round [@in|behind|of]* !@round +x +end"},
    {Asks::fits, Sure::offered,
     "@what [is|are|the|@want]* "
     "[size|sizes|shape|shapes|big|biggest|largest|large|widest|kind|sort|other|else|"
     "@the|+shape|@panel]* [that|which|@want|@i|be|just]* "
     "go|goes|sit|sits|lie|lies|belong|belongs|fill|fills "
     "[@well]* @in|behind +x +end"},
    {Asks::fits, Sure::offered,
     "@what [else|@panel|+shape]* [@want|@i]* put|fit|place|lay|stick|mount|slip [@well]* @in|behind +x "
     "+end"},
    {Asks::fits, Sure::offered, "@what [@panel|+shape]* fills|fill|covers|cover +x +end"},
    {Asks::fits, Sure::offered,
     "[find|give|@the|me]* biggest|largest|widest [possible]* @panel|+shape [that|which|@want|i|i|possible]* "
     "fit|fits|go|goes|for|@in [@well]* !@round [@in|behind]* +x +end"},
    {Asks::fits, Sure::known,
     "[find|give|@the|me]* [size]* [of|for]* [@the]* @panel|+shape [size]* [that|which|@want]* fit|fits|fill|"
     "fills|goes [@well]* !@round [@in|behind]* +x +end"},
    {Asks::fits, Sure::known, "[@the]* @panel|+shape size|sizes for +x +end"},
    {Asks::fits, Sure::offered,
     "[@what|find|@the|me|all|are|is]* inset|insets [size|sizes|that|which|@want|are|there]* "
     "for|of|fit|fits|@in [@in]* +x +end"},

    {Asks::fits, Sure::known,
     "@what [@panel|+shape] [@want|@i|need|use|have]* need|use|cut|make for|in|behind +x +end"},
    {Asks::fits, Sure::known, "size|sizes to|i [@i|should|must|need|to]* cut|make|trim for +x +end"},
    // whether one panel does
    {Asks::fits, Sure::known,
     "does|do|will|would|can|could|should [i|we]* +y fit|fits|go [@well]* @in|inside|behind +x +end"},
    {Asks::fits, Sure::known, "does|do|will|would|can|could +y fit|fits [@well]* +x +end"},
    {Asks::fits, Sure::known, "can|could|will|would|should|do i|we|you fit|put +y @in|behind +x +end"},

    // what frames
    {Asks::frames, Sure::known,
     "@what [of|my|the|one|other|else|is|are]* [+set]* [@die|+shape]* [that|which|@want|i|is|just|best]* "
     "frame|frames|surround|surrounds|hold|holds|enclose|encloses|border|borders|take|takes|ring|rings|"
     "outline|"
     "outlines [@well]* +x +end"},
    {Asks::frames, Sure::known,
     "[@what|of|my|the|one|is|are|there|find|me|a|any]* [+set]* [@die|+shape]* [that|which|@want|i|@well]* "
     "go|goes|fit|fits|sit|sits|put|use|lay|place|lie|lies [@well]* @round [@the]* +x +end"},
    {Asks::frames, Sure::known,
     "@what [of|my]* [size]* [+set]* [@die|+shape] "
     "[that|which|@want|i|is|are|use|have|big|enough|large|best|right|"
     "choose|pick]* for|to|frame|frames|takes|take|fits|fit|suits|suit !@in [frame|frames|go|@round|fit|fits|"
     "suit]* +x +end"},
    {Asks::frames, Sure::known, "@what|how [@die|+shape]* [@want|@i]* frame +x [with|in]* +end"},
    {Asks::frames, Sure::known, "something|anything [to|that|which|@want]* frame|frames +x +end"},
    {Asks::frames, Sure::known,
     "[in]* @what [of|my|the]* [+set]* [@die|+shape]* does|do|will|would|can|could|should +x "
     "fit|fits|go|goes|"
     "sit|sits|lie [@well]* @in +end"},
    {Asks::frames, Sure::known,
     "[@what|of|my|the]* [+set]* @die does|do|will|would|can|could|should +x need|want|take +end"},
    {Asks::frames, Sure::known,
     "[in|@in]* @what [of|my|the]* [+set]* [@die|+shape]* does|do|will|would|can|could|should +x fit|go|sit "
     "+end"},
    {Asks::frames, Sure::known,
     "[find|me|give|a|an|the|my|any|i|@want|is|there|do|have|got|need|all]* [+set]* @die "
     "[that|which|@want|i|is|are|use|big|enough|large]* frame|frames|framing|for|takes|fits|holds "
     "[frame|framing|@round]* +x +end"},

    // what is not measured is told without an order of words: see `unmeasured`

    // what is known of a size
    {Asks::measured, Sure::known, "how @big|bigs [is|are|was|were]* [exactly]* +x +end"},
    {Asks::measured, Sure::always, "how @big is|are|was|were [exactly]* +x +end"},
    {Asks::measured, Sure::known, "how @big +x is|are|was|were +end"},
    {Asks::measured, Sure::known, "how much does|do +x measure +end"},
    {Asks::measured, Sure::known,
     "[@what|is|are|was|the|exact|full|list|show|me|all]* "
     "size|sizes|measurement|measurements|dimensions|dimension|"
     "width|height|diameter|figures|figure [is|are|was|were|of|do|does|for|have]* +x [have|measure]* +end"},
    {Asks::measured, Sure::known, "@what [do|does|did] +x measure|measures +end"},
    {Asks::measured, Sure::offered,
     "have|had|did i|we|you|anyone [already|ever|yet|not]* measured|measure [already]* +x "
     "[yet|already|before]* "
     "+end"},
    {Asks::measured, Sure::offered, "when did i|we [last]* measure +x +end"},
    {Asks::measured, Sure::known,
     "is|are|was|were|has|have [@the]* +x [already|ever|been]* measured [yet|already|before]* +end"},

    // what was tried
    {Asks::tried, Sure::always,
     "@what [@panel|+shape|@the|size|sizes|have|has|had|did|do|i|we|was|were|been|got|already|ever]* "
     "tried|try|tested|test [already|out|before|yet|so|far]* +end"},
    {Asks::tried, Sure::known,
     "@what [@panel|+shape|@the|size|sizes|have|has|had|did|do|i|we|was|were|been|got|already|ever]* "
     "tried|try|tested|test [already|out|before]* @in|with|for|on +x +end"},
    {Asks::tried, Sure::always,
     "@what [@panel|+shape|@the|size|sizes|ones|has|have]* was|were|is|are|been|came|turned [out|to|be]* too "
     "tight|large|big|loose|small +end"},
    {Asks::tried, Sure::known,
     "@what [@panel|+shape|@the|size|sizes|ones|has|have]* was|were|is|are|been|came|turned [out|to|be]* too "
     "tight|large|big|loose|small @in|for|on|with +x +end"},

    // where it is kept
    {Asks::kept, Sure::offered,
     "where is|are|was|were [all]* +x [kept|stored|now|gone|again|hiding|living]* +end"},
    {Asks::kept, Sure::offered, "wheres +x [kept|stored|now|gone]* +end"},
    {Asks::kept, Sure::offered,
     "where do|did|have|can|could|will|should|would|might i|we|you|one [have|last]* "
     "keep|kept|put|store|stored|find|leave|left|get|stow|stowed|file|look [for]* +x +end"},
    {Asks::kept, Sure::offered, "where do|does|did|should +x live|go|belong [now]* +end"},
    {Asks::kept, Sure::known, "where +x is|are|live|lives [kept|stored]* +end"},
    {Asks::kept, Sure::offered,
     "[in|on|from]* @what [of|my|the]* @box [is|are|has|have|holds|hold|contains|do|does|did|i|we|keep|kept|"
     "put|store]* +x [in|kept|stored|live|go|keep|put|lives]* +end"},
    {Asks::kept, Sure::known, "[@what]* @box for|of|with +x +end"},

    // nearest colours
    {Asks::nearest, Sure::offered,
     "@what [of|my|the|other|else]* [@colour|ink|inks|paper|papers|card|cardstock] [is|are|do|does|i|have|my|"
     "that|which|come|comes|looks|look|goes|the|can|use|are|most|very]* @near|like [match|one|@colour]* "
     "[to|for|by|of]* +x +end"},
    {Asks::nearest, Sure::offered,
     "[@the|list|show|me|find|all]* colours|colors|shades|inks [of|that|which|are|is|look|most|i|have]* "
     "@near "
     "[to|for]* +x +end"},
    {Asks::nearest, Sure::known,
     "[@the|list|show|me|find|all]* colours|colors|shades [of|that|which|are|is|look|most]* like|around +x "
     "+end"},
    {Asks::nearest, Sure::offered,
     "[@the|list|show|me|find|@what|is|are|comes]* nearest|closest|close|near [match|one|@colour|ink|inks|"
     "paper|papers|my|of|i|have]* to +x +end"},
    {Asks::nearest, Sure::known,
     "[@the|list|show|me|find]* nearest|closest [match|one|@colour|ink|inks|paper|papers]* [for|of]* +x "
     "+end"},
    {Asks::nearest, Sure::known,
     "@what [else|other|@colour|ink|paper]* [@want|i|goes|go|works]* [use|have|take]* instead|stead|place of "
     "+x +end"},
    {Asks::nearest, Sure::known,
     "@what [else|other|@colour|ink|paper]* [@want|i]* [use]* in place|stead of +x +end"},
    {Asks::nearest, Sure::known,
     "@what [@colour|ink|paper]* [@want]* replaces|replace|stands|stand [in]* [for]* +x +end"},
    {Asks::nearest, Sure::known,
     "[@the]* substitute|substitutes|replacement|alternatives|alternative for|to +x +end"},

    // what was made with a thing
    {Asks::used, Sure::known,
     "@what [card|cards|samples|designs|else]* [did|do|does|have|has|i|we|ever|already]* use|used +x "
     "for|on|in|with +end"},
    {Asks::used, Sure::known, "@what did|have i|we [ever|already]* make|made|do|done with +x +end"},

    // a record
    {Asks::show, Sure::coloured, "@what @colour is|are|was|were +x +end"},
    {Asks::show, Sure::known,
     "show|open|display [me|us|@the|all|everything|about|of|record|card|details|sample|design]* +x +end"},
    {Asks::show, Sure::known, "tell me [all|everything|more]* about +x +end"},
    {Asks::show, Sure::known, "@what [do|@i]* [know|have] about|on|of +x +end"},
    {Asks::show, Sure::known, "[@the|all]* details|record|everything [of|for|about|on]* +x +end"},
};

// A question for samples mostly has none of these words, and is not looked at further.
inline constexpr std::string_view telling_words[] = {
    "alternative", "alternatives", "around",      "bag",          "basket",      "biggest",     "bigs",
    "bin",         "box",          "boxes",       "case",         "close",       "closest",     "colors",
    "colours",     "cover",        "covers",      "cupboard",     "cutter",      "cutters",     "details",
    "diameter",    "die",          "dies",        "dimension",    "dimensions",  "display",     "drawer",
    "drawers",     "everything",   "figure",      "figures",      "fill",        "fills",       "fit",
    "fits",        "folder",       "frame",       "framed",       "frames",      "go",          "goes",
    "height",      "how",          "inks",        "inset",        "insets",      "jar",         "largest",
    "measure",     "measured",     "measurement", "measurements", "measuring",   "near",        "nearest",
    "nest",        "nests",        "open",        "opening",      "openings",    "outside",     "over",
    "pair",        "pairs",        "place",       "put",          "record",      "replacement", "round",
    "set",         "sets",         "shades",      "shape",        "shapes",      "shelf",       "shelves",
    "show",        "size",         "sizes",       "substitute",   "substitutes", "tell",        "tin",
    "tins",        "tray",         "two",         "unmeasured",   "what",        "whats",       "where",
    "wheres",      "which",        "widest",      "width"};

constexpr bool tells(std::string_view word) {
  return std::ranges::binary_search(telling_words, word);
}

constexpr bool tells_unit(std::string_view word) {
  std::string_view units = list_named("@unit");
  while (!units.empty())
    if (take_part(units, '|') == word) return true;
  return word == "please";
}

constexpr bool all_tell(std::string_view words) {
  while (!words.empty()) {
    const std::string_view one = take_part(words, '|');
    if (one.starts_with('+')) return false;
    if (!(one.starts_with('@') ? all_tell(list_named(one)) : tells(one))) return false;
  }
  return true;
}

// Whether every text that is the phrase has a telling word, or ends with a unit.
constexpr bool is_told(std::string_view phrase) {
  if (phrase.ends_with("@unit +end")) return true;
  while (!phrase.empty()) {
    const std::string_view atom = take_part(phrase, ' ');
    if (!atom.starts_with('[') && !atom.starts_with('+') && !atom.starts_with('!') && all_tell(atom))
      return true;
  }
  return false;
}

static_assert(std::ranges::is_sorted(telling_words));
static_assert(std::ranges::all_of(phrases, [](const Phrase& phrase) { return is_told(phrase.words); }));

}  // namespace insetbook
