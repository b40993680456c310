// SPDX-License-Identifier: GPL-3.0-or-later
//
// Branch and bound over squares of middles: a middle in a square is no farther inside than the square's own
// middle is, and half the square's diagonal. The square with the best bound first, of equal ones the
// smallest.
#include "fit/free_circle.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <queue>
#include <vector>

namespace insetbook {
namespace {

constexpr double finest = 2;       // nm
constexpr double fine = 1000;      // nm: round one best middle only some tens of squares are smaller
constexpr int most_fine = 120;     // as many are looked at before a circle is given up as undecided
constexpr double rounding = 0.05;  // nm: more than distances in doubles are wrong by

struct Square {
  double x = 0, y = 0, half = 0;  // of its middle
  double depth = 0;
  std::int64_t bound = 0;

  bool operator<(const Square& other) const {
    return bound != other.bound ? bound < other.bound : depth < other.depth;
  }
};

class Search {
 public:
  Search(const EdgeTree& edges, std::int64_t border, const Chain& chain)
      : edges_(edges), border_(border), chain_(chain), limit_(chain.count), error_(edges.error()) {}

  Found run() {
    if (edges_.empty()) return {};
    const Box& box = edges_.box();
    limit_ = last_at(static_cast<double>(std::min(box.width(), box.height())) / 2 + error_);
    cover_box();
    while (!open_.empty()) {
      Square square = open_.top();
      open_.pop();
      if (square.bound <= best_) break;
      ++found_.looked_at;
      look_at(square);
    }
    if (left_open_ > best_) found_.undecided = chain_.at(left_open_);
    return found_;
  }

 private:
  // The last circle that keeps its border at that depth, as doubles see it; none above the limit.
  std::int64_t last_at(double depth) const {
    const double half = depth - static_cast<double>(border_);
    std::int64_t fits = 0, too_large = limit_ + 1;
    while (too_large - fits > 1) {
      const std::int64_t middle = fits + (too_large - fits) / 2;
      (static_cast<double>(chain_.at(middle).width) / 2 <= half ? fits : too_large) = middle;
    }
    return fits;
  }

  void cover_box() {
    const Box& box = edges_.box();
    const double width = static_cast<double>(box.width()), height = static_cast<double>(box.height());
    const double side = std::min(width, height);
    const double across = std::ceil(width / side), down = std::ceil(height / side);
    const double half = std::max(width / across, height / down) / 2;
    for (double i = 0; i < across; ++i) {
      for (double j = 0; j < down; ++j) {
        add({static_cast<double>(box.least.x) + width * (2 * i + 1) / (2 * across),
             static_cast<double>(box.least.y) + height * (2 * j + 1) / (2 * down), half, 0, 0});
      }
    }
  }

  void add(Square square) {
    square.depth = edges_.depth(square.x, square.y);
    square.bound = last_at(square.depth + square.half * std::numbers::sqrt2 + error_ + rounding);
    if (square.bound > best_) open_.push(square);
  }

  void look_at(const Square& square) {
    if (square.bound > limit_) {
      add(square);
      return;
    }
    if (square.half < fine && ++fine_looked_at_ > most_fine) {
      give_up(square.bound);
      return;
    }
    const std::int64_t here = last_at(square.depth + 1);
    for (std::int64_t n = here; n > best_ && n > here - 2; --n) {
      if (try_at(n, square.x, square.y)) break;
    }
    if (square.bound <= best_) return;
    if (square.half <= std::max(finest, error_) / 2) {
      leave_open(square);
      return;
    }
    const double half = square.half / 2;
    for (const double x : {square.x - half, square.x + half}) {
      for (const double y : {square.y - half, square.y + half}) add({x, y, half, 0, 0});
    }
  }

  bool try_at(std::int64_t n, double x, double y) {
    constexpr std::int64_t half_nm = ticks_in_nm / 2;
    const Sides sides = chain_.at(n);
    const std::int64_t half = sides.width * half_nm;
    const Middle middle{std::llround(2 * x) * half_nm, std::llround(2 * y) * half_nm};
    const Form form{FormKind::rounded, half, half, half, 0, true};
    if (!surely_lies_at(edges_, form, middle, border_ * ticks_in_nm)) return false;
    found_.placed = Placed{sides, middle};
    best_ = n;
    fine_looked_at_ = 0;
    return true;
  }

  // Every half nanometre that is left (where curves are wide of the truth, a few); if none of them holds, the
  // circle is left open.
  void leave_open(const Square& square) {
    const double step = std::max(1.0, square.half);
    const auto first = [&](double middle) { return std::floor(2 * (middle - square.half)); };
    const auto last = [&](double middle) { return std::ceil(2 * (middle + square.half)); };
    for (double x = first(square.x); x <= last(square.x); x += step) {
      for (double y = first(square.y); y <= last(square.y); y += step) {
        if (try_at(square.bound, x / 2, y / 2)) return;
      }
    }
    left_open_ = std::max(left_open_, square.bound);
  }

  void give_up(std::int64_t n) {
    left_open_ = std::max(left_open_, n);
    limit_ = n - 1;
    fine_looked_at_ = 0;
  }

  const EdgeTree& edges_;
  std::int64_t border_;
  const Chain& chain_;
  std::int64_t limit_;
  double error_;
  std::priority_queue<Square> open_;
  Found found_;
  std::int64_t best_ = 0, left_open_ = 0;
  int fine_looked_at_ = 0;
};

}  // namespace

Found last_circle(const EdgeTree& edges, std::int64_t border, const Chain& chain) {
  return Search(edges, border, chain).run();
}

}  // namespace insetbook
