// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/hand_over.h"

#include <algorithm>
#include <string>
#include <utility>

#include "colour/value.h"
#include "language/ask_border.h"
#include "language/ask_phrase.h"
#include "language/ask_phrase_lists.h"
#include "language/ask_thing.h"
#include "language/paper_names.h"
#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_question = 64;  // pieces: a question for another answer is short

// When a phrase counts: always; or where its subject is known, and is offered where it is not; or only where
// it is; or where a frame or a border is made.
enum class Sure { always, offered, known, made };

struct Phrase {
  Asks asks;
  Sure sure;
  std::string_view words;  // ask_phrase.h
};

constexpr Phrase phrases[] = {
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
     "@what [of|my|the|+set]* [@die|+shape|cut]* [that|which|@want|i|together|combine|nest]* make|makes|give|"
     "gives|cut|cuts|form|leave|leaves [a|an|me|the]* +x +end"},
    {Asks::pairs, Sure::known,
     "@what [of|my]* die|dies|cutter|cutters [that|which|@want]* fit|fits|nest|nests|go|goes @in +x +end"},
    {Asks::pairs, Sure::known, "[@what]* pairs|pair|nests|nest for|with|of +x +end"},

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

    // a record
    {Asks::show, Sure::known,
     "show|open|display [me|us|@the|all|everything|about|of|record|card|details|sample|design]* +x +end"},
    {Asks::show, Sure::known, "tell me [all|everything|more]* about +x +end"},
    {Asks::show, Sure::known, "@what [do|@i]* [know|have] about|on|of +x +end"},
    {Asks::show, Sure::known, "[@the|all]* details|record|everything [of|for|about|on]* +x +end"},
};

// A question for samples mostly has none of these words, and is not looked at further.
constexpr std::string_view telling_words[] = {
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

// Words before the question itself: "can you tell me what fits …".
constexpr std::string_view lead_in =
    "so|and|now|then|ok|okay|please|tell|me|can|could|would|will|you|i|want|"
    "to|know|wonder|say|do|need|just|well|remind|like|help|find|out";

class Reader {
 public:
  Reader(std::string_view text, const std::vector<Piece>& pieces, const ReadingContext& context)
      : text_(text),
        context_(context),
        pieces_(trimmed(pieces)),
        reader_(pieces_, context.vocabulary, context.names) {
    const std::optional<BorderSaid> border = border_said(text, pieces_, context.unit);
    if (!border) return;
    border_ = border->border;
    border_at_ = pieces_[border->begin].span.begin;
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (i < border->begin || i >= border->end) without_border_.push_back(pieces_[i]);
    without_border_ = trimmed(std::move(without_border_));
    bordered_reader_.emplace(without_border_, context.vocabulary, context.names);
  }

  HandedOver read() {
    HandedOver handed;
    if (pieces_.empty()) return handed;
    if (auto question = unmeasured()) return {std::move(question), {}};
    for (const std::size_t at : beginnings())
      for (const Phrase& phrase : phrases) {
        std::optional<Question> question = read_as(phrase, at);
        if (!question) continue;
        const bool known = is_known(*question);
        if (known || phrase.sure == Sure::always || phrase.sure == Sure::made)
          return {finished(std::move(*question)), {}};
        if (phrase.sure == Sure::offered && handed.offered.empty())
          handed.offered.push_back(offer(*question));
      }
    return handed;
  }

 private:
  // Without what says nothing at the end.
  static std::vector<Piece> trimmed(std::vector<Piece> pieces) {
    const auto says_nothing = [](const Piece& piece) {
      if (piece.kind == Piece::Kind::word) return piece.folded == "please" || piece.folded == "with";
      return piece.kind == Piece::Kind::mark &&
             (piece.folded == "." || piece.folded == "?" || piece.folded == "!" || piece.folded == ",");
    };
    while (!pieces.empty() && says_nothing(pieces.back())) pieces.pop_back();
    return pieces;
  }

  // The first piece, and the question word that polite words lead to.
  std::vector<std::size_t> beginnings() const {
    std::vector<std::size_t> all{0};
    const PhraseReader& reader = reader_;
    std::size_t at = 0;
    while (reader.is_any(at, lead_in)) ++at;
    if (at > 0 && reader.is_any(at, "@what|how|where|wheres|in|show|nearest|closest")) all.push_back(at);
    return all;
  }

  // A border is said with what fits and what frames only.
  static bool takes_border(Asks asks) { return asks == Asks::fits || asks == Asks::frames; }

  std::optional<Question> read_as(const Phrase& phrase, std::size_t at) {
    const bool bordered = !border_.empty() && takes_border(phrase.asks);
    const std::vector<Piece>& pieces = bordered ? without_border_ : pieces_;
    PhraseReader& reader = bordered ? *bordered_reader_ : reader_;
    PhraseMatch match;
    if (!reader.matches(phrase.words, at, match)) return std::nullopt;
    Question question;
    question.text = std::string(text_);
    question.asks = phrase.asks;
    while (match.begin + 1 < match.end && reader.is_any(match.begin, "the|a|an|my|our")) ++match.begin;
    while (match.begin < match.end && pieces[match.end - 1].kind == Piece::Kind::mark &&
           pieces[match.end - 1].folded == ",")
      --match.end;
    if (match.begin == match.end) return std::nullopt;
    question.subject = subject_of(pieces, {match.begin, match.end});
    if (match.beside_end > match.beside_begin) {
      question.panel = subject_of(pieces, {match.beside_begin, match.beside_end});
      if (!is_size(question.panel) && !named(question.panel, {NameKind::die, NameKind::supply}, false))
        return std::nullopt;
    }
    if (bordered) question.border = border_;
    if (phrase.asks == Asks::fits) question.panel_shape = match.shape;
    if (phrase.asks == Asks::frames) question.in_set = match.set;
    if (phrase.asks == Asks::convert && !take_unit(pieces, match, question)) return std::nullopt;
    if (phrase.sure == Sure::made && !take_frame(pieces, match, question)) return std::nullopt;
    return question;
  }

  struct Places {
    std::size_t begin, end;
  };
  // The text of the subject; where a border stood in its middle, both parts.
  std::string subject_of(const std::vector<Piece>& pieces, const Places& match) const {
    std::string subject;
    std::size_t begin = pieces[match.begin].span.begin;
    for (std::size_t i = match.begin; i < match.end; ++i) {
      const bool gap = &pieces == &without_border_ && i + 1 < match.end &&
                       pieces[i].span.begin < border_at_ && pieces[i + 1].span.begin > border_at_;
      if (!gap && i + 1 < match.end) continue;
      subject +=
          (subject.empty() ? "" : " ") + std::string(trim(text_.substr(begin, pieces[i].span.end - begin)));
      if (i + 1 < match.end) begin = pieces[i + 1].span.begin;
    }
    return subject;
  }

  // The unit wanted: the last piece that is one and is no part of the subject.
  static bool take_unit(const std::vector<Piece>& pieces, const PhraseMatch& match, Question& question) {
    std::size_t at = pieces.size() - 1;
    if (match.end == pieces.size() || pieces[match.end].folded == "make" || pieces[match.end].folded == "be")
      at = 2;  // "how many mm is …"
    if (at >= pieces.size()) return false;
    const std::string_view word = pieces[at].folded;
    if (word.starts_with("in"))
      question.unit = Unit::inch;
    else if (word.starts_with("mm") || word.starts_with("milli"))
      question.unit = Unit::mm;
    else if (word.starts_with("cm") || word.starts_with("centi"))
      question.unit = Unit::mm;
    else
      return false;
    question.centimetres = word.starts_with("c");
    return true;
  }

  // "… a frame a quarter inch wide", "… an even border round tidepool rectangles 2": the width is the border,
  // what it goes round or in is the subject.
  // False where no frame is made.
  bool take_frame(const std::vector<Piece>& pieces, const PhraseMatch& match, Question& question) const {
    const PhraseReader reader(pieces, context_.vocabulary, context_.names);
    bool frame = false;
    std::size_t subject = match.begin;
    for (std::size_t i = match.begin; i < match.end; ++i) {
      if (reader.is_any(i, "frame|frames|border|borders|ring|rings|mat|mats|margin|rim")) {
        frame = true;
        subject = match.end;
      }
      if (frame && reader.is_any(i, "@round|@in|for|of")) {
        subject = i + 1;
        break;
      }
      if (!question.border.empty()) continue;
      if (const auto length = length_said(text_, pieces, i, context_.unit)) {
        question.border = length->length;
        i = length->end - 1;
      }
    }
    if (!frame) return false;
    while (subject < match.end && reader.is_any(subject, "the|a|an|my")) ++subject;
    question.subject.clear();
    if (subject < match.end) question.subject = subject_of(pieces, {subject, match.end});
    return true;
  }

  bool named(const std::string& subject, std::initializer_list<NameKind> kinds, bool or_like) const {
    const std::vector<NamedRecord> found =
        or_like ? things_like(subject, context_.names) : things_named(subject, context_.names);
    return std::ranges::any_of(found, [&](const NamedRecord& record) {
      return std::ranges::find(kinds, record.kind) != kinds.end();
    });
  }
  bool is_size(const std::string& subject) const {
    return read_thing(subject, context_.vocabulary, context_.unit).has_value();
  }
  // "this frame", "it": an opening is meant, whichever.
  static bool is_pronoun(const std::string& subject) {
    for (const std::string_view one : {"this", "that", "this frame", "that frame", "this die", "this opening",
                                       "that die", "that opening", "this window"})
      if (fold(subject) == one) return true;
    return false;
  }

  bool is_known(const Question& question) const {
    const std::string& subject = question.subject;
    switch (question.asks) {
      case Asks::fits:
        return is_size(subject) || is_pronoun(subject) ||
               named(subject, {NameKind::set, NameKind::die}, true);
      case Asks::frames:
        return is_size(subject) || named(subject, {NameKind::set, NameKind::die, NameKind::supply}, false);
      case Asks::pairs:
        return named(subject, {NameKind::set, NameKind::die}, false);
      case Asks::measured:
        return named(subject, {NameKind::set, NameKind::die, NameKind::supply, NameKind::sample}, false);
      case Asks::kept:
        return named(subject, {NameKind::set, NameKind::die, NameKind::supply, NameKind::colour}, true);
      case Asks::nearest:
        return is_colour(subject);
      case Asks::convert:
        return read_measurement(subject, context_.unit).has_value() || paper_named(fold(subject));
      case Asks::show:
        return is_record(subject);
      case Asks::samples:
      case Asks::unmeasured:
        break;
    }
    return true;
  }

  bool is_colour(const std::string& subject) const {
    if (read_colour_value(subject)) return true;
    return std::ranges::any_of(things_named(subject, context_.names),
                               [](const NamedRecord& record) { return record.kind == NameKind::colour; });
  }

  // A colour by itself is rather what samples are asked for.
  bool is_record(const std::string& subject) const {
    const std::vector<NamedRecord> found = things_named(subject, context_.names);
    return !found.empty() && std::ranges::none_of(found, [](const NamedRecord& record) {
      return record.kind == NameKind::colour;
    });
  }

  Question finished(Question question) const {
    // "show kelp circles" may also ask for the samples made with them.
    if (question.asks == Asks::show &&
        named(question.subject, {NameKind::set, NameKind::die, NameKind::supply}, false))
      question.other_readings.push_back(
          {std::string(text_), "the record itself", "samples that use it: " + question.subject});
    return question;
  }

  OtherReading offer(const Question& question) const {
    std::string what;
    switch (question.asks) {
      case Asks::fits:
        what = "what fits in an opening, but no die is called \"" + question.subject + "\"";
        break;
      case Asks::measured:
        what = "the size of a die, but no die is called \"" + question.subject + "\"";
        break;
      case Asks::kept:
        what = "where a thing is kept, but no die, set or supply is called \"" + question.subject + "\"";
        break;
      case Asks::nearest:
        what = "the colours nearest to one, but no colour is called \"" + question.subject + "\"";
        break;
      default:
        what = "a question that is not for samples";
        break;
    }
    return {std::string(trim(text_)), "samples with these words", what};
  }

  // "Which dies are not measured yet", "what still needs measuring in tidepool rectangles": every word is of
  // such a question, and nothing but the name of a set is left.
  std::optional<Question> unmeasured() const {
    const PhraseReader& reader = reader_;
    bool negated = false, measured = false, wanted = false, without = false, size = false, dies = false;
    bool alone = false;
    std::string set;
    for (std::size_t at = 0; at < pieces_.size(); ++at) {
      if (const std::size_t end = reader.set_at(at, set); end > at) {
        dies = true;
        at = end - 1;
      } else if (reader.is_any(at, "not|havent|hasnt|arent|isnt|never|werent|wasnt")) {
        negated = true;
      } else if (reader.is_any(at, "measured|measure|measuring")) {
        measured = true;
      } else if (reader.is_any(at, "need|needs|still|left|remain|remains|must|remaining")) {
        wanted = true;
      } else if (reader.is_any(at, "without|no|missing|lack|lacks|lacking")) {
        without = true;
      } else if (reader.is_any(at, "size|sizes|measurement|measurements|figures")) {
        size = true;
      } else if (reader.is_any(at, "die|dies|sets|set|lines|line|openings|cutters")) {
        dies = true;
      } else if (reader.is_any(at, "unmeasured")) {
        alone = true;
      } else if (!reader.is_any(
                     at,
                     "@what|is|are|was|were|has|have|had|i|we|the|all|my|any|there|that|been|be|to|"
                     "do|should|list|show|me|find|a|an|yet|so|far|in|of|from|ones|one|for|and|"
                     "which|remain|it|got|tell|please|out|current|anything|something")) {
        return std::nullopt;
      }
    }
    const bool asked = alone || (negated && measured) || (wanted && measured) || (without && size && dies);
    if (!asked) return std::nullopt;
    Question question;
    question.text = std::string(text_);
    question.asks = Asks::unmeasured;
    question.subject = set;
    return question;
  }

  std::string_view text_;
  const ReadingContext& context_;
  std::vector<Piece> pieces_, without_border_;
  PhraseReader reader_;
  std::optional<PhraseReader> bordered_reader_;  // of the pieces without the border
  std::string border_;                           // as said, or empty
  std::size_t border_at_ = 0;
};

// Whether it has a telling word, or ends with a unit.
bool may_be_another(const std::vector<Piece>& pieces) {
  std::size_t last = pieces.size();
  while (last > 0 && pieces[last - 1].kind == Piece::Kind::mark) --last;
  if (last > 1 && tells_unit(pieces[last - 1].folded)) return true;
  return std::ranges::any_of(
      pieces, [](const Piece& piece) { return piece.kind == Piece::Kind::word && tells(piece.folded); });
}

// A sample of exactly this name is what was asked for, whatever its words mean.
bool is_title(std::string_view text, const Names& names) {
  return std::ranges::any_of(names.exactly(fold(text)),
                             [](const NamedRecord& record) { return record.kind == NameKind::sample; });
}

}  // namespace

HandedOver hand_over(std::string_view text, const std::vector<Piece>& pieces, const ReadingContext& context) {
  if (pieces.size() > longest_question || !may_be_another(pieces)) return {};
  HandedOver handed = Reader(text, pieces, context).read();
  if (!handed.question || !is_title(text, context.names)) return handed;
  return {std::nullopt,
          {{std::string(text), "the sample of that name", "a question that is not for samples"}}};
}

std::string print_other(const Question& question) {
  const std::string& subject = question.subject;
  const std::string border = question.border.empty() ? "" : ", " + question.border + " border";
  switch (question.asks) {
    case Asks::fits:
      if (!question.panel.empty()) return "does " + question.panel + " fit in " + subject + border;
      return "what " + (question.panel_shape.empty() ? "" : question.panel_shape + " ") + "fits inside " +
             subject + border;
    case Asks::frames:
      return (question.in_set.empty() ? "what" : "which " + question.in_set) + " frames " + subject + border;
    case Asks::pairs:
      if (subject.empty()) return "which two dies make a frame " + question.border + " wide";
      return question.border.empty()
                 ? "pairs for " + subject
                 : "which two dies make a frame " + question.border + " wide round " + subject;
    case Asks::measured:
      return "how big is " + subject;
    case Asks::unmeasured:
      return subject.empty() ? "which dies are not measured" : "what is not measured in " + subject;
    case Asks::kept:
      return "where is " + subject;
    case Asks::nearest:
      return "nearest to " + subject;
    case Asks::convert:
      return subject + (question.unit == Unit::inch ? " in inches"
                        : question.centimetres      ? " in cm"
                                                    : " in mm");
    case Asks::show:
      return "show " + subject;
    case Asks::samples:
      break;
  }
  return {};
}

}  // namespace insetbook
