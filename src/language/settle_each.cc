// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/settle_each.h"

#include <algorithm>
#include <utility>

namespace insetbook {
namespace {

using Kind = Item::Kind;

bool is_separator(const Item& item) {
  return item.kind == Kind::comma ||
         (item.kind == Kind::joins && (item.word == "and" || item.word == "with" || item.word == "&"));
}

std::size_t past_separators(const std::vector<Item>& items, std::size_t at) {
  while (at < items.size() && is_separator(items[at])) ++at;
  return at;
}

// What is said of some of those counted: [first, last), behind "one" or their number at `number`.
struct Part {
  std::size_t number = 0, first = 0, last = 0;
  int count = 1;
};

// "one", "two": of those counted, where a property follows.
bool counts_some(const Item& item) {
  return item.kind == Kind::each ||
         (item.kind == Kind::number && item.whole && item.number > 1 && item.most == 0 && !item.pieces);
}

class Parted {
 public:
  // The number stands at `at`.
  Parted(const std::vector<Item>& items, std::size_t at) : items_(items), at_(at) {
    phrase_.first = phrase_.last = at + 1;
    bool head = false;
    while (phrase_.last < items.size() && says_of_piece(items[phrase_.last]))
      head = is_head(items[phrase_.last++]) || head;
    std::size_t next = past_separators(items, phrase_.last);
    int counted = 0;
    while (head && next < items.size() && counts_some(items[next])) {
      Part part{next, next + 1, next + 1, items[next].kind == Kind::each ? 1 : items[next].number};
      while (part.last < items.size() && says_of_piece(items[part.last]) && !is_head(items[part.last]))
        ++part.last;
      // "two hearts and one navy circle" is another piece.
      const bool of_it = part.last > part.first && (part.last == items.size() || !is_head(items[part.last]));
      if (!of_it) break;
      parts_.push_back(part);
      counted += part.count;
      end_ = part.last;
      next = past_separators(items, part.last);
    }
    rest_ = items[at].number - counted;
    if (rest_ < 0) parts_.clear();
  }

  bool parted() const { return !parts_.empty(); }
  std::size_t end() const { return end_; }

  // Those of whom something is said, each a piece of its own, and the rest of them.
  void write(std::vector<Item>& out) const {
    bool first = true;
    for (const Part& part : parts_) {
      join(out, first);
      if (part.count > 1) out.push_back(items_[part.number]);
      add_phrase(out);
      for (std::size_t i = part.first; i < part.last; ++i) out.push_back(items_[i]);
    }
    if (rest_ == 0) return;
    join(out, first);
    if (rest_ > 1) {
      out.push_back(items_[at_]);
      out.back().number = rest_;
    }
    add_phrase(out);
  }

 private:
  void join(std::vector<Item>& out, bool& first) const {
    if (std::exchange(first, false)) return;
    Item joins;
    joins.kind = Kind::joins;
    joins.word = "and";
    joins.span = {items_[at_].span.end, items_[at_].span.end};
    out.push_back(std::move(joins));
  }
  void add_phrase(std::vector<Item>& out) const {
    const std::size_t begins = out.size();
    for (std::size_t i = phrase_.first; i < phrase_.last; ++i) out.push_back(items_[i]);
    out[begins].article = true;
  }
  const std::vector<Item>& items_;
  std::size_t at_;
  Part phrase_;
  std::vector<Part> parts_;
  std::size_t end_ = 0;
  int rest_ = 0;  // those of whom nothing more is said
};

}  // namespace

void settle_each(std::string_view text, Itemised& out) {
  const auto is_each = [](const Item& item) { return item.kind == Kind::each; };
  if (std::ranges::none_of(out.items, is_each)) return;
  std::vector<Item> settled;
  for (std::size_t i = 0; i < out.items.size(); ++i) {
    const Item& item = out.items[i];
    if (is_each(item)) {
      ignore_item(text, out, item, "filler");
      if (i + 1 < out.items.size()) out.items[i + 1].article = true;
      continue;
    }
    const bool counts = item.kind == Kind::number && item.whole && item.number > 1 && item.most == 0;
    const Parted parted(out.items, i);
    if (!counts || !parted.parted()) {
      settled.push_back(item);
      continue;
    }
    parted.write(settled);
    i = parted.end() - 1;
  }
  out.items = std::move(settled);
}

}  // namespace insetbook
