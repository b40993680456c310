// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/hand_over.h"

#include <algorithm>
#include <string>
#include <utility>

#include "colour/value.h"
#include "language/ask_border.h"
#include "language/ask_dies.h"
#include "language/ask_phrase.h"
#include "language/ask_phrases.h"
#include "language/ask_thing.h"
#include "language/paper_names.h"
#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_question = 64;  // pieces: a question for another answer is short

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
    if (auto question = unmeasured_asked(text_, pieces_, reader_)) return {std::move(question), {}};
    for (const std::size_t at : beginnings())
      for (const Phrase& phrase : phrases) {
        std::optional<Question> question = read_as(phrase, at);
        if (!question) continue;
        const bool known =
            phrase.sure == Sure::coloured ? has_colour(question->subject) : is_known(*question);
        if (known || phrase.sure == Sure::always || phrase.sure == Sure::made)
          return {finished(std::move(*question)), {}};
        if (phrase.sure == Sure::offered && handed.offered.empty())
          handed.offered.push_back(offer(*question));
      }
    if (auto question = dies_by_size_asked(text_, pieces_, reader_, context_))
      return {std::move(question), {}};
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
    question.colour = phrase.sure == Sure::coloured;
    while (match.begin + 1 < match.end && reader.is_any(match.begin, "the|a|an|my|our|of|in|inside"))
      ++match.begin;
    while (match.begin < match.end && pieces[match.end - 1].kind == Piece::Kind::mark &&
           pieces[match.end - 1].folded == ",")
      --match.end;
    if (phrase.asks == Asks::tried) question.result = result_said(reader, pieces.size());
    if (match.begin == match.end)
      return phrase.asks == Asks::tried ? std::optional(std::move(question)) : std::nullopt;
    question.subject = subject_of(pieces, {match.begin, match.end});
    if (match.beside_end > match.beside_begin) {
      question.panel = subject_of(pieces, {match.beside_begin, match.beside_end});
      if (!is_size(question.panel) && !named(question.panel, {NameKind::die, NameKind::supply}, false))
        return std::nullopt;
    }
    if (bordered) question.border = border_;
    if (phrase.asks == Asks::fits) question.panel_shape = match.shape;
    if (phrase.asks == Asks::pairs) question.in_set = match.set;
    if (phrase.asks == Asks::frames) {
      question.in_set = match.set;
      question.opening_shape = match.shape;
      for (std::size_t i = at; i < match.begin; ++i)
        question.goes_round = question.goes_round || reader.is_any(i, "@round");
    }
    if (phrase.asks == Asks::convert && !take_unit(pieces, match, question)) return std::nullopt;
    if (phrase.sure == Sure::made && !take_frame(pieces, match, question)) return std::nullopt;
    return question;
  }

  // As it is recorded of what was tried; empty: none was said.
  static std::string result_said(const PhraseReader& reader, std::size_t pieces) {
    for (std::size_t i = 0; i + 1 < pieces; ++i) {
      if (!reader.is_any(i, "too")) continue;
      if (reader.is_any(i + 1, "tight|large|big|wide|long")) return "too tight";
      if (reader.is_any(i + 1, "loose|small|narrow|short")) return "too loose";
    }
    return {};
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
    const bool any = std::ranges::any_of(found, [&](const NamedRecord& record) {
      return std::ranges::find(kinds, record.kind) != kinds.end();
    });
    const bool die = std::ranges::find(kinds, NameKind::die) != kinds.end();
    return any || (die && !context_.names.dies_said(subject).empty());
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
        return named(subject, {NameKind::set, NameKind::die, NameKind::supply, NameKind::sample}, false) ||
               piece_of_sample(subject, context_.names);
      case Asks::kept:
        return named(subject, {NameKind::set, NameKind::die, NameKind::supply, NameKind::colour}, true);
      case Asks::nearest:
        return is_colour(subject);
      case Asks::convert:
        return read_measurement(subject, context_.unit).has_value() || paper_named(fold(subject));
      case Asks::show:
        return is_record(subject);
      case Asks::tried:
        return named(subject, {NameKind::set, NameKind::die}, false);
      case Asks::used:
        return is_used(subject);
      case Asks::samples:
      case Asks::unmeasured:
      case Asks::dies:
        break;
    }
    return true;
  }

  // Something that samples are made with, by its name or a part of it.
  bool is_used(const std::string& subject) const {
    const auto usable = [](const NamedRecord& record) {
      return record.kind == NameKind::supply || record.kind == NameKind::set || record.kind == NameKind::die;
    };
    constexpr std::size_t looked_at = 20;
    if (is_colour(subject)) return false;  // asked of a colour, the question is read as it stands
    return named(subject, {NameKind::set, NameKind::die, NameKind::supply}, false) ||
           std::ranges::any_of(context_.names.like(bare_name(subject), looked_at), usable);
  }

  bool has_colour(const std::string& subject) const {
    return is_colour(subject) || piece_of_sample(subject, context_.names);
  }

  bool is_colour(const std::string& subject) const {
    if (read_colour_value(subject)) return true;
    return std::ranges::any_of(things_named(subject, context_.names),
                               [](const NamedRecord& record) { return record.kind == NameKind::colour; });
  }

  // A colour by itself is rather what samples are asked for.
  bool is_record(const std::string& subject) const {
    const std::vector<NamedRecord> found = things_named(subject, context_.names);
    if (found.empty()) return !context_.names.dies_said(subject).empty();
    return std::ranges::none_of(found,
                                [](const NamedRecord& record) { return record.kind == NameKind::colour; });
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

namespace {

std::string frames_text(const Question& question) {
  std::string which;
  for (const std::string& word : {question.in_set, question.opening_shape})
    if (!word.empty()) which += " " + word;
  return (which.empty() ? "what" : "which" + which) + (question.goes_round ? " goes round " : " frames ");
}

std::string tried_text(const Question& question) {
  const std::string in = question.subject.empty() ? "" : " in " + question.subject;
  return question.result.empty() ? "what did I try" + in : "what was " + question.result + in;
}

}  // namespace

std::string print_other(const Question& question) {
  const std::string& subject = question.subject;
  const std::string border = question.border.empty() ? "" : ", " + question.border + " border";
  switch (question.asks) {
    case Asks::fits:
      if (!question.panel.empty()) return "does " + question.panel + " fit in " + subject + border;
      return "what " + (question.panel_shape.empty() ? "" : question.panel_shape + " ") + "fits inside " +
             subject + border;
    case Asks::frames:
      return frames_text(question) + subject + border;
    case Asks::pairs:
      return "which two " + (question.in_set.empty() ? "dies" : question.in_set) + " make a " +
             (question.border.empty() ? "border" : "frame " + question.border + " wide") +
             (subject.empty() ? "" : " round " + subject);
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
      return (question.colour ? "what colour is " : "show ") + subject;
    case Asks::dies:
      return std::string("which dies do I have") + (question.in_set.empty() ? "" : " in ") + question.in_set +
             (subject.empty() ? "" : " " + subject);
    case Asks::tried:
      return tried_text(question);
    case Asks::used:
      return "what did I use " + subject + " for";
    case Asks::samples:
      break;
  }
  return {};
}

}  // namespace insetbook
