// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/contacts.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "fit/outline_ground.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

constexpr double as_near = 10'000;        // nm
constexpr double same_place = 1'000'000;  // nm
constexpr std::size_t most_contacts = 8;

// A corner of one outline and the nearest place of the other, in the opening's coordinates.
struct Nearest {
  double x, y, other_x, other_y;
  double distance = std::numeric_limits<double>::infinity();
};

// Both from corners of one tree to the edges of the other: of two edges that do not cross, the nearest places
// are at an end of one of them.
void take_in(const EdgeTree& corners, const EdgeTree& edges, double shift_x, double shift_y, double& least,
             std::vector<Nearest>& found) {
  for (const OutlineEdge& corner : corners.edges()) {
    const double x = corner.x0 + shift_x, y = corner.y0 + shift_y;
    Nearest nearest{x, y, x, y};
    const auto limit = [&] { return std::min(nearest.distance, least + as_near); };
    edges.walk(
        [&](const EdgeNode& node) {
          return std::hypot(std::max({node.x_least - x, x - node.x_most, 0.0}),
                            std::max({node.y_least - y, y - node.y_most, 0.0})) <= limit();
        },
        [&](const OutlineEdge& edge) {
          const double dx = edge.x1 - edge.x0, dy = edge.y1 - edge.y0;
          const double along =
              std::clamp(((x - edge.x0) * dx + (y - edge.y0) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
          const double at_x = edge.x0 + along * dx, at_y = edge.y0 + along * dy;
          const double distance = std::hypot(at_x - x, at_y - y);
          if (distance < nearest.distance) nearest = {x, y, at_x, at_y, distance};
          return true;
        });
    if (nearest.distance > least + as_near) continue;
    least = std::min(least, nearest.distance);
    found.push_back(nearest);
  }
}

Length nm(double value) {
  return Length::nm(std::llround(value));
}

std::vector<Contact> told_apart(std::vector<Nearest> found, double least) {
  std::stable_sort(found.begin(), found.end(),
                   [](const Nearest& a, const Nearest& b) { return a.distance < b.distance; });
  std::vector<Contact> contacts;
  std::vector<Nearest> kept;
  for (const Nearest& here : found) {
    if (here.distance > least + as_near || kept.size() == most_contacts) break;
    const bool known = std::any_of(kept.begin(), kept.end(), [&](const Nearest& other) {
      return std::hypot(other.x - here.x, other.y - here.y) < same_place;
    });
    if (known) continue;
    kept.push_back(here);
    contacts.push_back({nm(here.x), nm(here.y), nm(here.other_x), nm(here.other_y), nm(here.distance)});
  }
  return contacts;
}

}  // namespace

Result<std::vector<Contact>> contacts(const Opening& opening, const Panel& panel) {
  const Result<OutlineGround> ground = OutlineGround::of(opening.shape);
  if (!ground) return failure(ground.error());
  const Result<CurvedOutline> curves = outline_of(panel.shape);
  if (!curves) return failure(curves.error());
  const Sides sides{panel.shape.width.nm(), panel.shape.height.nm()};
  const Result<EdgeTree> edges = scaled_edges(*curves, sides, usual_error);
  if (!edges) return failure(edges.error());
  const auto left = static_cast<double>(panel.left.nm()), top = static_cast<double>(panel.top.nm());
  double least = std::numeric_limits<double>::infinity();
  std::vector<Nearest> of_panel, of_line;
  take_in(*edges, ground->edges(), left, top, least, of_panel);
  for (Nearest& here : of_panel) here = {here.other_x, here.other_y, here.x, here.y, here.distance};
  take_in(ground->edges(), *edges, -left, -top, least, of_line);
  for (Nearest& here : of_line)
    here = {here.x + left, here.y + top, here.other_x + left, here.other_y + top, here.distance};
  of_panel.insert(of_panel.end(), of_line.begin(), of_line.end());
  return told_apart(std::move(of_panel), least);
}

}  // namespace insetbook
