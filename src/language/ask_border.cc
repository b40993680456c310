// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/ask_border.h"

#include <algorithm>
#include <initializer_list>
#include <utility>
#include <variant>

#include "measure/read.h"
#include "measure/write.h"

namespace insetbook {
namespace {

using Words = std::initializer_list<std::string_view>;

class BorderReader {
 public:
  BorderReader(std::string_view text, const std::vector<Piece>& pieces, Unit no_unit)
      : text_(text), pieces_(pieces), no_unit_(no_unit) {}

  std::optional<BorderSaid> read() const {
    for (std::size_t at = 0; at < pieces_.size(); ++at) {
      const std::optional<LengthSaid> length = length_said(text_, pieces_, at, no_unit_);
      if (length) {
        if (auto said = beside(at, *length)) return said;
        at = length->end - 1;
      } else {
        at = past_measurement(at) - 1;
      }
    }
    return std::nullopt;
  }

 private:
  bool is_any(std::size_t at, Words words) const {
    return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word &&
           std::ranges::find(words, pieces_[at].folded) != words.end();
  }
  bool is_comma(std::size_t at) const {
    return pieces_[at].kind == Piece::Kind::mark && (pieces_[at].folded == "," || pieces_[at].folded == ";");
  }
  std::size_t skip(std::size_t at, Words words) const {
    while (is_any(at, words)) ++at;
    return at;
  }

  // A size is no border: its second figure must not be taken for one.
  std::size_t past_measurement(std::size_t at) const {
    const std::size_t begin = pieces_[at].span.begin;
    const auto scanned = scan_measurement(text_.substr(begin), 0, no_unit_);
    std::size_t next = at + 1;
    if (scanned && *scanned)
      while (next < pieces_.size() && pieces_[next].span.begin < begin + (**scanned).found.end) ++next;
    return next;
  }

  // "all round", "on each side", "round the edge"
  std::size_t past_all_round(std::size_t at) const {
    const std::size_t first = skip(at, {"on", "at", "along", "to"});
    std::size_t next = first;
    const bool all = is_any(next, {"all"});
    if (all) next = skip(next + 1, {"the", "way"});
    if (is_any(next, {"round", "around"})) {
      const std::size_t edge = skip(next + 1, {"it", "the"});
      if (is_any(edge, {"edge", "edges", "outside", "panel"})) return edge + 1;
      if (all) return edge;
    }
    next = skip(first, {"each", "every", "all", "both", "the"});
    if (next > first && is_any(next, {"side", "sides", "edge", "edges"})) return next + 1;
    return is_any(at, {"everywhere", "evenly"}) ? at + 1 : at;
  }

  std::optional<BorderSaid> beside(std::size_t at, const LengthSaid& length) const {
    std::size_t next = skip(length.end, {"wide", "even", "is", "are", "to", "of", "should", "will", "must",
                                         "be", "being", "left"});
    const std::size_t round = past_all_round(next);
    if (is_any(next, {"smaller", "less", "narrower"})) return smaller(at, length, next + 1);
    if (is_any(next, {"border", "borders", "showing", "shows", "show", "visible", "margin", "margins",
                      "clear", "peeping", "peeking"})) {
      next = skip(next + 1, {"left", "showing"});
      return said(at, length.length, past_all_round(next));
    }
    if (round > next) return said(at, length.length, past_all_round(round));
    std::size_t before = at;
    while (before > 0 && is_any(before - 1, {"of", "is", "at", "least", "a", "an", "about", "be"})) --before;
    const bool after_colon = before > 0 && pieces_[before - 1].kind == Piece::Kind::mark &&
                             (pieces_[before - 1].folded == ":" || pieces_[before - 1].folded == "=");
    if (after_colon) --before;
    if (before > 0 &&
        is_any(before - 1, {"border", "borders", "margin", "margins", "showing", "leaving", "leave"}))
      return said(before - 1, length.length, next);
    return std::nullopt;
  }

  // "A quarter inch smaller" is off the whole width and height; with "all round" it is each side.
  std::optional<BorderSaid> smaller(std::size_t at, const LengthSaid& length, std::size_t next) const {
    if (is_any(next, {"than"})) next = skip(next + 1, {"it", "that", "the", "opening", "frame", "die"});
    const std::size_t round = past_all_round(next);
    if (round > next) return said(at, length.length, round);
    const Result<ReadLength> whole = read_length(length.length, no_unit_);
    if (!whole) return std::nullopt;
    return said(at, write(whole->length / 2, whole->unit), next);
  }

  // With the words that lead to it: "with a border of", "so that", ",".
  BorderSaid said(std::size_t begin, std::string border, std::size_t end) const {
    while (begin > 0) {
      const bool leads =
          is_comma(begin - 1) ||
          is_any(begin - 1, {"with",   "a",      "an",      "and",  "so",     "that",  "leaving", "showing",
                             "leave",  "border", "borders", "of",   "at",     "even",  "margin",  "least",
                             "having", "has",    "want",    "if",   "i",      "there", "is",      "to",
                             "giving", "allow",  "about",   "have", "exactly"});
      if (!leads) break;
      --begin;
    }
    return {std::move(border), begin, end};
  }

  std::string_view text_;
  const std::vector<Piece>& pieces_;
  Unit no_unit_;
};

// "an eighth", "three sixteenths": of an inch, where a border is meant.
std::optional<LengthSaid> fraction_of_an_inch(const std::vector<Piece>& pieces, std::size_t at) {
  constexpr std::pair<std::string_view, std::string_view> counts[] = {
      {"a", "1"}, {"an", "1"}, {"one", "1"}, {"three", "3"}, {"five", "5"}, {"seven", "7"}};
  constexpr std::pair<std::string_view, std::string_view> parts[] = {
      {"half", "2"},    {"quarter", "4"},    {"quarters", "4"},   {"eighth", "8"},
      {"eighths", "8"}, {"sixteenth", "16"}, {"sixteenths", "16"}};
  if (at + 1 >= pieces.size()) return std::nullopt;
  if (at + 2 < pieces.size())  // "an eighth of an inch" is read as it is
    for (const std::string_view more : {"of", "in", "inch", "inches", "mm"})
      if (pieces[at + 2].folded == more) return std::nullopt;
  for (const auto& [count, figure] : counts) {
    if (pieces[at].folded != count) continue;
    for (const auto& [part, below] : parts)
      if (pieces[at + 1].folded == part)
        return LengthSaid{std::string(figure) + "/" + std::string(below) + " in", at + 2};
  }
  return std::nullopt;
}

}  // namespace

std::optional<LengthSaid> length_said(std::string_view text, const std::vector<Piece>& pieces, std::size_t at,
                                      Unit no_unit) {
  if (auto said = fraction_of_an_inch(pieces, at)) return said;
  const std::size_t begin = pieces[at].span.begin;
  const auto scanned = scan_measurement(text.substr(begin), 0, no_unit);
  if (!scanned || !*scanned || !std::holds_alternative<ReadLength>((**scanned).found.value))
    return std::nullopt;
  const std::size_t end = begin + (**scanned).found.end;
  LengthSaid said{std::string(text.substr(begin, end - begin)), at};
  while (said.end < pieces.size() && pieces[said.end].span.end <= end) ++said.end;
  if (said.end == at) return std::nullopt;
  return said;
}

std::optional<BorderSaid> border_said(std::string_view text, const std::vector<Piece>& pieces, Unit no_unit) {
  return BorderReader(text, pieces, no_unit).read();
}

}  // namespace insetbook
