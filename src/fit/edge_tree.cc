// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/edge_tree.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "shape/curve_points.h"

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

// The pieces of the drawing by where they start or end, so that a run of edges is found again.
using Ends = std::pair<Point, Point>;

bool before(Point a, Point b) {
  return a.x != b.x ? a.x < b.x : a.y < b.y;
}
Ends ends(Point a, Point b) {
  return before(a, b) ? Ends{a, b} : Ends{b, a};
}

struct Piece {
  Ends ends;
  int curve;  // -1: a line
};

struct Drawing {
  std::vector<Piece> pieces;  // by their ends
  std::vector<Point> joints;  // sorted

  bool is_joint(Point point) const { return std::binary_search(joints.begin(), joints.end(), point, before); }
};

Drawing drawing_of(const CurvedOutline& curves, std::vector<CurveBox>& boxes) {
  Drawing drawing;
  for (const Contour& contour : curves.contours) {
    Point at = contour.start;
    drawing.joints.push_back(at);
    for (const Curve& curve : contour.curves) {
      const Point to = end_of(curve);
      const bool line = std::holds_alternative<LineTo>(curve);
      drawing.pieces.push_back({ends(at, to), line ? -1 : static_cast<int>(boxes.size())});
      if (!line) boxes.push_back(box_of_curve(at, curve));
      drawing.joints.push_back(to);
      at = to;
    }
    drawing.pieces.push_back({ends(at, contour.start), -1});
  }
  std::sort(drawing.joints.begin(), drawing.joints.end(), before);
  std::sort(drawing.pieces.begin(), drawing.pieces.end(), [](const Piece& a, const Piece& b) {
    if (!(a.ends.first == b.ends.first)) return before(a.ends.first, b.ends.first);
    return before(a.ends.second, b.ends.second);
  });
  return drawing;
}

// The edges first … last of a ring go from one joint of the drawing to the next. A single edge between the
// ends of a line is that line. Of two curves with the same ends it is not known which one the edges belong
// to: they get the box round both.
void set_piece(const Drawing& drawing, Ends from_to, std::size_t first, std::size_t last,
               std::vector<CurveBox>& boxes, std::vector<OutlineEdge>& edges) {
  const auto at = std::lower_bound(drawing.pieces.begin(), drawing.pieces.end(), from_to,
                                   [](const Piece& piece, const Ends& wanted) {
                                     if (!(piece.ends.first == wanted.first))
                                       return before(piece.ends.first, wanted.first);
                                     return before(piece.ends.second, wanted.second);
                                   });
  int curve = -1;
  bool line = false;
  for (auto piece = at; piece != drawing.pieces.end() && piece->ends == from_to; ++piece) {
    if (piece->curve < 0) {
      line = true;
    } else if (curve < 0) {
      curve = piece->curve;
    } else {
      const CurveBox both =
          round_both(boxes[static_cast<std::size_t>(curve)], boxes[static_cast<std::size_t>(piece->curve)]);
      curve = static_cast<int>(boxes.size());
      boxes.push_back(both);
    }
  }
  for (std::size_t i = first; i <= last; ++i) {
    edges[i].curve = curve;
    if (line && first == last) edges[i].error = 0;
  }
}

Point start_of(const OutlineEdge& edge) {
  return {static_cast<std::int64_t>(edge.x0), static_cast<std::int64_t>(edge.y0)};
}
Point end_of(const OutlineEdge& edge) {
  return {static_cast<std::int64_t>(edge.x1), static_cast<std::int64_t>(edge.y1)};
}

// A ring that does not begin at a joint leaves the edges before its first joint without a curve.
void find_pieces(const CurvedOutline& curves, std::vector<CurveBox>& boxes, std::vector<OutlineEdge>& edges) {
  const Drawing drawing = drawing_of(curves, boxes);
  std::size_t first = edges.size();
  for (std::size_t i = 0; i < edges.size(); ++i) {
    if (edges[i].begins) first = edges.size();
    if (drawing.is_joint(start_of(edges[i]))) first = i;
    if (first == edges.size() || !drawing.is_joint(end_of(edges[i]))) continue;
    set_piece(drawing, ends(start_of(edges[first]), end_of(edges[i])), first, i, boxes, edges);
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
  if (outline.error > 0) {
    for (OutlineEdge& edge : edges_) edge.error = static_cast<double>(outline.error);
    if (curves != nullptr) find_pieces(*curves, curves_, edges_);
  }
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

// On the side where the distance counts as positive it only matters where it is less.
double EdgeTree::least_of(double least, double x, double y, bool is_depth) const {
  const bool positive = inside(x, y) == is_depth;
  if (positive && least <= 0) return least;
  double square = positive ? least * least : std::numeric_limits<double>::infinity();
  if (!nodes_.empty()) come_nearer(0, x, y, square);
  return std::min(least, positive ? std::sqrt(square) : -std::sqrt(square));
}

double EdgeTree::depth(double x, double y) const {
  double least = std::numeric_limits<double>::infinity();
  if (!nodes_.empty()) come_nearer(0, x, y, least);
  return inside(x, y) ? std::sqrt(least) : -std::sqrt(least);
}

}  // namespace insetbook
