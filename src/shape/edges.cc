// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/edges.h"

#include <limits>

namespace insetbook {
namespace {

Int128 cross(Point a, Point b, Point c) {
  const Int128 along_x = static_cast<Int128>(b.x) - a.x, along_y = static_cast<Int128>(b.y) - a.y;
  const Int128 to_x = static_cast<Int128>(c.x) - a.x, to_y = static_cast<Int128>(c.y) - a.y;
  return along_x * to_y - along_y * to_x;
}

// To the nearest, halves away from zero.
std::int64_t rounded_quotient(Int128 dividend, Int128 divisor) {
  const bool negative = (dividend < 0) != (divisor < 0);
  const Int128 a = dividend < 0 ? -dividend : dividend, b = divisor < 0 ? -divisor : divisor;
  const auto magnitude = static_cast<std::int64_t>((2 * a + b) / (2 * b));
  return negative ? -magnitude : magnitude;
}

// Of a point on the line of the edge: between its ends, and none of them.
bool strictly_within(const RingEdge& edge, Point point) {
  if (point == edge.from || point == edge.to) return false;
  return std::min(edge.from.x, edge.to.x) <= point.x && point.x <= std::max(edge.from.x, edge.to.x) &&
         std::min(edge.from.y, edge.to.y) <= point.y && point.y <= std::max(edge.from.y, edge.to.y);
}

void split_first(Meeting& meeting, const RingEdge& edge, Point point) {
  if (point == edge.from || point == edge.to || meeting.in_first == 2) return;
  meeting.first[static_cast<std::size_t>(meeting.in_first++)] = point;
}

void split_second(Meeting& meeting, const RingEdge& edge, Point point) {
  if (point == edge.from || point == edge.to || meeting.in_second == 2) return;
  meeting.second[static_cast<std::size_t>(meeting.in_second++)] = point;
}

}  // namespace

Meeting meeting_of(const RingEdge& a, const RingEdge& b) {
  Meeting meeting;
  meeting.shared_end = a.from == b.from || a.from == b.to || a.to == b.from || a.to == b.to;
  const Int128 b_from = cross(a.from, a.to, b.from), b_to = cross(a.from, a.to, b.to);
  if (sign_of(b_from) * sign_of(b_to) > 0) return meeting;
  const int a_from = turn_of(b.from, b.to, a.from), a_to = turn_of(b.from, b.to, a.to);
  if (a_from * a_to > 0) return meeting;
  if (b_from != 0 && b_to != 0 && a_from != 0 && a_to != 0) {
    const Int128 all = b_from - b_to;
    const Point point{b.from.x + rounded_quotient((b.to.x - b.from.x) * b_from, all),
                      b.from.y + rounded_quotient((b.to.y - b.from.y) * b_from, all)};
    meeting.crossing = true;
    split_first(meeting, a, point);
    split_second(meeting, b, point);
    return meeting;
  }
  if (b_from == 0 && strictly_within(a, b.from)) split_first(meeting, a, b.from);
  if (b_to == 0 && strictly_within(a, b.to)) split_first(meeting, a, b.to);
  if (a_from == 0 && strictly_within(b, a.from)) split_second(meeting, b, a.from);
  if (a_to == 0 && strictly_within(b, a.to)) split_second(meeting, b, a.to);
  return meeting;
}

RingEdgeTree::RingEdgeTree(const std::vector<RingEdge>& edges) : edges_(edges) {
  while (leaves_ * leaf_size < edges.size()) leaves_ *= 2;
  constexpr std::int64_t far = std::numeric_limits<std::int64_t>::max();
  boxes_.assign(2 * leaves_, Box{{far, far}, {-far, -far}});
  const auto grow = [](Box& box, const Box& by) {
    box.least = {std::min(box.least.x, by.least.x), std::min(box.least.y, by.least.y)};
    box.most = {std::max(box.most.x, by.most.x), std::max(box.most.y, by.most.y)};
  };
  for (std::size_t i = 0; i < edges.size(); ++i) grow(boxes_[leaves_ + i / leaf_size], box_of_edge(edges[i]));
  for (std::size_t node = leaves_; node-- > 1;) {
    boxes_[node] = boxes_[2 * node];
    grow(boxes_[node], boxes_[2 * node + 1]);
  }
}

}  // namespace insetbook
