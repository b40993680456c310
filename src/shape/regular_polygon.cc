// SPDX-License-Identifier: GPL-3.0-or-later
#include "shape/regular_polygon.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>

#include "shape/wide.h"

namespace insetbook {
namespace {

constexpr Near exactly(std::int64_t numerator, std::int64_t power_of_two = 1) {
  return {near_one / power_of_two * numerator, 0};
}

constexpr std::int64_t shift_down(Int128 value) {
  return static_cast<std::int64_t>(value >> near_bits);
}

Near operator-(Near a) {
  return {-a.value, a.error};
}
Near operator+(Near a, Near b) {
  return {a.value + b.value, a.error + b.error};
}
Near operator-(Near a, Near b) {
  return a + (-b);
}

Near operator*(Near a, Near b) {
  const Int128 spread = static_cast<Int128>(std::abs(a.value) + a.error) * b.error +
                        static_cast<Int128>(std::abs(b.value)) * a.error;
  const bool exact = spread == 0 && (static_cast<Int128>(a.value) * b.value) % near_one == 0;
  return {shift_down(static_cast<Int128>(a.value) * b.value), exact ? 0 : shift_down(spread) + 2};
}

Near half(Near a) {
  return {a.value / 2, a.error == 0 && a.value % 2 == 0 ? 0 : a.error / 2 + 1};
}

// b > 0 and well away from 0.
Near operator/(Near a, Near b) {
  const std::int64_t value = static_cast<std::int64_t>(static_cast<Int128>(a.value) * near_one / b.value);
  const Int128 spread =
      static_cast<Int128>(a.error) * near_one + static_cast<Int128>(std::abs(value) + 1) * b.error;
  return {value, static_cast<std::int64_t>(spread / (b.value - b.error)) + 2};
}

// sin or cos of part/whole of π, 0 ≤ part/whole ≤ 1/4, by their series. Each of the under 20 terms is cut off
// by at most 2 units and the angle itself by 2; 64 covers them all.
Near series(int part, int whole, bool sine) {
  constexpr std::int64_t pi = 0x3243F6A8885A308D;  // π in 2^-60ths, rounded down
  const std::int64_t angle = static_cast<std::int64_t>(static_cast<Int128>(pi) * part / whole);
  const std::int64_t square = shift_down(static_cast<Int128>(angle) * angle);
  std::int64_t term = sine ? angle : near_one;
  std::int64_t sum = term;
  for (int n = sine ? 1 : 0; term != 0; n += 2) {
    term = -shift_down(static_cast<Int128>(term) * square) / ((n + 1) * (n + 2));
    sum += term;
  }
  return {sum, 64};
}

// cos of part/whole of π for any part ≥ 0; exact where the cosine is 0, 1/2 or 1.
Near cosine(int part, int whole) {
  part %= 2 * whole;
  if (part > whole) part = 2 * whole - part;
  if (2 * part > whole) return -cosine(whole - part, whole);
  if (part == 0) return exactly(1);
  if (2 * part == whole) return exactly(0);
  if (3 * part == whole) return exactly(1, 2);
  if (4 * part <= whole) return series(part, whole, false);
  return series(whole - 2 * part, 2 * whole, true);
}

// sin x = cos (x - 90 degrees), in halves of part/whole.
Near sine(int part, int whole) {
  return cosine(2 * part + 3 * whole, 2 * whole);
}

// The box of the polygon on the unit circle: half its width, half its height, and the height of its middle.
struct Box {
  Near half_width, half_height, middle;
};

// Angles are counted from the top to the right in steps of 1/sides of π: corners at 0, 2, 4 … with a point on
// top, at 1, 3, 5 … with a level side on top. sin and cos of them are x and y.
Box box(int sides, bool flat_on_top) {
  const int first = flat_on_top ? 1 : 0;
  int widest = first;  // the corner nearest to a quarter turn
  for (int at = first; at <= sides; at += 2) {
    if (std::abs(2 * at - sides) < std::abs(2 * widest - sides)) widest = at;
  }
  const int last = first + 2 * ((sides - first) / 2);
  const Near top = cosine(first, sides);
  const Near bottom = cosine(last, sides);
  return {sine(widest, sides), half(top - bottom), half(top + bottom)};
}

std::vector<PolygonCorner> rational_corners(int sides, bool flat_on_top) {
  const Near zero = exactly(0), one = exactly(1), half_way = exactly(1, 2);
  if (sides == 3 && flat_on_top) return {{one, one}, {zero, -one}};
  if (sides == 3) return {{zero, one}, {one, -one}};
  if (sides == 4 && flat_on_top) return {{one, one}, {one, -one}};
  if (sides == 4) return {{zero, one}, {one, zero}, {zero, -one}};
  if (flat_on_top) return {{half_way, one}, {one, zero}, {half_way, -one}};
  return {{zero, one}, {one, half_way}, {one, -half_way}, {zero, -one}};
}

std::vector<PolygonSide> rational_sides(int sides, bool flat_on_top) {
  const Near zero = exactly(0), one = exactly(1), half_way = exactly(1, 2);
  const PolygonSide top{zero, one, one}, bottom{zero, -one, one}, right{one, zero, one};
  if (sides == 3 && flat_on_top) return {top, {one, -half_way, half_way}};
  if (sides == 3) return {{one, half_way, half_way}, bottom};
  if (sides == 4 && flat_on_top) return {top, right, bottom};
  if (sides == 4) return {{one, one, one}, {one, -one, one}};
  if (flat_on_top) return {top, {one, half_way, one}, {one, -half_way, one}, bottom};
  return {{half_way, one, one}, right, {half_way, -one, one}};
}

}  // namespace

std::vector<PolygonCorner> corners_of_polygon(int sides, bool flat_on_top) {
  assert(sides >= 3 && sides <= most_polygon_sides);
  if (polygon_is_rational(sides)) return rational_corners(sides, flat_on_top);
  const Box around = box(sides, flat_on_top);
  std::vector<PolygonCorner> corners;
  for (int at = flat_on_top ? 1 : 0; at <= sides; at += 2) {
    corners.push_back({at == 0 || at == sides ? exactly(0) : sine(at, sides) / around.half_width,
                       (cosine(at, sides) - around.middle) / around.half_height});
  }
  return corners;
}

// A side's outward direction is half way between its corners' angles; its distance from the centre is cos
// (π/sides).
std::vector<PolygonSide> sides_of_polygon(int sides, bool flat_on_top) {
  assert(sides >= 3 && sides <= most_polygon_sides);
  if (polygon_is_rational(sides)) return rational_sides(sides, flat_on_top);
  const Box around = box(sides, flat_on_top);
  const Near zero = exactly(0), one = exactly(1);
  std::vector<PolygonSide> result;
  for (int at = flat_on_top ? 0 : 1; at <= sides; at += 2) {
    if (at == 0) {
      result.push_back({zero, one, one});
    } else if (at == sides) {
      result.push_back({zero, -one, one});
    } else if (2 * at == sides) {
      result.push_back({one, zero, one});
    } else {
      const Near rise = cosine(at, sides);
      result.push_back({sine(at, sides) * around.half_width, rise * around.half_height,
                        cosine(1, sides) - around.middle * rise});
    }
  }
  return result;
}

Length regular_height(int sides, bool flat_on_top, Length width) {
  const Box around = box(sides, flat_on_top);
  const Int128 doubled =
      static_cast<Int128>(width.nm()) * 2 * around.half_height.value / around.half_width.value;
  return Length::nm(static_cast<std::int64_t>((doubled + 1) / 2));
}

}  // namespace insetbook
