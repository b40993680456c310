// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/offer_as_text.h"

#include <algorithm>

#include "language/colour_uses.h"
#include "language/says.h"

namespace insetbook {

void offer_as_text(std::string_view text, Itemised& out) {
  std::vector<Item>& items = out.items;
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
      item.offered.push_back(constraint_of(text, item.span, text_of(item.word), ""));
    else if (alone && !item.unsure && (trade_word || is_technique(item)))
      out.other.push_back({std::string(text.substr(item.span.begin, item.span.end - item.span.begin)),
                           item.offered.front().means, as_field(text_of(item.word))});
  }
}

}  // namespace insetbook
