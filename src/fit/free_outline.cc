// SPDX-License-Identifier: GPL-3.0-or-later
//
// For one panel: branch and bound over squares of middles. A square is excluded when even the place in its
// middle, helped by half the square's diagonal, has a corner of the panel too far out or a corner of the
// opening too far in. Which panel is asked: half way between the last that fits and the first that does not.
#include "fit/free_outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <queue>
#include <vector>

#include "fit/climb.h"

namespace insetbook {
namespace {

constexpr double finest = 4;  // nm

// As many squares are looked at before the best place is climbed to, and before a panel is given up as
// undecided.
constexpr int before_climbing = 50, most_squares = 300;

struct Square {
  double x = 0, y = 0, half = 0;
  double depth = 0;  // of the panel there

  double reach() const { return half * std::numbers::sqrt2; }
  bool operator<(const Square& other) const { return depth + reach() < other.depth + other.reach(); }
};

class Search {
 public:
  Search(const EdgeTree& opening, std::int64_t border, const EdgeTree& panel, std::int64_t& looked_at)
      : opening_(opening), panel_(panel), border_(border), looked_at_(looked_at) {}

  // Fits: `place` is set.
  Where run() {
    if (panel_.empty()) return Where::outside;
    cover_box();
    const double least = std::max(finest, (opening_.error() + panel_.error()) / 2);
    bool left_open = false;
    for (int looked = 1; !open_.empty(); ++looked) {
      const Square square = open_.top();
      open_.pop();
      ++looked_at_;
      if (try_at(square.x, square.y) || (looked == before_climbing && try_highest())) return Where::inside;
      if (looked > most_squares) return Where::undecided;
      if (square.half < least) {
        left_open = true;
        continue;
      }
      const double half = square.half / 2;
      for (const double x : {square.x - half, square.x + half}) {
        for (const double y : {square.y - half, square.y + half}) add({x, y, half, 0});
      }
    }
    return left_open ? Where::undecided : Where::outside;
  }

  Middle place() const { return place_; }

 private:
  void cover_box() {
    const Box &box = opening_.box(), &own = panel_.box();
    const double error = opening_.error() + panel_.error();
    const double wide = static_cast<double>(box.width() - own.width() - 2 * border_) + 2 * error;
    const double high = static_cast<double>(box.height() - own.height() - 2 * border_) + 2 * error;
    if (wide < 0 || high < 0) return;
    const double x = static_cast<double>(box.least.x + box.most.x) / 2;
    const double y = static_cast<double>(box.least.y + box.most.y) / 2;
    const double side = std::max({std::min(wide, high), std::max(wide, high) / 16, 2 * finest});
    const double across = std::ceil(wide / side + 1e-9), down = std::ceil(high / side + 1e-9);
    for (double i = 0; i < across; ++i) {
      for (double j = 0; j < down; ++j) {
        add({x + wide * ((2 * i + 1) / across - 1) / 2, y + high * ((2 * j + 1) / down - 1) / 2, side / 2,
             0});
      }
    }
  }

  void add(Square square) {
    const double border = static_cast<double>(border_);
    const bool thorough =
        square.reach() < static_cast<double>(panel_.box().width() + panel_.box().height()) / 20;
    const double enough = border - square.reach() - opening_.error() - panel_.error() - 1;
    square.depth = panel_depth(opening_, panel_, square.x, square.y, enough, thorough);
    if (lies_nowhere_near(opening_, panel_, square.depth, square.reach(), border)) return;
    if (thorough && square.depth > deepest_.depth) deepest_ = square;
    open_.push(square);
  }

  bool try_highest() {
    if (deepest_.half == 0) return false;
    const Spot top = climb(Spot{deepest_.x, deepest_.y}, deepest_.half, finest, [&](Spot spot) {
      return panel_depth(opening_, panel_, spot.x, spot.y, deepest_.depth, true);
    });
    return try_at(top.x, top.y);
  }

  bool try_at(double x, double y) {
    constexpr std::int64_t half_nm = ticks_in_nm / 2;
    const Middle middle{std::llround(2 * x) * half_nm, std::llround(2 * y) * half_nm};
    if (outline_lies_at(opening_, panel_, middle, border_ * ticks_in_nm, true) != Where::inside) return false;
    place_ = middle;
    return true;
  }

  const EdgeTree& opening_;
  const EdgeTree& panel_;
  std::int64_t border_;
  std::int64_t& looked_at_;
  std::priority_queue<Square> open_;
  Square deepest_{0, 0, 0, -1e18};
  Middle place_;
};

// The last of the chain whose box goes into the opening's.
std::int64_t last_by_box(const EdgeTree& opening, std::int64_t border, const Chain& chain) {
  std::int64_t fits = 0, too_large = chain.count + 1;
  while (too_large - fits > 1) {
    const std::int64_t middle = fits + (too_large - fits) / 2;
    const Sides sides = chain.at(middle);
    const bool goes_in = sides.width + 2 * border <= opening.box().width() &&
                         sides.height + 2 * border <= opening.box().height();
    (goes_in ? fits : too_large) = middle;
  }
  return fits;
}

}  // namespace

FoundPlace last_outline(const EdgeTree& opening, std::int64_t border, const OutlineChain& chain) {
  FoundPlace found;
  if (opening.empty()) return found;
  std::int64_t fits = 0, too_large = last_by_box(opening, border, chain.sides) + 1;
  while (too_large - fits > 1) {
    // Most panels asked for are the opening's shape with a border: the answer is near the upper end.
    const std::int64_t middle =
        std::max(fits + 1, too_large - std::max<std::int64_t>(1, (too_large - fits) / 4));
    const EdgeTree panel = chain.outline(middle);
    Search search(opening, border, panel, found.looked_at);
    const Where where = search.run();
    if (where == Where::undecided) found.undecided = chain.sides.at(middle);
    if (where == Where::outside) found.undecided.reset();
    if (where == Where::inside) found.placed = Placed{chain.sides.at(middle), search.place()};
    (where == Where::inside ? fits : too_large) = middle;
  }
  return found;
}

}  // namespace insetbook
