// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/settle_prepositions.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "language/colour_uses.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

std::string_view typed(std::string_view text, Span span) {
  return text.substr(span.begin, span.end - span.begin);
}

// "card", "landscape card"
bool says_card(std::string_view text, const Item& item) {
  if (item.kind == Item::Kind::card) return true;
  const std::string_view said = typed(text, item.span);
  return item.kind == Item::Kind::says && item.of == FieldName::closed && !item.field &&
         (said.ends_with(" card") || said.ends_with(" cards"));
}

// "sage circle on a white card", "… on a white z fold": where what is said of the card ends; the
// preposition's own place where it is said of a piece.
std::size_t card_behind(const std::vector<Item>& items, std::size_t preposition) {
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

// What the card is made of is its base.
Item base_of_card(std::string_view text, Span span) {
  Item base;
  base.of = FieldName::role;
  base.span = span;
  base.word = "base";
  base.offered.push_back(constraint_of(text, span, RoleIs{{std::string("base")}}, "the base of the card"));
  return base;
}

// In "stamped "happy birthday" in navy" the technique; else the last that is settled.
const Item& before_quote(std::string_view text, const std::vector<Item>& settled) {
  const auto quoted = [&](const Item& item) {
    const auto* words =
        item.kind == Item::Kind::says ? std::get_if<WordsAre>(&item.offered.front().says) : nullptr;
    return words && words->phrase && is_quote(character_at(text, item.span.begin).code);
  };
  for (std::size_t i = settled.size(); i-- > 0;) {
    if (quoted(settled[i])) continue;
    const bool joins = settled[i].kind == Item::Kind::joins && i + 1 < settled.size();
    if (joins && settled[i].word == "with") continue;
    return is_technique(settled[i]) ? settled[i] : settled.back();
  }
  return settled.back();
}

// It is put into a bracket behind "with", so that nothing of it is said of the piece before, nor excluded
// with that: "circle on a navy card" is a circle, and a base that is navy.
void settle_card_behind(std::string_view text, std::vector<Item>& items, std::size_t preposition,
                        std::size_t end, std::vector<Item>& settled) {
  Item bracket;
  bracket.span = {items[preposition].span.end, items[preposition].span.end};
  bracket.kind = Item::Kind::joins;
  bracket.word = "with";
  settled.push_back(bracket);
  bracket.kind = Item::Kind::opens;
  bracket.word.clear();
  settled.push_back(bracket);
  for (std::size_t i = preposition + 1; i < end; ++i) {
    if (is_colour(items[i]) && use_of(items[i]) == ColourUse::either) use_colour(items[i], ColourUse::paper);
    const bool of_base = is_colour(items[i]) || items[i].of == FieldName::material;
    const Span behind{items[i].span.end, items[i].span.end};
    const bool ends = of_base && (i + 1 == end || !says_of_piece(items[i + 1]));
    settled.push_back(std::move(items[i]));
    if (ends) settled.push_back(base_of_card(text, behind));
  }
  bracket.kind = Item::Kind::closes;
  bracket.span = {settled.back().span.end, settled.back().span.end};
  settled.push_back(std::move(bracket));
}

// "on a 3 x 4 in": a size with two sides that is not the card's.
bool sized_ahead(const std::vector<Item>& items, std::size_t i) {
  bool sized = false;
  for (; i < items.size() && says_of_piece(items[i]); ++i)
    sized = sized || (items[i].of == FieldName::size && !items[i].offered.empty() &&
                      !std::get<SizeIs>(items[i].offered.front().says).one_figure);
  while (i < items.size() && items[i].kind == Item::Kind::says && !says_of_piece(items[i])) ++i;
  return sized && (i >= items.size() || items[i].kind != Item::Kind::card);
}

// "greeting inside square cards": the phrase that follows is the card's.
bool card_ahead(const std::vector<Item>& items, std::size_t i) {
  while (i < items.size() && says_of_piece(items[i])) ++i;
  return i < items.size() && items[i].kind == Item::Kind::card;
}

// Whether a piece follows with which the one before could go. `subject`: whether one stands before.
bool goes_with_piece(const std::vector<Item>& items, std::size_t i, bool subject) {
  if (items[i].back) return true;
  if (i + 1 >= items.size()) return false;
  const Item& next = items[i + 1];
  const bool bracket = next.kind == Item::Kind::opens && head_ahead(items, i + 2);
  // "bow on a ribbon": what may be a piece as well as a material.
  const bool on_ribbon = items[i].how && *items[i].how != GoesHow::in && subject &&
                         next.kind == Item::Kind::says && next.of == FieldName::material &&
                         !next.also.empty();
  // "a rectangle in sage 3 x 4 in"
  const bool in_colour = items[i].word == "in" && is_colour(next) && !next.article;
  return (bracket || on_ribbon || next.kind == Item::Kind::group || head_ahead(items, i + 1) ||
          (!in_colour && sized_ahead(items, i + 1))) &&
         (items[i].word != "inside" || next.article || (subject && !card_ahead(items, i + 1)));
}

// "a ribbon around the front", "around the card", "with a square behind"
bool stands_alone(const std::vector<Item>& items, std::size_t i, const std::vector<Item>& settled) {
  static constexpr std::string_view words[] = {"around",   "around a",  "around an", "around the", "round a",
                                               "round an", "round the", "behind",    "through",    "thru"};
  if (settled.empty() || !says_of_piece(settled.back()) ||
      std::ranges::find(words, items[i].word) == std::end(words))
    return false;
  if (i + 1 >= items.size()) return true;
  const Item& next = items[i + 1];
  return next.kind == Item::Kind::closes || next.kind == Item::Kind::comma ||
         next.kind == Item::Kind::joins || next.kind == Item::Kind::card ||
         (next.kind == Item::Kind::says && next.of == FieldName::side);
}

// "stamped in navy or in kelp": one choice of colours, of the use of the first.
bool or_another_colour(std::vector<Item>& settled, const Item& lead, Item& colour) {
  if (lead.kind != Item::Kind::preposition || lead.word != "in" || settled.size() < 2 ||
      settled.back().kind != Item::Kind::either)
    return false;
  Item& first = settled[settled.size() - 2];
  if (!is_colour(first) || first.field || use_of(colour) != ColourUse::either) return false;
  use_colour(colour, use_of(first));
  for (Constraint& each : colour.offered) first.offered.push_back(std::move(each));
  first.span.end = colour.span.end;
  settled.pop_back();
  return true;
}

bool says_layering(const Item& item) {
  if (!is_technique(item) || item.field || item.offered.size() != 1) return false;
  const auto* said = std::get_if<TechniqueIs>(&item.offered.front().says);
  return said && !said->terms.empty() && said->terms.front() == "layering";
}

void settle_preposition(std::string_view text, Itemised& out, Item& item, bool before_card,
                        std::vector<Item>& settled) {
  if (item.word == "inside" || (before_card && item.word.starts_with("inside"))) {
    item.kind = Item::Kind::says;
    item.of = FieldName::side;
    item.offered.push_back(constraint_of(text, item.span, SideIs{"inside"}, ""));
    settled.push_back(std::move(item));
    return;
  }
  ignore_item(text, out, item, "filler");
}

}  // namespace

void settle_round(std::vector<Item>& items) {
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

void settle_card_sizes(std::string_view text, std::vector<Item>& items) {
  for (std::size_t i = 1; i + 1 < items.size(); ++i) {
    Item& size = items[i];
    const bool begins = size.article || items[i - 1].kind == Item::Kind::preposition;
    if (!begins || size.kind != Item::Kind::says || size.of != FieldName::size || size.field ||
        !says_card(text, items[i + 1]))
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

void settle_prepositions(std::string_view text, Itemised& out) {
  std::vector<Item> settled;
  std::vector<Item>& items = out.items;
  for (std::size_t i = 0; i < items.size(); ++i) {
    Item& item = items[i];
    const bool leads = item.kind == Item::Kind::preposition ||
                       (item.kind == Item::Kind::joins && (item.word == "with" || item.word == "using"));
    const bool colour_follows = i + 1 < items.size() && is_colour(items[i + 1]) && !items[i + 1].field;
    const bool bare = colour_follows && !head_ahead(items, i + 1) && !items[i + 1].article;
    if (const std::size_t end = card_behind(items, i); end > i && !settled.empty()) {
      ignore_item(text, out, item, "filler");
      settle_card_behind(text, items, i, end, settled);
      i = end - 1;
      continue;
    }
    // "on navy" with nothing before it
    if (item.kind == Item::Kind::preposition && item.how == GoesHow::on && bare && settled.empty() &&
        use_of(items[i + 1]) == ColourUse::either) {
      use_colour(items[i + 1], ColourUse::paper);
      ignore_item(text, out, item, "says how the colour is used");
      continue;
    }
    // "sage circle on white": the circle has its colour, and lies on something white.
    if (item.kind == Item::Kind::preposition && item.how == GoesHow::on && bare &&
        use_of(items[i + 1]) != ColourUse::ink && is_coloured_shape(settled)) {
      use_colour(items[i + 1], ColourUse::paper);
      settled.push_back(std::move(item));
      continue;
    }
    if (bare && or_another_colour(settled, item, items[i + 1])) {
      ignore_item(text, out, item, "filler");
      ++i;
      continue;
    }
    if (leads && bare && !settled.empty() &&
        use_colour_after(before_quote(text, settled), item, items[i + 1])) {
      use_colours_joined(items, i + 1);
      // "navy ink on white paper"
      const bool ink_before = is_colour(settled.back()) && use_of(settled.back()) == ColourUse::ink;
      items[i + 1].same_piece = item.how == GoesHow::on && ink_before;
      if (item.kind == Item::Kind::preposition) ignore_item(text, out, item, "says how the colour is used");
      continue;
    }
    if (item.kind == Item::Kind::preposition &&
        !goes_with_piece(items, i, !settled.empty() && says_of_piece(settled.back()))) {
      item.alone = stands_alone(items, i, settled);
      if (!item.alone) {
        const bool card = i + 1 < items.size() && items[i + 1].kind == Item::Kind::card;
        settle_preposition(text, out, item, card, settled);
        continue;
      }
    }
    // "layered on a square"
    if (item.kind == Item::Kind::preposition && item.how == GoesHow::on && !settled.empty() &&
        says_layering(settled.back())) {
      ignore_item(text, out, settled.back(), "says how the pieces go together");
      settled.pop_back();
    }
    settled.push_back(std::move(item));
  }
  out.items = std::move(settled);
}

}  // namespace insetbook
