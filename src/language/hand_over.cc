// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/hand_over.h"

#include <algorithm>
#include <string>
#include <utility>

#include "colour/value.h"
#include "language/ask_border.h"
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
    while (match.begin + 1 < match.end && reader.is_any(match.begin, "the|a|an|my|our|of|in|inside"))
      ++match.begin;
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
      return "which two dies make a " +
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
      return "show " + subject;
    case Asks::samples:
      break;
  }
  return {};
}

}  // namespace insetbook
