// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/items.h"

#include <algorithm>
#include <utility>

#include "language/parallel_phrases.h"
#include "language/says.h"
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

bool is_colour(const Item& item) {
  return item.kind == Item::Kind::says && item.of == FieldName::colour;
}
bool is_technique(const Item& item) {
  return item.kind == Item::Kind::says && item.of == FieldName::technique;
}

void use_colour(Item& item, ColourUse use) {
  for (Constraint& each : item.offered)
    if (auto* colour = std::get_if<ColourIs>(&each.says)) colour->use = use;
}

ColourUse use_of(const Item& item) {
  return std::get<ColourIs>(item.offered.front().says).use;
}

// Techniques that are done to the paper: a colour after them is the paper's.
bool of_paper(const Item& technique) {
  static constexpr std::string_view parts[] = {"cut",   "punch", "dry emboss", "deep emboss", "deboss",
                                               "scor",  "pierc", "weav",       "quill",       "tear",
                                               "layer", "piec",  "fold"};
  const auto* said = std::get_if<TechniqueIs>(&technique.offered.front().says);
  if (!said) return true;
  const auto& terms = said->terms;
  return std::ranges::any_of(
      parts, [&](std::string_view part) { return terms.front().find(part) != std::string::npos; });
}

class Itemiser {
 public:
  Itemiser(std::string_view text, const std::vector<Piece>& pieces) : text_(text), pieces_(pieces) {}

  Itemised run(std::vector<Seen> seen) {
    for (Seen& it : seen) {
      take(it);
      for (Seen& more : it.more) take(more);
    }
    settle_round();
    settle_coloured();
    bracket_parallel_phrases(out_.items);
    bind_neighbours();
    settle_card_sizes();
    use_before_colour();
    settle_uses();
    offer_as_text();
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
    item.counted = it.as == As::named && !it.terms.empty();
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

  // "sage coloured circle", "coloured card": says no more than that there is a colour.
  void settle_coloured() {
    std::vector<Item>& items = out_.items;
    const auto between = [&](const Item& a, const Item& b) {
      return trim(text_.substr(a.span.end, b.span.begin - a.span.end));
    };
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (!is_technique(items[i]) || items[i].field ||
          (items[i].word != "coloured" && items[i].word != "colored"))
        continue;
      const bool colour_before = i > 0 && is_colour(items[i - 1]) && !items[i - 1].field &&
                                 std::string_view("-").find(between(items[i - 1], items[i])) == 0;
      const bool stock_behind =
          i + 1 < items.size() && (items[i + 1].kind == Item::Kind::card || items[i + 1].word == "paper" ||
                                   items[i + 1].word == "card stock" || items[i + 1].word == "cardstock");
      if (!colour_before && !stock_behind) continue;
      ignore_item(items[i], "filler");
      items.erase(items.begin() + static_cast<std::ptrdiff_t>(i));
      --i;
    }
  }

  // "heart round arch": between a shape or role and another piece "round" is no shape.
  void settle_round() {
    std::vector<Item>& items = out_.items;
    for (std::size_t i = 1; i + 1 < items.size(); ++i) {
      Item& item = items[i];
      const bool shape = item.kind == Item::Kind::says && item.of == FieldName::shape && item.term;
      if (!shape || item.word != "round" || item.article || !is_head(items[i - 1]) || items[i - 1].field ||
          !head_ahead(items, i + 1))
        continue;
      item.kind = Item::Kind::preposition;
      item.of = FieldName::text;
      item.term = item.unsure = false;
      item.offered.clear();
      item.also.clear();
      item.how = GoesHow::around;
    }
  }

  // "or" between two neighbours of one kind, and a comma list that ends in such an "or", make one item.
  void bind_neighbours() {
    std::vector<Item> bound;
    number_to_size();
    bool or_before = false;
    for (Item& item : out_.items) {
      if (or_before && or_binds(bound, item)) {
        bound.pop_back();
        gather_list(bound);
        Item& first = bound.back();
        for (Constraint& each : item.offered) first.offered.push_back(std::move(each));
        first.span.end = item.span.end;
        first.unsure = false;
        first.also.clear();
        or_before = false;
        continue;
      }
      if (item.kind == Item::Kind::closes && bound.size() > 1 && bound.back().kind == Item::Kind::says &&
          bound[bound.size() - 2].kind == Item::Kind::opens &&
          (bound.size() == 2 || bound[bound.size() - 3].kind != Item::Kind::group) &&
          !keeps_bracket(bound.back())) {
        Item inside = std::move(bound.back());
        bound.pop_back();
        bound.pop_back();
        // "(a or b) or c" and "x or (a or b)"
        if (or_binds(bound, inside)) {
          bound.pop_back();
          for (Constraint& each : inside.offered) bound.back().offered.push_back(std::move(each));
        } else {
          bound.push_back(std::move(inside));
        }
        or_before = false;
        continue;
      }
      or_before = item.kind == Item::Kind::either;
      bound.push_back(std::move(item));
    }
    out_.items = std::move(bound);
  }

  // "2 or 3 in": the unit stands with the last one.
  void number_to_size() {
    for (std::size_t i = 0; i + 2 < out_.items.size(); ++i) {
      Item& number = out_.items[i];
      const Item& size = out_.items[i + 2];
      if (number.kind != Item::Kind::number || number.offered.empty() ||
          out_.items[i + 1].kind != Item::Kind::either || size.kind != Item::Kind::says ||
          size.of != FieldName::size)
        continue;
      const SizeIs& with_unit = std::get<SizeIs>(size.offered.front().says);
      SizeIs& bare = std::get<SizeIs>(number.offered.front().says);
      if (!with_unit.one_figure || bare.unit != with_unit.unit) continue;
      number.kind = Item::Kind::says;
      number.of = FieldName::size;
    }
  }

  // "circle (technique:stamping)": a field in a bracket is said of no piece beside it.
  static bool keeps_bracket(const Item& item) {
    return item.field && item.offered.size() == 1 && says_of_piece(item) && !is_head(item);
  }

  static bool of_one_kind(const Item& a, const Item& b) {
    return a.kind == Item::Kind::says && b.kind == Item::Kind::says && a.of == b.of;
  }

  // Whether `item` and what stands before the "or" at the end of `bound` are one choice. A minus sign
  // excludes only the word behind it: "-easel or tent" is a choice between no easel and a tent.
  static bool or_binds(const std::vector<Item>& bound, const Item& item) {
    const std::size_t count = bound.size();
    if (count < 2 || bound.back().kind != Item::Kind::either || !of_one_kind(bound[count - 2], item))
      return false;
    return count < 3 || bound[count - 3].kind != Item::Kind::excludes || !bound[count - 3].dash;
  }

  static void gather_list(std::vector<Item>& bound) {
    while (bound.size() > 2 && bound[bound.size() - 2].kind == Item::Kind::comma &&
           of_one_kind(bound[bound.size() - 3], bound.back()) && !bound.back().field) {
      Item last = std::move(bound.back());
      bound.pop_back();
      bound.pop_back();
      for (Constraint& each : last.offered) bound.back().offered.push_back(std::move(each));
    }
  }

  // "card", "landscape card"
  bool says_card(const Item& item) const {
    if (item.kind == Item::Kind::card) return true;
    const std::string_view said = typed(item.span);
    return item.kind == Item::Kind::says && item.of == FieldName::closed && !item.field &&
           (said.ends_with(" card") || said.ends_with(" cards"));
  }

  // "panel on a 5 x 7 card": behind an article or a preposition the size before "card" begins what is said of
  // the card.
  void settle_card_sizes() {
    std::vector<Item>& items = out_.items;
    for (std::size_t i = 1; i + 1 < items.size(); ++i) {
      Item& size = items[i];
      const bool begins = size.article || items[i - 1].kind == Item::Kind::preposition;
      if (!begins || size.kind != Item::Kind::says || size.of != FieldName::size || size.field ||
          !says_card(items[i + 1]))
        continue;
      const auto two_sided = [](const Constraint& c) { return !std::get<SizeIs>(c.says).one_figure; };
      if (!std::ranges::all_of(size.offered, two_sided)) continue;
      size.of = FieldName::closed;
      for (Constraint& each : size.offered) {
        ClosedSizeIs closed;
        closed.size = std::get<SizeIs>(each.says);
        closed.said = each.text;
        each.says = std::move(closed);
        each.means.clear();
      }
    }
  }

  // "stamped in navy", "image on white", "inside" without anything to be inside of.
  void settle_uses() {
    std::vector<Item> settled;
    std::vector<Item>& items = out_.items;
    for (std::size_t i = 0; i < items.size(); ++i) {
      Item& item = items[i];
      const bool leads = item.kind == Item::Kind::preposition ||
                         (item.kind == Item::Kind::joins && (item.word == "with" || item.word == "using"));
      const bool colour_follows = i + 1 < items.size() && is_colour(items[i + 1]) && !items[i + 1].field;
      const bool bare = colour_follows && !head_ahead(items, i + 1) && !items[i + 1].article;
      if (const std::size_t end = card_behind(items, i); end > i && !settled.empty()) {
        ignore_item(item, "filler");
        settle_card_behind(items, i, end, settled);
        i = end - 1;
        continue;
      }
      // "on navy" with nothing before it
      if (item.kind == Item::Kind::preposition && item.how == GoesHow::on && bare && settled.empty() &&
          use_of(items[i + 1]) == ColourUse::either) {
        use_colour(items[i + 1], ColourUse::paper);
        ignore_item(item, "says how the colour is used");
        continue;
      }
      // "sage circle on white": the circle has its colour, and lies on something white.
      if (item.kind == Item::Kind::preposition && item.how == GoesHow::on && bare &&
          use_of(items[i + 1]) != ColourUse::ink && is_coloured_shape(settled)) {
        use_colour(items[i + 1], ColourUse::paper);
        settled.push_back(std::move(item));
        continue;
      }
      if (leads && bare && !settled.empty() && use_colour_after(settled.back(), item, items[i + 1])) {
        use_colours_joined(items, i + 1);
        if (item.kind == Item::Kind::preposition) ignore_item(item, "says how the colour is used");
        continue;
      }
      if (item.kind == Item::Kind::preposition && !goes_with_piece(items, i)) {
        item.alone = stands_alone(items, i, settled);
        if (!item.alone) {
          const bool card = i + 1 < items.size() && items[i + 1].kind == Item::Kind::card;
          settle_preposition(item, card, settled);
          continue;
        }
      }
      // "layered on a square"
      if (item.kind == Item::Kind::preposition && item.how == GoesHow::on && !settled.empty() &&
          says_layering(settled.back())) {
        ignore_item(settled.back(), "says how the pieces go together");
        settled.pop_back();
      }
      settled.push_back(std::move(item));
    }
    out_.items = std::move(settled);
  }

  // "sage circle on a white card", "… on a white z fold": where what is said of the card ends. The
  // preposition where it is said of a piece.
  static std::size_t card_behind(const std::vector<Item>& items, std::size_t preposition) {
    std::size_t i = preposition + 1;
    if (items[preposition].kind != Item::Kind::preposition || items[preposition].how != GoesHow::on ||
        i >= items.size())
      return preposition;
    const bool article = items[i].article;
    bool coloured = false;
    std::size_t end = preposition;
    for (; i < items.size(); ++i) {
      const Item& item = items[i];
      // "on white card" is card stock.
      const bool cards = item.kind == Item::Kind::card && (article || item.word.ends_with('s'));
      if (cards) return coloured ? i + 1 : preposition;
      const bool says = item.kind == Item::Kind::says && !item.field && item.of != FieldName::text;
      if (!says || is_head(item) || (i > preposition + 1 && item.article)) break;
      coloured = coloured || is_colour(item) || item.of == FieldName::material;
      if (item.of == FieldName::fold && coloured && article) end = i + 1;
    }
    return end;
  }

  // It is put into a bracket, so that nothing of it is said of the piece before.
  static void settle_card_behind(std::vector<Item>& items, std::size_t preposition, std::size_t end,
                                 std::vector<Item>& settled) {
    Item bracket;
    bracket.kind = Item::Kind::opens;
    bracket.span = {items[preposition].span.end, items[preposition].span.end};
    settled.push_back(bracket);
    for (std::size_t i = preposition + 1; i < end; ++i) {
      if (is_colour(items[i]) && use_of(items[i]) == ColourUse::either)
        use_colour(items[i], ColourUse::paper);
      settled.push_back(std::move(items[i]));
    }
    bracket.kind = Item::Kind::closes;
    bracket.span = {settled.back().span.end, settled.back().span.end};
    settled.push_back(std::move(bracket));
  }

  // "ink navy", "paper in navy": the use before the colour.
  void use_before_colour() {
    std::vector<Item>& items = out_.items;
    for (std::size_t i = 0; i + 1 < items.size(); ++i) {
      const Item& use = items[i];
      if (use.kind != Item::Kind::says || use.of != FieldName::material || use.field) continue;
      const bool ink = use.word == "ink" || use.word == "inks";
      const SmallWord* word = small_word(use.word);
      if (!word || (word->as != As::paper && word->as != As::ink)) continue;
      const bool in = items[i + 1].kind == Item::Kind::preposition && items[i + 1].word == "in";
      const std::size_t at = i + (in ? 2 : 1);
      if (at >= items.size() || !is_colour(items[at]) || items[at].field || items[at].article ||
          use_of(items[at]) != ColourUse::either || head_ahead(items, at))
        continue;
      use_colour(items[at], ink ? ColourUse::ink : ColourUse::paper);
      ignore_item(use, ink ? "says that the colour is of ink" : "says that the colour is of paper");
      if (in) ignore_item(items[i + 1], "filler");
      items.erase(items.begin() + static_cast<std::ptrdiff_t>(i),
                  items.begin() + static_cast<std::ptrdiff_t>(at));
    }
  }

  // "stamped in navy and sage": both are inks.
  static void use_colours_joined(std::vector<Item>& items, std::size_t colour) {
    for (std::size_t i = colour; i + 2 < items.size(); i += 2) {
      Item& next = items[i + 2];
      const bool joined = items[i + 1].kind == Item::Kind::joins && items[i + 1].word == "and";
      if (!joined || !is_colour(next) || next.field || next.article || use_of(next) != ColourUse::either ||
          head_ahead(items, i + 2))
        return;
      use_colour(next, use_of(items[colour]));
    }
  }

  // A shape with a colour of its own, and nothing that could be printed on it.
  static bool is_coloured_shape(const std::vector<Item>& settled) {
    bool shape = false, colour = false;
    for (std::size_t i = settled.size(); i-- > 0 && says_of_piece(settled[i]);) {
      const Item& item = settled[i];
      if (item.of == FieldName::role || item.of == FieldName::supply || is_technique(item)) return false;
      if (is_colour(item) && use_of(item) == ColourUse::ink) return false;
      shape = shape || item.of == FieldName::shape;
      colour = colour || is_colour(item);
    }
    return shape && colour;
  }

  bool use_colour_after(const Item& before, const Item& lead, Item& colour) const {
    if (use_of(colour) != ColourUse::either)
      return is_technique(before) || lead.kind == Item::Kind::preposition;
    const bool in = lead.word == "in" || lead.kind == Item::Kind::joins;
    if (is_technique(before) && in) {
      use_colour(colour, of_paper(before) ? ColourUse::paper : ColourUse::ink);
      return true;
    }
    if (lead.how == GoesHow::on && before.kind == Item::Kind::says && says_of_piece(before)) {
      use_colour(colour, ColourUse::paper);
      return true;
    }
    return false;
  }

  // Whether a piece follows with which the one before could go.
  static bool goes_with_piece(const std::vector<Item>& items, std::size_t i) {
    if (items[i].back) return true;
    if (i + 1 >= items.size()) return false;
    const Item& next = items[i + 1];
    const bool bracket = next.kind == Item::Kind::opens && head_ahead(items, i + 2);
    // "a rectangle in sage 3 x 4 in"
    const bool in_colour = items[i].word == "in" && is_colour(next) && !next.article;
    return (bracket || next.kind == Item::Kind::group || head_ahead(items, i + 1) ||
            (!in_colour && sized_ahead(items, i + 1))) &&
           (items[i].word != "inside" || next.article);
  }

  // "on a 3 x 4 in": a size with two sides that is not the card's.
  static bool sized_ahead(const std::vector<Item>& items, std::size_t i) {
    bool sized = false;
    for (; i < items.size() && says_of_piece(items[i]); ++i)
      sized = sized || (items[i].of == FieldName::size && !items[i].offered.empty() &&
                        !std::get<SizeIs>(items[i].offered.front().says).one_figure);
    while (i < items.size() && items[i].kind == Item::Kind::says && !says_of_piece(items[i])) ++i;
    return sized && (i >= items.size() || items[i].kind != Item::Kind::card);
  }

  // "a ribbon around the front", "around the card", "with a square behind"
  static bool stands_alone(const std::vector<Item>& items, std::size_t i, const std::vector<Item>& settled) {
    static constexpr std::string_view words[] = {"around",     "around a", "around an",
                                                 "around the", "round a",  "round an",
                                                 "round the",  "behind",   "through"};
    if (settled.empty() || !says_of_piece(settled.back()) ||
        std::ranges::find(words, items[i].word) == std::end(words))
      return false;
    if (i + 1 >= items.size()) return true;
    const Item& next = items[i + 1];
    return next.kind == Item::Kind::closes || next.kind == Item::Kind::comma ||
           next.kind == Item::Kind::joins || next.kind == Item::Kind::card ||
           (next.kind == Item::Kind::says && next.of == FieldName::side);
  }

  static bool says_layering(const Item& item) {
    if (!is_technique(item) || item.field || item.offered.size() != 1) return false;
    const auto* said = std::get_if<TechniqueIs>(&item.offered.front().says);
    return said && !said->terms.empty() && said->terms.front() == "layering";
  }

  // What is understood is not looked for as text, so that every label of a term finds the same; of a term
  // that stands alone the word is offered. But a word that more often is no term may as well be a plain word
  // wherever it is said of the sample, or stands alone; and a feature, material or role beside nothing but
  // words that are no terms may be one word of a title or a note with them ("kitchen window").
  void offer_as_text() {
    std::vector<Item>& items = out_.items;
    const auto is_text = [](const Item& item) {
      return item.kind == Item::Kind::says && item.of == FieldName::text;
    };
    const bool excluded =
        std::ranges::any_of(items, [](const Item& item) { return item.kind == Item::Kind::excludes; });
    const bool beside_text = std::ranges::any_of(items, is_text);
    const auto others = std::ranges::count_if(items, [&](const Item& item) {
      return item.kind == Item::Kind::number || (item.kind == Item::Kind::says && !is_text(item));
    });
    const bool alone = others == 1 && !excluded;
    for (Item& item : items) {
      if (item.kind != Item::Kind::says || is_text(item) || !item.term || item.field ||
          item.offered.size() != 1)
        continue;
      const bool of_sample = !says_of_piece(item) && item.of != FieldName::closed;
      const bool role = item.of == FieldName::role;
      const bool trade_word = item.of == FieldName::material || item.of == FieldName::feature || role;
      const bool of_title = alone && beside_text && trade_word;
      if (of_title && role)
        item.unsure = true;  // the binder offers its word
      else if (of_title || (item.unsure && (of_sample || (alone && (trade_word || is_technique(item))))))
        item.offered.push_back(constraint_of(text_, item.span, text_of(item.word), ""));
      else if (alone && !item.unsure && (trade_word || is_technique(item)))
        out_.other.push_back(
            {std::string(typed(item.span)), item.offered.front().means, as_field(text_of(item.word))});
    }
  }

  void settle_preposition(Item& item, bool before_card, std::vector<Item>& settled) {
    if (item.word == "inside" || (before_card && item.word.starts_with("inside"))) {
      item.kind = Item::Kind::says;
      item.of = FieldName::side;
      item.offered.push_back(constraint_of(text_, item.span, SideIs{"inside"}, ""));
      settled.push_back(std::move(item));
      return;
    }
    ignore_item(item, "filler");
  }

  void ignore_item(const Item& item, std::string why) {
    out_.ignored.push_back({std::string(typed(item.span)), std::move(why), item.span});
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
