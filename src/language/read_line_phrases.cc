// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line_phrases.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "language/orders.h"
#include "language/read_line_stages.h"
#include "language/read_opening.h"
#include "language/read_record.h"
#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_target = 8;  // words
constexpr std::size_t longest_place = 24;
constexpr std::size_t longest_measurement = 24;  // pieces

using Words = std::initializer_list<std::string_view>;

bool among(std::string_view word, Words list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

constexpr auto place_words = std::to_array<std::string_view>(
    {"centre",   "center",  "centred",     "centered",     "middle",     "high",       "low",    "higher",
     "lower",    "upper",   "left",        "right",        "top",        "bottom",     "side",   "sides",
     "edge",     "edges",   "corner",      "corners",      "flush",      "hanging",    "off",    "up",
     "down",     "from",    "of",          "on",           "at",         "in",         "to",     "by",
     "the",      "a",       "both",        "each",         "all",        "round",      "little", "slightly",
     "bit",      "and",     "with",        "same",         "equal",      "even",       "border", "borders",
     "margin",   "third",   "card",        "horizontally", "vertically", "diagonally", "tilted", "turned",
     "straight", "level",   "overhanging", "above",        "below",      "its",        "way",    "long",
     "short",    "degrees", "over",        "line",         "along",      "near"});

class Phrases {
 public:
  Phrases(std::string_view text, const std::vector<Piece>& pieces, const ReadingContext& context)
      : text_(text), pieces_(pieces), context_(context) {
    find_measurements();
  }

  std::vector<LinePhrase> run() {
    std::vector<LinePhrase> found;
    for (std::size_t at = 0; at < pieces_.size();) {
      if (auto phrase = phrase_at(at)) {
        at = phrase->second;
        found.push_back(phrase->first);
      } else {
        at = std::max(at + 1, measured_[at]);
      }
    }
    return found;
  }

 private:
  using Found = std::optional<std::pair<LinePhrase, std::size_t>>;  // and the piece behind it

  // For each piece at which a measurement begins, the piece behind it; else 0.
  void find_measurements() {
    measured_.assign(pieces_.size() + 1, 0);
    for (std::size_t at = 0; at < pieces_.size();) {
      const std::size_t end = measurement(at);
      measured_[at] = end;
      at = std::max(at + 1, end);
    }
  }

  std::size_t measurement(std::size_t at) const {
    if (pieces_[at].kind != Piece::Kind::word) return 0;
    const std::size_t last = std::min(at + longest_measurement, pieces_.size());
    const std::size_t begin = pieces_[at].span.begin;
    const auto found =
        scan_measurement(text_.substr(begin, pieces_[last - 1].span.end - begin), 0, context_.unit);
    if (!found || !*found) return 0;
    const char first = text_[begin];
    const bool figure = (first >= '0' && first <= '9') || static_cast<unsigned char>(first) >= 0x80;
    if ((**found).bare && !figure) return 0;
    std::size_t end = at;
    while (end < last && pieces_[end].span.end <= begin + (**found).found.end) ++end;
    // "moonrise circles 3 in the middle": no unit stands before an article.
    const bool no_unit = end > at + 1 && is_word(end - 1, "in") && is_word(end, {"the", "a", "an", "my"});
    return no_unit ? end - 1 : end;
  }

  bool is_word(std::size_t at, std::string_view word) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word && pieces_[at].folded == word;
  }
  bool is_word(std::size_t at, Words list) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word && among(pieces_[at].folded, list);
  }
  bool is_mark(std::size_t at, std::string_view mark) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::mark && pieces_[at].folded == mark;
  }
  // How many pieces these words take at `at`; 0 where they do not stand there.
  std::size_t words_at(std::size_t at, std::string_view words) const {
    std::size_t count = 0;
    while (!words.empty()) {
      const std::size_t end = std::min(words.find(' '), words.size());
      if (!is_word(at + count, words.substr(0, end))) return 0;
      words.remove_prefix(std::min(end + 1, words.size()));
      ++count;
    }
    return count;
  }
  std::size_t skip_articles(std::size_t at) const {
    while (is_word(at, {"the", "a", "an", "my"})) ++at;
    return at;
  }
  // Where the words that belong together end: at a mark, a quote, the end.
  std::size_t clause_end(std::size_t at) const {
    while (at < pieces_.size() && pieces_[at].kind == Piece::Kind::word) at = std::max(at + 1, measured_[at]);
    return std::min(at, pieces_.size());
  }
  Span span_of(std::size_t first, std::size_t last) const {
    if (first >= last) return {};
    return {pieces_[first].span.begin, pieces_[last - 1].span.end};
  }
  std::string_view typed(std::size_t first, std::size_t last) const {
    const Span span = span_of(first, last);
    return text_.substr(span.begin, span.end - span.begin);
  }
  std::string joined(std::size_t first, std::size_t count) const {
    std::string words;
    for (std::size_t i = first; i < first + count; ++i) {
      if (!words.empty()) words += ' ';
      words += pieces_[i].folded;
    }
    return words;
  }
  Found phrase(LinePhrase::Kind kind, std::size_t first, std::size_t inner, std::size_t last) const {
    LinePhrase found;
    found.kind = kind;
    found.span = span_of(first, last);
    found.inner = span_of(inner, last);
    return std::pair(found, last);
  }

  Found phrase_at(std::size_t at) const {
    if (pieces_[at].kind != Piece::Kind::word) return std::nullopt;
    if (auto found = note(at)) return found;
    if (auto found = named(at)) return found;
    if (auto found = scores(at)) return found;
    if (auto found = goes(at)) return found;
    if (auto found = glue(at)) return found;
    if (auto found = place(at)) return found;
    return count(at);
  }

  Found note(std::size_t at) const {
    const bool is_note = is_word(at, {"note", "notes", "nb"}) && is_mark(at + 1, ":");
    if (!is_note || at + 2 >= pieces_.size()) return std::nullopt;
    return phrase(LinePhrase::Kind::note, at, at + 2, pieces_.size());
  }

  Found named(std::size_t at) const {
    if (!is_word(at, {"called", "named"}) || at + 1 >= pieces_.size()) return std::nullopt;
    if (pieces_[at + 1].kind == Piece::Kind::phrase) {
      auto found = phrase(LinePhrase::Kind::name, at, at + 1, at + 2);
      found->first.inner = pieces_[at + 1].inner;
      return found;
    }
    std::size_t end = at + 1;
    const auto ends_name = [&](std::size_t i) {
      return is_word(i, {"on", "in", "behind", "around", "through", "from", "with", "using", "glue", "glued",
                         "stamped", "centred", "centered"});
    };
    while (end < pieces_.size() && pieces_[end].kind == Piece::Kind::word && !ends_name(end)) ++end;
    if (end == at + 1) return std::nullopt;
    return phrase(LinePhrase::Kind::name, at, at + 1, end);
  }

  Found scores(std::size_t at) const {
    if (!is_word(at, {"scored", "score", "scores"})) return std::nullopt;
    std::size_t figure = at + 1;
    while (is_word(figure, {"at", "lines", "line"}) || is_mark(figure, ":")) ++figure;
    if (figure >= pieces_.size() || !score_begins(figure)) return std::nullopt;
    std::size_t end = figure;
    for (std::size_t next = figure; score_begins(next);) {
      while (is_score_word(next)) ++next;
      if (next < pieces_.size() && measured_[next] > next) next = measured_[next];
      while (is_score_word(next)) ++next;
      end = next;
      if (is_mark(next, ",") || is_mark(next, ";") || is_mark(next, "&")) ++next;
      if (is_word(next, "and")) ++next;
      if (next == end) break;
    }
    return phrase(LinePhrase::Kind::scores, at, figure, end);
  }
  bool is_score_word(std::size_t at) const {
    return is_word(at, {"mountain", "valley", "from", "the", "left", "right", "top", "bottom", "long",
                        "short", "side", "at", "fold"});
  }
  bool score_begins(std::size_t at) const {
    while (is_score_word(at)) ++at;
    return at < pieces_.size() && measured_[at] > at;
  }

  // Words that begin another phrase, as far as one word tells.
  bool leads(std::size_t at) const {
    return is_word(
        at, {"on",      "in",     "behind", "around",  "through", "under",    "onto",     "into",   "over",
             "beneath", "within", "round",  "wrapped", "tied",    "threaded", "glue",     "glued",  "called",
             "named",   "with",   "from",   "using",   "cut",     "centred",  "centered", "high",   "low",
             "left",    "right",  "flush",  "hanging", "scored",  "beside",   "against",  "stamped"});
  }

  // How many words the longest label of a role or a shape takes that begins here.
  std::size_t head_at(std::size_t at) const {
    std::size_t longest = 0;
    std::string words;
    const std::size_t most = context_.vocabulary.longest_label_words() + 1;
    for (std::size_t count = 1; count <= most && at + count <= pieces_.size(); ++count) {
      const Piece& piece = pieces_[at + count - 1];
      if (piece.kind != Piece::Kind::word) break;
      if (count > 1) words += ' ';
      words += piece.folded;
      for (const TermMatch& match : context_.vocabulary.find(words))
        if (match.vocabulary == VocabularyName::role || match.vocabulary == VocabularyName::shape)
          longest = count;
    }
    return longest;
  }

  // "front", "the inside left", "section 2", "the front of the card": where it ends; `at` where it is none.
  std::size_t place_of_card(std::size_t at) const {
    std::size_t end = at;
    if (is_word(at, "section") && at + 1 < pieces_.size() && small_number(pieces_[at + 1].folded)) {
      end = at + 2;
    } else if (is_word(at, {"front", "back", "inside", "outside", "reverse", "cover", "card"})) {
      end = at + 1;
      if (is_word(at, {"card"}) && is_word(end, {"front", "base", "back"})) ++end;
      if (is_word(end, {"left", "right"}) && !measured_[end + 1]) ++end;
    }
    if (end == at) return at;
    if (is_word(end, "of")) {
      const std::size_t card = skip_articles(end + 1);
      if (is_word(card, {"card", "base"})) end = card + 1;
    }
    return end;
  }

  // ", stitched" and "stitched line" behind the piece in which another lies.
  std::size_t with_line(std::size_t at) const {
    const std::size_t kind = at + (is_mark(at, ",") ? 1 : 0);
    if (kind >= pieces_.size() || pieces_[kind].kind != Piece::Kind::word) return at;
    if (line_kind(pieces_[kind].folded).empty()) return at;
    if (is_word(kind + 1, "line")) return kind + 2;
    const bool often_a_technique = is_word(kind, {"embossed", "scored", "cut"});
    const bool ends = kind + 1 == pieces_.size() || pieces_[kind + 1].kind == Piece::Kind::mark;
    return kind > at && ends && !often_a_technique ? kind + 1 : at;
  }

  // Where the piece named from `at` ends: behind its role or shape, with a number that tells it from others.
  std::optional<std::size_t> target_with_head(std::size_t at) const {
    for (std::size_t i = at; i < at + longest_target && i < pieces_.size();) {
      if (pieces_[i].kind != Piece::Kind::word) return std::nullopt;
      if (std::size_t count = head_at(i); count > 0 && measured_[i] == 0) {
        std::size_t end = i + count;
        while (end < pieces_.size() && (count = head_at(end)) > 0) end += count;
        const bool number = end < pieces_.size() && plain_number(pieces_[end].folded) &&
                            (measured_[end] == 0 || measured_[end] == end + 1) && !is_word(end + 1, "x");
        return number ? end + 1 : end;
      }
      if (i > at && leads(i)) return std::nullopt;
      i = std::max(i + 1, measured_[i]);
    }
    return std::nullopt;
  }

  // What the words are read as by the stages of a question.
  struct Trial {
    bool text = false, die = false, colour_or_stuff = false;
  };
  Trial trial(std::size_t first, std::size_t last) const {
    Trial found;
    const Result<Itemised> items = read_stages(typed(first, last), context_);
    if (!items) return {true, false, false};
    bool is_first = true;
    for (const Item& item : items->items) {
      if (item.kind != Item::Kind::says) continue;
      const Says& says = item.offered.front().says;
      if (const auto* die = std::get_if<DieIs>(&says); die && die->lies_in && is_first) found.die = true;
      if (std::holds_alternative<WordsAre>(says)) found.text = true;
      is_first = false;
    }
    return found;
  }

  // "a bow in baker's twine", "in linen ribbon": what the piece is made of, and no other piece.
  bool made_of(std::size_t first) const {
    std::size_t last = first;
    while (last < clause_end(first) && last < first + longest_target && (last == first || !leads(last)))
      ++last;
    const Result<Itemised> items = read_stages(typed(first, last), context_);
    if (!items) return false;
    bool stuff = false;
    for (const Item& item : items->items) {
      if (item.kind != Item::Kind::says) return false;
      const auto made = [&](const Constraint& each) {
        return std::holds_alternative<SupplyIs>(each.says) || std::holds_alternative<MaterialIs>(each.says);
      };
      const bool of_this = made(item.offered.front()) || std::ranges::any_of(item.also, made);
      if (!of_this && item.of != FieldName::colour) return false;
      stuff = stuff || of_this;
    }
    return stuff;
  }

  bool is_adhesive(std::size_t first, std::size_t last) const {
    if (first >= last || last > pieces_.size()) return false;
    return !context_.vocabulary.find(joined(first, last - first), VocabularyName::adhesive).empty();
  }
  // Where the longest adhesive that begins here ends; `at` where there is none.
  std::size_t adhesive_end(std::size_t at) const {
    for (std::size_t count = 4; count > 0; --count) {
      if (at + count > pieces_.size() || clause_end(at) < at + count) continue;
      if (is_adhesive(at, at + count)) return at + count;
    }
    return at;
  }

  Found goes(std::size_t at) const {
    for (const GoesWords& each : goes_words()) {
      std::size_t target = at + words_at(at, each.words);
      if (target == at) continue;
      return goes_target(at, target, each.how);
    }
    // "inside the frame"; "inside" alone is the side of the card.
    if (is_word(at, "inside") && is_word(at + 1, {"the", "a", "an"}))
      return goes_target(at, at + 1, GoesHow::in);
    return std::nullopt;
  }

  Found goes_target(std::size_t at, std::size_t target, GoesHow how) const {
    const std::size_t begins = skip_articles(target);
    const bool article = begins > target;
    if (begins >= pieces_.size() || is_mark(begins, ",")) return std::nullopt;
    const bool in_or_on = how == GoesHow::in || how == GoesHow::on;
    if (measured_[begins] > 0 && !in_or_on && !article) return std::nullopt;  // "around 2 in", "under 2 in"
    const auto make = [&](std::size_t last, bool of_card) {
      auto found = phrase(LinePhrase::Kind::goes, at, begins, last);
      found->first.how = how;
      found->first.place_of_card = of_card;
      return found;
    };
    if (pieces_[begins].kind == Piece::Kind::phrase) {
      auto found = make(begins + 1, false);
      found->first.inner = pieces_[begins].inner;
      return found;
    }
    if (pieces_[begins].kind != Piece::Kind::word) return std::nullopt;
    const std::size_t of_card = place_of_card(begins);
    const std::size_t head = head_at(begins);
    // "on front panel", "on the back panel" name a piece.
    const bool piece = head > 1 || (of_card == begins + 1 && head_at(of_card) > 0 && measured_[of_card] == 0);
    if (of_card > begins && !piece) return make(of_card, true);
    if (in_or_on && adhesive_end(begins) > begins) return std::nullopt;
    if (is_word(at, "in") && !article && made_of(begins)) return std::nullopt;
    if (how == GoesHow::in && trial(at, std::min(clause_end(at), at + longest_target)).die)
      return std::nullopt;
    if (is_place_lead(begins)) return std::nullopt;
    if (const auto end = target_with_head(begins)) {
      // "stamped in navy on the panel": no piece up to "on".
      return make(how == GoesHow::in ? with_line(*end) : *end, false);
    }
    std::size_t end = begins;
    while (end < clause_end(begins) && end < begins + longest_target && (end == begins || !leads(end))) ++end;
    if (end == begins || (in_or_on && !trial(begins, end).text)) return std::nullopt;
    if (how == GoesHow::in && !article && end > begins + 3) return std::nullopt;
    return make(how == GoesHow::in ? with_line(end) : end, false);
  }

  Found glue(std::size_t at) const {
    if (words_at(at, "no glue") || words_at(at, "not glued")) {
      auto found = phrase(LinePhrase::Kind::glue, at, at, at + 2);
      return found;
    }
    // "on foam", "with tape runner"; an adhesive alone where nothing else is so called.
    const bool led = is_word(at, {"on", "with", "using", "by"});
    const std::size_t first = led ? skip_articles(at + 1) : at;
    if (const std::size_t end = adhesive_end(first); end > first && !is_word(at, {"glue", "glued"})) {
      bool only_adhesive = led;
      if (!led) {
        const auto meanings = context_.vocabulary.find(joined(first, end - first));
        only_adhesive = std::ranges::all_of(
            meanings, [](const TermMatch& match) { return match.vocabulary == VocabularyName::adhesive; });
      }
      if (only_adhesive) return phrase(LinePhrase::Kind::glue, at, first, end);
    }
    if (!is_word(at, {"glue", "glued", "stuck", "stick"})) return std::nullopt;
    std::size_t inner = at + 1;
    while (is_word(inner, {"only", "down", "it", "at", "along", "with", "the", "just"}) ||
           is_mark(inner, ":"))
      ++inner;
    if (is_word(inner, "on") && adhesive_end(inner + 1) > inner + 1) ++inner;
    if (inner >= pieces_.size() || pieces_[inner].kind != Piece::Kind::word || goes(inner))
      return phrase(LinePhrase::Kind::filler, at, at,
                    inner > at + 1 && is_word(inner - 1, "down") ? inner : at + 1);
    std::size_t end = inner;
    while (end < clause_end(inner) && !goes(end)) end = std::max(end + 1, measured_[end]);
    // "glue with foam, left 2 in": the place belongs to the glue.
    const bool edge_said = edge_at(inner);
    if (!edge_said && is_mark(end, ",") && edge_at(end + 1)) {
      const std::size_t figure = end + 2;
      if (figure < pieces_.size() && measured_[figure] > 0) end = measured_[figure];
    }
    return phrase(LinePhrase::Kind::glue, at, inner, end);
  }
  bool edge_at(std::size_t at) const {
    return is_word(at,
                   {"left", "right", "top", "bottom", "middle", "centre", "center", "edges", "whole", "all"});
  }

  bool is_place_word(std::size_t at) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word &&
           std::ranges::find(place_words, pieces_[at].folded) != place_words.end();
  }
  // A word that says where on the piece below, and begins no longer label ("top layer").
  bool is_place_lead(std::size_t at) const {
    if (!is_word(at, {"centre", "center", "middle", "left", "right", "top", "bottom", "upper", "lower",
                      "corner", "corners"}))
      return false;
    return head_at(at) < 2;
  }
  // Where the words that begin a place end; `at` where none begins.
  std::size_t place_begins(std::size_t at) const {
    if (measured_[at] > 0) {  // "1/4 in from the left"
      std::size_t next = measured_[at];
      if (is_word(next, "in")) ++next;
      if (!is_word(next, {"from", "off", "down", "up", "above", "below"})) return at;
      ++next;
      while (is_word(next, {"the", "both", "each", "all", "its", "from"})) ++next;
      return is_word(next, {"left", "right", "top", "bottom", "side", "sides", "edge", "edges", "corner",
                            "corners", "centre", "center", "middle", "long", "short"})
                 ? next + 1
                 : at;
    }
    if (is_word(at, {"in", "at", "on", "to", "near", "towards"})) {
      const std::size_t word = is_word(at + 1, {"the", "a", "each", "all"}) ? at + 2 : at + 1;
      return is_place_lead(word) ? word + 1 : at;
    }
    if (is_word(at, {"centred", "centered", "flush", "hanging", "overhanging", "tilted", "centrally"}))
      return at + 1;
    if (is_word(at, {"high", "low", "higher", "lower"})) {
      const bool sized = at > 0 && measured_before(at);
      const bool alone = at + 1 == pieces_.size() || pieces_[at + 1].kind == Piece::Kind::mark;
      return !sized && (alone || is_word(at + 1, {"of", "on", "up", "down", "left", "right"})) ? at + 1 : at;
    }
    if (is_word(at, {"left", "right", "top", "bottom", "upper", "centre", "center", "middle"}) &&
        head_at(at) < 2)
      return at + 1;
    if (is_word(at, {"same", "equal", "even"}) && is_word(at + 1, {"border", "borders", "margin"}))
      return at + 2;
    return at;
  }
  bool measured_before(std::size_t at) const {
    for (std::size_t begin = at; begin-- > 0 && begin + longest_measurement > at;)
      if (measured_[begin] > 0) return measured_[begin] == at;
    return false;
  }

  Found place(std::size_t at) const {
    if (is_word(at, {"beside", "against"}) || words_at(at, "next to")) {
      const std::size_t begins = skip_articles(at + (is_word(at, "next") ? 2 : 1));
      const auto head = target_with_head(begins);
      const std::size_t end = head ? *head : clause_end(begins);
      if (end == begins) return std::nullopt;
      return phrase(LinePhrase::Kind::place, at, at, end);
    }
    std::size_t end = place_begins(at);
    if (end == at) return std::nullopt;
    std::size_t figure_end = at;
    while (end < pieces_.size() && end < at + longest_place) {
      if (measured_[end] > 0) {
        const std::size_t behind = measured_[end];
        const bool ends = behind >= pieces_.size() || pieces_[behind].kind != Piece::Kind::word ||
                          is_place_word(behind) || leads(behind);
        if (!ends) break;
        end = figure_end = behind;
      } else if (is_place_word(end) && !goes(end) && head_at(end) < 2) {
        ++end;
      } else {
        break;
      }
    }
    const bool of = is_word(end - 1, "of") || (is_word(end - 1, "the") && is_word(end - 2, "of"));
    while (end > std::max(at + 1, figure_end) &&
           is_word(end - 1,
                   {"on", "in", "at", "of", "the", "by", "from", "and", "with", "to", "a", "over", "along"}))
      --end;
    if (of) {
      std::size_t next = skip_articles(end + 1);
      if (next < pieces_.size() && pieces_[next].kind == Piece::Kind::word)
        if (const auto head = target_with_head(next)) end = *head;
    }
    return phrase(LinePhrase::Kind::place, at, at, end);
  }

  // "3 x sage circle": a whole number and an x before what is no figure. Where it ends.
  Found count_before(std::size_t at) const {
    const auto number = plain_number(pieces_[at].folded);
    const bool begins = at == 0 || pieces_[at - 1].kind == Piece::Kind::mark;
    if (!number || !begins || !(is_word(at + 1, "x") || is_word(at + 1, "off"))) return std::nullopt;
    const bool figure = at + 2 >= pieces_.size() || measured_[at + 2] > 0;
    if (figure || measured_[at] > at + 2) return std::nullopt;
    auto found = phrase(LinePhrase::Kind::count, at, at, at + 2);
    found->first.number = *number;
    return found;
  }

  Found count(std::size_t at) const {
    if (auto found = count_before(at)) return found;
    const bool free = at == 0 || pieces_[at - 1].kind == Piece::Kind::mark || !ends_in_figure(at - 1);
    std::string_view word = pieces_[at].folded;
    if (!free || !word.starts_with('x')) return std::nullopt;
    word.remove_prefix(1);
    std::size_t end = at + 1;
    if (word.empty() && end < pieces_.size() && pieces_[end].kind == Piece::Kind::word)
      word = pieces_[end++].folded;
    const auto number = plain_number(word);
    const bool ends = end >= pieces_.size() || pieces_[end].kind == Piece::Kind::mark;
    if (!number || !ends) return std::nullopt;
    auto found = phrase(LinePhrase::Kind::count, at, at, end);
    found->first.number = *number;
    return found;
  }
  bool ends_in_figure(std::size_t at) const {
    const std::string& word = pieces_[at].folded;
    return !word.empty() && word.back() >= '0' && word.back() <= '9';
  }

  std::string_view text_;
  const std::vector<Piece>& pieces_;
  const ReadingContext& context_;
  std::vector<std::size_t> measured_;
};

}  // namespace

std::vector<LinePhrase> line_phrases(std::string_view text, const std::vector<Piece>& pieces,
                                     const ReadingContext& context) {
  return Phrases(text, pieces, context).run();
}

}  // namespace insetbook
