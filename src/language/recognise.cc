// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/recognise.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

#include "language/dates.h"
#include "language/empty_fields.h"
#include "language/envelope_names.h"
#include "language/orders.h"
#include "language/paper_names.h"
#include "language/read_record.h"
#include "language/says.h"
#include "language/single_words.h"
#include "language/small_words.h"
#include "schema/label_key.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr std::size_t longest_name = 8;

}  // namespace

Recogniser::Recogniser(std::string_view text, const std::vector<Piece>& pieces, const ReadingContext& context)
    : text_(text),
      pieces_(pieces),
      context_(context),
      longest_label_(context.vocabulary.longest_label_words() + 2) {}

std::size_t Recogniser::run_of_words(std::size_t at, std::size_t most) const {
  std::size_t count = 0;
  ++steps_;
  while (count < most && at + count < pieces_.size() && pieces_[at + count].kind == Piece::Kind::word)
    ++count;
  return count;
}

std::string Recogniser::words(std::size_t first, std::size_t count) const {
  std::string joined;
  for (std::size_t i = first; i < first + count; ++i) {
    if (!joined.empty()) joined += ' ';
    joined += pieces_[i].folded;
  }
  return joined;
}

std::vector<std::string> Recogniser::word_list(std::size_t at, std::size_t most) const {
  std::vector<std::string> list;
  const std::size_t count = run_of_words(at, most);
  for (std::size_t i = at; i < at + count; ++i) list.push_back(pieces_[i].folded);
  return list;
}

bool Recogniser::is_word(std::size_t at, std::string_view word) const {
  return at < pieces_.size() && pieces_[at].kind == Piece::Kind::word && pieces_[at].folded == word;
}

bool Recogniser::is_mark(std::size_t at, std::string_view mark) const {
  return at < pieces_.size() && pieces_[at].kind == Piece::Kind::mark && pieces_[at].folded == mark;
}

// Past any run of these words, four at most.
std::size_t Recogniser::skip(std::size_t at, std::initializer_list<std::string_view> list) const {
  for (int turn = 0; turn < 4; ++turn) {
    const bool found = std::ranges::any_of(list, [&](std::string_view word) { return is_word(at, word); });
    if (!found) break;
    ++at;
  }
  return at;
}

Span Recogniser::span_of(std::size_t first, std::size_t last) const {
  if (first >= last) return {};
  return {pieces_[first].span.begin, pieces_[last - 1].span.end};
}

std::string_view Recogniser::typed(std::size_t first, std::size_t last) const {
  const Span span = span_of(first, last);
  return text_.substr(span.begin, span.end - span.begin);
}

Seen Recogniser::seen(As as, std::size_t first, std::size_t last, int priority) const {
  Seen it;
  it.as = as;
  it.first = first;
  it.last = last;
  it.span = span_of(first, last);
  it.weight = 2 * static_cast<int>(last - first);
  it.priority = priority;
  return it;
}

const std::vector<NamedRecord>& Recogniser::exactly(const std::string& folded) {
  const auto known = exactly_.find(folded);
  if (known != exactly_.end()) return known->second;
  return exactly_.emplace(folded, context_.names.exactly(folded)).first->second;
}

std::vector<Seen> Recogniser::offers(std::size_t at) {
  std::vector<Seen> out;
  const Piece& piece = pieces_[at];
  if (piece.kind == Piece::Kind::phrase) {
    if (piece.folded == "based on") {
      if (!fields(at, out)) return {unread(at)};
      if (!out.empty()) return out;
    }
    Seen phrase = seen(As::phrase, at, at + 1, priority_of::field);
    phrase.word = piece.folded;
    out.push_back(std::move(phrase));
    return out;
  }
  small_words(at, out);
  sizes(at, out);
  if (piece.kind == Piece::Kind::mark) return out;
  std::vector<Seen> said_as_fields;
  if (!fields(at, said_as_fields)) return {unread(at)};
  if (!said_as_fields.empty()) return said_as_fields;  // what is said outright is never read otherwise
  terms(at, out);
  stuck_with(at, out);
  statuses(at, out);
  based_on(at, out);
  alike(at, out);
  dies(at, out);
  names(at, out);
  closed_sizes(at, out);
  envelopes(at, out);
  each_of_them(at, out);
  only_so_many(at, out);
  dates(at, out);
  recorded_or_not(at, out);
  words_said(at, out);
  order_by_date(at, out);
  order_by_size(at, out);
  sides(at, out);
  places(at, out);
  days_with_a_name(out);
  return out;
}

// "4th of July" of a card is what it is for, and seldom the day it was made on.
void Recogniser::days_with_a_name(std::vector<Seen>& out) const {
  const auto occasion = [](const Seen& it) {
    return it.as == As::term && it.terms.front().vocabulary == VocabularyName::occasion;
  };
  for (std::size_t i = 0; i < out.size(); ++i) {
    const MadeIn* made = out[i].says ? std::get_if<MadeIn>(&*out[i].says) : nullptr;
    // One word is a season that its neighbour gives a date.
    if (!made || out[i].last == out[i].first + 1) continue;
    const auto named =
        std::ranges::find_if(out, [&](const Seen& it) { return occasion(it) && it.last == out[i].last; });
    if (named == out.end()) continue;
    named->other.push_back({std::string(typed(out[i].first, out[i].last)),
                            "occasion " + named->terms.front().label, as_field(*made)});
    out.erase(out.begin() + static_cast<std::ptrdiff_t>(i));
    return;
  }
}

// "no. 2", "nr 2": an order, where no unit makes the number a size.
bool Recogniser::is_order(std::size_t at) const {
  if (!is_word(at, "no") && !is_word(at, "nr") && !is_word(at, "number")) return false;
  const std::size_t figure = at + (is_mark(at + 1, ".") ? 2 : 1);
  if (figure >= pieces_.size() || !plain_number(pieces_[figure].folded)) return false;
  const auto measured = measurement(figure);
  return !measured || measured->bare;
}

void Recogniser::small_words(std::size_t at, std::vector<Seen>& out) const {
  const Piece& piece = pieces_[at];
  if (piece.kind == Piece::Kind::mark) {
    static constexpr std::pair<std::string_view, As> marks[] = {
        {",", As::comma}, {";", As::comma}, {"(", As::opens},  {")", As::closes},
        {"&", As::joins}, {"+", As::joins}, {"/", As::either}, {"-", As::excludes}};
    const auto found = std::ranges::find(marks, piece.folded, &std::pair<std::string_view, As>::first);
    // A mark that says nothing still comes before a word that nobody looks for.
    const bool known = found != std::end(marks);
    Seen mark = seen(known ? found->second : As::mark, at, at + 1, known ? 0 : priority_of::small_word);
    mark.dash = mark.outright = piece.folded == "-";
    mark.word = piece.folded;
    if (mark.as == As::mark) mark.weight = 0;
    out.push_back(std::move(mark));
    return;
  }
  if (is_order(at)) {
    const std::size_t last = at + (is_mark(at + 1, ".") ? 2 : 1);
    out.push_back(seen(As::filler, at, last, priority_of::small_word));
  }
  if (is_word(at, "w") && is_mark(at + 1, "/") && pieces_[at + 1].glued) {
    const bool without = is_word(at + 2, "o") && pieces_[at + 2].glued;
    Seen word = seen(without ? As::excludes : As::joins, at, at + (without ? 3 : 2), priority_of::small_word);
    word.word = without ? "without" : "with";
    out.push_back(std::move(word));
  }
  const std::size_t most = run_of_words(at, longest_small_word);
  std::string said;
  for (std::size_t count = 1; count <= most; ++count) {
    ++steps_;
    if (count > 1) said += ' ';
    said += pieces_[at + count - 1].folded;
    const SmallWord* found = small_word(said);
    if (!found || (found->as == As::excludes && is_order(at + count - 1))) continue;
    Seen word = seen(found->as, at, at + count, priority_of::small_word);
    word.word = said;
    word.outright = said.ends_with("no") || said == "neither" || said == "nor";
    if (found->as == As::number) {
      const bool dozen = said.ends_with("dozen"), single = said.ends_with("single");
      word.number = !dozen ? (single ? 1 : 2) : said.find("half") == std::string::npos ? 12 : 6;
      word.exactly = single;
      word.bare = true;
    }
    if (found->as == As::paper || found->as == As::ink) word.terms = context_.vocabulary.find(said);
    out.push_back(std::move(word));
  }
}

// The key of a word, made once.
const std::string& Recogniser::key_of(std::size_t at) {
  if (keys_.empty()) keys_.resize(pieces_.size());
  std::optional<std::string>& key = keys_[at];
  if (!key) key = label_key(pieces_[at].folded);
  return *key;
}

// A word's key; the mark itself where a label may have one ("clean & simple", "St. Patrick's Day").
std::string_view Recogniser::key_part(std::size_t at) {
  if (pieces_[at].kind == Piece::Kind::word) return key_of(at);
  const std::string_view mark = typed(at, at + 1);
  return mark == "&" || mark == "." ? mark : std::string_view();
}

// "Grandparents' Day": folding takes it away.
bool Recogniser::is_apostrophe(std::size_t at) const {
  if (pieces_[at].kind != Piece::Kind::mark || !pieces_[at].glued) return false;
  const std::string_view mark = typed(at, at + 1);
  return mark == "'" || mark == "\u2019" || mark == "\u2018";
}

// "a frame" is a frame of that card; "A-frame", "a frame card" is the fold that stands like an A.
bool Recogniser::article_before_label(std::size_t at, std::size_t last, const TermMatch& match) const {
  const bool joined = at + 1 < last && (pieces_[at + 1].hyphen || pieces_[at + 1].glued);
  static constexpr std::string_view fold_words[] = {"card", "cards", "fold", "folds"};
  return match.vocabulary == VocabularyName::fold && last == at + 2 && is_word(at, "a") && !joined &&
         std::ranges::none_of(fold_words, [&](std::string_view word) { return is_word(last, word); });
}

void Recogniser::terms(std::size_t at, std::vector<Seen>& out) {
  const std::size_t most = std::min(longest_label_, pieces_.size() - at);
  std::string said;
  std::string key;
  for (std::size_t count = 1; count <= most; ++count) {
    ++steps_;
    if (is_apostrophe(at + count - 1)) continue;
    const std::string_view part = key_part(at + count - 1);
    if (part.empty()) break;
    key += part;
    if (!context_.vocabulary.key_begins(key)) break;
    if (pieces_[at + count - 1].kind == Piece::Kind::mark) {
      if (!pieces_[at + count - 1].glued) said += ' ';
      said += part;
      continue;
    }
    if (count > 1) said += ' ';
    said += pieces_[at + count - 1].folded;
    // "card" alone is no material, "piece" no role.
    if (small_word(said)) continue;
    std::vector<TermMatch> found = context_.vocabulary.find_key(key);
    const TermMatch likeliest = found.empty() ? TermMatch() : found.front();
    if (article_before_label(at, at + count, likeliest)) continue;
    std::erase_if(found, [&](const TermMatch& match) { return !asked_of_samples(match, likeliest); });
    if (found.empty() || (count > 1 && own_colour_of_card(at, count, found))) continue;
    Seen term = seen(As::term, at, at + count, priority_of::term);
    term.word = said;
    term.terms = std::move(found);
    out.push_back(std::move(term));
  }
}

// "kraft cards", where a colour of the book is called kraft: that is meant, and no material of the trade.
bool Recogniser::own_colour_of_card(std::size_t at, std::size_t count, const std::vector<TermMatch>& terms) {
  static constexpr std::string_view stock[] = {"card", "cards", "paper", "papers", "cardstock"};
  const bool material = std::ranges::all_of(
      terms, [](const TermMatch& match) { return match.vocabulary == VocabularyName::material; });
  if (!material || std::ranges::find(stock, pieces_[at + count - 1].folded) == std::end(stock)) return false;
  return std::ranges::any_of(exactly(words(at, count - 1)),
                             [](const NamedRecord& record) { return record.kind == NameKind::colour; });
}

void Recogniser::names(std::size_t at, std::vector<Seen>& out) {
  const bool valued = pieces_[at].folded.starts_with('#') && pieces_[at].folded.size() > 1;
  if (const auto like = is_word(at, "like") || is_word(at, "similar")
                            ? like_value(at + 1 + (is_word(at + 1, "to") ? 1u : 0u), pieces_.size())
                        : valued ? like_value(at, pieces_.size())
                                 : std::nullopt) {
    Seen near = *like;
    near.first = at;
    near.span = span_of(at, near.last);
    near.weight = 2 * static_cast<int>(near.last - at);
    near.priority = priority_of::side;
    out.push_back(std::move(near));
  }
  basic_colours(at, out);
  const std::size_t most = run_of_words(at, longest_name);
  std::string said;
  for (std::size_t count = 1; count <= most; ++count) {
    ++steps_;
    if (count > 1) said += ' ';
    said += pieces_[at + count - 1].folded;
    if (!context_.names.begins(said)) {
      std::vector<NamedRecord> several;
      if (!counted_supplies(at, said, several)) break;
    }
    with_kind(at, count, said, out);
    if (small_word(said) || said.size() < 2) continue;
    std::vector<NamedRecord> found = exactly(said);
    std::erase_if(found, [](const NamedRecord& record) {
      return record.kind != NameKind::colour && record.kind != NameKind::supply;
    });
    if (found.empty()) found = context_.names.supplies_of_set(said);
    const bool counted = found.empty() && counted_supplies(at, said, found);
    if (found.empty()) continue;
    // A colour is likelier meant than a supply of that name.
    std::ranges::stable_sort(found, {},
                             [](const NamedRecord& record) { return record.kind != NameKind::colour; });
    std::size_t last = at + count;
    if (found.front().kind == NameKind::supply)
      last = skip(last, {"stamp", "stamps", "set", "folder", "folders", "sheet", "pad"});
    Seen name = seen(As::named, at, last, priority_of::name);
    name.word = said;
    name.named = std::move(found);
    name.terms = hidden_by_name(said);
    name.counted = counted;
    if (!name.terms.empty() || counted) name.priority = priority_of::own_name;
    if (name.named.front().kind == NameKind::colour) own_ink(at, at + count, said, out);
    out.push_back(std::move(name));
  }
}

// "two lanterns": a stamp called "lantern", of which several are asked for.
bool Recogniser::counted_supplies(std::size_t at, const std::string& said, std::vector<NamedRecord>& found) {
  if (at == 0 || said.size() < 4 || !said.ends_with('s')) return false;
  const auto number = small_number(pieces_[at - 1].folded);
  if (!number || *number < 2) return false;
  found = exactly(said.substr(0, said.size() - 1));
  std::erase_if(found, [](const NamedRecord& record) { return record.kind != NameKind::supply; });
  return !found.empty();
}

// "pearls", "baker's twine", "wood grain": what the person calls so is meant before what the trade does. Not
// before the trade's own first name of a shape or a technique: a stamp may be called "heart".
std::vector<TermMatch> Recogniser::hidden_by_name(std::string_view said) const {
  std::vector<TermMatch> terms = context_.vocabulary.find(said);
  std::erase_if(terms, [](const TermMatch& match) {
    const bool thing =
        match.vocabulary == VocabularyName::material || match.vocabulary == VocabularyName::role;
    const bool treatment =
        match.vocabulary == VocabularyName::shape || match.vocabulary == VocabularyName::technique;
    return !thing && (!treatment || match.preferred);
  });
  return terms;
}

// "gold embossing powder", "the waves stencil": a supply by its name and its kind, of which the name may say
// a part ("gold powder").
void Recogniser::with_kind(std::size_t at, std::size_t count, const std::string& said,
                           std::vector<Seen>& out) {
  constexpr std::size_t longest_kind = 2;
  for (std::size_t words_of_kind = run_of_words(at + count, longest_kind); words_of_kind > 0;
       --words_of_kind) {
    ++steps_;
    const std::string kind = context_.names.supply_kind(words(at + count, words_of_kind));
    if (kind.empty()) continue;
    std::vector<NamedRecord> found;
    std::string asked;
    const std::string folded = " " + fold(kind);
    for (std::size_t part = folded.size(); found.empty() && part != std::string::npos;
         part = part == 0 ? std::string::npos : folded.rfind(' ', part - 1)) {
      asked = said + folded.substr(part);
      found = exactly(asked);
      std::erase_if(found, [&](const NamedRecord& record) {
        return record.kind != NameKind::supply || record.detail != kind;
      });
    }
    // "garden gate stamps": names() reads that.
    const bool plain =
        asked == said && skip(at + count, {"stamp", "stamps", "folder", "folders"}) > at + count;
    if (found.empty() || plain) continue;
    Seen name = seen(As::named, at, at + count + words_of_kind, priority_of::name);
    name.word = asked;
    name.terms = hidden_by_name(words(at, count + words_of_kind));
    if (!name.terms.empty()) name.priority = priority_of::own_name;
    name.named = std::move(found);
    out.push_back(std::move(name));
    return;
  }
}

// "like grey" is no more than grey by value; "light grey", "dark blue" are the light and the dark ones of
// them.
void Recogniser::basic_colours(std::size_t at, std::vector<Seen>& out) {
  const bool like = is_word(at, "like") || is_word(at, "similar");
  const std::size_t word = at + (like ? (is_word(at + 1, "to") ? 2u : 1u) : 0u);
  if (word >= pieces_.size() || pieces_[word].kind != Piece::Kind::word) return;
  const auto shade = shade_named(pieces_[word].folded);
  if (!like && !shade) return;
  const std::size_t basic = word + (shade ? 1u : 0u);
  if (run_of_words(basic, 1) == 0 || (shade && !exactly(words(word, 2)).empty())) return;
  const auto found = context_.vocabulary.find(pieces_[basic].folded, VocabularyName::colour_word);
  if (found.empty()) return;
  Seen colour = seen(As::term, at, basic + 1, priority_of::term);
  colour.word = words(word, basic + 1 - word);
  colour.shade = shade;
  colour.terms = {found.front()};
  out.push_back(std::move(colour));
}

// "white ink": the ink of a colour of the book, which is also a word for a material.
void Recogniser::own_ink(std::size_t at, std::size_t last, const std::string& colour,
                         std::vector<Seen>& out) {
  if (!is_word(last, "ink") && !is_word(last, "inks")) return;
  std::vector<TermMatch> terms = context_.vocabulary.find(colour + " ink", VocabularyName::material);
  if (terms.empty()) return;
  std::optional<Seen> ink = colour_value(field(FieldName::ink), at, last);
  if (!ink) return;
  ink->last = last + 1;
  ink->span = span_of(at, ink->last);
  ink->weight = 2 * static_cast<int>(ink->last - at);
  ink->priority = priority_of::own_name;
  ink->terms = std::move(terms);
  offer_terms(*ink);
  out.push_back(std::move(*ink));
}

void Recogniser::closed_sizes(std::size_t at, std::vector<Seen>& out) const {
  const std::string& word = pieces_[at].folded;
  const auto add = [&](ClosedSizeIs closed, std::size_t last) {
    last = skip(last, {"card", "cards", "format", "orientation", "size", "sized"});
    Seen it = seen(As::says, at, last, priority_of::side);
    closed.said = typed(at, last);
    it.says = std::move(closed);
    it.word = word;
    out.push_back(std::move(it));
    return &out.back();
  };
  if (word == "landscape" || word == "portrait") {
    ClosedSizeIs closed;
    closed.form = word == "landscape" ? ClosedSizeIs::Form::landscape : ClosedSizeIs::Form::portrait;
    Seen* it = add(closed, at + 1);
    if (it->last == at + 1)
      it->other.push_back({std::string(typed(at, at + 1)), "the way round of the closed card",
                           as_field(WordsAre{{word}, false})});
    return;
  }
  if (const auto cards = many_of_a_size(at)) {
    ClosedSizeIs closed;
    closed.size = cards->size;
    add(std::move(closed), cards->last);
    return;
  }
  const PaperName* paper = run_of_words(at, 2) == 2 ? paper_named(words(at, 2)) : nullptr;
  const std::size_t behind = at + (paper ? 2 : 1);
  if (!paper) paper = paper_named(word);
  const bool of_envelope = at > 0 && (is_word(at - 1, "envelope") || is_word(at - 1, "envelopes"));
  if (!paper || of_envelope || is_word(behind, "envelope") || is_word(behind, "envelopes")) return;
  const bool of_piece = is_word(behind, "sheet") || is_word(behind, "base") || is_word(behind, "panel");
  if (const PaperName* sheet = of_piece ? paper_named(words(at, behind - at) + " sheet") : nullptr)
    paper = sheet;
  SizeIs size;
  size.one_figure = false;
  size.low = paper->width;
  size.second = paper->height;
  size.unit = paper->unit;
  // Of a piece: "A5 base", "an A6 sheet".
  if (of_piece) {
    Seen it = seen(As::says, at, behind, priority_of::side);
    it.says = size;
    it.word = words(at, behind - at);
    out.push_back(std::move(it));
    return;
  }
  ClosedSizeIs closed;
  closed.size = size;
  Seen* it = add(closed, behind);
  if (!paper->other.empty())
    it->other.push_back(
        {std::string(typed(at, behind)), std::string(paper->means), std::string(paper->asks)});
}

// Behind the longest name of an envelope that begins here; `at` where none does.
std::size_t Recogniser::envelope_name(std::size_t at) const {
  for (std::size_t count = run_of_words(at, longest_envelope_name); count > 0; --count) {
    const std::string said = words(at, count);
    if (!said.ends_with("envelope") && !said.ends_with("envelopes") && envelope_named(said))
      return at + count;
  }
  return at;
}

// "in a C6 envelope", "4-3/8 x 5-3/4 in envelopes", "envelope C6"
void Recogniser::envelopes(std::size_t at, std::vector<Seen>& out) const {
  const auto names_it = [&](std::size_t i) { return is_word(i, "envelope") || is_word(i, "envelopes"); };
  // "that go in a C6 envelope"
  const std::size_t goes =
      skip(skip(at, {"that", "which"}), {"go", "goes", "going", "fit", "fits", "fitting"});
  const std::size_t lead = is_word(goes, "in") || is_word(goes, "into") ? goes : at;
  const std::size_t begins =
      names_it(at) ? at + 1 : skip(skip(lead, {"in", "into", "for", "with"}), {"a", "an"});
  if (begins >= pieces_.size()) return;
  EnvelopeIs envelope;
  std::size_t last = begins;
  if (const auto measured = measurement(begins); measured && !measured->size.one_figure) {
    envelope.size = measured->size;
    last = measured->last;
  } else {
    last = envelope_name(begins);
  }
  if (last == begins || (!names_it(at) && !names_it(last))) return;
  const std::string said(typed(begins, last));
  if (!names_it(at)) ++last;
  Seen it = seen(As::says, at, last, priority_of::side);
  it.word = words(begins, 1);
  if (envelope.size) {
    envelope.said = said;
    it.says = std::move(envelope);
  } else {
    say_envelope(*envelope_named(said), said, it);
  }
  out.push_back(std::move(it));
}

// "no photo", "without an envelope"; "with a photo", "that have steps": whether anything is recorded there.
void Recogniser::recorded_or_not(std::size_t at, std::vector<Seen>& out) const {
  if (is_word(at, "undated")) {
    Seen it = seen(As::says, at, at + 1, priority_of::side);
    it.says = HasNo{"made"};
    out.push_back(std::move(it));
    return;
  }
  const std::size_t begins = skip(skip(at, {"that", "which"}), {"with", "have", "has"});
  const bool without = is_word(begins, "no") || is_word(begins, "without");
  if (!without && begins == at) return;
  const std::size_t what = skip(without ? begins + 1 : begins, {"a", "an", "any"});
  if (what >= pieces_.size()) return;
  const EmptyField* found = empty_field_of_word(pieces_[what].folded);
  if (!found || !(without || found->also_with)) return;
  // "with a photo of the hens", "with a note about it": more is said of it.
  if (!without && (is_word(what + 1, "of") || is_word(what + 1, "about") || is_word(what + 1, "saying")))
    return;
  const std::size_t last = skip(what + 1, {"recorded", "noted", "given", "written", "down"});
  Seen it = seen(As::says, at, last, priority_of::side);
  it.says = HasNo{std::string(found->name)};
  it.excluded = !without;
  if (found->name == "photo")
    it.other.push_back({std::string(typed(at, what + 1)),
                        without ? "no photo of the card" : "a photo of the card",
                        without ? "-role:photograph" : "role:photograph"});
  out.push_back(std::move(it));
}

// "saying happy birthday", "with the words thank you": the words up to a comma, a connector or a preposition
// are looked for as they stand.
void Recogniser::words_said(std::size_t at, std::vector<Seen>& out) const {
  static constexpr std::string_view leads[] = {
      "saying",    "that say",    "that says",       "which say",         "which says",        "that reads",
      "that read", "which reads", "reading",         "with the words",    "with the word",     "the words",
      "that said", "it says",     "with the saying", "with the greeting", "with the sentiment"};
  constexpr std::size_t longest_lead = 3;
  constexpr std::size_t most_words = 12;
  const std::size_t lead = skip(at, {"sentiment", "greeting", "message", "wording", "words"});
  std::size_t first = lead;
  for (std::size_t count = run_of_words(lead, longest_lead); count > 0 && first == lead; --count) {
    ++steps_;
    if (std::ranges::find(leads, words(lead, count)) != std::end(leads)) first = lead + count;
  }
  // "the card says "thank you""
  if (first == lead && (is_word(lead, "says") || is_word(lead, "say") || is_word(lead, "reads")) &&
      lead + 1 < pieces_.size() && pieces_[lead + 1].kind == Piece::Kind::phrase)
    first = lead + 1;
  if (first == lead) return;
  if (first < pieces_.size() && pieces_[first].kind == Piece::Kind::phrase) return quote_said(at, first, out);
  std::size_t last = first;
  std::vector<std::string> said;
  for (; last < pieces_.size() && said.size() < most_words; ++last) {
    const Piece& piece = pieces_[last];
    const SmallWord* small = small_word(piece.folded);
    const bool ends = small && (small->as == As::joins || small->as == As::either ||
                                small->as == As::excludes || small->as == As::preposition);
    if (piece.kind != Piece::Kind::word || ends || measurement(last) || date_begins(last)) break;
    if (is_mark(last + 1, ":")) break;
    said.push_back(piece.folded);
  }
  if (said.empty()) return;
  Seen it = seen(As::says, at, last, priority_of::side);
  const bool phrase = said.size() > 1;
  it.says = WordsAre{std::move(said), phrase, true};
  out.push_back(std::move(it));
}

// "saying \"warm wishes\""
void Recogniser::quote_said(std::size_t at, std::size_t quote, std::vector<Seen>& out) const {
  std::vector<std::string> said = single_words(pieces_[quote].folded);
  if (said.empty()) return;
  Seen it = seen(As::says, at, quote + 1, priority_of::side);
  const bool phrase = said.size() > 1;
  it.says = WordsAre{std::move(said), phrase, true};
  out.push_back(std::move(it));
}

// "from 2024", "made in May": no greeting has a date in it.
bool Recogniser::date_begins(std::size_t at) const {
  std::vector<Seen> offered;
  dates(at, offered);
  return !offered.empty();
}

void Recogniser::sides(std::size_t at, std::vector<Seen>& out) const {
  const std::size_t lead = skip(at, {"on", "at"});
  const std::size_t word = skip(lead, {"the"});
  if (word >= pieces_.size()) return;
  static constexpr std::string_view plain[] = {"front", "back", "inside", "outside", "reverse"};
  if (std::ranges::find(plain, pieces_[word].folded) == std::end(plain)) return;
  // Without "on the", only "front" and "back" are surely sides.
  if (word == at && pieces_[word].folded != "front" && pieces_[word].folded != "back") return;
  if (word > at && lead == at) return;  // "the front" without "on" is no more than "front"
  // "on the front panel": on that panel.
  if (word > at && run_of_words(word, 2) == 2 &&
      !context_.vocabulary.find(words(word, 2), VocabularyName::role).empty())
    return;
  std::size_t last = word + 1;
  if (is_word(last, "of")) {
    const std::size_t card = skip(last + 1, {"the", "a"});
    if (is_word(card, "card") || is_word(card, "cards")) last = card + 1;
  }
  Seen side = seen(As::says, at, last, priority_of::side);
  side.says = SideIs{side_word(pieces_[word].folded)};
  out.push_back(std::move(side));
}

}  // namespace insetbook
