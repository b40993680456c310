// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/hand_over.h"

#include <algorithm>
#include <initializer_list>
#include <string>
#include <variant>

#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using List = std::initializer_list<std::string_view>;

class Reader {
 public:
  Reader(std::string_view text, const std::vector<Piece>& pieces, const Vocabulary& vocabulary, Unit no_unit)
      : text_(text), pieces_(pieces), vocabulary_(vocabulary), no_unit_(no_unit) {}

  std::optional<Question> read() {
    at_ = skip(0, {"so", "please", "tell", "show", "me", "find", "and"});
    question_.text = std::string(text_);
    if (!fits() && !frames()) return std::nullopt;
    take_subject();
    if (question_.subject.empty()) return std::nullopt;
    return std::move(question_);
  }

 private:
  bool is(std::size_t at, std::string_view word) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word && pieces_[at].folded == word;
  }
  bool is_any(std::size_t at, List words) const {
    return std::ranges::any_of(words, [&](std::string_view word) { return is(at, word); });
  }
  std::size_t skip(std::size_t at, List words) const {
    for (int turn = 0; turn < 6 && is_any(at, words); ++turn) ++at;
    return at;
  }
  // Past these words in this order; `at` when they do not stand there.
  std::size_t past(std::size_t at, List words) const {
    std::size_t next = at;
    for (const std::string_view word : words)
      if (!is(next++, word)) return at;
    return next;
  }

  // A shape behind `at`, of up to three words; where it ends.
  std::size_t shape(std::size_t at) {
    std::string said;
    std::size_t best = at;
    for (std::size_t i = at; i < std::min(at + 3, pieces_.size()) && pieces_[i].kind == Piece::Kind::word;
         ++i) {
      if (!said.empty()) said += ' ';
      said += pieces_[i].folded;
      const auto found = vocabulary_.find(said, VocabularyName::shape);
      if (found.empty()) continue;
      question_.panel_shape = found.front().id;
      best = i + 1;
    }
    return best;
  }

  // "what [size of] [the largest] [panel | circle …] [that will] fits [inside]"
  bool fits() {
    question_.panel_shape.clear();
    std::size_t at = at_;
    bool asked = false;
    if (is_any(at, {"what", "which", "whats", "how"})) {
      asked = true;
      ++at;
      at = skip(at, {"is", "are", "the", "a", "an", "big", "large", "wide", "size", "sized", "of", "largest",
                     "biggest", "can", "i"});
    } else if (is_any(at, {"the", "largest", "biggest"})) {
      at = skip(at, {"the", "largest", "biggest"});
    }
    const std::size_t begins = at;
    at = skip(at, {"panel", "panels", "mat", "layer", "piece", "pieces", "inset", "insets", "paper", "image",
                   "a", "an"});
    const bool inset = at > begins && is_any(at - 1, {"inset", "insets"});
    if (!inset) at = shape(at);
    at = skip(at, {"panel", "piece", "mat", "a", "an"});
    if (inset && is_any(at, {"for", "of", "in", "fits", "fit"})) {
      at_ = skip(at, {"for", "of", "in", "fits", "fit", "inside"});
      return finish(Asks::fits);
    }
    const std::size_t verb =
        skip(at, {"that", "which", "will", "would", "could", "can", "do", "should", "does", "i", "to"});
    if (asked && is(verb, "cut")) {
      std::size_t next = skip(verb + 1, {"it", "the", "panel", "a", "piece", "paper", "mat", "layer"});
      next = skip(next, {"for", "to", "fit", "fill", "go", "in", "inside", "into"});
      if (next > verb + 1) {
        at_ = next;
        return finish(Asks::fits);
      }
    }
    const bool fit = is_any(verb, {"fits", "fit", "fitting"});
    const bool goes = is_any(verb, {"goes", "go", "sits", "sit", "lies", "belongs"});
    if (!fit && !goes) return false;
    std::size_t next = verb + 1;
    next = skip(next, {"well", "best", "exactly", "nicely"});
    const std::size_t where = next;
    next = skip(next, {"inside", "in", "into", "within", "behind", "of"});
    if (next == where && !fit) return false;
    if (!asked && question_.panel_shape.empty() && begins == at_) return false;
    if (next == where && is_any(next, {"round", "around", "a", "an", "over"}) && !asked) return false;
    if (is_any(next, {"round", "around", "over", "outside"})) return false;
    at_ = next;
    return finish(Asks::fits);
  }

  // "which die frames", "what goes round", "frame for"
  bool frames() {
    question_.panel_shape.clear();
    std::size_t at = at_;
    const bool asked = is_any(at, {"what", "which", "whats"});
    if (asked) at = skip(at + 1, {"is", "are", "the", "a", "of", "my", "size", "other"});
    const std::size_t begins = at;
    at = skip(at, {"die", "dies", "frame", "frames", "opening", "openings", "set", "sets"});
    const bool thing = at > begins;
    const std::size_t verb =
        skip(at, {"that", "which", "will", "would", "could", "can", "i", "do", "should"});
    std::size_t next = verb;
    if (asked && is_any(verb, {"surrounds", "surround", "holds", "hold", "encloses", "enclose", "borders"})) {
      next = verb + 1;
    } else if (asked && is_any(verb, {"frames", "frame"})) {
      next = verb + 1;
    } else if ((asked || thing) && is_any(verb, {"goes", "go", "fits", "fit", "put", "use", "sits"}) &&
               is_any(skip(verb + 1, {"nicely", "best"}),
                      {"round", "around", "over", "outside", "for", "to"})) {
      next = skip(skip(verb + 1, {"nicely", "best"}),
                  {"round", "around", "over", "outside", "for", "to", "frame"});
    } else if (asked && thing && is_any(verb, {"for", "to", "takes", "fits"})) {
      next = skip(verb, {"for", "to", "frame", "takes", "fits"});
    } else if (asked && thing && begins + 1 == at && is_any(begins, {"frames", "frame"})) {
      next = at;  // "what frames a 3 x 4 in panel": the word was the verb
    } else if (thing && !asked && is(verb, "for")) {
      next = verb + 1;
    }
    if (next == verb && !(asked && thing && is_any(begins, {"frames", "frame"}) && begins + 1 == at))
      return false;
    at_ = next;
    return finish(Asks::frames);
  }

  bool finish(Asks asks) {
    question_.asks = asks;
    return at_ < pieces_.size();
  }

  // The border, where one is said, and what is left: the opening, or the size.
  void take_subject() {
    std::size_t last = pieces_.size();
    while (last > at_ && pieces_[last - 1].kind == Piece::Kind::mark && pieces_[last - 1].folded == ".")
      --last;
    last = take_border(last);
    std::size_t first = at_;
    if (is_any(first, {"the", "a", "an", "my"}) && first + 1 < last) ++first;
    if (first >= last) return;
    const std::size_t begin = pieces_[first].span.begin;
    question_.subject = std::string(trim(text_.substr(begin, pieces_[last - 1].span.end - begin)));
  }

  // ", 1/8 in border", "with a border of 1/8 in", "with an eighth showing", "so an eighth shows all round",
  // "leaving 1/8 in"
  std::size_t take_border(std::size_t last) {
    for (std::size_t i = at_; i < last; ++i) {
      const bool said = is_any(i, {"border", "borders", "showing", "shows", "show", "leaving", "margin"});
      if (!said) continue;
      for (std::size_t begins = at_; begins < last; ++begins) {
        const std::size_t figure = pieces_[begins].span.begin;
        if (const std::string fraction = spelled_fraction(begins);
            !fraction.empty() && near_border_word(begins, begins + 2, last)) {
          question_.border = fraction;
          return begin_of_border(begins);
        }
        const auto scanned =
            scan_measurement(text_.substr(figure, pieces_[last - 1].span.end - figure), 0, no_unit_);
        if (!scanned || !*scanned || !std::holds_alternative<ReadLength>((**scanned).found.value)) continue;
        const std::size_t end = figure + (**scanned).found.end;
        std::size_t after = begins;
        while (after < last && pieces_[after].span.end <= end) ++after;
        if (!near_border_word(begins, after, last)) {
          begins = std::max(begins, after == 0 ? after : after - 1);
          continue;
        }
        question_.border = std::string(text_.substr(figure, end - figure));
        return begin_of_border(begins);
      }
      return last;
    }
    return last;
  }

  // "an eighth", "a quarter": of an inch, where a border is meant.
  std::string spelled_fraction(std::size_t at) const {
    if (!is_any(at, {"a", "an"})) return {};
    if (is(at + 1, "sixteenth")) return "1/16 in";
    if (is(at + 1, "eighth")) return "1/8 in";
    if (is(at + 1, "quarter")) return "1/4 in";
    return {};
  }

  bool near_border_word(std::size_t begins, std::size_t after, std::size_t last) const {
    const std::size_t behind = skip(after, {"even", "wide", "is", "of"});
    if (behind < last && is_any(behind, {"border", "borders", "showing", "shows", "show", "margin", "all"}))
      return true;
    const std::size_t before = begins == 0 ? 0 : begins - 1;
    return is_any(before, {"leaving", "border", "showing"}) ||
           (is(before, "of") && before > 0 && is_any(before - 1, {"border", "margin"}));
  }

  // Back over the words that lead to the border: "with a border of", "so".
  std::size_t begin_of_border(std::size_t begins) const {
    while (begins > at_ + 1) {
      const Piece& before = pieces_[begins - 1];
      const bool comma = before.kind == Piece::Kind::mark && (before.folded == "," || before.folded == ";");
      if (!comma && !is_any(begins - 1, {"with", "a", "an", "and", "so", "that", "leaving", "showing",
                                         "border", "of", "margin", "at", "even"}))
        break;
      --begins;
    }
    return begins;
  }

  std::string_view text_;
  const std::vector<Piece>& pieces_;
  const Vocabulary& vocabulary_;
  Unit no_unit_;
  std::size_t at_ = 0;
  Question question_;
};

}  // namespace

std::optional<Question> hand_over(std::string_view text, const std::vector<Piece>& pieces,
                                  const Vocabulary& vocabulary, Unit no_unit) {
  if (pieces.size() > 64) return std::nullopt;
  return Reader(text, pieces, vocabulary, no_unit).read();
}

}  // namespace insetbook
