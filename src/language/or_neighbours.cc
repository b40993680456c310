// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/or_neighbours.h"

#include <utility>

namespace insetbook {
namespace {

// "2 or 3 in": the unit stands with the last one.
void number_to_size(std::vector<Item>& items) {
  for (std::size_t i = 0; i + 2 < items.size(); ++i) {
    Item& number = items[i];
    const Item& size = items[i + 2];
    if (number.kind != Item::Kind::number || number.offered.empty() ||
        items[i + 1].kind != Item::Kind::either || size.kind != Item::Kind::says ||
        size.of != FieldName::size)
      continue;
    const SizeIs& with_unit = std::get<SizeIs>(size.offered.front().says);
    SizeIs& bare = std::get<SizeIs>(number.offered.front().says);
    if (!with_unit.one_figure || bare.unit != with_unit.unit) continue;
    number.kind = Item::Kind::says;
    number.of = FieldName::size;
  }
}

// "cards of 2023 and 2024": no card was made in both.
void years_to_choice(std::vector<Item>& items) {
  const auto made = [](const Item& item) {
    const auto* said = item.kind == Item::Kind::says && !item.field && item.offered.size() == 1
                           ? std::get_if<MadeIn>(&item.offered.front().says)
                           : nullptr;
    return said && !said->from.empty() && !said->to.empty() ? said : nullptr;
  };
  for (std::size_t i = 1; i + 1 < items.size(); ++i) {
    if (items[i].kind != Item::Kind::joins || items[i].word != "and") continue;
    const MadeIn* first = made(items[i - 1]);
    const MadeIn* second = made(items[i + 1]);
    if (first && second && (first->to < second->from || second->to < first->from))
      items[i].kind = Item::Kind::either;
  }
}

// "circle (technique:stamping)": a field in a bracket is said of no piece beside it.
bool keeps_bracket(const Item& item) {
  return item.field && item.offered.size() == 1 && says_of_piece(item) && !is_head(item);
}

bool of_one_kind(const Item& a, const Item& b) {
  return a.kind == Item::Kind::says && b.kind == Item::Kind::says && a.of == b.of;
}

// Whether `item` and what stands before the "or" at the end of `bound` are one choice. A minus sign
// excludes only the word behind it: "-easel or tent" is a choice between no easel and a tent.
bool or_binds(const std::vector<Item>& bound, const Item& item) {
  const std::size_t count = bound.size();
  if (count < 2 || bound.back().kind != Item::Kind::either || !of_one_kind(bound[count - 2], item))
    return false;
  return count < 3 || bound[count - 3].kind != Item::Kind::excludes || !bound[count - 3].dash;
}

void gather_list(std::vector<Item>& bound) {
  while (bound.size() > 2 && bound[bound.size() - 2].kind == Item::Kind::comma &&
         of_one_kind(bound[bound.size() - 3], bound.back()) && !bound.back().field) {
    Item last = std::move(bound.back());
    bound.pop_back();
    bound.pop_back();
    for (Constraint& each : last.offered) bound.back().offered.push_back(std::move(each));
  }
}

}  // namespace

void bind_neighbours(std::vector<Item>& items) {
  std::vector<Item> bound;
  number_to_size(items);
  years_to_choice(items);
  bool or_before = false;
  for (Item& item : items) {
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
  items = std::move(bound);
}

}  // namespace insetbook
