// SPDX-License-Identifier: GPL-3.0-or-later
//
// For one panel: branch and bound over squares of middles. No place in a square is deeper than the one in its
// middle by more than half the square's diagonal; a square is excluded when even so a corner of the panel is
// too far out or a corner of the opening too far in.
#include "fit/free_outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <queue>
#include <vector>

#include "fit/climb.h"

namespace insetbook {
namespace {

constexpr double finest = 4;          // nm
constexpr double finest_step = 0.25;  // nm, in climbing: what touches on two sides has one place between them
constexpr double rounding = 0.05;     // nm: more than depths in doubles are wrong by

// As many squares are looked at before the best place is climbed to, before a panel is given up as undecided,
// to learn by how much an excluded panel misses, and for all panels of a chain.
constexpr int before_climbing = 50, most_squares = 1000, most_to_learn = 60;
constexpr std::int64_t most_in_all = 20'000;

struct Square {
  double x = 0, y = 0, half = 0;
  double depth = 0;  // of the panel there, or more

  double reach() const { return half * std::numbers::sqrt2; }
  double deepest() const { return depth + reach(); }
  bool operator<(const Square& other) const { return deepest() < other.deepest(); }
};

struct Outcome {
  Where where = Where::outside;
  Middle place;        // inside: its middle
  double misses = 0;   // outside: by so much at least, wherever its box goes in
  bool ended = false;  // undecided: not for being too close
};

// Squares over all middles with which a panel's box keeps a border in the opening's.
template <class Add>
void cover(const Box& box, const Box& own, std::int64_t border, double errors, const Add& add) {
  const double wide = static_cast<double>(box.width() - own.width() - 2 * border) + 2 * errors;
  const double high = static_cast<double>(box.height() - own.height() - 2 * border) + 2 * errors;
  if (wide < 0 || high < 0) return;
  const double x = static_cast<double>(box.least.x + box.most.x) / 2;
  const double y = static_cast<double>(box.least.y + box.most.y) / 2;
  const double side = std::max({std::min(wide, high), std::max(wide, high) / 16, 2 * finest});
  const double across = std::ceil(wide / side + 1e-9), down = std::ceil(high / side + 1e-9);
  for (double i = 0; i < across; ++i) {
    for (double j = 0; j < down; ++j)
      add({x + wide * ((2 * i + 1) / across - 1) / 2, y + high * ((2 * j + 1) / down - 1) / 2, side / 2, 0});
  }
}

template <class Add>
void split(const Square& square, const Add& add) {
  const double half = square.half / 2;
  for (const double x : {square.x - half, square.x + half}) {
    for (const double y : {square.y - half, square.y + half}) add({x, y, half, 0});
  }
}

// Whether a square is so small that all corners of the panel are worth looking at.
bool is_small(const Square& square, const Box& panel) {
  return square.reach() < static_cast<double>(panel.width() + panel.height()) / 20;
}

Middle nearest_middle(double x, double y) {
  constexpr std::int64_t half_nm = ticks_in_nm / 2;
  return {std::llround(2 * x) * half_nm, std::llround(2 * y) * half_nm};
}

class Search {
 public:
  // `by_how_much`: whether a panel that is excluded is looked at further to learn that.
  Search(const EdgeTree& opening, std::int64_t border, const EdgeTree& panel, bool by_how_much,
         std::int64_t& looked_at)
      : opening_(opening),
        panel_(panel),
        border_(border),
        errors_(opening.error() + panel.error()),
        enough_(static_cast<double>(border) - errors_ - rounding),
        by_how_much_(by_how_much),
        looked_at_(looked_at) {}

  Outcome run() {
    if (panel_.empty()) return {};
    cover(opening_.box(), panel_.box(), border_, errors_, [this](Square square) { add(square); });
    const double least = std::max(finest, errors_ / 2);
    bool left_open = false;
    for (int looked = 1, learnt = 0; !open_.empty(); ++looked) {
      const Square square = open_.top();
      if (square.deepest() < enough_) {
        if (left_open) break;
        const double misses = enough_ - square.deepest();
        if (!by_how_much_ || square.reach() <= 3 * misses || ++learnt > most_to_learn)
          return {Where::outside, {}, misses, false};
      }
      open_.pop();
      ++looked_at_;
      if (try_at(square.x, square.y) || (looked == before_climbing && try_highest()))
        return {Where::inside, place_, 0, false};
      if (looked - learnt > most_squares) return {Where::undecided, {}, 0, true};
      if (square.half < least) {
        left_open = true;
        continue;
      }
      split(square, [this](Square part) { add(part); });
    }
    return {left_open ? Where::undecided : Where::outside, {}, 0, false};
  }

 private:
  void add(Square square) {
    const bool thorough = is_small(square, panel_.box());
    // Where it is excluded by some part of its reach more, by how much need not be known better.
    const double enough = enough_ - (by_how_much_ ? 1.4 : 1) * square.reach() - 1;
    square.depth = panel_depth(opening_, panel_, square.x, square.y, enough, thorough);
    if (!by_how_much_ && square.deepest() < enough_) return;
    if (thorough && square.depth > deepest_.depth) deepest_ = square;
    open_.push(square);
  }

  bool try_highest() {
    if (deepest_.half == 0) return false;
    const Spot top = climb(Spot{deepest_.x, deepest_.y}, deepest_.half, finest_step, [&](Spot spot) {
      return panel_depth(opening_, panel_, spot.x, spot.y, deepest_.depth, true);
    });
    return try_at(top.x, top.y);
  }

  bool try_at(double x, double y) {
    const Middle middle = nearest_middle(x, y);
    if (outline_lies_at(opening_, panel_, middle, border_ * ticks_in_nm, true) != Where::inside) return false;
    place_ = middle;
    return true;
  }

  const EdgeTree& opening_;
  const EdgeTree& panel_;
  std::int64_t border_;
  double errors_;
  double enough_;  // a panel less deep than this surely does not lie there
  bool by_how_much_;
  std::int64_t& looked_at_;
  std::priority_queue<Square> open_;
  Square deepest_{0, 0, 0, -1e18};
  Middle place_;
};

class Deepest {
 public:
  Deepest(const EdgeTree& opening, const EdgeTree& panel, double alike)
      : opening_(opening), panel_(panel), alike_(alike) {}

  DeepPlace run(Middle start) {
    best_ = {static_cast<double>(start.x) / ticks_in_nm, static_cast<double>(start.y) / ticks_in_nm};
    climb_from_best(static_cast<double>(panel_.box().width() + panel_.box().height()) / 40, alike_ / 4);
    cover(opening_.box(), panel_.box(), 0, 0, [this](Square square) { add(square); });
    const Box &box = opening_.box(), &own = panel_.box();
    const auto room =
        static_cast<double>(std::min(box.width() - own.width(), box.height() - own.height())) / 2;
    for (int looked = 0; !open_.empty() && looked < most_squares && depth_ + alike_ < room; ++looked) {
      const Square square = open_.top();
      open_.pop();
      if (square.deepest() <= depth_ + alike_) break;
      // What is found beside the top of before is climbed from as well.
      if (depth_ > climbed_to_ + alike_) climb_from_best(square.half, alike_ / 4);
      split(square, [this](Square part) { add(part); });
    }
    if (depth_ > lowest) climb_from_best(alike_, alike_ / 100);
    return {nearest_middle(best_.x, best_.y), depth_};
  }

 private:
  double depth_at(Spot spot, double enough, bool thorough) const {
    return panel_depth(opening_, panel_, spot.x, spot.y, enough, thorough);
  }

  void climb_from_best(double step, double least) {
    best_ = climb(best_, step, least, [this](Spot spot) {
      return depth_at(spot, depth_, true);  // what is less deep is no way up
    });
    depth_ = std::max(depth_, depth_at(best_, lowest, true));
    climbed_to_ = depth_;
  }

  void add(Square square) {
    const bool thorough = is_small(square, panel_.box());
    square.depth = depth_at({square.x, square.y}, depth_ - square.reach(), thorough);
    if (square.deepest() <= depth_ + alike_) return;
    open_.push(square);
    if (!thorough || square.depth <= depth_) return;
    depth_ = square.depth;
    best_ = {square.x, square.y};
  }

  static constexpr double lowest = -1e18;

  const EdgeTree& opening_;
  const EdgeTree& panel_;
  double alike_;
  std::priority_queue<Square> open_;
  Spot best_;
  double depth_ = lowest, climbed_to_ = lowest;
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

// By how much no point of a panel lies better when it is scaled to smaller sides about the middle of its box:
// as far as it moves, and as far as the smaller box can go where the larger one cannot.
double gained(const EdgeTree& panel, Sides from, Sides to) {
  const double half_width = static_cast<double>(from.width) / 2;
  const double half_height = static_cast<double>(from.height) / 2;
  const double narrower = half_width - static_cast<double>(to.width) / 2;
  const double lower = half_height - static_cast<double>(to.height) / 2;
  double most = 0;
  for (const OutlineEdge& edge : panel.edges())
    most = std::max(most,
                    std::hypot((edge.x0 / half_width - 1) * narrower, (edge.y0 / half_height - 1) * lower));
  constexpr double points_to_nm = 4;  // the points of both are rounded to the nanometre
  return most + std::hypot(narrower, lower) + points_to_nm;
}

// The next smaller one that is not excluded with panel `n`, which misses the border by so much everywhere.
std::int64_t next_below(const OutlineChain& chain, const EdgeTree& panel, std::int64_t n, double misses) {
  if (!chain.scaled || panel.empty()) return n - 1;
  std::int64_t excluded = n, open = 0;
  while (excluded - open > 1) {
    const std::int64_t middle = open + (excluded - open) / 2;
    (gained(panel, chain.sides.at(n), chain.sides.at(middle)) < misses ? excluded : open) = middle;
  }
  return open;
}

// A place for one of the first `count`, as if smaller ones always fitted: a good one, not the best.
std::optional<Placed> any_place(const EdgeTree& opening, std::int64_t border, const OutlineChain& chain,
                                std::int64_t count) {
  std::optional<Placed> found;
  std::int64_t fits = 0, too_large = count + 1, looked_at = 0;
  while (too_large - fits > 1) {
    const std::int64_t middle = fits + (too_large - fits) / 2;
    const EdgeTree panel = chain.outline(middle);
    const Outcome outcome = Search(opening, border, panel, false, looked_at).run();
    if (outcome.where == Where::inside) found = Placed{chain.sides.at(middle), outcome.place};
    (outcome.where == Where::inside ? fits : too_large) = middle;
  }
  return found;
}

}  // namespace

FoundPlace last_outline(const EdgeTree& opening, std::int64_t border, const OutlineChain& chain) {
  FoundPlace found;
  if (opening.empty()) return found;
  std::int64_t n = last_by_box(opening, border, chain.sides);
  const auto leave_open = [&](bool ended) {
    found.ended |= ended;
    if (!found.undecided) found.undecided = chain.sides.at(n);
  };
  while (n >= 1) {
    if (found.looked_at > most_in_all) {
      leave_open(true);
      found.placed = any_place(opening, border, chain, n);
      break;
    }
    const EdgeTree panel = chain.outline(n);
    const Outcome outcome = Search(opening, border, panel, chain.scaled && n > 1, found.looked_at).run();
    if (outcome.where == Where::inside) {
      found.placed = Placed{chain.sides.at(n), outcome.place};
      break;
    }
    if (outcome.where == Where::undecided) leave_open(outcome.ended);
    n = outcome.where == Where::outside ? next_below(chain, panel, n, outcome.misses) : n - 1;
  }
  return found;
}

DeepPlace deepest_place(const EdgeTree& opening, const EdgeTree& panel, Middle start, double alike) {
  return Deepest(opening, panel, alike).run(start);
}

}  // namespace insetbook
