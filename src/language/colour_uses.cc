// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/colour_uses.h"

#include <algorithm>

#include "language/small_words.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

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

}  // namespace

bool is_colour(const Item& item) {
  return item.kind == Item::Kind::says && item.of == FieldName::colour;
}
bool is_technique(const Item& item) {
  return item.kind == Item::Kind::says && item.of == FieldName::technique;
}

bool brings_ink(const TechniqueIs& technique) {
  static constexpr std::string_view parts[] = {"stamp",   "heat emboss", "print",  "colour",
                                               "stencil", "blend",       "speckl", "splatter"};
  return !technique.terms.empty() && std::ranges::any_of(parts, [&](std::string_view part) {
    return technique.terms.front().find(part) != std::string::npos;
  });
}

void use_colour(Item& item, ColourUse use) {
  for (Constraint& each : item.offered)
    if (auto* colour = std::get_if<ColourIs>(&each.says)) colour->use = use;
}

ColourUse use_of(const Item& item) {
  return std::get<ColourIs>(item.offered.front().says).use;
}

void settle_coloured(std::string_view text, Itemised& out) {
  std::vector<Item>& items = out.items;
  const auto between = [&](const Item& a, const Item& b) {
    return trim(text.substr(a.span.end, b.span.begin - a.span.end));
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
    ignore_item(text, out, items[i], "filler");
    items.erase(items.begin() + static_cast<std::ptrdiff_t>(i));
    --i;
  }
}

void use_before_colour(std::string_view text, Itemised& out) {
  std::vector<Item>& items = out.items;
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
    ignore_item(text, out, use, ink ? "says that the colour is of ink" : "says that the colour is of paper");
    if (in) ignore_item(text, out, items[i + 1], "filler");
    items.erase(items.begin() + static_cast<std::ptrdiff_t>(i),
                items.begin() + static_cast<std::ptrdiff_t>(at));
  }
}

void use_colours_joined(std::vector<Item>& items, std::size_t colour) {
  for (std::size_t i = colour; i + 2 < items.size(); i += 2) {
    Item& next = items[i + 2];
    const bool joined = items[i + 1].kind == Item::Kind::joins && items[i + 1].word == "and";
    if (!joined || !is_colour(next) || next.field || next.article || use_of(next) != ColourUse::either ||
        head_ahead(items, i + 2))
      return;
    use_colour(next, use_of(items[colour]));
  }
}

bool is_coloured_shape(const std::vector<Item>& settled) {
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

bool use_colour_after(const Item& before, const Item& lead, Item& colour) {
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

}  // namespace insetbook
