// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/hull.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "fit/climb.h"
#include "shape/regular_polygon.h"

namespace insetbook {
namespace {

constexpr double to_be_safe = 1000;  // nm
constexpr int directions = 48;       // a multiple of 6: of opposite ways and of three that are alike

double nm_of(std::int64_t ticks) {
  return static_cast<double>(ticks) / ticks_in_nm;
}

double turn(const HullCorner& a, const HullCorner& b, const HullCorner& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

// A side of a polygon: x and y (down) times these are at most `most` inside; they are of length 1.
struct Side {
  double x, y, most;
};

// An opening in nm about its middle.
class PlainOpening {
 public:
  explicit PlainOpening(const Form& form)
      : kind_(form.kind),
        half_width_(nm_of(form.half_width)),
        half_height_(nm_of(form.half_height)),
        radius_(nm_of(form.radius)) {
    if (kind_ != FormKind::polygon) return;
    for (const PolygonSide& side : sides_of_polygon(form.sides, form.flat_on_top)) {
      const double x = near(side.a) / half_width_, y = -near(side.b) / half_height_,
                   length = std::hypot(x, y);
      sides_.push_back({x / length, y / length, near(side.c) / length});
    }
    for (const PolygonCorner& corner : corners_of_polygon(form.sides, form.flat_on_top))
      corners_.push_back({near(corner.x) * half_width_, -near(corner.y) * half_height_});
  }

  double lesser_half() const { return std::min(half_width_, half_height_); }

  // How far a point is inside, negative outside; of an ellipse no more than that: the ellipse that is smaller
  // by the point's own share leaves its share of the lesser axis.
  double depth(double x, double y) const {
    switch (kind_) {
      case FormKind::ellipse:
        return (1 - std::hypot(x / half_width_, y / half_height_)) * lesser_half();
      case FormKind::polygon: {
        double least = std::numeric_limits<double>::infinity();
        for (const Side& side : sides_)  // of the right half
          least = std::min(least, side.most - side.x * std::abs(x) - side.y * y);
        return least;
      }
      case FormKind::rounded:
        break;
    }
    const double across = std::abs(x) - (half_width_ - radius_),
                 down = std::abs(y) - (half_height_ - radius_);
    return radius_ - std::hypot(std::max(across, 0.0), std::max(down, 0.0)) -
           std::min(std::max(across, down), 0.0);
  }

  // How far it reaches from its middle in a direction of length 1.
  double reach(double x, double y) const {
    switch (kind_) {
      case FormKind::ellipse:
        return std::hypot(half_width_ * x, half_height_ * y);
      case FormKind::polygon: {
        double most = 0;
        for (const HullCorner& corner : corners_)
          most = std::max(most, corner.x * std::abs(x) + corner.y * y);
        return most;
      }
      case FormKind::rounded:
        break;
    }
    return (half_width_ - radius_) * std::abs(x) + (half_height_ - radius_) * std::abs(y) + radius_;
  }

 private:
  static double near(const Near& figure) { return std::ldexp(static_cast<double>(figure.value), -near_bits); }

  FormKind kind_;
  double half_width_, half_height_, radius_;
  std::vector<Side> sides_;          // of the right half
  std::vector<HullCorner> corners_;  // of the right half
};

double depth_of(const PlainOpening& opening, const std::vector<HullCorner>& hull, Spot middle) {
  double least = std::numeric_limits<double>::infinity();
  for (const HullCorner& corner : hull)
    least = std::min(least, opening.depth(corner.x + middle.x, corner.y + middle.y));
  return least;
}

double reach_of(const std::vector<HullCorner>& hull, double x, double y) {
  double most = -std::numeric_limits<double>::infinity();
  for (const HullCorner& corner : hull) most = std::max(most, corner.x * x + corner.y * y);
  return most;
}

// In whatever place, what is left in opposite directions is what the reaches differ by, all told; and so it
// is in three directions a third of a turn apart, which add up to nothing.
double most_anywhere(const PlainOpening& opening, const std::vector<HullCorner>& hull) {
  std::array<double, directions> left;
  for (std::size_t i = 0; i < directions; ++i) {
    const double angle = 2 * std::numbers::pi * static_cast<double>(i) / directions;
    const double x = std::cos(angle), y = std::sin(angle);
    left[i] = opening.reach(x, y) - reach_of(hull, x, y);
  }
  double most = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < directions; ++i) {
    most = std::min(most, (left[i] + left[(i + directions / 2) % directions]) / 2);
    most = std::min(most, (left[i] + left[(i + directions / 3) % directions] +
                           left[(i + 2 * directions / 3) % directions]) /
                              3);
  }
  return most;
}

}  // namespace

std::vector<HullCorner> hull_of(const EdgeTree& panel) {
  const Box& box = panel.box();
  const double x = static_cast<double>(box.least.x + box.most.x) / 2;
  const double y = static_cast<double>(box.least.y + box.most.y) / 2;
  std::vector<HullCorner> corners;
  for (const OutlineEdge& edge : panel.edges()) corners.push_back({edge.x0 - x, edge.y0 - y});
  std::sort(corners.begin(), corners.end(),
            [](const HullCorner& a, const HullCorner& b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  std::vector<HullCorner> hull;
  for (int side = 0; side < 2; ++side) {  // the lower side of the ring, then the upper one
    const std::size_t first = hull.size();
    for (const HullCorner& corner : corners) {
      while (hull.size() >= first + 2 && turn(hull[hull.size() - 2], hull.back(), corner) <= 0)
        hull.pop_back();
      hull.push_back(corner);
    }
    if (!hull.empty()) hull.pop_back();  // it begins the other side
    std::reverse(corners.begin(), corners.end());
  }
  return hull;
}

std::optional<HullBounds> hull_bounds(const Form& form, const std::vector<HullCorner>& hull) {
  if (hull.empty()) return std::nullopt;
  const PlainOpening opening(form);
  HullBounds bounds;
  bounds.in_middle = depth_of(opening, hull, {}) - to_be_safe;
  bounds.most = most_anywhere(opening, hull) + to_be_safe;
  // The depth is concave in the place, of an ellipse as it is bounded here too: uphill leads to the top.
  const double step = opening.lesser_half() / 8;
  constexpr double least = 10'000;  // nm
  const Spot top = climb(Spot{}, step, least, [&](Spot spot) { return depth_of(opening, hull, spot); });
  bounds.somewhere = std::max(bounds.in_middle, depth_of(opening, hull, top) - to_be_safe);
  return bounds;
}

}  // namespace insetbook
