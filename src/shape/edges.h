// SPDX-License-Identifier: GPL-3.0-or-later
//
// Straight edges between whole-nanometre points within ±2^30, and how two of them meet: exact, in whole
// numbers of 128 bits. A tree of boxes over edges in the order in which they are drawn finds those that may
// meet in nearly linear time, because what is drawn one after the other lies close together.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "shape/outline.h"
#include "shape/wide.h"

namespace insetbook {

struct RingEdge {
  Point from, to;
};

// Above zero where the way from a over b to c turns clockwise as seen (y runs down), 0 where the three lie on
// one line.
inline int turn_of(Point a, Point b, Point c) {
  const Int128 along_x = static_cast<Int128>(b.x) - a.x, along_y = static_cast<Int128>(b.y) - a.y;
  const Int128 to_x = static_cast<Int128>(c.x) - a.x, to_y = static_cast<Int128>(c.y) - a.y;
  return sign_of(along_x * to_y - along_y * to_x);
}

// How two edges meet. `first` and `second` are the points at which the edge has to be split, so that the two
// share nothing but ends; where they cross it is the crossing point rounded to the nearest nanometre.
struct Meeting {
  std::array<Point, 2> first{}, second{};
  int in_first = 0, in_second = 0;  // how many of the points above count
  bool crossing = false;            // in a point inside of both, which was rounded
  bool shared_end = false;
};
Meeting meeting_of(const RingEdge& a, const RingEdge& b);

class RingEdgeTree {
 public:
  explicit RingEdgeTree(const std::vector<RingEdge>& edges);

  // visit(i, j), i < j, for every two edges whose boxes touch.
  template <class Visit>
  void each_pair(const Visit& visit) const {
    if (!edges_.empty()) within(1, visit);
  }

  // visit(i) for every edge whose box the level line from (x, y) to the right touches.
  template <class Visit>
  void each_to_the_right(Point point, const Visit& visit) const {
    if (!edges_.empty()) to_the_right(1, point, visit);
  }

 private:
  static constexpr std::size_t leaf_size = 4;

  static bool touch(const Box& a, const Box& b) {
    return a.least.x <= b.most.x && b.least.x <= a.most.x && a.least.y <= b.most.y && b.least.y <= a.most.y;
  }
  static Box box_of_edge(const RingEdge& edge) {
    return {{std::min(edge.from.x, edge.to.x), std::min(edge.from.y, edge.to.y)},
            {std::max(edge.from.x, edge.to.x), std::max(edge.from.y, edge.to.y)}};
  }
  std::size_t begin_of(std::size_t node) const {
    return std::min((node - leaves_) * leaf_size, edges_.size());
  }
  std::size_t end_of(std::size_t node) const {
    return std::min((node - leaves_ + 1) * leaf_size, edges_.size());
  }

  template <class Visit>
  void within(std::size_t node, const Visit& visit) const {
    if (node < leaves_) {
      within(2 * node, visit);
      within(2 * node + 1, visit);
      between(2 * node, 2 * node + 1, visit);
      return;
    }
    for (std::size_t i = begin_of(node); i < end_of(node); ++i) {
      for (std::size_t j = i + 1; j < end_of(node); ++j) {
        if (touch(box_of_edge(edges_[i]), box_of_edge(edges_[j]))) visit(i, j);
      }
    }
  }

  // The edges of `a` stand before those of `b`.
  template <class Visit>
  void between(std::size_t a, std::size_t b, const Visit& visit) const {
    if (!touch(boxes_[a], boxes_[b])) return;
    if (a < leaves_) {
      for (const std::size_t left : {2 * a, 2 * a + 1}) {
        for (const std::size_t right : {2 * b, 2 * b + 1}) between(left, right, visit);
      }
      return;
    }
    for (std::size_t i = begin_of(a); i < end_of(a); ++i) {
      const Box box = box_of_edge(edges_[i]);
      if (!touch(box, boxes_[b])) continue;
      for (std::size_t j = begin_of(b); j < end_of(b); ++j) {
        if (touch(box, box_of_edge(edges_[j]))) visit(i, j);
      }
    }
  }

  template <class Visit>
  void to_the_right(std::size_t node, Point point, const Visit& visit) const {
    const Box& box = boxes_[node];
    if (box.most.x < point.x || box.least.y > point.y || box.most.y < point.y) return;
    if (node < leaves_) {
      to_the_right(2 * node, point, visit);
      to_the_right(2 * node + 1, point, visit);
      return;
    }
    for (std::size_t i = begin_of(node); i < end_of(node); ++i) visit(i);
  }

  const std::vector<RingEdge>& edges_;
  std::size_t leaves_ = 1;  // a power of two; the children of node n are 2n and 2n + 1, the root is 1
  std::vector<Box> boxes_;
};

}  // namespace insetbook
