// SPDX-License-Identifier: GPL-3.0-or-later
//
// The largest rectangle anywhere in outlines of 200, 2 000 and 20 000 corners, beside the centred one a
// programmer would take: GEOS pulls the outline in by the border once and is asked whether it covers each of
// 64 x 64 sizes in the middle, plainly and prepared. Medians over seeded outlines, all in one run.
#include <geos_c.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <random>
#include <vector>

#include "fit/free_circle.h"
#include "fit/free_rectangle.h"

namespace {

using namespace insetbook;

constexpr std::int64_t step = 1'587'500, border = 1'587'500;  // 1/16 in
constexpr double reach = 40e6;
constexpr int sizes = 64;

// A waved outline of about 3 in with a roughness of its own, and no two alike.
Outline outline_of(int corners, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> part(0, 1);
  const double waves = 2 + std::floor(4 * part(random)), turned = part(random), deep = 0.25 * part(random);
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / corners;
    const double rough = 0.5 / corners * (part(random) - 0.5);
    const double radius = reach * (0.75 + deep * std::sin(waves * (angle + turned)) + rough);
    ring.points.push_back({std::llround(reach + radius * std::cos(angle)),
                           std::llround(0.8 * (reach + radius * std::sin(angle)))});
  }
  return {{ring}, 0};
}

double ms_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2),
                   values.end());
  return values[values.size() / 2];
}

GEOSGeometry* polygon(GEOSContextHandle_t geos, const std::vector<std::pair<double, double>>& corners) {
  const auto count = static_cast<unsigned>(corners.size());
  GEOSCoordSequence* sequence = GEOSCoordSeq_create_r(geos, count + 1, 2);
  for (unsigned i = 0; i <= count; ++i)
    GEOSCoordSeq_setXY_r(geos, sequence, i, corners[i % count].first, corners[i % count].second);
  return GEOSGeom_createPolygon_r(geos, GEOSGeom_createLinearRing_r(geos, sequence), nullptr, 0);
}

// Steps of area of the largest centred rectangle that GEOS covers.
std::int64_t centred_by_geos(GEOSContextHandle_t geos, const Outline& outline, const Box& box,
                             bool prepared) {
  std::vector<std::pair<double, double>> corners;
  for (const Point& point : outline.rings[0].points)
    corners.push_back({static_cast<double>(point.x), static_cast<double>(point.y)});
  GEOSGeometry* whole = polygon(geos, corners);
  GEOSGeometry* room = GEOSBuffer_r(geos, whole, -static_cast<double>(border), 8);
  const GEOSPreparedGeometry* ready = prepared ? GEOSPrepare_r(geos, room) : nullptr;
  const double x = static_cast<double>(box.least.x + box.most.x) / 2;
  const double y = static_cast<double>(box.least.y + box.most.y) / 2;
  std::int64_t best = 0;
  for (int i = 1; i <= sizes; ++i) {
    for (int j = 1; j <= sizes; ++j) {
      const std::int64_t wide = box.width() * i / sizes / step, high = box.height() * j / sizes / step;
      const double w = static_cast<double>(wide * step) / 2, h = static_cast<double>(high * step) / 2;
      if (wide == 0 || high == 0) continue;
      GEOSGeometry* panel = polygon(geos, {{x - w, y - h}, {x + w, y - h}, {x + w, y + h}, {x - w, y + h}});
      const char covers =
          ready != nullptr ? GEOSPreparedCovers_r(geos, ready, panel) : GEOSCovers_r(geos, room, panel);
      if (covers == 1) best = std::max(best, wide * high);
      GEOSGeom_destroy_r(geos, panel);
    }
  }
  if (ready != nullptr) GEOSPreparedGeom_destroy_r(geos, ready);
  GEOSGeom_destroy_r(geos, room);
  GEOSGeom_destroy_r(geos, whole);
  return best;
}

struct Times {
  std::vector<double> ours, circle, plain, prepared;
};

void row(GEOSContextHandle_t geos, int corners, int outlines) {
  Times times;
  int smaller = 0;
  double gained = 0;
  for (int seed = -1; seed < outlines; ++seed) {  // the first warms up
    const Outline outline = outline_of(corners, static_cast<unsigned>(seed + 1));
    auto start = std::chrono::steady_clock::now();
    const EdgeTree edges(outline);
    const FoundPlace found = largest_rectangle(edges, border, step);
    const double ours = ms_since(start);
    start = std::chrono::steady_clock::now();
    const Chain chain{1000, [](std::int64_t n) { return Sides{n * step, n * step}; }};
    const FoundPlace circle = last_circle(EdgeTree(outline), border, chain);
    const double round = ms_since(start);
    start = std::chrono::steady_clock::now();
    const std::int64_t plain_area = centred_by_geos(geos, outline, edges.box(), false);
    const double plain = ms_since(start);
    start = std::chrono::steady_clock::now();
    const std::int64_t prepared_area = centred_by_geos(geos, outline, edges.box(), true);
    const double prepared = ms_since(start);
    if (seed < 0 || !circle.placed) continue;
    const std::int64_t area =
        found.placed ? found.placed->sides.width / step * (found.placed->sides.height / step) : 0;
    if (area < std::max(plain_area, prepared_area)) ++smaller;
    gained +=
        static_cast<double>(area) / static_cast<double>(std::max<std::int64_t>(1, plain_area)) / outlines;
    times.ours.push_back(ours);
    times.circle.push_back(round);
    times.plain.push_back(plain);
    times.prepared.push_back(prepared);
  }
  const double ours = median(times.ours);
  std::printf("%7d %10.3f ms %9.3f ms %11.1f ms %11.1f ms %9.4f %9.3f %6d %8.2f\n", corners, ours,
              median(times.circle), median(times.plain), median(times.prepared), ours / median(times.plain),
              ours / median(times.prepared), smaller, gained);
}

}  // namespace

int main(int argc, char** argv) {
  const int outlines = argc > 1 ? std::atoi(argv[1]) : 21;
  GEOSContextHandle_t geos = GEOS_init_r();
  std::printf("%7s %13s %12s %14s %14s %9s %9s %6s %8s\n", "corners", "rectangle", "circle", "GEOS plain",
              "prepared", "ratio", "ratio", "lesser", "area");
  row(geos, 200, outlines);
  row(geos, 2000, std::max(3, outlines / 3));
  row(geos, 20'000, 3);
  GEOS_finish_r(geos);
  return 0;
}
