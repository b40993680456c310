// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/read_line_items.h"

#include <algorithm>
#include <utility>

#include "language/colour_names.h"
#include "language/colour_uses.h"
#include "language/orders.h"
#include "language/read_line_text.h"
#include "measure/read.h"
#include "measure/write.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

Size size_from(const SizeIs& said) {
  Size size;
  size.width = said.low;
  size.height = said.one_figure ? said.low : said.second;
  size.unit = said.unit;
  size.one_figure = said.one_figure;
  if (said.placed && !said.one_figure) size.orientation = Orientation::said;
  return size;
}

// As typed, with its unit where that reads back to the same size in any book, else as it is written.
std::string text_of_size(const Size& size, std::string_view typed) {
  const std::string said = single_spaced(typed);
  const auto same = [&](const Result<Size>& read) {
    return read && read->width == size.width && read->height == size.height &&
           read->one_figure == size.one_figure && read->orientation == size.orientation;
  };
  const std::string with_unit = said + (size.unit == Unit::inch ? " in" : " mm");
  if (same(read_size(with_unit, size.unit)) && same(read_size(with_unit, Unit::mm))) return with_unit;
  if (same(read_size(said, Unit::inch)) && same(read_size(said, Unit::mm))) return said;
  return write_said(size);
}

// Puts items into the fields of a line.
class Taker {
 public:
  Taker(std::string_view text, const ReadingContext& context, LineSaid& line)
      : text_(text), context_(context), line_(line) {}

  void take(Itemised& items) {
    for (OtherReading& each : items.other) line_.other_readings.push_back(std::move(each));
    use_inks(items.items);
    for (std::size_t i = 0; i < items.items.size(); ++i) {
      Item& item = items.items[i];
      if (i > 0) says_greeting(items.items[i - 1], item);
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
          i = on_a_colour(items.items, i);
          break;
        case Item::Kind::joins:
        case Item::Kind::comma:
        case Item::Kind::opens:
        case Item::Kind::closes:
        case Item::Kind::group:
        case Item::Kind::each:
          break;
      }
    }
    // "ring 3 in": no other shape was said.
    if (!other_shape_.empty() && piece().shape.empty()) piece().shape = other_shape_;
    count_circles();
    close_card();
    for (Ignored& each : items.ignored) line_.fillers.push_back(std::move(each));
    for (std::string& note : items.notes)
      if (note.starts_with("today is")) line_.remarks.push_back(std::move(note));
  }

 private:
  // "white circle stamped navy", "ink blended navy and soot": as a question reads it (bind_pieces.cc).
  static void use_inks(std::vector<Item>& items) {
    const auto plain = [&](std::size_t i) {
      return i < items.size() && is_colour(items[i]) && !items[i].field &&
             use_of(items[i]) == ColourUse::either;
    };
    const auto of_head = [&](std::size_t i) { return i + 1 < items.size() && is_head(items[i + 1]); };
    for (std::size_t i = 0; i < items.size(); ++i) {
      const auto* technique =
          is_technique(items[i]) ? std::get_if<TechniqueIs>(&items[i].offered.front().says) : nullptr;
      if (!technique || !brings_ink(*technique) || !plain(i + 1) || of_head(i + 1)) continue;
      std::size_t last = i + 1;
      use_colour(items[last], ColourUse::ink);
      for (; last + 2 < items.size() && items[last + 1].kind == Item::Kind::joins && plain(last + 2) &&
             !of_head(last + 2);
           last += 2)
        use_colour(items[last + 2], ColourUse::ink);
    }
  }
  // "greeting happy birthday": what the card is for stands on it.
  void says_greeting(const Item& before, const Item& item) {
    if (before.kind != Item::Kind::says || item.kind != Item::Kind::says || item.of != FieldName::occasion ||
        item.article || item.offered.empty())
      return;
    const auto* role = std::get_if<RoleIs>(&before.offered.front().says);
    const std::string said = typed(item.span);
    const bool beside = trim(text_.substr(before.span.end, item.span.begin - before.span.end)).empty();
    if (role && beside && role->terms.front() == "sentiment" && said.find(' ') != std::string::npos)
      line_.words.push_back(said);
  }
  // "saying warm wishes": the words as they were typed, behind what leads up to them.
  void words_on_card(const WordsAre& words, const Item& item) {
    std::string said = typed(item.span);
    if (said.ends_with('"') || said.ends_with("\u201d")) {
      said.clear();
      for (const std::string& word : words.words) said += (said.empty() ? "" : " ") + word;
    } else {
      std::size_t begin = said.size();
      for (std::size_t i = 0; i < words.words.size() && begin != std::string::npos && begin > 0; ++i)
        begin = said.rfind(' ', begin - 1);
      said.erase(0, begin == std::string::npos ? 0 : begin + 1);
    }
    const auto occasions = context_.vocabulary.find(fold(said), VocabularyName::occasion);
    if (!occasions.empty()) line_.of_sample.push_back({"occasion", occasions.front().id, said});
    line_.words.push_back(std::move(said));
  }

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

  // "sage circle on white": of what the circle lies on only the colour is said, which is none of the circle.
  std::size_t on_a_colour(const std::vector<Item>& items, std::size_t at) {
    const bool colour = items[at].how == GoesHow::on && at + 1 < items.size() &&
                        items[at + 1].kind == Item::Kind::says && items[at + 1].of == FieldName::colour &&
                        !head_ahead(items, at + 1);
    if (!colour || piece().shape.empty()) {
      filler(items[at].span);
      return at;
    }
    const Span span{items[at].span.begin, items[at + 1].span.end};
    not_read(span, "\"" + typed(span) + "\" names no piece", "the piece that it lies on or in");
    return at + 1;
  }

  void says(Item& item) {
    // Readings as a plain word stand beside those of a term, and what meets it as well, which is of another
    // kind; a record keeps the term.
    const std::size_t kind = item.offered.front().says.index();
    std::erase_if(item.offered, [&](const Constraint& each) { return each.says.index() != kind; });
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
    if (follows_unknown_colour(item) && is_colour_word(item.word)) return colour_not_known(item);
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
    // "base cut from A4": that is the sheet it was cut from.
    if (trim(text_.substr(0, item.span.begin)).ends_with("from"))
      return not_read({item.span.begin, item.span.end},
                      "\"" + typed(item.span) + "\" is what it was cut from", "the size of what was cut");
    if (!closed.size || closed.size->one_figure || line_.closed)
      return not_read(item.span, "\"" + typed(item.span) + "\" says no size", "finished 4-1/4 x 5-1/2 in");
    line_.closed = size_from(*closed.size);
    line_.closed_text = write_size(line_.closed->width, line_.closed->height, line_.closed->unit);
  }
  void take(const MadeIn& made, const Item& item) {
    if (made.from.empty() || made.from != made.to)
      return not_read(item.span, "\"" + typed(item.span) + "\" is no whole date", "made 2024-03-02");
    if (!line_.made.empty() && line_.made != made.from)
      return not_read(item.span, "a second date, \"" + typed(item.span) + "\"", "one of them");
    line_.made = made.from;
    line_.made_text = typed(item.span);
    // The record tells both readings of a date itself.
    std::erase_if(line_.other_readings,
                  [&](const OtherReading& other) { return other.text == line_.made_text; });
  }
  void take(const WordsAre& words, const Item& item) {
    if (words.on_card) return words_on_card(words, item);
    if (words.phrase && text_[item.span.begin] != '(' && is_quoted(item.span)) return quoted(item);
    const bool says_something = std::ranges::any_of(item.word, [](char c) {
      return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
    });
    if (!says_something) return filler(item.span);
    if (!words.phrase && is_colour_word(item.word)) return colour_not_known(item);
    if (last_unknown_colour_ && (item.word == "ink" || item.word == "paper")) {
      if (item.word == "ink")
        piece().ink.push_back(std::move(piece().paper.back())), piece().paper.pop_back();
      return filler(item.span);
    }
    line_.not_read.push_back({item.span, "", "", {}, {}});
  }
  // Kept as it is written; "heather grey" is one colour.
  void colour_not_known(const Item& item) {
    std::vector<std::string>& paper = piece().paper;
    if (follows_unknown_colour(item))
      paper.back() += " " + typed(item.span);
    else
      paper.push_back(typed(item.span));
    last_unknown_colour_ = true;
    last_colour_end_ = item.span.end;
  }
  bool follows_unknown_colour(const Item& item) const {
    return last_unknown_colour_ && !line_.piece.paper.empty() && last_colour_end_ < item.span.begin &&
           single_spaced(text_.substr(last_colour_end_, item.span.begin - last_colour_end_)).empty();
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
    return is_ordinary_colour(word) || !context_.vocabulary.find(word, VocabularyName::colour_word).empty();
  }
  void take(const BasedOn& says, const Item&) { line_.based_on = says.said; }
  void take(const EnvelopeIs& envelope, const Item&) { line_.envelope = envelope.said; }
  void take(const TitleIs&, const Item& item) { line_.not_read.push_back({item.span, "", "", {}, {}}); }
  void take(const HasNo&, const Item& item) {
    not_read(item.span, "\"" + typed(item.span) + "\" says what is not there", "what is there");
  }
  void take(const GoesIs&, const Item& item) { line_.not_read.push_back({item.span, "", "", {}, {}}); }
  void take(const GlueIs&, const Item& item) {
    if (!line_.glue.empty()) line_.glue += ", ";
    line_.glue += typed(item.span);
  }
  void take(const PlaceIs&, const Item& item) {
    if (!line_.at.empty()) line_.at += ", ";
    line_.at += typed(item.span);
  }
  void take(const AlikeTo&, const Item& item) { line_.not_read.push_back({item.span, "", "", {}, {}}); }

  // The other meaning of a word that is a role and a material.
  void also(const RoleIs& role, const Item& item) {
    if (piece().role.empty()) {
      piece().role = role.terms.front();
      add_head(item);
    }
  }
  void also(const ShapeIs& shape, const Item&) { other_shape_ = shape.terms.front(); }
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

  // "circle 2-3/8 x2": a circle has one figure, and there are two of it.
  void count_circles() {
    PieceSaid& circle = piece();
    if (circle.shape != "circle" || !circle.size || circle.size->one_figure || circle.count) return;
    const std::size_t x = circle.size_text.find(" x");
    if (x == std::string::npos) return;
    std::string_view figure = std::string_view(circle.size_text).substr(x + 2);
    for (const std::string_view unit : {" in", " mm"})
      if (figure.ends_with(unit)) figure.remove_suffix(unit.size());
    const auto count = plain_number(figure);
    if (!count || circle.size->width == circle.size->height) return;
    circle.count = *count;
    circle.size->one_figure = true;
    circle.size->height = circle.size->width;
    circle.size_text = text_of_size(*circle.size, circle.size_text.substr(0, x));
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
  std::string other_shape_;  // what a word for a role is as a shape
  bool last_unknown_colour_ = false;
  std::size_t last_colour_end_ = 0;
};

}  // namespace

void take_items(std::string_view text, const ReadingContext& context, Itemised& items, LineSaid& line) {
  Taker(text, context, line).take(items);
}

}  // namespace insetbook
