// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/folded.h"

#include <algorithm>
#include <numeric>

#include "measure/write.h"

namespace insetbook {
namespace {

// One way of the sheet: a strip of parts between its creases. Folding turns the whole part before a crease
// over onto the part behind it; the last part lies still, inside up.
struct Part {
  std::int64_t from = 0, to = 0;  // nm along the open strip
  bool spine = false;
  std::int64_t offset = 0;  // in the folded strip a place p lies at offset + direction * p
  int direction = 1;

  std::int64_t least() const { return direction > 0 ? offset + from : offset - to; }
  std::int64_t most() const { return direction > 0 ? offset + to : offset - from; }
  std::int64_t at(std::int64_t place) const { return offset + direction * place; }
};

struct StripCrease {
  std::size_t before = 0;  // the part before it
  bool mountain = false;
};

class Strip {
 public:
  Strip(std::int64_t length, const std::vector<SheetCrease>& creases, bool upright) {
    std::vector<std::int64_t> cuts{0, length};
    for (const SheetCrease& crease : creases)
      if (crease.upright == upright) cuts.push_back(crease.at.nm());
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) parts_.push_back({cuts[i], cuts[i + 1], false, 0, 1});
    ways_.resize(parts_.size());
    for (const SheetCrease& crease : creases) {
      if (crease.upright != upright) continue;
      const std::size_t before = part_that_ends_at(crease.at.nm());
      ways_[before] = crease.mountain ? EdgeKind::mountain : EdgeKind::valley;
      order_.push_back({before, crease.mountain});
    }
    mark_spines();
    stack_.resize(parts_.size());
    std::iota(stack_.begin(), stack_.end(), std::size_t{0});
  }

  // False where a part that was folded before lies across a crease, on the side to which it folds.
  bool fold() {
    for (const StripCrease& crease : order_) {
      // Of two creases of a spine either one may come first: both are folded then.
      const std::size_t before = parts_[crease.before].spine ? crease.before - 1 : crease.before;
      const std::size_t behind = parts_[before + 1].spine ? before + 2 : before + 1;
      if (is_done(before)) continue;
      if (!fold_at(before, behind, crease.mountain)) return false;
      done_.push_back(before);
    }
    return true;
  }

  const std::vector<Part>& parts() const { return parts_; }
  const std::vector<std::size_t>& stack() const { return stack_; }  // the lowest first
  EdgeKind way_behind(std::size_t part) const { return ways_[part]; }
  std::size_t blocked_by() const { return blocked_by_; }
  std::int64_t blocked_at() const { return blocked_at_; }
  // Whether the part that was folded last came to lie on top.
  bool last_on_top() const { return last_on_top_; }

 private:
  std::size_t part_that_ends_at(std::int64_t place) const {
    std::size_t part = 0;
    while (parts_[part].to != place) ++part;
    return part;
  }

  void mark_spines() {
    const auto length = [&](std::size_t i) { return Length::nm(parts_[i].to - parts_[i].from); };
    for (std::size_t i = 1; i + 1 < parts_.size(); ++i) {
      if (parts_[i - 1].spine || ways_[i - 1] != ways_[i]) continue;
      parts_[i].spine = is_spine(length(i), length(i - 1), length(i + 1));
    }
  }

  bool is_done(std::size_t before) const {
    return std::find(done_.begin(), done_.end(), before) != done_.end();
  }

  // Whether the part lies across the line, and over the layer at `height` of the stack on the side `up`.
  bool is_in_the_way(std::size_t place_in_stack, std::size_t of, std::int64_t line, bool up) const {
    const Part& part = parts_[stack_[place_in_stack]];
    if (part.spine || part.least() >= line || part.most() <= line) return false;
    const auto layer = static_cast<std::size_t>(std::find(stack_.begin(), stack_.end(), of) - stack_.begin());
    return up ? place_in_stack > layer : place_in_stack < layer;
  }

  bool fold_at(std::size_t before, std::size_t behind, bool mountain) {
    const std::int64_t line = parts_[before].at(parts_[before].to);
    const std::int64_t other_line = parts_[behind].at(parts_[behind].from);
    const bool up = (parts_[before].direction > 0) != mountain;
    for (std::size_t i = 0; i < stack_.size(); ++i) {
      const bool belongs_before = stack_[i] <= before;
      if (is_in_the_way(i, belongs_before ? before : behind, belongs_before ? line : other_line, up)) {
        blocked_by_ = stack_[i];
        blocked_at_ = parts_[before].to;
        return false;
      }
    }
    for (std::size_t i = 0; i <= before; ++i) {
      parts_[i].offset = line + other_line - parts_[i].offset;
      parts_[i].direction = -parts_[i].direction;
    }
    std::vector<std::size_t> moved, still;
    for (const std::size_t part : stack_) (part <= before ? moved : still).push_back(part);
    std::reverse(moved.begin(), moved.end());
    stack_ = up ? still : moved;
    const std::vector<std::size_t>& upper = up ? moved : still;
    stack_.insert(stack_.end(), upper.begin(), upper.end());
    last_on_top_ = up;
    return true;
  }

  std::vector<Part> parts_;
  std::vector<EdgeKind> ways_;  // of the crease behind each part; free behind the last
  std::vector<StripCrease> order_;
  std::vector<std::size_t> stack_;
  std::vector<std::size_t> done_;
  std::size_t blocked_by_ = 0;
  std::int64_t blocked_at_ = 0;
  bool last_on_top_ = true;
};

EdgeKind swapped(EdgeKind kind) {
  if (kind == EdgeKind::free) return kind;
  return kind == EdgeKind::valley ? EdgeKind::mountain : EdgeKind::valley;
}

class Folding {
 public:
  Folding(const Base& base, Unit unit)
      : base_(base),
        unit_(unit),
        across_(base.width.nm(), base.creases, true),
        down_(base.height.nm(), base.creases, false),
        across_first_(base.creases.empty() || base.creases.front().upright) {}

  tl::expected<FoldedBase, BaseNotLaid> run() {
    if (const auto why = twice_or_mixed()) return tl::unexpected(*why);
    for (Strip* strip : {across_first_ ? &across_ : &down_, across_first_ ? &down_ : &across_})
      if (!strip->fold()) return tl::unexpected(blocked(*strip));
    make_sections();
    stack();
    turn_to_front();
    to_corner();
    return std::move(folded_);
  }

 private:
  std::optional<BaseNotLaid> twice_or_mixed() const {
    int changes = 0;
    for (std::size_t i = 1; i < base_.creases.size(); ++i) {
      changes += base_.creases[i].upright != base_.creases[i - 1].upright;
      for (std::size_t j = 0; j < i; ++j) {
        if (base_.creases[i].upright != base_.creases[j].upright ||
            base_.creases[i].at != base_.creases[j].at)
          continue;
        return BaseNotLaid{BaseNotLaid::Why::impossible,
                           "the score at " + write(base_.creases[i].at, unit_) + " is there twice",
                           "take one of them out"};
      }
    }
    if (changes < 2) return std::nullopt;
    return BaseNotLaid{BaseNotLaid::Why::not_checked,
                       "the upright and the level scores are folded by turns, which is not worked out",
                       "write all scores of one way first"};
  }

  BaseNotLaid blocked(const Strip& strip) const {
    const Part& part = strip.parts()[strip.blocked_by()];
    return {BaseNotLaid::Why::impossible,
            "it cannot be folded flat: the part between " + write(Length::nm(part.from), unit_) + " and " +
                write(Length::nm(part.to), unit_) + " is folded first and lies across the score at " +
                write(Length::nm(strip.blocked_at()), unit_),
            "make that part shorter, or fold it after the other"};
  }

  void make_sections() {
    const auto &columns = across_.parts(), &rows = down_.parts();
    for (std::size_t r = 0; r < rows.size(); ++r) {
      for (std::size_t c = 0; c < columns.size(); ++c) {
        BaseSection section;
        section.number = static_cast<int>(r * columns.size() + c) + 1;
        section.left = Length::nm(columns[c].from);
        section.width = Length::nm(columns[c].to - columns[c].from);
        section.top = Length::nm(rows[r].from);
        section.height = Length::nm(rows[r].to - rows[r].from);
        section.spine = columns[c].spine || rows[r].spine;
        section.closed_left = Length::nm(columns[c].least());
        section.closed_top = Length::nm(rows[r].least());
        section.mirrored_across = columns[c].direction < 0;
        section.mirrored_down = rows[r].direction < 0;
        section.edges = edges(c, r);
        folded_.sections.push_back(section);
        if (section.spine)
          folded_.spine = std::max(folded_.spine, columns[c].spine ? section.width : section.height);
      }
    }
  }

  // The creases of the second way are made on the stack: a section that lies inside down there has them the
  // other way.
  std::array<EdgeKind, 4> edges(std::size_t column, std::size_t row) const {
    std::array<EdgeKind, 4> kinds{};
    const bool last_column = column + 1 == across_.parts().size();
    const bool last_row = row + 1 == down_.parts().size();
    kinds[left_edge] = column == 0 ? EdgeKind::free : across_.way_behind(column - 1);
    kinds[right_edge] = last_column ? EdgeKind::free : across_.way_behind(column);
    kinds[top_edge] = row == 0 ? EdgeKind::free : down_.way_behind(row - 1);
    kinds[bottom_edge] = last_row ? EdgeKind::free : down_.way_behind(row);
    if (across_first_ && across_.parts()[column].direction < 0) {
      kinds[top_edge] = swapped(kinds[top_edge]);
      kinds[bottom_edge] = swapped(kinds[bottom_edge]);
    }
    if (!across_first_ && down_.parts()[row].direction < 0) {
      kinds[left_edge] = swapped(kinds[left_edge]);
      kinds[right_edge] = swapped(kinds[right_edge]);
    }
    return kinds;
  }

  // The stack of the second way, each of its layers a stack of the first way.
  void stack() {
    const Strip &first = across_first_ ? across_ : down_, &second = across_first_ ? down_ : across_;
    const auto columns = across_.parts().size();
    for (const std::size_t b : second.stack()) {
      std::vector<std::size_t> inner = first.stack();
      if (second.parts()[b].direction < 0) std::reverse(inner.begin(), inner.end());
      for (const std::size_t a : inner) {
        const std::size_t section = across_first_ ? b * columns + a : a * columns + b;
        if (!folded_.sections[section].spine) folded_.front_to_back.push_back(static_cast<int>(section));
      }
    }
    std::reverse(folded_.front_to_back.begin(), folded_.front_to_back.end());
  }

  // How much of section 1 is seen, in strips between all edges: nothing lies over it there.
  long double seen_of_first(bool from_top) const {
    std::vector<int> order = folded_.front_to_back;
    if (!from_top) std::reverse(order.begin(), order.end());
    std::vector<std::int64_t> xs, ys;
    for (const BaseSection& one : folded_.sections) {
      for (const Length x : {one.closed_left, one.closed_right()}) xs.push_back(x.nm());
      for (const Length y : {one.closed_top, one.closed_bottom()}) ys.push_back(y.nm());
    }
    std::sort(xs.begin(), xs.end());
    std::sort(ys.begin(), ys.end());
    long double seen = 0;
    for (std::size_t i = 0; i + 1 < xs.size(); ++i) {
      for (std::size_t j = 0; j + 1 < ys.size(); ++j) {
        if (xs[i] == xs[i + 1] || ys[j] == ys[j + 1]) continue;
        if (foremost(order, xs[i], xs[i + 1], ys[j], ys[j + 1]) == 0)
          seen += static_cast<long double>(xs[i + 1] - xs[i]) * static_cast<long double>(ys[j + 1] - ys[j]);
      }
    }
    return seen;
  }

  int foremost(const std::vector<int>& order, std::int64_t x0, std::int64_t x1, std::int64_t y0,
               std::int64_t y1) const {
    for (const int place : order) {
      const BaseSection& one = folded_.sections[static_cast<std::size_t>(place)];
      if (one.closed_left.nm() <= x0 && one.closed_right().nm() >= x1 && one.closed_top.nm() <= y0 &&
          one.closed_bottom().nm() >= y1)
        return place;
    }
    return -1;
  }

  void turn_to_front() {
    const long double above = seen_of_first(true), below = seen_of_first(false);
    const bool across_last = both_ways() ? !across_first_ : across_first_;
    const Strip& last = across_last ? across_ : down_;
    const bool hidden = above == 0 && below == 0;
    const bool from_top = hidden ? !last.last_on_top() : above >= below;
    if (from_top) return;
    std::reverse(folded_.front_to_back.begin(), folded_.front_to_back.end());
    for (BaseSection& one : folded_.sections) {
      one.closed_left = -one.closed_right();
      one.mirrored_across = !one.mirrored_across;
    }
  }

  bool both_ways() const { return across_.parts().size() > 1 && down_.parts().size() > 1; }

  void to_corner() {
    std::optional<Length> left, top, right, bottom;
    for (const int place : folded_.front_to_back) {
      const BaseSection& one = folded_.sections[static_cast<std::size_t>(place)];
      left = left ? std::min(*left, one.closed_left) : one.closed_left;
      top = top ? std::min(*top, one.closed_top) : one.closed_top;
      right = right ? std::max(*right, one.closed_right()) : one.closed_right();
      bottom = bottom ? std::max(*bottom, one.closed_bottom()) : one.closed_bottom();
    }
    for (BaseSection& one : folded_.sections) {
      one.closed_left -= *left;
      one.closed_top -= *top;
    }
    folded_.width = *right - *left;
    folded_.height = *bottom - *top;
    for (std::size_t i = 0; i < folded_.front_to_back.size(); ++i)
      folded_.sections[static_cast<std::size_t>(folded_.front_to_back[i])].layer = static_cast<int>(i);
  }

  const Base& base_;
  Unit unit_;
  Strip across_, down_;
  bool across_first_;
  FoldedBase folded_;
};

}  // namespace

tl::expected<FoldedBase, BaseNotLaid> fold_flat(const Base& base, Unit unit) {
  return Folding(base, unit).run();
}

}  // namespace insetbook
