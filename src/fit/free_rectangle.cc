// SPDX-License-Identifier: GPL-3.0-or-later
//
// Branch and bound over the left side's place and the width. In a range of places [x0, x1] every rectangle of
// at least the width w spans the strip [x1, x0 + w], so none is higher than the strip's widest gap. The range
// with the best bound is looked at first, of equal ones the smallest, until no bound is better than what was
// found; the middle of each range is tried.
#include "fit/free_rectangle.h"

#include <algorithm>
#include <cmath>
#include <queue>
#include <unordered_map>
#include <vector>

#include "fit/strip.h"

namespace insetbook {
namespace {

constexpr double finest = 2;            // nm: places nearer than this are not told apart
constexpr double fine = 1000;           // nm: round one best place only some tens of ranges are smaller
constexpr int most_fine = 500;          // as many are looked at before a panel is given up as undecided
constexpr double rounding = 0.05;       // nm, of sums of coordinates
constexpr double worth_a_check = 1.01;  // nm: a gap too small by less may still be one

// All rectangles of whole steps, by area. A score is an area in steps.
class BySteps {
 public:
  BySteps(const Box& box, std::int64_t border, std::int64_t step)
      : step_(step), box_{box.width(), box.height()}, count_((box.width() - 2 * border) / step) {}

  std::int64_t count() const { return count_; }
  std::int64_t width(std::int64_t n) const { return n * step_; }
  // The best score of a width between the two and a height of at most that.
  std::int64_t best(std::int64_t, std::int64_t last, double height) const { return last * steps(height); }
  Sides sides(std::int64_t n, std::int64_t score) const { return {n * step_, score / n * step_}; }
  std::int64_t next_below(std::int64_t n, std::int64_t score) const { return score - n; }
  // The least and the greatest width of a range that can still have as good a score as the best one found.
  std::int64_t first_of_use(double height, std::int64_t score) const {
    const std::int64_t high = steps(height);
    return high == 0 ? count_ + 1 : (score + high - 1) / high;
  }
  std::int64_t last_of_use(std::int64_t last, std::int64_t) const { return last; }
  bool better(Sides a, Sides b) const { return nearer_proportions(a, b, box_); }
  static constexpr bool ties = true;

 private:
  std::int64_t steps(double height) const {
    return height <= 0 ? 0 : static_cast<std::int64_t>(height / static_cast<double>(step_));
  }

  std::int64_t step_;
  Sides box_;
  std::int64_t count_;
};

// The members of a chain. A score is the number of one.
class ByChain {
 public:
  explicit ByChain(const Chain& chain) : chain_(chain) {}

  std::int64_t count() const { return chain_.count; }
  std::int64_t width(std::int64_t n) const { return chain_.at(n).width; }
  std::int64_t best(std::int64_t first, std::int64_t last, double height) const {
    const auto fits = [&](std::int64_t n) { return static_cast<double>(chain_.at(n).height) <= height; };
    if (!fits(first)) return 0;
    while (first < last) {
      const std::int64_t middle = last - (last - first) / 2;
      if (fits(middle)) {
        first = middle;
      } else {
        last = middle - 1;
      }
    }
    return first;
  }
  Sides sides(std::int64_t, std::int64_t score) const { return chain_.at(score); }
  std::int64_t next_below(std::int64_t, std::int64_t) const { return 0; }
  std::int64_t first_of_use(double, std::int64_t score) const { return score + 1; }
  std::int64_t last_of_use(std::int64_t, std::int64_t bound) const { return bound; }
  bool better(Sides, Sides) const { return false; }
  static constexpr bool ties = false;

 private:
  const Chain& chain_;
};

// Left sides between x0 and x1, of the widths first to last; no score is above `bound`.
struct Range {
  double x0 = 0, x1 = 0;
  std::int64_t first = 0, last = 0;
  std::int64_t bound = 0;

  double length() const { return x1 - x0; }
  bool operator<(const Range& other) const {
    if (bound != other.bound) return bound < other.bound;
    if (first - last != other.first - other.last) return last - first > other.last - other.first;
    return length() > other.length();
  }
};

template <class Goal>
class Search {
 public:
  Search(const EdgeTree& edges, std::int64_t border, const Goal& goal)
      : edges_(edges),
        strips_(edges, static_cast<double>(border)),
        border_(border),
        goal_(goal),
        error_(edges.error()) {}

  FoundPlace run() {
    if (edges_.empty() || goal_.count() < 1) return {};
    const Box& box = edges_.box();
    const double most_left = static_cast<double>(box.least.x) + static_cast<double>(border_) - error_;
    add({most_left, most_left, 1, goal_.count(), 0}, true);
    while (!open_.empty()) {
      Range range = open_.top();
      open_.pop();
      if (range.bound < score_) break;
      ++found_.looked_at;
      look_at(range);
    }
    for (const LeftOpen& one : left_open_) {
      if (!better(one.sides, one.score)) continue;
      found_.ended |= one.given_up;
      if (found_.undecided && one.score <= undecided_score_) continue;
      found_.undecided = one.sides;
      undecided_score_ = one.score;
    }
    return found_;
  }

 private:
  double width(std::int64_t n) const { return static_cast<double>(goal_.width(n)); }

  bool better(Sides sides, std::int64_t score) const {
    if (score != score_ || !found_.placed) return score > score_;
    return goal_.better(sides, found_.placed->sides);
  }

  bool worth(const Range& range) const {
    if (range.bound <= 0 || range.bound < score_) return false;
    if (range.bound > score_) return true;
    if (!Goal::ties) return false;
    return range.first != range.last || better(goal_.sides(range.first, range.bound), range.bound);
  }

  // A score that was given up for this width is not looked for any longer.
  std::int64_t limited(std::int64_t n, std::int64_t score) const {
    const auto limit = limits_.find(n);
    return limit == limits_.end() ? score : std::min(score, limit->second);
  }

  double height_at_most(const Range& range) {
    const double most = static_cast<double>(edges_.box().height() - 2 * border_) + 2 * error_;
    const double left = range.x1 + rounding, right = range.x0 + width(range.first) - rounding;
    if (right - left <= 2 * error_) return most + rounding;
    return std::min(most, strips_.height_at_most(left, right)) + rounding;
  }

  // `whole`: as far to the right as its narrowest goes.
  void add(Range range, bool whole = false) {
    const double most_right =
        static_cast<double>(edges_.box().most.x - border_) + error_ - width(range.first);
    range.x1 = whole ? most_right : std::min(range.x1, most_right);
    if (range.x1 < range.x0) return;
    const double height = height_at_most(range);
    range.bound = goal_.best(range.first, range.last, height);
    range.first = std::max(range.first, goal_.first_of_use(height, score_));
    range.last = goal_.last_of_use(range.last, range.bound);
    if (range.first > range.last) return;
    if (range.first == range.last) range.bound = limited(range.first, range.bound);
    if (worth(range)) open_.push(range);
  }

  void look_at(Range range) {
    if (range.first == range.last) {
      const std::int64_t score = limited(range.first, range.bound);
      if (score < range.bound) {
        range.bound = score;
        if (worth(range)) open_.push(range);
        return;
      }
    }
    if (!worth(range)) return;
    if (range.first == range.last && range.length() < fine && ++fine_looked_at_[range.first] > most_fine) {
      give_up(range);
      return;
    }
    const double middle = std::round((range.x0 + range.x1) / 2);
    try_at(range.first, middle);
    if (range.last != range.first) try_at(range.last, middle);
    if (!worth(range)) return;
    if (range.first == range.last && range.length() <= std::max(finest, 2 * error_)) {
      leave_open(range);
    } else {
      split(range);
    }
  }

  void split(const Range& range) {
    const double widths = width(range.last) - width(range.first);
    if (range.first != range.last && (widths >= range.length() || range.length() <= finest)) {
      const std::int64_t middle = range.first + (range.last - range.first) / 2;
      add({range.x0, range.x1, range.first, middle, 0});
      add({range.x0, range.x1, middle + 1, range.last, 0});
    } else {
      const double middle = (range.x0 + range.x1) / 2;
      add({range.x0, middle, range.first, range.last, 0});
      add({middle, range.x1, range.first, range.last, 0});
    }
  }

  // The highest of one width with its left side there.
  void try_at(std::int64_t n, double left) {
    const Gap gap = strips_.widest(left, left + width(n));
    const std::int64_t score = limited(n, goal_.best(n, n, gap.height() + worth_a_check));
    if (score <= 0) return;
    const Sides sides = goal_.sides(n, score);
    if (!better(sides, score) || try_place(sides, score, left, gap)) return;
    const std::int64_t less = goal_.next_below(n, score);
    if (less > score_) try_place(goal_.sides(n, less), less, left, gap);
  }

  bool try_place(Sides sides, std::int64_t score, double left, const Gap& gap) {
    constexpr std::int64_t half_nm = ticks_in_nm / 2;
    const Middle middle{static_cast<std::int64_t>(2 * left) * half_nm + sides.width * half_nm,
                        std::llround(gap.low + gap.high) * half_nm};
    const Form form{FormKind::rounded, sides.width * half_nm, sides.height * half_nm, 0, 0, true};
    if (!surely_lies_at(edges_, form, middle, border_ * ticks_in_nm)) return false;
    found_.placed = Placed{sides, middle};
    score_ = score;
    return true;
  }

  // Every whole nanometre that is left; if none of them holds, the panel is left open.
  void leave_open(const Range& range) {
    for (double x = std::floor(range.x0); x <= std::ceil(range.x1) && worth(range);
         x += std::max(1.0, error_ / 4))
      try_at(range.first, x);
    if (!worth(range)) return;
    left_open_.push_back({goal_.sides(range.first, range.bound), range.bound, false});
  }

  void give_up(const Range& range) {
    left_open_.push_back({goal_.sides(range.first, range.bound), range.bound, true});
    fine_looked_at_[range.first] = 0;
    limits_[range.first] = goal_.next_below(range.first, range.bound);
  }

  const EdgeTree& edges_;
  Strips strips_;
  std::int64_t border_;
  const Goal& goal_;
  double error_;
  std::priority_queue<Range> open_;
  FoundPlace found_;
  std::int64_t score_ = 0, undecided_score_ = 0;
  struct LeftOpen {
    Sides sides;
    std::int64_t score;
    bool given_up;
  };
  std::vector<LeftOpen> left_open_;
  std::unordered_map<std::int64_t, int> fine_looked_at_;
  std::unordered_map<std::int64_t, std::int64_t> limits_;
};

}  // namespace

FoundPlace largest_rectangle(const EdgeTree& edges, std::int64_t border, std::int64_t step) {
  const BySteps goal(edges.box(), border, step);
  return Search<BySteps>(edges, border, goal).run();
}

FoundPlace last_rectangle(const EdgeTree& edges, std::int64_t border, const Chain& chain) {
  const ByChain goal(chain);
  return Search<ByChain>(edges, border, goal).run();
}

}  // namespace insetbook
