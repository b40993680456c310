// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/ask_thing.h"

#include <algorithm>
#include <span>
#include <utility>
#include <variant>

#include "language/ask_phrase.h"
#include "language/orders.h"
#include "language/paper_names.h"
#include "language/pieces.h"
#include "language/read_opening.h"
#include "measure/read.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::string_view around_a_size[] = {
    "a",     "an",    "the",    "my",       "our",      "this",      "that",  "of",    "is",
    "are",   "which", "size",   "sized",    "measures", "measuring", "with",  "sides", "side",
    "about", "big",   "across", "diameter", "wide",     "in",        "whose", "and"};
constexpr std::string_view things[] = {
    "panel", "panels",     "frame",     "frames",   "opening", "openings", "window",    "aperture",  "hole",
    "die",   "mat",        "mats",      "layer",    "layers",  "piece",    "pieces",    "image",     "images",
    "photo", "picture",    "paper",     "front",    "card",    "cards",    "cardfront", "space",     "area",
    "box",   "inset",      "insert",    "topper",   "stamp",   "stamped",  "print",     "cardstock", "base",
    "liner", "photograph", "sentiment", "greeting", "dies",    "cut",      "out",       "shape"};
constexpr std::string_view kinds_of_thing[] = {
    "stamp",   "stamps", "set",    "sets",    "die",    "dies",      "ink",      "inks",
    "pad",     "paper",  "papers", "card",    "stock",  "cardstock", "colour",   "color",
    "colours", "colors", "folder", "folders", "ribbon", "stencil",   "stencils", "mask",
    "masks",   "sample", "supply", "tool",    "design", "one"};

constexpr std::string_view parts_piece_from_sample[] = {"on", "of", "in", "from", "for", "inside"};

bool among(std::string_view word, std::span<const std::string_view> list) {
  return std::ranges::find(list, word) != list.end();
}

// "the", "my", "all the" at the beginning.
std::size_t past_articles(const std::vector<std::string>& words) {
  std::size_t first = 0;
  while (first < words.size() &&
         among(words[first], std::span<const std::string_view>(around_a_size).first(7)))
    ++first;
  return first;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  const std::string folded = fold(text);
  std::size_t begin = 0;
  while (begin < folded.size()) {
    const std::size_t end = std::min(folded.find(' ', begin), folded.size());
    std::string word = folded.substr(begin, end - begin);
    while (!word.empty() && std::string_view("?!.,;").find(word.back()) != std::string_view::npos)
      word.pop_back();
    if (!word.empty()) words.push_back(std::move(word));
    begin = end + 1;
  }
  return words;
}

std::string joined(const std::vector<std::string>& words, std::size_t first, std::size_t last) {
  std::string text;
  for (std::size_t i = first; i < last; ++i) text += (i > first ? " " : "") + words[i];
  return text;
}

class ThingReader {
 public:
  ThingReader(std::string_view text, const std::vector<Piece>& pieces, const Vocabulary& vocabulary,
              Unit no_unit)
      : text_(text), pieces_(pieces), vocabulary_(vocabulary), no_unit_(no_unit) {}

  std::optional<ThingSaid> read() {
    for (std::size_t at = 0; at < pieces_.size();) {
      const std::size_t next = step(at);
      if (next == at) return std::nullopt;
      at = next;
    }
    if (!sized_ || (bare_ && !named_)) return std::nullopt;
    if (thing_.shape.empty() && !thing_.size.shape.empty()) set_shape(thing_.size.shape);
    return std::move(thing_);
  }

 private:
  // Past what begins at `at`; `at` where it belongs to no size, or says a second one.
  std::size_t step(std::size_t at) {
    const Piece& piece = pieces_[at];
    if (piece.kind == Piece::Kind::mark) return piece.folded == "," ? at + 1 : at;
    if (piece.kind != Piece::Kind::word) return at;
    if (const std::size_t next = measurement(at); next > at) return next;
    const bool thing = among(piece.folded, things);
    const std::size_t next = shape(at);
    named_ = named_ || thing || next > at;
    if (next > at) return next;
    if (thing || among(piece.folded, around_a_size)) return at + 1;
    return paper(at);
  }

  std::size_t measurement(std::size_t at) {
    const std::size_t begin = pieces_[at].span.begin;
    const auto scanned = scan_measurement(text_.substr(begin), 0, no_unit_);
    if (!scanned || !*scanned) return at;
    const FoundMeasurement& found = (**scanned).found;
    if (sized_ || std::holds_alternative<Range>(found.value)) return at;
    if (const auto* size = std::get_if<Size>(&found.value)) {
      thing_.size = *size;
    } else {
      const auto& length = std::get<ReadLength>(found.value);
      thing_.size = {.width = length.length, .height = length.length, .unit = length.unit};
      thing_.size.one_figure = true;
    }
    if (thing_.size.width <= Length() || thing_.size.height <= Length()) return at;
    sized_ = true;
    bare_ = (**scanned).bare;
    std::size_t next = at;
    while (next < pieces_.size() && pieces_[next].span.begin < begin + found.end) ++next;
    return next;
  }

  std::size_t shape(std::size_t at) {
    std::string said;
    std::size_t end = at;
    for (std::size_t i = at; i < std::min(at + 3, pieces_.size()); ++i) {
      if (pieces_[i].kind != Piece::Kind::word) break;
      said += (i > at ? " " : "") + pieces_[i].folded;
      if (set_shape(said)) end = i + 1;
    }
    return end;
  }

  bool set_shape(std::string_view said) {
    const std::vector<TermMatch> found = vocabulary_.find(said, VocabularyName::shape);
    if (found.empty()) return false;
    thing_.shape = found.front().id;
    return true;
  }

  std::size_t paper(std::size_t at) {
    const PaperName* named = sized_ ? nullptr : paper_named(pieces_[at].folded);
    if (!named) return at;
    thing_.size = {.width = named->width, .height = named->height, .unit = named->unit};
    thing_.means = named->means;
    thing_.other = named->other;
    sized_ = true;
    return at + 1;
  }

  std::string_view text_;
  const std::vector<Piece>& pieces_;
  const Vocabulary& vocabulary_;
  Unit no_unit_;
  ThingSaid thing_;
  bool sized_ = false;
  bool bare_ = false;  // "2": a count or a year, unless a thing is named with it
  bool named_ = false;
};

bool is_set(const NamedRecord& record) {
  return record.kind == NameKind::set;
}

// A set by its whole name, or a set and one of its dies: "tidepool rectangles 2", "big labels large tag".
void add_dies(std::string_view name, bool order_said, const Names& names, std::vector<NamedRecord>& found) {
  for (const NamedRecord& record : names.exactly(name))
    if (is_set(record) || (record.kind == NameKind::die && !order_said)) found.push_back(record);
  for (std::size_t at = name.rfind(' '); at != std::string_view::npos && at > 0 && found.empty();
       at = name.rfind(' ', at - 1)) {
    for (const NamedRecord& record : names.exactly(name.substr(0, at))) {
      if (!is_set(record)) continue;
      std::string_view label = name.substr(at + 1);
      if (label.starts_with("die ") || label.starts_with("no ")) label.remove_prefix(label.find(' ') + 1);
      const std::optional<int> rank = read_rank(label);
      const std::vector<std::int64_t> dies = names.dies_of(record.id);
      if (const auto die = names.die_labelled(record.id, label))
        found.push_back({NameKind::die, *die, record.name + " " + std::string(label), record.name});
      else if (rank && *rank >= 1 && static_cast<std::size_t>(*rank) <= dies.size())
        found.push_back({NameKind::die, dies[static_cast<std::size_t>(*rank) - 1],
                         record.name + " " + std::string(label), record.name});
    }
  }
}

}  // namespace

std::optional<ThingSaid> read_thing(std::string_view text, const Vocabulary& vocabulary, Unit no_unit) {
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return std::nullopt;
  return ThingReader(text, *pieces, vocabulary, no_unit).read();
}

std::string bare_name(std::string_view text) {
  const std::vector<std::string> words = words_of(text);
  std::size_t first = past_articles(words);
  std::size_t last = words.size();
  while (last > first + 1 && among(words[last - 1], kinds_of_thing)) --last;
  if (last == words.size())
    while (first + 1 < last && among(words[first], kinds_of_thing)) ++first;
  while (first + 1 < last && words[first] == "of") ++first;
  return joined(words, first, last);
}

std::optional<PieceOfSample> piece_of_sample(std::string_view text, const Names& names) {
  const std::vector<std::string> words = words_of(text);
  const std::size_t first = past_articles(words);
  for (std::size_t i = first + 1; i + 1 < words.size(); ++i) {
    if (!among(words[i], std::span<const std::string_view>(parts_piece_from_sample))) continue;
    for (const NamedRecord& record : names.exactly(joined(words, i + 1, words.size())))
      if (record.kind == NameKind::sample) return PieceOfSample{joined(words, first, i), record};
  }
  return std::nullopt;
}

std::vector<NamedRecord> things_named(std::string_view text, const Names& names) {
  const std::vector<std::string> words = words_of(text);
  std::vector<NamedRecord> found = names.exactly(joined(words, 0, words.size()));
  if (found.empty()) found = names.exactly(joined(words, past_articles(words), words.size()));
  for (const OpeningPhrase& phrase : readings_of_opening(text))
    if (found.empty()) add_dies(phrase.name, phrase.rank || phrase.rank_from_smallest, names, found);
  if (found.empty()) found = names.exactly(bare_name(text));
  return found;
}

std::vector<NamedRecord> things_like(std::string_view text, const Names& names) {
  std::vector<NamedRecord> found = things_named(text, names);
  if (found.empty()) found = names.like(bare_name(text), 3);
  if (found.empty() && !readings_of_opening(text).empty())
    found = names.like(readings_of_opening(text).front().name, 3);
  return found;
}

}  // namespace insetbook
