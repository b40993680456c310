// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/parallel_phrases.h"

#include <algorithm>
#include <span>
#include <utility>

namespace insetbook {
namespace {

using Kinds = std::vector<std::pair<Item::Kind, FieldName>>;

bool ends_phrases(const Item& item) {
  return item.kind == Item::Kind::comma || item.kind == Item::Kind::opens || item.kind == Item::Kind::group ||
         item.kind == Item::Kind::closes;
}

// What a phrase says, without what only joins it; a size before "card" is the closed one, and a material
// counts as a colour does.
Kinds kinds_of(std::span<const Item> phrase) {
  const std::pair size{Item::Kind::says, FieldName::size}, closed{Item::Kind::says, FieldName::closed};
  Kinds kinds;
  for (const Item& item : phrase) {
    if (item.kind == Item::Kind::joins || (item.kind == Item::Kind::preposition && !item.how)) continue;
    if (item.kind == Item::Kind::card) {
      if (!kinds.empty() && kinds.back() == size) kinds.back() = closed;
      continue;
    }
    const bool says = item.kind == Item::Kind::says;
    // "white easel or kraft tent": either says what the paper is.
    const FieldName of = item.of == FieldName::material ? FieldName::colour : item.of;
    kinds.emplace_back(item.kind, says ? of : FieldName::text);
    // "white easel or navy square": what the phrase turns on may be a card or a piece.
    const bool turns_on = says && (is_head(item) || of == FieldName::fold) && kinds.size() > 1;
    if (turns_on && kinds[kinds.size() - 2].second == FieldName::colour)
      kinds.back().second = FieldName::fold;
  }
  return kinds;
}

// Whether it says things of two kinds, or how pieces go together.
bool says_more_than_one_kind(std::span<const Item> phrase) {
  if (phrase.empty() || phrase.front().kind == Item::Kind::excludes) return false;
  if (std::ranges::any_of(phrase, &Item::field)) return false;
  const auto says = [](const Item& item) { return item.kind == Item::Kind::says; };
  const auto first = std::ranges::find_if(phrase, says);
  return std::any_of(first, phrase.end(), [&](const Item& item) {
    return (says(item) && item.of != first->of) || (item.kind == Item::Kind::preposition && item.how);
  });
}

// "navy circle or sage square": one piece each, which `or` offers as it is.
bool one_piece_each(std::span<const Item> phrase) {
  return std::ranges::all_of(
             phrase,
             [](const Item& item) { return says_of_piece(item) || item.kind == Item::Kind::number; }) &&
         std::ranges::count_if(phrase, is_head) == 1;
}

// Half-open, by the places of the items.
struct Phrase {
  std::size_t first = 0, last = 0;
};

// What stands between two commas or brackets, with the phrases between its "or"s.
struct Stretch {
  std::size_t last = 0;
  std::vector<Phrase> phrases;
};

Stretch stretch_at(const std::vector<Item>& items, std::size_t first) {
  Stretch stretch;
  std::size_t begin = first, i = first;
  // "not a birthday easel or christmas tent": what is excluded is either of them.
  if (i < items.size() && items[i].kind == Item::Kind::excludes && !items[i].dash) ++begin, ++i;
  for (; i < items.size() && !ends_phrases(items[i]); ++i)
    if (items[i].kind == Item::Kind::either) {
      stretch.phrases.push_back({begin, i});
      begin = i + 1;
    }
  stretch.phrases.push_back({begin, i});
  stretch.last = i;
  return stretch;
}

class Parallels {
 public:
  explicit Parallels(std::vector<Item>& items) : items_(items) {}

  void run() {
    std::vector<Stretch> before;  // joined to the one that is looked at by commas
    for (std::size_t first = 0; first < items_.size();) {
      Stretch stretch = stretch_at(items_, first);
      first = stretch.last + 1;
      if (stretch.phrases.size() > 1 && all_alike(stretch)) take(stretch, before);
      before.push_back(std::move(stretch));
      if (first - 1 < items_.size() && items_[first - 1].kind != Item::Kind::comma) before.clear();
    }
    put_brackets();
  }

 private:
  std::span<const Item> items_of(const Phrase& phrase) const {
    return std::span<const Item>(items_).subspan(phrase.first, phrase.last - phrase.first);
  }

  bool all_alike(const Stretch& stretch) const {
    const std::span<const Item> first = items_of(stretch.phrases.front());
    const Kinds kinds = kinds_of(first);
    const bool pieces = std::ranges::all_of(
        stretch.phrases, [&](const Phrase& phrase) { return one_piece_each(items_of(phrase)); });
    return !pieces && std::ranges::all_of(stretch.phrases, [&](const Phrase& phrase) {
      return says_more_than_one_kind(items_of(phrase)) && kinds_of(items_of(phrase)) == kinds;
    });
  }

  // "birthday easel, christmas tent or halloween gate": the list before the "or" as well.
  void take(const Stretch& stretch, const std::vector<Stretch>& before) {
    for (const Phrase& phrase : stretch.phrases) found_.push_back(phrase);
    const Kinds kinds = kinds_of(items_of(stretch.phrases.front()));
    for (std::size_t i = before.size(); i-- > 0;) {
      const Stretch& listed = before[i];
      if (listed.phrases.size() > 1 || !all_alike(listed) ||
          kinds_of(items_of(listed.phrases.front())) != kinds)
        return;
      items_[listed.last].kind = Item::Kind::either;
      found_.push_back(listed.phrases.front());
    }
  }

  void put_brackets() {
    if (found_.empty()) return;
    std::ranges::sort(found_, {}, &Phrase::first);
    std::vector<Item> out;
    const auto bracket = [&](Item::Kind kind, std::size_t place) {
      Item item;
      item.kind = kind;
      item.span = {place, place};
      out.push_back(std::move(item));
    };
    auto next = found_.begin();
    for (std::size_t i = 0; i < items_.size(); ++i) {
      const bool in_phrase = next != found_.end() && i >= next->first;
      if (in_phrase && i == next->first) bracket(Item::Kind::opens, items_[i].span.begin);
      const std::size_t end = items_[i].span.end;
      out.push_back(std::move(items_[i]));
      if (!in_phrase || i + 1 != next->last) continue;
      bracket(Item::Kind::closes, end);
      ++next;
    }
    items_ = std::move(out);
  }

  std::vector<Item>& items_;
  std::vector<Phrase> found_;
};

}  // namespace

void bracket_parallel_phrases(std::vector<Item>& items) {
  Parallels(items).run();
}

}  // namespace insetbook
