// SPDX-License-Identifier: GPL-3.0-or-later
//
// An edge grown by a border is a stretch with round ends: over x its upper boundary rises to one height and
// falls, its lower one the other way round, so that how far they reach within a strip is known at once.
#include "fit/strip.h"

#include <algorithm>
#include <cmath>

namespace insetbook {
namespace {

// The edge from left to right, seen with y up or, to ask for its other boundary, down.
struct Stretch {
  double x0, y0, x1, y1, normal_x, normal_y;
};

double over_the_end(double end_x, double end_y, double border, double x) {
  const double away = std::fabs(x - end_x);
  return away >= border ? end_y : end_y + std::sqrt((border - away) * (border + away));
}

// The upper boundary at x, which lies above the stretch.
double upper_at(const Stretch& edge, double border, double x) {
  const double start = edge.x0 + border * edge.normal_x, end = edge.x1 + border * edge.normal_x;
  if (x <= start || edge.x0 == edge.x1) {
    const double y = edge.x0 == edge.x1 ? std::max(edge.y0, edge.y1) : edge.y0;
    return over_the_end(edge.x0, y, border, x);
  }
  if (x >= end) return over_the_end(edge.x1, edge.y1, border, x);
  return edge.y0 + border * edge.normal_y + (x - start) * ((edge.y1 - edge.y0) / (edge.x1 - edge.x0));
}

// How high the upper boundary reaches between left and right.
double top(const Stretch& edge, double border, double left, double right) {
  const bool level = edge.y0 == edge.y1, upright = edge.x0 == edge.x1;
  const double first = level || upright ? edge.x0 : edge.y0 > edge.y1 ? edge.x0 : edge.x1;
  const double last = level ? edge.x1 : first;
  const double most = std::max(edge.y0, edge.y1) + border;
  if (first <= right && last >= left) return most;
  return std::min(most, upper_at(edge, border, last < left ? left : right));
}

// More than what is rounded in `top`: its figures are below 2^31 and good to 2^-52 of that, which a steep
// edge makes larger as it goes from x to y.
double rounding(const OutlineEdge& edge) {
  const double dx = edge.x1 - edge.x0;
  return dx == 0 ? 0.01 : 0.01 + 4e-6 * std::fabs((edge.y1 - edge.y0) / dx);
}

}  // namespace

void Strips::block(const OutlineEdge& edge, double left, double right, double middle, bool at_most) {
  const bool forward = edge.x0 <= edge.x1;
  const Stretch up = forward ? Stretch{edge.x0, edge.y0, edge.x1, edge.y1, edge.normal_x, edge.normal_y}
                             : Stretch{edge.x1, edge.y1, edge.x0, edge.y0, edge.normal_x, edge.normal_y};
  const Stretch down{up.x0, -up.y0, up.x1, -up.y1, -up.normal_x, up.normal_y};
  const double less = at_most ? rounding(edge) + edge.error : 0;
  const double high = top(up, border_, left, right) - less, low = less - top(down, border_, left, right);
  const bool crosses = (edge.x0 <= middle) != (edge.x1 <= middle);
  if (high >= low) {
    blocked_.push_back({low, high, crosses});
  } else if (crosses) {
    blocked_.push_back({(low + high) / 2, (low + high) / 2, true});
  }
}

void Strips::look(double left, double right, bool at_most) {
  blocked_.clear();
  const double middle = (left + right) / 2;
  const auto& nodes = edges_.nodes();
  for (std::size_t i = 0; i < nodes.size();) {
    const EdgeNode& node = nodes[i];
    if (node.x_most + border_ <= left || node.x_least - border_ >= right) {
      i = static_cast<std::size_t>(node.past);
      continue;
    }
    const auto first = static_cast<std::size_t>(node.first), end = static_cast<std::size_t>(node.end);
    const double error = at_most ? node.error : 0;
    if (node.one_ring && node.x_least > left + error && node.x_most < right - error &&
        node.y_most - node.y_least > 2 * error) {
      const double begin = edges_.edges()[first].x0, last = edges_.edges()[end - 1].x1;
      blocked_.push_back({node.y_least - border_ + error, node.y_most + border_ - error,
                          (begin <= middle) != (last <= middle)});
      i = static_cast<std::size_t>(node.past);
      continue;
    }
    if (node.leaf) {
      for (std::size_t edge = first; edge < end; ++edge) {
        const OutlineEdge& here = edges_.edges()[edge];
        const double inset = at_most ? here.error : 0;
        const auto [least, most] = std::minmax(here.x0, here.x1);
        const bool crosses = (here.x0 <= middle) != (here.x1 <= middle);
        if (crosses || (most + border_ > left + inset && least - border_ < right - inset))
          block(here, left + inset, right - inset, middle, at_most);
      }
    }
    ++i;
  }
}

Gap Strips::widest_between() {
  std::sort(blocked_.begin(), blocked_.end(),
            [](const Blocked& a, const Blocked& b) { return a.low < b.low; });
  Gap widest;
  bool inside = false;
  double reached = 0;
  for (std::size_t i = 0; i < blocked_.size(); ++i) {
    const Blocked& here = blocked_[i];
    if (i > 0 && inside && here.low - reached > widest.height()) widest = {reached, here.low};
    reached = i == 0 ? here.high : std::max(reached, here.high);
    inside = inside != here.crosses;
  }
  return widest;
}

Gap Strips::widest(double left, double right) {
  look(left, right, false);
  return widest_between();
}

double Strips::height_at_most(double left, double right) {
  look(left, right, true);
  return widest_between().height();
}

}  // namespace insetbook
