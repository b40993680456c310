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

#include "fit/climb.h"

namespace insetbook {
namespace {

constexpr double finest = 2;       // nm
constexpr double rounding = 0.05;  // nm: more than distances in doubles are wrong by

// Round one best middle only some tens of squares are looked at; after so many in vain it is climbed to, and
// after as many more a circle is given up as undecided.
constexpr int before_climbing = 60, most_in_vain = 500;

struct Square {
  double x = 0, y = 0, half = 0;  // of its middle
  double depth = 0;

  double deepest() const { return depth + half * std::numbers::sqrt2; }
  bool operator<(const Square& other) const { return deepest() < other.deepest(); }
};

class Search {
 public:
  Search(const EdgeTree& edges, std::int64_t border, const Chain& chain)
      : edges_(edges), border_(border), chain_(chain), limit_(chain.count), error_(edges.error()) {}

  FoundPlace run() {
    if (edges_.empty()) return {};
    const Box& box = edges_.box();
    limit_ = last_at(static_cast<double>(std::min(box.width(), box.height())) / 2 + error_);
    cover_box();
    while (!open_.empty()) {
      const Square square = open_.top();
      open_.pop();
      if (bound(square) <= best_) break;
      ++found_.looked_at;
      look_at(square);
    }
    if (left_open_ > best_) found_.undecided = chain_.at(left_open_);
    found_.ended = given_up_ > best_;
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
             static_cast<double>(box.least.y) + height * (2 * j + 1) / (2 * down), half, 0});
      }
    }
  }

  std::int64_t bound(const Square& square) const { return last_at(square.deepest() + error_ + rounding); }

  void add(Square square) {
    square.depth = edges_.depth(square.x, square.y);
    if (square.depth > deepest_.depth) deepest_ = square;
    if (bound(square) > best_) open_.push(square);
  }

  void look_at(const Square& square) {
    if (++in_vain_ == before_climbing) {
      const Spot top = climb(Spot{deepest_.x, deepest_.y}, deepest_.half, finest / 8,
                             [&](Spot spot) { return edges_.depth(spot.x, spot.y); });
      try_round({top.x, top.y, 1, edges_.depth(top.x, top.y)});
    }
    if (in_vain_ > most_in_vain) {
      give_up(bound(square));
      return;
    }
    try_below(square);
    if (bound(square) <= best_) return;
    if (square.half <= std::max(finest, error_) / 2) {
      left_open_ = std::max(left_open_, bound(square));
      try_round(square);
      return;
    }
    const double half = square.half / 2;
    for (const double x : {square.x - half, square.x + half}) {
      for (const double y : {square.y - half, square.y + half}) add({x, y, half, 0});
    }
  }

  // The largest circle round the square's middle, or the next smaller one.
  void try_below(const Square& square) {
    const std::int64_t here = last_at(square.depth + 1);
    for (std::int64_t n = here; n > best_ && n > here - 2; --n) {
      if (try_at(n, square.x, square.y)) break;
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
    in_vain_ = 0;
    return true;
  }

  // Every half nanometre of a small square (where curves are wide of the truth, a few).
  void try_round(const Square& square) {
    const double step = std::max(1.0, square.half);
    const std::int64_t wanted = bound(square);
    const auto first = [&](double middle) { return std::floor(2 * (middle - square.half)); };
    const auto last = [&](double middle) { return std::ceil(2 * (middle + square.half)); };
    for (double x = first(square.x); x <= last(square.x) && wanted > best_; x += step) {
      for (double y = first(square.y); y <= last(square.y) && wanted > best_; y += step)
        try_at(wanted, x / 2, y / 2);
    }
  }

  void give_up(std::int64_t n) {
    left_open_ = std::max(left_open_, n);
    given_up_ = std::max(given_up_, n);
    limit_ = n - 1;
    in_vain_ = 0;
  }

  const EdgeTree& edges_;
  std::int64_t border_;
  const Chain& chain_;
  std::int64_t limit_;
  double error_;
  std::priority_queue<Square> open_;
  FoundPlace found_;
  Square deepest_{0, 0, 0, -1e18};
  std::int64_t best_ = 0, left_open_ = 0, given_up_ = 0;
  int in_vain_ = 0;
};

}  // namespace

FoundPlace last_circle(const EdgeTree& edges, std::int64_t border, const Chain& chain) {
  return Search(edges, border, chain).run();
}

}  // namespace insetbook
