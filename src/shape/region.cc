// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/region.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "shape/edges.h"

namespace insetbook {
namespace {

constexpr int most_rounds = 100;
constexpr std::size_t most_splits = 200'000;

bool before(Point a, Point b) {
  return std::tie(a.x, a.y) < std::tie(b.x, b.y);
}

// Edges way by way; `ends[w]` is one past the last edge of way w.
struct Ways {
  std::vector<RingEdge> edges;
  std::vector<std::size_t> ends;
};

Ways edges_of(const std::vector<Ring>& rings) {
  Ways ways;
  for (const Ring& ring : rings) {
    for (std::size_t i = 0; i < ring.points.size(); ++i) {
      const Point a = ring.points[i], b = ring.points[i + 1 == ring.points.size() ? 0 : i + 1];
      if (a != b) ways.edges.push_back({a, b});
    }
    ways.ends.push_back(ways.edges.size());
  }
  return ways;
}

// ---- Where edges meet ----

struct Split {
  std::size_t edge;
  Point point;
};

struct Meetings {
  std::vector<Split> splits;
  std::vector<Point> crossings;
  bool touching = false;  // ends of edges that do not follow each other, or edges that lie on each other
};

Meetings meetings_of(const Ways& ways) {
  std::vector<std::size_t> next(ways.edges.size());
  std::size_t begin = 0;
  for (const std::size_t end : ways.ends) {
    for (std::size_t i = begin; i < end; ++i) next[i] = i + 1 == end ? begin : i + 1;
    begin = end;
  }
  Meetings found;
  RingEdgeTree(ways.edges).each_pair([&](std::size_t i, std::size_t j) {
    if (found.splits.size() > most_splits) return;
    const Meeting meeting = meeting_of(ways.edges[i], ways.edges[j]);
    for (int k = 0; k < meeting.in_first; ++k)
      found.splits.push_back({i, meeting.first[static_cast<std::size_t>(k)]});
    for (int k = 0; k < meeting.in_second; ++k)
      found.splits.push_back({j, meeting.second[static_cast<std::size_t>(k)]});
    if (meeting.crossing)
      found.crossings.push_back(meeting.in_first > 0 ? meeting.first[0] : meeting.second[0]);
    const bool following = (next[i] == j) != (next[j] == i);
    if (meeting.shared_end && !following) found.touching = true;
  });
  return found;
}

void split_edges(Ways& ways, std::vector<Split> splits) {
  const auto along = [&](const Split& split) {
    const RingEdge& edge = ways.edges[split.edge];
    const Int128 x = edge.to.x - edge.from.x, y = edge.to.y - edge.from.y;
    return x * (split.point.x - edge.from.x) + y * (split.point.y - edge.from.y);
  };
  std::sort(splits.begin(), splits.end(), [&](const Split& a, const Split& b) {
    if (a.edge != b.edge) return a.edge < b.edge;
    const Int128 of_a = along(a), of_b = along(b);
    return of_a != of_b ? of_a < of_b : before(a.point, b.point);
  });
  Ways result;
  std::size_t split = 0, edge = 0;
  for (const std::size_t end : ways.ends) {
    for (; edge < end; ++edge) {
      Point from = ways.edges[edge].from;
      const auto go_to = [&](Point point) {
        if (from != point) result.edges.push_back({from, point});
        from = point;
      };
      for (; split < splits.size() && splits[split].edge == edge; ++split) go_to(splits[split].point);
      go_to(ways.edges[edge].to);
    }
    result.ends.push_back(result.edges.size());
  }
  ways = std::move(result);
}

// ---- What lies on both sides ----

// How often the edge goes round a point from which it is met on the level line to the right: as y runs down,
// once for an edge that goes down, as often the other way for one that goes up. `doubled` is in halves of a
// nanometre. An end with the smaller y counts, as in side_of.
int times_met(const RingEdge& edge, Point doubled) {
  const Point a{2 * edge.from.x, 2 * edge.from.y}, b{2 * edge.to.x, 2 * edge.to.y};
  if ((a.y <= doubled.y) == (b.y <= doubled.y)) return 0;
  if (a.y < b.y) return turn_of(a, b, doubled) > 0 ? 1 : 0;
  return turn_of(a, b, doubled) < 0 ? -1 : 0;
}

// How often the ways go round what lies on either hand of an edge, as it runs. Crossed from left to right an
// edge counts by its weight.
struct Hands {
  int left = 0, right = 0;
};

// By the level line from the middle of the edge. The edges share nothing but ends; `weights` says how often
// each counts.
Hands hands_of(const std::vector<RingEdge>& edges, const std::vector<int>& weights, const RingEdgeTree& tree,
               std::size_t edge) {
  const RingEdge& own = edges[edge];
  const Point middle{own.from.x + own.to.x, own.from.y + own.to.y};
  // The box of an edge is in whole nanometres: the line may lie half a nanometre off.
  const Point start{(middle.x - 1) / 2 - 1, middle.y >= 0 ? middle.y / 2 : -((1 - middle.y) / 2)};
  int beside = 0;
  tree.each_to_the_right(start, [&](std::size_t i) {
    if (i != edge) beside += weights[i] * times_met(edges[i], middle);
  });
  // Just to the right of the edge, or just below a level one, the edge itself is not met.
  const bool down = own.from.y < own.to.y || (own.from.y == own.to.y && own.from.x > own.to.x);
  if (down) return {beside, beside + weights[edge]};
  return {beside - weights[edge], beside};
}

bool divides(Hands hands) {
  return (hands.left != 0) != (hands.right != 0);
}

// ---- Edges that lie on each other, and the corners ----

struct Merged {
  std::vector<RingEdge> edges;
  std::vector<int> weights;
  bool lay_on_each_other = false;
};

Merged merged(const Ways& ways, FillRule rule) {
  const auto turned = [](const RingEdge& edge) {
    return before(edge.to, edge.from) ? RingEdge{edge.to, edge.from} : edge;
  };
  std::vector<std::size_t> order(ways.edges.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto key = [&](std::size_t i) {
    const RingEdge edge = turned(ways.edges[i]);
    return std::tuple(edge.from.x, edge.from.y, edge.to.x, edge.to.y);
  };
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return std::pair(key(a), a) < std::pair(key(b), b); });
  std::vector<int> weights(ways.edges.size(), 0);
  Merged result;
  for (std::size_t begin = 0, end = 0; begin < order.size(); begin = end) {
    const std::size_t first = order[begin];
    for (; end < order.size() && key(order[end]) == key(first); ++end)
      weights[first] += ways.edges[order[end]].from == ways.edges[first].from ? 1 : -1;
    if (end - begin > 1) result.lay_on_each_other = true;
    if (rule == FillRule::even_odd) weights[first] = (end - begin) % 2 == 0 ? 0 : 1;
  }
  // In the order drawn, so that the tree over them stays a good one.
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (weights[i] == 0) continue;
    result.edges.push_back(ways.edges[i]);
    result.weights.push_back(weights[i]);
  }
  return result;
}

// Which edges end at which corner.
struct Corners {
  struct End {
    std::size_t edge;
    Point corner, other;
  };
  std::vector<End> ends;             // by corner
  std::vector<std::size_t> starts;   // of each corner in `ends`, and one past the last
  std::vector<std::size_t> at_from;  // the corner of each edge
  std::vector<std::size_t> at_to;
};

Corners corners_of(const std::vector<RingEdge>& edges) {
  Corners corners;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    corners.ends.push_back({i, edges[i].from, edges[i].to});
    corners.ends.push_back({i, edges[i].to, edges[i].from});
  }
  std::sort(corners.ends.begin(), corners.ends.end(), [](const auto& a, const auto& b) {
    return std::tie(a.corner.x, a.corner.y, a.edge) < std::tie(b.corner.x, b.corner.y, b.edge);
  });
  corners.at_from.resize(edges.size());
  corners.at_to.resize(edges.size());
  for (std::size_t i = 0; i < corners.ends.size(); ++i) {
    const Corners::End& end = corners.ends[i];
    if (i == 0 || corners.ends[i - 1].corner != end.corner) corners.starts.push_back(i);
    const bool from = edges[end.edge].from == end.corner;
    (from ? corners.at_from : corners.at_to)[end.edge] = corners.starts.size() - 1;
  }
  corners.starts.push_back(corners.ends.size());
  return corners;
}

// Around a corner, from straight to the right onwards, clockwise as seen.
bool earlier_round(Point corner, Point a, Point b) {
  const auto upper = [&](Point point) {
    return point.y < corner.y || (point.y == corner.y && point.x < corner.x);
  };
  if (upper(a) != upper(b)) return !upper(a);
  return turn_of(corner, a, b) > 0;
}

void sort_around(Corners& corners) {
  for (std::size_t c = 0; c + 1 < corners.starts.size(); ++c) {
    const auto begin = corners.ends.begin() + static_cast<std::ptrdiff_t>(corners.starts[c]);
    const auto end = corners.ends.begin() + static_cast<std::ptrdiff_t>(corners.starts[c + 1]);
    std::sort(begin, end,
              [](const auto& a, const auto& b) { return earlier_round(a.corner, a.other, b.other); });
  }
}

// From one edge whose hands are known those of all that hang together with it: clockwise around a corner,
// what lies before an edge and what lies after it differ by its weight.
void spread(const Merged& all, const Corners& corners, std::size_t first,
            std::vector<std::optional<Hands>>& hands) {
  std::vector<std::size_t> open = {first};
  while (!open.empty()) {
    const std::size_t known = open.back();
    open.pop_back();
    for (const std::size_t corner : {corners.at_from[known], corners.at_to[known]}) {
      const std::size_t start = corners.starts[corner], count = corners.starts[corner + 1] - start;
      std::size_t at = 0;
      while (corners.ends[start + at].edge != known) ++at;
      const auto leaves = [&](std::size_t end) {
        return all.edges[corners.ends[end].edge].from == corners.ends[end].corner;
      };
      int after = leaves(start + at) ? hands[known]->right : hands[known]->left;
      for (std::size_t i = 1; i < count; ++i) {
        const std::size_t end = start + (at + i) % count, edge = corners.ends[end].edge;
        const int before_it = after;
        after += leaves(end) ? all.weights[edge] : -all.weights[edge];
        if (hands[edge]) continue;
        hands[edge] = leaves(end) ? Hands{before_it, after} : Hands{after, before_it};
        open.push_back(edge);
      }
    }
  }
}

// The edges that bound the region.
std::vector<bool> edges_that_divide(const Merged& all, FillRule rule) {
  std::vector<bool> kept(all.edges.size(), true);
  if (rule == FillRule::even_odd) return kept;
  Corners corners = corners_of(all.edges);
  sort_around(corners);
  const RingEdgeTree tree(all.edges);
  std::vector<std::optional<Hands>> hands(all.edges.size());
  for (std::size_t i = 0; i < all.edges.size(); ++i) {
    if (!hands[i]) {
      hands[i] = hands_of(all.edges, all.weights, tree, i);
      spread(all, corners, i, hands);
    }
    kept[i] = divides(*hands[i]);
  }
  return kept;
}

// At each corner the edges are joined two by two with their neighbours around it, so that rings touch there
// and do not cross.
std::vector<Ring> joined(const std::vector<RingEdge>& edges) {
  Corners corners = corners_of(edges);
  std::vector<std::size_t> mate(corners.ends.size());
  std::vector<std::size_t> end_at_from(edges.size()), end_at_to(edges.size());
  sort_around(corners);
  for (std::size_t c = 0; c + 1 < corners.starts.size(); ++c) {
    for (std::size_t i = corners.starts[c]; i < corners.starts[c + 1]; ++i) {
      const std::size_t place = i - corners.starts[c];
      mate[i] = place % 2 == 0 ? i + 1 : i - 1;
      const Corners::End& end = corners.ends[i];
      (edges[end.edge].from == end.corner ? end_at_from : end_at_to)[end.edge] = i;
    }
  }
  std::vector<bool> used(edges.size(), false);
  std::vector<Ring> rings;
  for (std::size_t first = 0; first < edges.size(); ++first) {
    if (used[first]) continue;
    Ring ring;
    std::size_t edge = first;
    bool forwards = true;
    while (!used[edge]) {
      used[edge] = true;
      ring.points.push_back(forwards ? edges[edge].from : edges[edge].to);
      const std::size_t next = mate[forwards ? end_at_to[edge] : end_at_from[edge]];
      edge = corners.ends[next].edge;
      forwards = edges[edge].from == corners.ends[next].corner;
    }
    rings.push_back(std::move(ring));
  }
  return rings;
}

// A ring that comes to a corner again is two rings that touch there.
void split_at_corners(const Ring& ring, std::vector<Ring>& rings) {
  std::map<std::pair<std::int64_t, std::int64_t>, std::size_t> on_the_way;
  Ring way;
  for (const Point point : ring.points) {
    const auto [seen, is_new] = on_the_way.try_emplace({point.x, point.y}, way.points.size());
    if (!is_new) {
      Ring loop;
      loop.points.assign(way.points.begin() + static_cast<std::ptrdiff_t>(seen->second), way.points.end());
      for (std::size_t i = 1; i < loop.points.size(); ++i)
        on_the_way.erase({loop.points[i].x, loop.points[i].y});
      way.points.resize(seen->second);
      rings.push_back(std::move(loop));
    }
    way.points.push_back(point);
  }
  rings.push_back(std::move(way));
}

bool has_branches(const std::vector<Ring>& rings) {
  std::vector<Point> points;
  for (const Ring& ring : rings) points.insert(points.end(), ring.points.begin(), ring.points.end());
  std::sort(points.begin(), points.end(), before);
  return std::adjacent_find(points.begin(), points.end()) != points.end();
}

// Points in the middle of a straight way say nothing.
Ring without_straight_points(const Ring& ring) {
  Ring result;
  const std::size_t count = ring.points.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Point last = ring.points[(i + count - 1) % count], next = ring.points[(i + 1) % count];
    if (turn_of(last, ring.points[i], next) != 0) result.points.push_back(ring.points[i]);
  }
  return result;
}

// Ways that neither cross nor touch themselves or each other are rings as they are.
std::vector<Ring> rings_as_they_are(const std::vector<Ring>& ways, const Ways& edges, FillRule rule) {
  std::vector<Ring> rings;
  const RingEdgeTree tree(edges.edges);
  const std::vector<int> weights(edges.edges.size(), 1);
  std::size_t begin = 0;
  for (std::size_t w = 0; w < ways.size(); ++w) {
    const std::size_t first = begin;
    begin = edges.ends[w];
    if (first == begin) continue;
    const bool alone = ways.size() == 1 || rule == FillRule::even_odd;
    if (alone || divides(hands_of(edges.edges, weights, tree, first))) rings.push_back(ways[w]);
  }
  return rings;
}

// Whether two ways through a corner cross there: of the four, those of the one lie between those of the
// other.
bool crosses_at(Point corner, Point in_a, Point out_a, Point in_b, Point out_b) {
  const auto between = [&](Point point) {
    if (earlier_round(corner, in_a, out_a))
      return earlier_round(corner, in_a, point) && earlier_round(corner, point, out_a);
    return earlier_round(corner, in_a, point) || earlier_round(corner, point, out_a);
  };
  return between(in_b) != between(out_b);
}

// Where ways cross in a corner that they share.
std::vector<Point> crossed_corners(const Ways& ways) {
  struct Visit {
    std::size_t edge;  // that goes out
    Point corner, in, out;
  };
  std::vector<Visit> visits;
  std::size_t begin = 0;
  for (const std::size_t end : ways.ends) {
    for (std::size_t i = begin; i < end; ++i) {
      const RingEdge& last = ways.edges[i == begin ? end - 1 : i - 1];
      visits.push_back({i, ways.edges[i].from, last.from, ways.edges[i].to});
    }
    begin = end;
  }
  std::sort(visits.begin(), visits.end(), [](const Visit& a, const Visit& b) {
    return std::tie(a.corner.x, a.corner.y, a.edge) < std::tie(b.corner.x, b.corner.y, b.edge);
  });
  std::vector<std::pair<std::size_t, Point>> found;
  for (std::size_t i = 0; i + 1 < visits.size(); ++i) {
    const Visit& a = visits[i];
    for (std::size_t j = i + 1; j < visits.size() && visits[j].corner == a.corner; ++j) {
      const Visit& b = visits[j];
      const bool overlapping = a.in == b.in || a.in == b.out || a.out == b.in || a.out == b.out;
      if (!overlapping && !crosses_at(a.corner, a.in, a.out, b.in, b.out)) continue;
      found.push_back({a.edge, a.corner});
      break;
    }
  }
  // Of a corner its first visit; the visits stand corner by corner.
  const auto same = [](const auto& a, const auto& b) { return a.second == b.second; };
  found.erase(std::unique(found.begin(), found.end(), same), found.end());
  std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Point> points;
  for (const auto& [edge, point] : found) points.push_back(point);
  return points;
}

}  // namespace

std::optional<Region> region_of(const std::vector<Ring>& ways, FillRule rule) {
  Region region;
  Ways edges = edges_of(ways);
  bool changed = false;
  for (int round = 0;; ++round) {
    if (round == most_rounds) return std::nullopt;
    Meetings meetings = meetings_of(edges);
    if (!meetings.crossings.empty()) ++region.rounds;
    if (meetings.splits.size() > most_splits) return std::nullopt;
    if (!meetings.splits.empty()) {
      split_edges(edges, std::move(meetings.splits));
      changed = true;
      continue;
    }
    if (!changed && !meetings.touching) {
      region.rings = rings_as_they_are(ways, edges, rule);
      return region;
    }
    break;
  }
  region.crossings = crossed_corners(edges);
  const Merged all = merged(edges, rule);
  const std::vector<bool> kept = edges_that_divide(all, rule);
  std::vector<RingEdge> bounding;
  for (std::size_t i = 0; i < all.edges.size(); ++i) {
    if (kept[i]) bounding.push_back(all.edges[i]);
  }
  std::vector<Ring> rings = joined(bounding);
  if (has_branches(rings)) {
    std::vector<Ring> simple;
    for (const Ring& ring : rings) split_at_corners(ring, simple);
    rings = std::move(simple);
  }
  for (const Ring& ring : rings) region.rings.push_back(without_straight_points(ring));
  return region;
}

}  // namespace insetbook
