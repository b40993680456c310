// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line.h"

#include <algorithm>
#include <array>
#include <utility>

#include "language/cover.h"
#include "language/dates.h"
#include "language/orders.h"
#include "language/pieces.h"
#include "language/read_line_phrases.h"
#include "language/read_line_stages.h"
#include "language/read_opening.h"
#include "language/read_record.h"
#include "language/recognise.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {

Result<Itemised> read_stages(std::string_view text, const ReadingContext& context) {
  const Result<std::vector<Piece>> pieces = split(text, {0, text.size()});
  if (!pieces) return failure(pieces.error());
  Recogniser recogniser(text, *pieces, context);
  Result<std::vector<Seen>> seen = cover(*pieces, recogniser);
  if (!seen) return failure(seen.error());
  return itemise(text, *pieces, std::move(*seen));
}

namespace {

constexpr int most_repairs = 16;       // places of one line that are taken out one by one
constexpr std::size_t most_unset = 4;  // names of sets that are not in the book, in one line

std::size_t byte_at(std::string_view text, std::size_t character) {
  const std::vector<Character> all = characters(text);
  return character < all.size() ? all[character].begin : text.size();
}

void blank(std::string& text, Span span, char first = ' ') {
  for (std::size_t i = span.begin; i < span.end; ++i) text[i] = ' ';
  if (span.begin < span.end) text[span.begin] = first;
}

std::string single_spaced(std::string_view text) {
  std::string out;
  for (const Character& c : characters(trim(text))) {
    if (!is_space(c.code))
      append_utf8(out, c.code);
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return out;
}

Size size_from(const SizeIs& said) {
  Size size;
  size.width = said.low;
  size.height = said.one_figure ? said.low : said.second;
  size.unit = said.unit;
  size.one_figure = said.one_figure;
  if (said.placed && !said.one_figure) size.orientation = Orientation::said;
  return size;
}

// As typed where that reads back to the same size in any book, else as it is written.
std::string text_of_size(const Size& size, std::string_view typed) {
  const std::string said = single_spaced(typed);
  const auto same = [&](const Result<Size>& read) {
    return read && read->width == size.width && read->height == size.height &&
           read->one_figure == size.one_figure && read->orientation == size.orientation;
  };
  if (same(read_size(said, Unit::inch)) && same(read_size(said, Unit::mm))) return said;
  const std::string with_unit = said + (size.unit == Unit::inch ? " in" : " mm");
  if (same(read_size(with_unit, size.unit)) && same(read_size(with_unit, Unit::mm))) return with_unit;
  return write_said(size);
}

}  // namespace

bool PieceSaid::says_a_piece() const {
  return !role.empty() || !shape.empty() || size || !size_text.empty() || cut_by || lies_in ||
         !paper.empty() || !ink.empty() || count;
}

namespace {

// Puts items into the fields of a line.
class Taker {
 public:
  Taker(std::string_view text, const ReadingContext& context, LineSaid& line)
      : text_(text), context_(context), line_(line) {}

  void take(Itemised& items) {
    for (std::size_t i = 0; i < items.items.size(); ++i) {
      Item& item = items.items[i];
      switch (item.kind) {
        case Item::Kind::says:
          says(item);
          break;
        case Item::Kind::number:
          number(item);
          break;
        case Item::Kind::tall:
        case Item::Kind::wide:
          way_round(item);
          break;
        case Item::Kind::card:
          card_ = true;
          break;
        case Item::Kind::either:
          not_read(item.span, "a record says what is, not a choice", "one of the two");
          break;
        case Item::Kind::excludes:
          i = excluded(items.items, i);
          break;
        case Item::Kind::preposition:
          filler(item.span);
          break;
        case Item::Kind::joins:
        case Item::Kind::comma:
        case Item::Kind::opens:
        case Item::Kind::closes:
        case Item::Kind::group:
          break;
      }
    }
    close_card();
    for (Ignored& each : items.ignored) line_.fillers.push_back(std::move(each));
    for (OtherReading& each : items.other) line_.other_readings.push_back(std::move(each));
    for (std::string& note : items.notes)
      if (note.starts_with("today is")) line_.remarks.push_back(std::move(note));
  }

 private:
  std::string typed(Span span) const {
    return single_spaced(text_.substr(span.begin, span.end - span.begin));
  }
  void not_read(Span span, std::string what, std::string expected) {
    line_.not_read.push_back({span, std::move(what), std::move(expected), {}, {}});
  }
  void filler(Span span) { line_.fillers.push_back({typed(span), "filler", span}); }
  PieceSaid& piece() { return line_.piece; }

  std::size_t excluded(const std::vector<Item>& items, std::size_t at) {
    if (items[at].dash) {
      filler(items[at].span);
      return at;
    }
    Span span = items[at].span;
    if (at + 1 < items.size() && items[at + 1].kind == Item::Kind::says) span.end = items[++at].span.end;
    not_read(span, "\"" + typed(span) + "\" says what is not there", "what is there");
    return at;
  }

  void says(Item& item) {
    // Readings as a plain word stand beside those of a term, and what meets it as well; a record keeps the
    // term.
    std::erase_if(item.offered, [&](const Constraint& each) {
      return &each != &item.offered.front() &&
             (std::holds_alternative<WordsAre>(each.says) || std::holds_alternative<GlueIs>(each.says));
    });
    if (item.offered.size() > 1)
      return not_read(item.span, "\"" + typed(item.span) + "\" is a choice", "one of them");
    Constraint& said = item.offered.front();
    std::visit([&](auto& says) { take(says, item); }, said.says);
    if (item.also.size() == 1) std::visit([&](auto& says) { also(says, item); }, item.also.front().says);
  }

  void add_head(const Item& item) {
    if (!piece().head.empty()) piece().head += ' ';
    piece().head += item.word.empty() ? fold(typed(item.span)) : item.word;
  }

  void take(const SizeIs& size, const Item& item) {
    if (size.relation != Relation::exact && size.relation != Relation::about)
      return not_read(item.span, "\"" + typed(item.span) + "\" is no one size", "the size as measured");
    if (piece().size)
      return not_read(item.span, "a second size, \"" + typed(item.span) + "\"", "one line for each piece");
    piece().size = size_from(size);
    piece().size_span = item.span;
    const bool plain = size.relation == Relation::exact && !size.tolerance;
    piece().size_text = text_of_size(*piece().size, plain ? typed(item.span) : std::string());
    if (!plain) line_.notes.push_back(typed(item.span));
  }
  void take(const ShapeIs& shape, const Item& item) {
    if (piece().shape.empty()) {
      piece().shape = shape.terms.front();
      // "panel 3 x 4 in rectangle" is called a panel, a "circle frame" so.
      if (piece().role.empty()) add_head(item);
      return;
    }
    second_head(item, VocabularyName::role, piece().role, "shape");
  }
  void take(const RoleIs& role, const Item& item) {
    constexpr std::string_view die_cut = "die cut";
    if (piece().role.empty()) {
      piece().role = role.terms.front();
      return add_head(item);
    }
    // "die cut frame": how the frame was made.
    if (piece().role == die_cut && role.terms.front() != die_cut) {
      technique(std::string(die_cut));
      piece().role = role.terms.front();
      return add_head(item);
    }
    if (role.terms.front() == die_cut && technique(typed(item.span))) return;
    second_head(item, VocabularyName::shape, piece().shape, "role");
  }
  bool technique(const std::string& written) {
    for (const TermMatch& match : context_.vocabulary.find(written, VocabularyName::technique)) {
      piece().terms.push_back({"technique", match.id, written});
      return true;
    }
    return false;
  }
  // A word that is a shape and a role is what is still wanting.
  void second_head(const Item& item, VocabularyName other, std::string& field, std::string_view what) {
    const auto meanings = context_.vocabulary.find(item.word, other);
    if (field.empty() && !meanings.empty()) {
      field = meanings.front().id;
      return add_head(item);
    }
    not_read(item.span, "a second " + std::string(what) + ", \"" + typed(item.span) + "\"",
             "one line for each piece");
  }
  void take(const ColourIs& colour, const Item& item) {
    (colour.use == ColourUse::ink ? piece().ink : piece().paper).push_back(typed(item.span));
  }
  void add_term(std::string_view kind, const std::string& term, const Item& item) {
    TermSaid said{std::string(kind), term, typed(item.span)};
    auto& list = kind == "fold" || kind == "occasion" ? line_.of_sample : piece().terms;
    if (std::ranges::find(list, said) == list.end()) list.push_back(std::move(said));
  }
  void take(const TechniqueIs& says, const Item& item) { add_term("technique", says.terms.front(), item); }
  void take(const FeatureIs& says, const Item& item) { add_term("feature", says.terms.front(), item); }
  void take(const MaterialIs& says, const Item& item) { add_term("material", says.terms.front(), item); }
  void take(const FoldIs& says, const Item& item) { add_term("fold", says.terms.front(), item); }
  void take(const OccasionIs& says, const Item& item) { add_term("occasion", says.terms.front(), item); }
  void take(const SupplyIs& says, const Item& item) {
    // The words behind its name ("stamp", "set") say no more; the name is what the book knows.
    piece().supplies.push_back(says.said.empty() ? typed(item.span) : name_of_supply(item, says));
  }
  std::string name_of_supply(const Item& item, const SupplyIs& says) const {
    const std::string written = typed(item.span);
    return item.word.empty() || fold(written) == item.word ? written : says.said;
  }
  void take(const DieIs& die, const Item& item) {
    if (die.dies.empty())
      return not_read(item.span, "\"" + typed(item.span) + "\" is no die of the book",
                      "the order or label of a die of that set");
    if (!item.by && die.dies.size() > 1 && colour_and_shape(item)) return;
    auto& field = die.lies_in ? piece().lies_in : piece().cut_by;
    if (field)
      return not_read(item.span, "a second die, \"" + typed(item.span) + "\"", "one line for each piece");
    field = DieSaidOfPiece{die.dies, die.line, die.said};
  }
  // "moonrise circle" with no "from" before it and no order behind it: a circle of that colour where there is
  // one.
  bool colour_and_shape(const Item& item) {
    const std::string said = fold(typed(item.span));
    for (std::size_t space = said.find(' '); space != std::string::npos; space = said.find(' ', space + 1)) {
      const auto shapes = context_.vocabulary.find(said.substr(space + 1), VocabularyName::shape);
      if (shapes.empty() || !piece().shape.empty()) continue;
      const auto records = context_.names.exactly(said.substr(0, space));
      const bool colour = std::ranges::any_of(
          records, [](const NamedRecord& record) { return record.kind == NameKind::colour; });
      if (!colour) continue;
      piece().paper.push_back(said.substr(0, space));
      piece().shape = shapes.front().id;
      if (!piece().head.empty()) piece().head += ' ';
      piece().head += said.substr(space + 1);
      return true;
    }
    return false;
  }
  void take(const SideIs& side, const Item& item) {
    if (!piece().side.empty() && piece().side != side.side)
      return not_read(item.span, "a second side, \"" + typed(item.span) + "\"", "front, inside or back");
    piece().side = side.side;
  }
  void take(const CountIs& count, const Item&) { piece().count = count.least; }
  void take(const ClosedSizeIs& closed, const Item& item) {
    if (!closed.size || closed.size->one_figure || line_.closed)
      return not_read(item.span, "\"" + typed(item.span) + "\" says no size", "finished 4-1/4 x 5-1/2 in");
    line_.closed = size_from(*closed.size);
    line_.closed_text = write_size(line_.closed->width, line_.closed->height, line_.closed->unit);
  }
  void take(const MadeIn& made, const Item& item) {
    if (made.from.empty() || made.from != made.to)
      return not_read(item.span, "\"" + typed(item.span) + "\" is no whole date", "made 2024-03-02");
    line_.made = made.from;
  }
  void take(const WordsAre& words, const Item& item) {
    if (words.phrase && text_[item.span.begin] != '(' && is_quoted(item.span)) return quoted(item);
    const bool says_something = std::ranges::any_of(item.word, [](char c) {
      return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
    });
    if (!says_something) return filler(item.span);
    if (!words.phrase && is_colour_word(item.word)) {
      piece().paper.push_back(typed(item.span));
      last_unknown_colour_ = true;
      return;
    }
    if (last_unknown_colour_ && (item.word == "ink" || item.word == "paper")) {
      if (item.word == "ink")
        piece().ink.push_back(std::move(piece().paper.back())), piece().paper.pop_back();
      return filler(item.span);
    }
    line_.not_read.push_back({item.span, "", "", {}, {}});
  }
  bool is_quoted(Span span) const { return is_quote(character_at(text_, span.begin).code); }
  void quoted(const Item& item) {
    const std::vector<Character> all =
        characters(text_.substr(item.span.begin, item.span.end - item.span.begin));
    const std::string inside =
        single_spaced(text_.substr(item.span.begin + all.front().end, all.back().begin - all.front().end));
    for (const NamedRecord& record : context_.names.exactly(fold(inside)))
      if (record.kind == NameKind::supply) {
        piece().supplies.push_back(inside);
        return;
      }
    line_.words.push_back(inside);
  }
  bool is_colour_word(std::string_view word) const {
    return !context_.vocabulary.find(word, VocabularyName::colour_word).empty();
  }
  void take(const BasedOn& says, const Item&) { line_.based_on = says.said; }
  void take(const TitleIs&, const Item& item) { line_.not_read.push_back({item.span, "", "", {}, {}}); }
  void take(const HasNo&, const Item& item) {
    not_read(item.span, "\"" + typed(item.span) + "\" says what is not there", "what is there");
  }
  void take(const GoesIs&, const Item& item) { line_.not_read.push_back({item.span, "", "", {}, {}}); }
  void take(const GlueIs&, const Item& item) {
    if (!line_.glue.empty()) line_.glue += ", ";
    line_.glue += typed(item.span);
  }
  void take(const AlikeTo&, const Item& item) { line_.not_read.push_back({item.span, "", "", {}, {}}); }

  // The other meaning of a word that is a role and a material.
  void also(const RoleIs& role, const Item& item) {
    if (piece().role.empty()) {
      piece().role = role.terms.front();
      add_head(item);
    }
  }
  void also(const MaterialIs& material, const Item& item) {
    add_term("material", material.terms.front(), item);
  }
  template <class T>
  void also(const T&, const Item&) {}

  void number(const Item& item) {
    const bool first = !piece().says_a_piece() && piece().terms.empty();
    if (item.whole && first) {
      piece().count = item.number;
      return;
    }
    if (!item.offered.empty() && !piece().size)
      if (const auto* size = std::get_if<SizeIs>(&item.offered.front().says)) return take(*size, item);
    line_.not_read.push_back({item.span, "", "", {}, {}});
  }

  void way_round(const Item& item) {
    if (!piece().size || piece().size->one_figure) {
      line_.not_read.push_back({item.span, "", "", {}, {}});
      return;
    }
    Size& size = *piece().size;
    const bool tall = item.kind == Item::Kind::tall;
    if ((tall && size.width > size.height) || (!tall && size.width < size.height))
      std::swap(size.width, size.height);
    size.orientation = Orientation::said;
    piece().size_text = write_said(size);
  }

  // A size beside "card" or "finished", and nothing that only a piece has: the closed size.
  void close_card() {
    if (!card_ || line_.closed || !piece().size || !piece().role.empty() || !piece().paper.empty()) return;
    if (!piece().shape.empty() && piece().shape != "square") return;
    line_.closed = piece().size;
    line_.closed_text = piece().size_text;
    piece() = PieceSaid();
  }

  std::string_view text_;
  const ReadingContext& context_;
  LineSaid& line_;
  bool card_ = false;
  bool last_unknown_colour_ = false;
};

class LineReader {
 public:
  LineReader(std::string_view text, const ReadingContext& context)
      : text_(text), work_(text), context_(context) {}

  LineSaid run() {
    for (char& c : work_)
      if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
    if (pieces_of_line()) {
      for (const LinePhrase& phrase : line_phrases(work_, pieces_, context_)) phrases_.push_back(phrase);
      for (const LinePhrase& phrase : phrases_) take(phrase);
      for (const LinePhrase& phrase : phrases_) blank(work_, phrase.span, ',');
      for (char& c : work_)
        if (c == ':') c = ',';
      read_rest();
    }
    finish();
    return std::move(line_);
  }

 private:
  std::string typed(Span span) const {
    return single_spaced(text_.substr(span.begin, span.end - span.begin));
  }
  void not_read(Span span, std::string what, std::string expected, std::vector<std::string> candidates = {}) {
    line_.not_read.push_back({span, std::move(what), std::move(expected), std::move(candidates), {}});
  }

  // A quote that does not end is taken for a mark.
  bool pieces_of_line() {
    for (int turn = 0; turn <= most_repairs; ++turn) {
      Result<std::vector<Piece>> pieces = split(work_, {0, work_.size()});
      if (pieces) {
        pieces_ = std::move(*pieces);
        return true;
      }
      const std::size_t begin = byte_at(work_, pieces.error().where.at.value_or(0));
      const Span quote{begin, character_at(work_, begin).end};
      not_read(quote, pieces.error().what, pieces.error().expected);
      blank(work_, quote);
    }
    not_read({0, text_.size()}, "the line has more quotes than can be read", "one quoted text a piece");
    return false;
  }

  void take(const LinePhrase& phrase) {
    switch (phrase.kind) {
      case LinePhrase::Kind::goes:
        return goes(phrase);
      case LinePhrase::Kind::glue:
        return glue(phrase);
      case LinePhrase::Kind::place:
        if (!line_.at.empty()) line_.at += ", ";
        line_.at += typed(phrase.inner);
        return;
      case LinePhrase::Kind::name:
        if (!line_.name.empty())
          return not_read(phrase.span, "a second name, \"" + typed(phrase.inner) + "\"", "one name");
        line_.name = typed(phrase.inner);
        return;
      case LinePhrase::Kind::note:
        line_.notes.push_back(typed(phrase.inner));
        return;
      case LinePhrase::Kind::count:
        line_.piece.count = phrase.number;
        return;
      case LinePhrase::Kind::scores:
        return scores(phrase);
      case LinePhrase::Kind::filler:
        line_.fillers.push_back({typed(phrase.span), "filler", phrase.span});
        return;
    }
  }

  void goes(const LinePhrase& phrase) {
    GoesSaid goes;
    goes.how = phrase.how;
    goes.span = phrase.span;
    goes.target = typed(phrase.inner);
    goes.place_of_card = phrase.place_of_card;
    if (goes.place_of_card) {
      const std::string folded = fold(goes.target);
      goes.side = side_word(folded.substr(0, folded.find(' ')));
      if (phrase.how == GoesHow::on && !goes.side.empty() && line_.piece.side.empty())
        line_.piece.side = goes.side;
    }
    if (line_.goes) {
      // "on the front, on the mat": the side was said first.
      const bool side_first =
          line_.goes->place_of_card && line_.goes->how == GoesHow::on && !goes.place_of_card;
      const bool side_second = goes.place_of_card && goes.how == GoesHow::on && !goes.side.empty();
      if (side_second) return;
      if (!side_first)
        return not_read(phrase.span, "the piece goes with a second one: \"" + typed(phrase.span) + "\"",
                        "the piece that it lies on or in");
    }
    if (!goes.place_of_card) describe(goes);
    line_.goes = std::move(goes);
  }

  // The line of the other piece's die, and what the piece looks like.
  void describe(GoesSaid& goes) const {
    std::string_view said = goes.target;
    const std::string folded = fold(said);
    if (folded.ends_with(" line") || said.find(',') != std::string_view::npos) {
      const std::size_t end = folded.ends_with(" line") ? said.rfind(' ') : said.size();
      const std::size_t word = said.find_last_of(" ,", end - 1);
      const std::string kind = word == std::string_view::npos
                                   ? std::string()
                                   : line_kind(fold(said.substr(word + 1, end - word - 1)));
      if (!kind.empty()) {
        goes.line = kind;
        said = trim(said.substr(0, word));
        while (said.ends_with(',')) said = trim(said.substr(0, said.size() - 1));
        goes.target = std::string(said);
      }
    }
    Result<Itemised> items = read_stages(goes.target, context_);
    if (!items) return;
    LineSaid other;
    Taker(goes.target, context_, other).take(*items);
    goes.piece = std::move(other.piece);
  }

  void glue(const LinePhrase& phrase) {
    static constexpr std::string_view left_out[] = {"the",  "only", "just", "along", "at",
                                                    "with", "on",   "by",   "edge"};
    std::string said;
    for (std::string_view rest = typed_storage(phrase.inner); !rest.empty();) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      const std::string_view word = rest.substr(0, end);
      if (std::ranges::find(left_out, fold(word)) == std::end(left_out))
        said += (said.empty() ? "" : " ") + std::string(word);
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    if (said.empty()) said = typed(phrase.inner);
    if (fold(said) == "no glue" || fold(said) == "not glued") said = "none";
    if (const Result<Glue> glue = read_glue(said, context_.unit); !glue)
      return not_read(phrase.span, glue.error().what, glue.error().expected);
    if (!line_.glue.empty()) line_.glue += ", ";
    line_.glue += said;
  }
  std::string_view typed_storage(Span span) {
    storage_ = typed(span);
    return storage_;
  }

  // "4-1/4 in and 6 in": one beside the other with "; " between.
  void scores(const LinePhrase& phrase) {
    std::string said;
    std::string_view rest = typed_storage(phrase.inner);
    while (!rest.empty()) {
      const std::size_t and_word = rest.find(" and ");
      std::size_t mark = rest.find_first_of(";,&");
      // A comma inside a figure ("6,5 cm") has no space behind it.
      while (mark != std::string_view::npos && rest[mark] == ',' && mark + 1 < rest.size() &&
             rest[mark + 1] != ' ')
        mark = rest.find_first_of(";,&", mark + 1);
      const std::size_t end = std::min({and_word, mark, rest.size()});
      std::string_view one = trim(rest.substr(0, end));
      if (fold(one).starts_with("at ")) one = trim(one.substr(3));
      if (!one.empty() && fold(one) != "and") said += (said.empty() ? "" : "; ") + std::string(one);
      const std::size_t skip = end == and_word ? 5 : 1;
      rest.remove_prefix(std::min(end + skip, rest.size()));
      if (fold(rest).starts_with("and ")) rest = rest.substr(rest.find("nd") + 3);
    }
    if (!line_.scores.empty()) line_.scores += "; ";
    line_.scores += said;
  }

  // The rest of the line through the stages; what they refuse is taken out and the rest read again.
  void read_rest() {
    int repairs = 0;
    std::size_t unset = 0;
    for (;;) {
      Result<Itemised> items = read_stages(work_, context_);
      if (!items) {
        if (++repairs > most_repairs)
          return not_read(rest_of_line(), items.error().what, items.error().expected);
        take_out(items.error());
        continue;
      }
      if (unset < most_unset && unknown_set(*items)) {
        ++unset;
        continue;
      }
      Taker(text_, context_, line_).take(*items);
      return;
    }
  }
  Span rest_of_line() const {
    const std::size_t begin = work_.find_first_not_of(" ,");
    const std::size_t end = work_.find_last_not_of(" ,");
    if (begin == std::string::npos) return {0, 0};
    return {begin, end + 1};
  }

  // All of the figure in which the mistake is, with its unit.
  void take_out(const Problem& problem) {
    const std::size_t at = byte_at(work_, problem.where.at.value_or(0));
    std::size_t place = 0;
    while (place + 1 < pieces_.size() && pieces_[place].span.end <= at) ++place;
    const auto of_figure = [&](std::size_t i) {
      const Piece& piece = pieces_[i];
      if (piece.kind == Piece::Kind::phrase || work_[piece.span.begin] == ' ') return false;
      static constexpr std::string_view units[] = {"in", "inch", "inches", "mm", "cm",
                                                   "x",  "by",   "\"",     "/",  "."};
      return std::ranges::find(units, piece.folded) != std::end(units) ||
             piece.folded.find_first_of("0123456789") != std::string::npos;
    };
    std::size_t first = place, last = place + 1;
    while (first > 0 && of_figure(first - 1)) --first;
    while (last < pieces_.size() && of_figure(last)) ++last;
    Span span{pieces_[first].span.begin, pieces_[last - 1].span.end};
    span.begin = std::min(span.begin, at);
    // Nothing taken out would be the same mistake again.
    if (span.end <= at) span.end = std::min(work_.size(), at + 1);
    not_read(span, problem.what, problem.expected, problem.candidates);
    blank(work_, span, ',');
  }

  bool in_items(const Itemised& items, Span span) const {
    return std::ranges::any_of(items.items, [&](const Item& item) {
      return item.span.begin <= span.begin && span.end <= item.span.end;
    });
  }

  // "from moonbeam circles 3" where no set has that name: what follows "from" is not read as another piece.
  bool unknown_set(const Itemised& items) {
    for (std::size_t i = 0; i + 1 < pieces_.size(); ++i) {
      const Piece& from = pieces_[i];
      if (from.kind != Piece::Kind::word || from.folded != "from" || work_[from.span.begin] == ' ' ||
          work_[from.span.begin] == ',' || in_items(items, from.span))
        continue;
      std::size_t last = i + 1;
      while (last < pieces_.size() && pieces_[last].kind == Piece::Kind::word &&
             work_[pieces_[last].span.begin] != ' ' && work_[pieces_[last].span.begin] != ',')
        ++last;
      const Span said{from.span.begin, pieces_[last - 1].span.end};
      const bool about_paper = std::ranges::none_of(items.items, [&](const Item& item) {
        return item.span.begin >= said.begin && item.span.end <= said.end && names_no_stuff(item);
      });
      if (last == i + 1 || about_paper) continue;
      const Span name{pieces_[i + 1].span.begin, said.end};
      tell_unknown_set(said, typed(name));
      blank(work_, said, ',');
      return true;
    }
    return false;
  }
  static bool names_no_stuff(const Item& item) {
    if (item.kind == Item::Kind::number) return true;
    if (item.kind != Item::Kind::says) return false;
    return item.of == FieldName::text || item.of == FieldName::shape || item.of == FieldName::role;
  }
  void tell_unknown_set(Span said, std::string name) {
    std::string key = fold(name);
    if (const std::size_t space = key.rfind(' ');
        space != std::string::npos && plain_number(key.substr(space + 1)))
      key.resize(space);
    std::vector<std::string> candidates;
    for (const NamedRecord& record : context_.names.like(key, 6))
      if (record.kind == NameKind::set && candidates.size() < 3 &&
          std::ranges::find(candidates, record.name) == candidates.end())
        candidates.push_back(record.name);
    not_read(said, "no die set is called \"" + name + "\"",
             "a set of the book, with the order or label of the die", std::move(candidates));
  }

  // Words that nothing understood stand together where only small words part them.
  void finish() {
    std::ranges::stable_sort(line_.not_read, {}, [](const NotRead& each) { return each.span.begin; });
    std::ranges::stable_sort(line_.fillers, {}, [](const Ignored& each) { return each.span.begin; });
    std::vector<NotRead> joined;
    for (NotRead& each : line_.not_read) {
      const bool plain = each.what.empty();
      if (plain && !joined.empty() && joined.back().what.empty() && close(joined.back().span, each.span))
        joined.back().span.end = each.span.end;
      else
        joined.push_back(std::move(each));
    }
    for (NotRead& each : joined)
      if (each.what.empty()) {
        each.what = "\"" + typed(each.span) + "\" is not understood";
        each.expected = "a word of the vocabularies or a name in the book";
        each.words = fold(typed(each.span));
      }
    line_.not_read = std::move(joined);
  }
  bool close(Span a, Span b) const {
    if (b.begin < a.end) return true;
    std::size_t at = a.end;
    for (const Ignored& each : line_.fillers)
      if (each.span.begin >= at && each.span.end <= b.begin && only_space(at, each.span.begin))
        at = each.span.end;
    return only_space(at, b.begin);
  }
  bool only_space(std::size_t begin, std::size_t end) const {
    return std::string_view(work_).substr(begin, end - begin).find_first_not_of(" -'") ==
           std::string_view::npos;
  }

  std::string_view text_;
  std::string work_;
  const ReadingContext& context_;
  std::vector<Piece> pieces_;
  std::vector<LinePhrase> phrases_;
  std::string storage_;
  LineSaid line_;
};

std::string listed(const std::vector<std::string>& list) {
  std::string out;
  for (const std::string& each : list) out += (out.empty() ? "" : "+") + each;
  return out;
}

class Printer {
 public:
  void add(std::string_view name, std::string_view value) {
    if (value.empty()) return;
    if (!out_.empty()) out_ += ", ";
    out_ += std::string(name) + "=" + std::string(value);
  }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

void print_piece(const PieceSaid& piece, Printer& out) {
  if (piece.count) out.add("count", std::to_string(*piece.count));
  out.add("role", piece.role);
  out.add("shape", piece.shape);
  out.add("size", piece.size_text);
  out.add("paper", listed(piece.paper));
  out.add("ink", listed(piece.ink));
  for (const TermSaid& term : piece.terms) out.add(term.kind, term.term);
  out.add("supply", listed(piece.supplies));
  const auto die = [&](std::string_view name, const std::optional<DieSaidOfPiece>& said) {
    if (said) out.add(name, said->said + (said->line.empty() ? "" : " " + said->line));
  };
  die("from", piece.cut_by);
  die("in", piece.lies_in);
  out.add("side", piece.side);
}

}  // namespace

LineSaid read_line(std::string_view text, const ReadingContext& context) {
  if (text.size() <= longest_line) return LineReader(text, context).run();
  LineSaid line;
  line.not_read.push_back({{0, text.size()},
                           "the line is " + std::to_string(text.size()) + " bytes long",
                           "at most " + std::to_string(longest_line) + " bytes",
                           {},
                           {}});
  return line;
}

Result<std::string> read_day(std::string_view text, const ReadingContext* context) {
  const std::string said(trim(text));
  const std::string folded = fold(said);
  if (is_iso_day(said)) return said;
  if (context && !context->today.empty()) {
    if (folded == "today") return context->today;
    if (folded == "yesterday") return day_after(context->today, -1);
    const Result<Itemised> items = read_stages("made " + said, *context);
    if (items && items->items.size() == 1 && items->items.front().kind == Item::Kind::says) {
      const auto* made = std::get_if<MadeIn>(&items->items.front().offered.front().says);
      if (made && made->from == made->to && !made->from.empty()) return made->from;
    }
  }
  Problem problem;
  problem.what = "\"" + said + "\" is no whole date";
  problem.expected = "the day, as 2024-03-02, or today";
  return failure(std::move(problem));
}

std::string print(const LineSaid& line) {
  Printer out;
  out.add("name", line.name);
  print_piece(line.piece, out);
  if (line.goes) {
    std::string goes = std::string(goes_word(line.goes->how)) + " " + line.goes->target;
    if (!line.goes->line.empty()) goes += " (" + line.goes->line + ")";
    out.add("goes", goes);
  }
  out.add("at", line.at);
  out.add("glue", line.glue);
  out.add("scores", line.scores);
  for (const TermSaid& term : line.of_sample) out.add(term.kind, term.term);
  out.add("closed", line.closed_text);
  out.add("made", line.made);
  out.add("based", line.based_on);
  for (const std::string& words : line.words) out.add("words", words);
  for (const std::string& note : line.notes) out.add("note", note);
  for (const NotRead& each : line.not_read) out.add("not read", each.what);
  return out.take();
}

}  // namespace insetbook
