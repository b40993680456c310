// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/edge_tree.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace insetbook {
namespace {

constexpr int edges_in_a_leaf = 4;

double squared_distance(const OutlineEdge& edge, double x, double y) {
  const double dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0;
  const double along = std::clamp(((x - edge.x0) * dx + (y - edge.y0) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
  const double across_x = edge.x0 + along * dx - x, across_y = edge.y0 + along * dy - y;
  return across_x * across_x + across_y * across_y;
}

double squared_distance(const EdgeNode& node, double x, double y) {
  const double dx = std::max({node.x_least - x, x - node.x_most, 0.0});
  const double dy = std::max({node.y_least - y, y - node.y_most, 0.0});
  return dx * dx + dy * dy;
}

void add_ring(const Ring& ring, std::vector<OutlineEdge>& edges) {
  for (std::size_t i = 0; i < ring.points.size(); ++i) {
    const Point from = ring.points[i], to = ring.points[(i + 1) % ring.points.size()];
    OutlineEdge edge{};
    edge.x0 = static_cast<double>(from.x);
    edge.y0 = static_cast<double>(from.y);
    edge.x1 = static_cast<double>(to.x);
    edge.y1 = static_cast<double>(to.y);
    const double dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0;
    const double length = std::sqrt(dx * dx + dy * dy) * (dx < 0 ? -1 : 1);
    edge.normal_x = length == 0 ? 0 : -dy / length;
    edge.normal_y = length == 0 ? 1 : dx / length;
    edge.begins = i == 0;
    edges.push_back(edge);
  }
}

using Ends = std::array<double, 4>;

Ends ends(Point a, Point b) {
  const Ends forward{static_cast<double>(a.x), static_cast<double>(a.y), static_cast<double>(b.x),
                     static_cast<double>(b.y)};
  const Ends back{forward[2], forward[3], forward[0], forward[1]};
  return std::min(forward, back);
}

// The straight edges of the drawing, each by its ends.
std::vector<Ends> lines_of(const CurvedOutline& curves) {
  std::vector<Ends> lines;
  for (const Contour& contour : curves.contours) {
    Point at = contour.start;
    for (const Curve& curve : contour.curves) {
      const Point to = std::visit([](const auto& piece) { return piece.to; }, curve);
      if (std::holds_alternative<LineTo>(curve)) lines.push_back(ends(at, to));
      at = to;
    }
    lines.push_back(ends(at, contour.start));
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

// An edge that joins the ends of a line of the drawing is that line.
void set_errors(const CurvedOutline* curves, double error, std::vector<OutlineEdge>& edges) {
  const std::vector<Ends> lines = curves != nullptr ? lines_of(*curves) : std::vector<Ends>{};
  for (OutlineEdge& edge : edges) {
    const Ends forward{edge.x0, edge.y0, edge.x1, edge.y1}, back{edge.x1, edge.y1, edge.x0, edge.y0};
    if (!std::binary_search(lines.begin(), lines.end(), std::min(forward, back))) edge.error = error;
  }
}

}  // namespace

EdgeTree::EdgeTree(const Outline& outline, const CurvedOutline* curves) {
  std::size_t count = 0;
  for (const Ring& ring : outline.rings) count += ring.points.size();
  edges_.reserve(count);
  nodes_.reserve(count);
  for (const Ring& ring : outline.rings) add_ring(ring, edges_);
  if (edges_.empty()) return;
  if (outline.error > 0) set_errors(curves, static_cast<double>(outline.error), edges_);
  add_node(0, static_cast<int>(edges_.size()));
  const EdgeNode& all = nodes_.front();
  box_ = {{static_cast<std::int64_t>(all.x_least), static_cast<std::int64_t>(all.y_least)},
          {static_cast<std::int64_t>(all.x_most), static_cast<std::int64_t>(all.y_most)}};
}

void EdgeTree::add_node(int first, int end) {
  const std::size_t here = nodes_.size();
  constexpr double far = std::numeric_limits<double>::infinity();
  EdgeNode node{far, -far, far, -far, 0, first, end, 0, end - first <= edges_in_a_leaf, true};
  nodes_.push_back(node);
  const auto take_in = [&](double x_least, double x_most, double y_least, double y_most) {
    node.x_least = std::min(node.x_least, x_least);
    node.x_most = std::max(node.x_most, x_most);
    node.y_least = std::min(node.y_least, y_least);
    node.y_most = std::max(node.y_most, y_most);
  };
  if (node.leaf) {
    for (int i = first; i < end; ++i) {
      const OutlineEdge& edge = edges_[static_cast<std::size_t>(i)];
      take_in(std::min(edge.x0, edge.x1), std::max(edge.x0, edge.x1), std::min(edge.y0, edge.y1),
              std::max(edge.y0, edge.y1));
      node.error = std::max(node.error, edge.error);
      if (edge.begins && i != first) node.one_ring = false;
    }
  } else {
    const int middle = first + (end - first) / 2;
    node.one_ring = !edges_[static_cast<std::size_t>(middle)].begins;
    for (const auto& [from, to] : {std::pair{first, middle}, std::pair{middle, end}}) {
      const std::size_t child = nodes_.size();
      add_node(from, to);
      const EdgeNode& half = nodes_[child];
      take_in(half.x_least, half.x_most, half.y_least, half.y_most);
      node.error = std::max(node.error, half.error);
      node.one_ring = node.one_ring && half.one_ring;
    }
  }
  node.past = static_cast<int>(nodes_.size());
  nodes_[here] = node;
}

bool EdgeTree::inside(double x, double y) const {
  bool odd = false;
  walk([&](const EdgeNode& node) { return node.x_least <= x && x < node.x_most && node.y_least <= y; },
       [&](const OutlineEdge& edge) {
         if ((edge.x0 <= x) != (edge.x1 <= x) &&
             edge.y0 + (x - edge.x0) * ((edge.y1 - edge.y0) / (edge.x1 - edge.x0)) <= y)
           odd = !odd;
         return true;
       });
  return odd;
}

// The nearer half first, so that the other can mostly be passed over.
void EdgeTree::come_nearer(std::size_t here, double x, double y, double& least) const {
  const EdgeNode& node = nodes_[here];
  if (node.leaf) {
    for (int edge = node.first; edge < node.end; ++edge)
      least = std::min(least, squared_distance(edges_[static_cast<std::size_t>(edge)], x, y));
    return;
  }
  const std::size_t left = here + 1, right = static_cast<std::size_t>(nodes_[left].past);
  const double to_left = squared_distance(nodes_[left], x, y),
               to_right = squared_distance(nodes_[right], x, y);
  const bool left_first = to_left <= to_right;
  if (std::min(to_left, to_right) < least) come_nearer(left_first ? left : right, x, y, least);
  if (std::max(to_left, to_right) < least) come_nearer(left_first ? right : left, x, y, least);
}

double EdgeTree::depth(double x, double y) const {
  double least = std::numeric_limits<double>::infinity();
  if (!nodes_.empty()) come_nearer(0, x, y, least);
  return inside(x, y) ? std::sqrt(least) : -std::sqrt(least);
}

}  // namespace insetbook
