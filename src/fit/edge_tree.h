// SPDX-License-Identifier: GPL-3.0-or-later
//
// The edges of an outline in the order of its rings, in a tree of boxes: a stretch of edges that lies wholly
// on one side of what is asked is passed over at once, so that a question costs about as many steps as edges
// lie near its border. Coordinates are nanometres in doubles; they are whole and below 2^53, so that
// comparing them is exact.
#pragma once

#include <vector>

#include "fit/curve_box.h"

namespace insetbook {

struct OutlineEdge {
  double x0, y0, x1, y1;      // in the order of the ring
  double normal_x, normal_y;  // of length 1, pointing up (normal_y ≥ 0); for borders, not exact
  double error = 0;           // how far it may be from the true edge, nm
  int curve = -1;             // which of EdgeTree::curves() it is a part of, where that is known
  bool begins = false;        // the first of a ring
};

// A stretch of edges. Nodes stand in the order of a walk from left to right: the left half follows at once,
// `past` is the node after the whole stretch.
struct EdgeNode {
  double x_least, x_most, y_least, y_most;
  double error = 0;        // the most of its edges
  int first = 0, end = 0;  // edges
  int past = 0;
  bool leaf = false;
  bool one_ring = false;  // edges joined end to end
};

class EdgeTree {
 public:
  // `curves`: what the rings were made from; edges that are lines there have no error,
  // others know the curve they are a part of.
  explicit EdgeTree(const Outline& outline, const CurvedOutline* curves = nullptr);

  const std::vector<OutlineEdge>& edges() const { return edges_; }
  const std::vector<EdgeNode>& nodes() const { return nodes_; }
  double error() const { return nodes_.empty() ? 0 : nodes_.front().error; }  // nm
  const Box& box() const { return box_; }
  const std::vector<CurveBox>& curves() const { return curves_; }
  bool empty() const { return edges_.empty(); }

  // Goes through the edges of all leaves for which `wanted(node)` holds, up to the first for which
  // `keep_on(edge)` does not; whether it came to the end.
  template <class Wanted, class KeepOn>
  bool walk(const Wanted& wanted, const KeepOn& keep_on) const {
    for (std::size_t i = 0; i < nodes_.size();) {
      const EdgeNode& node = nodes_[i];
      if (!wanted(node)) {
        i = static_cast<std::size_t>(node.past);
        continue;
      }
      if (node.leaf) {
        for (int edge = node.first; edge < node.end; ++edge) {
          if (!keep_on(edges_[static_cast<std::size_t>(edge)])) return false;
        }
      }
      ++i;
    }
    return true;
  }

  // How far a point is from the nearest edge, negative outside; in doubles.
  double depth(double x, double y) const;
  // The lesser of it and a figure, sooner; and of how far the point is outside, negative inside.
  double depth_or(double least, double x, double y) const { return least_of(least, x, y, true); }
  double apart_or(double least, double x, double y) const { return least_of(least, x, y, false); }

 private:
  double least_of(double least, double x, double y, bool is_depth) const;
  void add_node(int first, int end);
  void come_nearer(std::size_t node, double x, double y, double& least) const;
  bool inside(double x, double y) const;

  std::vector<OutlineEdge> edges_;
  std::vector<EdgeNode> nodes_;
  std::vector<CurveBox> curves_;
  Box box_;
};

}  // namespace insetbook
