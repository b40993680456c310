// SPDX-License-Identifier: GPL-3.0-or-later
#include "fit/ellipse.h"

#include <algorithm>

#include "shape/wide.h"

namespace insetbook {
namespace {

Int128 squared(std::int64_t value) {
  return static_cast<Int128>(value) * value;
}

// The corner (x, 0) of a core of no height. On the long axis the nearest edge is at its end only beyond (A² -
// B²)/A.
Where point_on_long_axis(std::int64_t a, std::int64_t b, std::int64_t x, std::int64_t border) {
  const Int128 focal = squared(a) - squared(b);
  if (static_cast<Int128>(x) * a >= focal) return where_by_sign(sign_of(a - x - border));
  const Wide<4> left = product(focal - squared(x), squared(b));
  return where_by_sign(compare(left, product(squared(border), focal)));
}

// The three lower coefficients of μ³ + c2 μ² + c1 μ + c0, see below.
struct Cubic {
  Int128 c2, c1;
  Wide<3> c0;
};

Cubic cubic(Int128 a2, Int128 b2, Int128 x2, Int128 y2, Int128 d2) {
  return {x2 + y2 - a2 - b2 - d2, a2 * b2 + d2 * (a2 + b2) - x2 * b2 - y2 * a2,
          -Wide<3>(product(a2 * b2, d2))};
}

int discriminant_sign(const Cubic& cubic) {
  const Wide<2> c2(cubic.c2), c1(cubic.c1);
  const Wide<3>& c0 = cubic.c0;
  using Sum = Wide<7>;
  const Wide<1> four(4);
  const Sum mixed(c2 * c1 * c0 * Wide<1>(18));
  const Sum outer(c2 * c2 * c2 * c0 * four);
  const Sum middle(c2 * c2 * c1 * c1);
  const Sum inner(c1 * c1 * c1 * four);
  const Sum last(c0 * c0 * Wide<1>(27));
  return (mixed - outer + middle - inner - last).sign();
}

}  // namespace

// The distance d from a point p = (x, y) inside the oval to its edge has no closed form, but it has a dual
// without gap:
//   d² = max over 0 ≤ μ ≤ B² of  μ (1 - x²/(A² - μ) - y²/(B² - μ))        (half axes A ≥ B)
// for: minimise |q - p|² over q with q₁²/A² + q₂²/B² ≥ 1, one quadratic constraint, so that strong duality
// holds. So the border is kept when this is at least b² somewhere, which, cleared of its denominators, says
// that the cubic
//   c(μ) = (μ - b²)(A² - μ)(B² - μ) - μ x² (B² - μ) - μ y² (A² - μ)
// reaches 0 between b² and B². For p inside the oval c < 0 below b², c(B²) < 0 (y > 0, A > B) and c grows to
// infinity, so that one root lies above B² and the others are both in [b², B²], or both above B², or not
// real. They are real when the discriminant is not negative, and all three above B² just when c(B² + s) has
// alternating signs (Descartes). Widths: half axes ≤ 2^31 ticks, so c2 < 2^65, c1 < 2^127, c0 ≤ 2^186, the
// discriminant < 2^382.
Where core_in_ellipse(const Form& opening, const Core& core, std::int64_t border) {
  const bool upright = opening.half_height > opening.half_width;
  const std::int64_t a = upright ? opening.half_height : opening.half_width;
  const std::int64_t b = upright ? opening.half_width : opening.half_height;
  const std::int64_t x = upright ? core.half_height : core.half_width;
  const std::int64_t y = upright ? core.half_width : core.half_height;
  if (x + border > a || y + border > b) return Where::outside;
  const Int128 a2 = squared(a), b2 = squared(b), x2 = squared(x), y2 = squared(y), d2 = squared(border);
  const int in_oval = sign_of(a2 * b2 - x2 * b2 - y2 * a2);
  if (in_oval < 0) return Where::outside;
  if (border == 0) return where_by_sign(in_oval);
  if (y == 0) return point_on_long_axis(a, b, x, border);
  const Cubic c = cubic(a2, b2, x2, y2, d2);
  const int sign = discriminant_sign(c);
  if (sign < 0) return Where::outside;
  const Int128 second = 3 * b2 + c.c2;
  const Wide<4> first = product(b2, 3 * b2 + 2 * c.c2) + Wide<4>(c.c1);
  if (second < 0 && first.sign() > 0) return Where::outside;
  return where_by_sign(sign);
}

// In every direction (cos, sin) the oval's reach √(p² cos² + q² sin²) and the border must stay within √(A²
// cos² + B² sin²). With t = cos²: √v(t) - √u(t) ≥ b for t in [0, 1], u and v straight lines; squared twice, v
// - u - b² ≥ 0 and (v - u - b²)² - 4 b² u ≥ 0: an upward parabola in t, decided at its ends and at its
// vertex.
Where ellipse_in_ellipse(const Form& opening, const Form& panel, std::int64_t border) {
  const std::int64_t across = opening.half_width - panel.half_width - border;
  const std::int64_t along = opening.half_height - panel.half_height - border;
  if (across < 0 || along < 0) return Where::outside;
  const Where ends = where_by_sign(across == 0 || along == 0 ? 0 : 1);
  const Int128 p2 = squared(panel.half_width), q2 = squared(panel.half_height), d2 = squared(border);
  const Int128 at_end = squared(opening.half_height) - q2 - d2;
  const Int128 slope = squared(opening.half_width) - p2 - d2 - at_end;
  if (slope == 0) return ends;
  const Wide<4> square = product(slope, slope);
  const Wide<4> linear = product(2 * at_end, slope) - product(4 * d2, p2 - q2);
  const Wide<4> constant = product(at_end, at_end) - product(4 * d2, q2);
  if (linear.sign() >= 0 || compare(-linear, square * Wide<1>(2)) >= 0) return ends;
  return both(ends, where_by_sign(compare(square * constant * Wide<1>(4), linear * linear)));
}

namespace {

// A point of an oval or between two of its tangents, as numerators over one denominator, of half axes 1.
struct ArcPoint {
  std::int64_t x, y, over;
};

// Half the angle's tangent is k / 2^16.
constexpr std::int64_t arc_steps = std::int64_t{1} << 16;

// Where the tangents at two such points cross; the point itself where they are one.
ArcPoint tangents_cross(std::int64_t k, std::int64_t m) {
  const std::int64_t whole = arc_steps * arc_steps;
  return {whole - k * m, (k + m) * arc_steps, whole + k * m};
}

// The quarter circle at a corner of the opening, pulled in by the border, and the oval that may cross it.
struct CornerCheck {
  Int128 corner_x, corner_y, radius;
  std::int64_t half_width, half_height;

  bool holds_at(const ArcPoint& point, bool rounded_up) const {
    const std::int64_t more = rounded_up ? point.over - 1 : 0;
    const Int128 x = (static_cast<Int128>(half_width) * point.x + more) / point.over - corner_x;
    const Int128 y = (static_cast<Int128>(half_height) * point.y + more) / point.over - corner_y;
    return x <= 0 || y <= 0 || x * x + y * y <= radius * radius;
  }

  // The arc from k to m lies in the triangle of its ends and the crossing of their tangents, and the region
  // is convex.
  Where arc(std::int64_t k, std::int64_t m) const {
    const ArcPoint first = tangents_cross(k, k), last = tangents_cross(m, m);
    if (!holds_at(first, false) || !holds_at(last, false)) return Where::outside;
    if (holds_at(tangents_cross(k, m), true) && holds_at(first, true) && holds_at(last, true))
      return Where::inside;
    if (m - k == 1) return Where::undecided;
    const Where lower = arc(k, (k + m) / 2);
    return lower == Where::outside ? lower : both(lower, arc((k + m) / 2, m));
  }
};

}  // namespace

Where ellipse_in_rounded(const Form& opening, const Form& panel, std::int64_t border) {
  if (opening.is_circle()) return ellipse_in_ellipse(opening, panel, border);
  const std::int64_t across = opening.half_width - panel.half_width - border;
  const std::int64_t along = opening.half_height - panel.half_height - border;
  if (across < 0 || along < 0) return Where::outside;
  const Where box = where_by_sign(across == 0 || along == 0 ? 0 : 1);
  if (opening.radius <= border) return box;
  const CornerCheck corner{opening.half_width - opening.radius, opening.half_height - opening.radius,
                           opening.radius - border, panel.half_width, panel.half_height};
  return both(box, corner.arc(0, arc_steps));
}

}  // namespace insetbook
