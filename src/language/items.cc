// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/items.h"

#include <algorithm>
#include <utility>

#include "language/colour_uses.h"
#include "language/offer_as_text.h"
#include "language/or_neighbours.h"
#include "language/parallel_phrases.h"
#include "language/says.h"
#include "language/settle_each.h"
#include "language/settle_prepositions.h"
#include "language/single_words.h"
#include "language/small_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

constexpr int surely_a_term = 30;  // Vocabulary: below, the word more often means what no vocabulary has
constexpr std::size_t phrase_length = 16;

struct How {
  std::string_view words;
  GoesHow how;
};
constexpr How how_words[] = {
    {"on", GoesHow::on},
    {"onto", GoesHow::on},
    {"upon", GoesHow::on},
    {"on top of", GoesHow::on},
    {"over", GoesHow::on},
    {"mounted on", GoesHow::on},
    {"glued on", GoesHow::on},
    {"glued to", GoesHow::on},
    {"stuck on", GoesHow::on},
    {"stuck to", GoesHow::on},
    {"attached to", GoesHow::on},
    {"in", GoesHow::in},
    {"into", GoesHow::in},
    {"inside", GoesHow::in},
    {"within", GoesHow::in},
    {"framed by", GoesHow::in},
    {"behind", GoesHow::behind},
    {"under", GoesHow::behind},
    {"underneath", GoesHow::behind},
    {"beneath", GoesHow::behind},
    {"below", GoesHow::behind},
    {"around", GoesHow::around},
    {"round", GoesHow::around},
    {"through", GoesHow::through},
    {"thru", GoesHow::through},
};

// "around the" → around; "beside" says nothing of how.
std::optional<GoesHow> how_of(std::string_view words) {
  for (const std::string_view article : {" the", " an", " a"})
    if (words.ends_with(article)) words.remove_suffix(article.size());
  const auto found = std::ranges::find(how_words, words, &How::words);
  return found == std::end(how_words) ? std::nullopt : std::optional(found->how);
}

FieldName about(const Says& says) {
  const FieldName of = field_of(says);
  if (of == FieldName::paper || of == FieldName::ink) return FieldName::colour;
  if (of == FieldName::in) return FieldName::die;
  if (of == FieldName::glue) return FieldName::technique;  // how a piece was treated
  return of;
}

class Itemiser {
 public:
  Itemiser(std::string_view text, const std::vector<Piece>& pieces) : text_(text), pieces_(pieces) {}

  Itemised run(std::vector<Seen> seen) {
    for (Seen& it : seen) {
      take(it);
      for (Seen& more : it.more) take(more);
    }
    settle_each(text_, out_);
    settle_round(out_.items);
    settle_coloured(text_, out_);
    bracket_parallel_phrases(out_.items);
    bind_neighbours(out_.items);
    settle_card_sizes(text_, out_.items);
    use_before_colour(text_, out_);
    settle_prepositions(text_, out_);
    offer_as_text(text_, out_);
    return std::move(out_);
  }

 private:
  std::string_view typed(Span span) const { return text_.substr(span.begin, span.end - span.begin); }

  void ignore(const Seen& it, std::string why) {
    out_.ignored.push_back({std::string(typed(it.span)), std::move(why), it.span});
  }

  Item& add(Item::Kind kind, const Seen& it) {
    Item item;
    item.kind = kind;
    item.word = it.word;
    item.span = it.span;
    item.article = std::exchange(article_, false);
    item.field = it.field;
    out_.items.push_back(std::move(item));
    return out_.items.back();
  }

  void add_says(const Seen& it, Says says) {
    if (it.excluded) {
      Item& excludes = add(Item::Kind::excludes, it);
      excludes.dash = excludes.outright = true;
    }
    Item& item = add(Item::Kind::says, it);
    item.of = about(says);
    item.by = it.by;
    item.term = it.as == As::term;
    item.counted = it.as == As::named && (!it.terms.empty() || it.counted);
    item.unsure = it.as == As::term && !it.terms.empty() && it.terms.front().likelihood < surely_a_term;
    item.offered.push_back(constraint_of(text_, it.span, std::move(says), it.means));
    for (const Says& besides : it.besides) item.offered.push_back(constraint_of(text_, it.span, besides, ""));
    for (const Says& also : it.also)
      item.also.push_back(constraint_of(text_, it.span, also, it.also.size() == 1 ? it.also_means : ""));
    // "easel card": the label has the card in it.
    const bool of_card = it.word.ends_with(" card") || it.word.ends_with(" cards");
    if (it.as == As::term && of_card && !says_of_piece(item)) add(Item::Kind::card, it);
  }

  void add_text(const Seen& it) {
    // Words that a hyphen joins belong together.
    if (pieces_[it.first].hyphen && text_before_ == it.first && !out_.items.empty()) {
      Item& before = out_.items.back();
      auto& words = std::get<WordsAre>(before.offered.front().says);
      words.words.push_back(it.word);
      words.phrase = true;
      const Span span{before.span.begin, it.span.end};
      before.span = span;
      before.offered.front() = constraint_of(text_, span, std::move(before.offered.front().says), "");
    } else {
      add_says(it, WordsAre{{it.word}, false});
    }
    text_before_ = it.last;
  }

  void add_phrase(const Seen& it) {
    WordsAre words{single_words(it.word), true};
    if (words.words.empty())
      ignore(it, "nothing between the quotes");
    else
      add_says(it, std::move(words));
  }

  // "paper" and "ink" say how the colours before them are used; else they are a material.
  void add_use(const Seen& it, ColourUse use) {
    std::size_t at = out_.items.size();
    bool found = false;
    while (at > 0 && is_colour(out_.items[at - 1]) && !out_.items[at - 1].field &&
           use_of(out_.items[at - 1]) == ColourUse::either) {
      found = true;
      Item& colour = out_.items[--at];
      use_colour(colour, use);
      for (Constraint& each : colour.offered) each.means.clear();
      if (at == 0) break;
      const Item& between = out_.items[at - 1];
      const bool chain =
          between.kind == Item::Kind::either || (between.kind == Item::Kind::joins && between.word == "and");
      if (chain && at > 1)
        --at;
      else
        break;
    }
    if (found)
      return ignore(
          it, use == ColourUse::ink ? "says that the colour is of ink" : "says that the colour is of paper");
    if (it.says) return add_says(it, *it.says);
    add_text(it);
  }

  // "2 in circle ± 1/8 in": the size may stand some words before.
  void add_tolerance(const Seen& it) {
    const SizeIs& within = std::get<SizeIs>(*it.says);
    for (std::size_t i = out_.items.size(); i-- > 0;) {
      Item& item = out_.items[i];
      const bool size = item.of == FieldName::size || item.kind == Item::Kind::number;
      if (!says_of_piece(item) && item.kind != Item::Kind::number) break;
      if (!size || item.offered.empty()) continue;
      for (Constraint& each : item.offered) {
        SizeIs& said = std::get<SizeIs>(each.says);
        if (said.relation == Relation::exact || said.relation == Relation::about)
          said.tolerance = it.bare ? in_unit(within.low, within.unit, said.unit) : within.low;
        each.means.clear();
      }
      return ignore(it, "says how far from the size a piece may be");
    }
    ignore(it, "no size stands before it");
  }

  void take(Seen& it) {
    for (OtherReading& other : it.other) out_.other.push_back(std::move(other));
    for (std::string& note : it.notes)
      if (std::ranges::find(out_.notes, note) == out_.notes.end()) out_.notes.push_back(std::move(note));
    switch (it.as) {
      case As::text:
        return add_text(it);
      case As::phrase:
        return add_phrase(it);
      case As::filler:
        if (points_back(it)) out_.items.back().back = true;
        return ignore(it, "filler");
      case As::article:
        article_ = true;
        return ignore(it, "filler");
      case As::mark:
      case As::unread:
        return;
      case As::joins:
        if (it.word.front() >= 'a') ignore(it, "filler");
        add(Item::Kind::joins, it);
        article_ = it.word.ends_with(" a");
        return;
      case As::comma:
        add(Item::Kind::comma, it);
        return;
      case As::either:
        add(Item::Kind::either, it);
        return;
      case As::excludes: {
        Item& item = add(Item::Kind::excludes, it);
        item.dash = it.dash;
        item.outright = it.outright;
        return;
      }
      case As::opens:
        add(Item::Kind::opens, it);
        return;
      case As::group: {
        Item& item = add(Item::Kind::group, it);
        item.how = how_of(it.word);
        item.field = it.field;
        return;
      }
      case As::closes:
        add(Item::Kind::closes, it);
        return;
      case As::preposition: {
        add(Item::Kind::preposition, it).how = how_of(it.word);
        article_ = it.word.ends_with(" a") || it.word.ends_with(" an") || it.word.ends_with(" the");
        return;
      }
      case As::card:
        ignore(it, "filler");
        add(Item::Kind::card, it);
        return;
      case As::pieces:
        return count_pieces(it);
      case As::order:
        out_.order = AskedOrder{it.oldest, std::nullopt};
        if (it.number > 0) out_.order->most = it.number;
        out_.notes.push_back(it.oldest ? "The oldest come first." : "The newest come first.");
        return;
      case As::paper:
        return add_use(it, ColourUse::paper);
      case As::ink:
        return add_use(it, ColourUse::ink);
      case As::tall:
        add(Item::Kind::tall, it);
        return;
      case As::wide:
        add(Item::Kind::wide, it);
        return;
      case As::each:
        add(Item::Kind::each, it);
        return;
      case As::within:
        return add_tolerance(it);
      case As::number: {
        Item& item = add(Item::Kind::number, it);
        item.number = it.number;
        item.most = it.most;
        item.whole = it.whole;
        item.exactly = it.exactly;
        if (it.says) item.offered.push_back(constraint_of(text_, it.span, *it.says, ""));
        return;
      }
      case As::term:
      case As::named:
      case As::like:
      case As::says:
        if (it.says) return add_says(it, std::move(*it.says));
        return add_text(it);
    }
  }

  // "more than five pieces", "three white pieces", "four layers in all": what the number before it counts.
  void count_pieces(const Seen& it) {
    std::vector<Item>& items = out_.items;
    std::size_t at = items.size();
    const bool all_layers = at > 1 && it.word.find("piece") == std::string::npos && is_layer(items[at - 1]);
    if (all_layers) --at;
    while (at > 0 && says_of_piece(items[at - 1]) && !is_head(items[at - 1]) && !items[at - 1].field) --at;
    if (at == 0 || items[at - 1].kind != Item::Kind::number || !items[at - 1].whole)
      return ignore(it, "filler");
    Item& number = items[at - 1];
    number.pieces = true;
    if (all_layers) items.pop_back();
    if (at < items.size()) return ignore(it, "filler");
    number.span.end = it.span.end;
  }

  static bool is_layer(const Item& item) {
    return item.kind == Item::Kind::says && item.of == FieldName::role && !item.field &&
           (item.word == "layer" || item.word == "layers");
  }

  // "behind it"
  bool points_back(const Seen& it) const {
    return (it.word == "it" || it.word == "them") && !out_.items.empty() && !article_ &&
           out_.items.back().kind == Item::Kind::preposition && out_.items.back().how &&
           out_.items.back().span.end <= it.span.begin && it.first > 0 &&
           pieces_[it.first - 1].span.end == out_.items.back().span.end;
  }

  std::string_view text_;
  const std::vector<Piece>& pieces_;
  Itemised out_;
  bool article_ = false;
  std::size_t text_before_ = static_cast<std::size_t>(-1);
};

}  // namespace

WordsAre text_of(std::string_view folded) {
  WordsAre words{single_words(folded)};
  words.phrase = words.words.size() > 1;
  return words;
}

void ignore_item(std::string_view text, Itemised& out, const Item& item, std::string why) {
  const std::string_view typed = text.substr(item.span.begin, item.span.end - item.span.begin);
  out.ignored.push_back({std::string(typed), std::move(why), item.span});
}

Constraint constraint_of(std::string_view text, Span span, Says says, std::string means) {
  Constraint constraint;
  constraint.text = std::string(text.substr(span.begin, span.end - span.begin));
  constraint.means = std::move(means);
  constraint.span = span;
  constraint.says = std::move(says);
  return constraint;
}

bool says_of_piece(const Item& item) {
  return item.kind == Item::Kind::says && item.of != FieldName::text && field(item.of).of_piece;
}

bool is_head(const Item& item) {
  if (item.kind != Item::Kind::says) return false;
  return item.of == FieldName::shape || item.of == FieldName::role || (item.of == FieldName::die && !item.by);
}

bool head_ahead(const std::vector<Item>& items, std::size_t at) {
  for (std::size_t i = at; i < std::min(at + phrase_length, items.size()); ++i) {
    if (is_head(items[i])) return true;
    const bool goes_on = says_of_piece(items[i]) || items[i].kind == Item::Kind::number ||
                         items[i].kind == Item::Kind::tall || items[i].kind == Item::Kind::wide;
    if (!goes_on || (i > at && items[i].by)) return false;
  }
  return false;
}

Itemised itemise(std::string_view text, const std::vector<Piece>& pieces, std::vector<Seen> seen) {
  Itemised itemised = Itemiser(text, pieces).run(std::move(seen));
  std::ranges::stable_sort(itemised.ignored, {}, [](const Ignored& each) { return each.span.begin; });
  return itemised;
}

}  // namespace insetbook
