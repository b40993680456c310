// SPDX-License-Identifier: GPL-3.0-or-later
#include "importers/svg/transform.h"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <numbers>
#include <string>

#include "measure/length.h"
#include "text/quote.h"
#include "text/utf8.h"

namespace insetbook {

namespace {

constexpr double radians_in_degree = std::numbers::pi / 180;

Problem no_transform(std::string_view text) {
  Problem problem;
  problem.what = fmt::format("transform {} cannot be read", in_quotes(text));
  problem.expected = "matrix, translate, scale, rotate, skewX or skewY with its figures in brackets";
  return problem;
}

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

void skip_spaces(std::string_view& text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
}

// A number at the beginning of the text, which loses it. No locale has a say.
std::optional<double> take_number(std::string_view& text) {
  std::string_view rest = text;
  if (!rest.empty() && rest.front() == '+') rest.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value);
  if (error != std::errc() || !std::isfinite(value)) return std::nullopt;
  const char first = rest.front() == '-' && rest.size() > 1 ? rest[1] : rest.front();
  if (first != '.' && (first < '0' || first > '9')) return std::nullopt;  // "inf", "nan"
  text = rest.substr(static_cast<std::size_t>(end - rest.data()));
  return value;
}

std::optional<Transform> one_transform(std::string_view name, const std::vector<double>& n) {
  if (name == "matrix" && n.size() == 6) return Transform{n[0], n[1], n[2], n[3], n[4], n[5]};
  if (name == "translate" && (n.size() == 1 || n.size() == 2))
    return Transform{1, 0, 0, 1, n[0], n.size() == 2 ? n[1] : 0};
  if (name == "scale" && (n.size() == 1 || n.size() == 2))
    return Transform{n[0], 0, 0, n.size() == 2 ? n[1] : n[0], 0, 0};
  if (name == "rotate" && (n.size() == 1 || n.size() == 3)) {
    const double angle = n[0] * radians_in_degree;
    const Transform turn{std::cos(angle), std::sin(angle), -std::sin(angle), std::cos(angle), 0, 0};
    if (n.size() == 1) return turn;
    return Transform{1, 0, 0, 1, n[1], n[2]} * turn * Transform{1, 0, 0, 1, -n[1], -n[2]};
  }
  if (name == "skewX" && n.size() == 1) return Transform{1, 0, std::tan(n[0] * radians_in_degree), 1, 0, 0};
  if (name == "skewY" && n.size() == 1) return Transform{1, std::tan(n[0] * radians_in_degree), 0, 1, 0, 0};
  return std::nullopt;
}

}  // namespace

Transform operator*(const Transform& outer, const Transform& inner) {
  return {outer.a * inner.a + outer.c * inner.b,           outer.b * inner.a + outer.d * inner.b,
          outer.a * inner.c + outer.c * inner.d,           outer.b * inner.c + outer.d * inner.d,
          outer.a * inner.e + outer.c * inner.f + outer.e, outer.b * inner.e + outer.d * inner.f + outer.f};
}

Result<Transform> read_transform(std::string_view text) {
  Transform all;
  std::string_view rest = text;
  const auto skip = [&] {
    while (!rest.empty() && (is_space(rest.front()) || rest.front() == ',')) rest.remove_prefix(1);
  };
  for (skip(); !rest.empty(); skip()) {
    const std::size_t open = rest.find('(');
    const std::size_t close = rest.find(')');
    if (open == std::string_view::npos || close == std::string_view::npos || close < open)
      return failure(no_transform(text));
    const auto numbers = read_numbers(rest.substr(open + 1, close - open - 1));
    const auto one = numbers ? one_transform(trim(rest.substr(0, open)), *numbers) : std::nullopt;
    if (!one) return failure(no_transform(text));
    all = all * *one;
    rest.remove_prefix(close + 1);
  }
  return all;
}

std::optional<std::vector<double>> read_numbers(std::string_view text) {
  std::vector<double> numbers;
  bool comma = false;
  for (skip_spaces(text); !text.empty(); skip_spaces(text)) {
    const auto number = take_number(text);
    if (!number) return std::nullopt;
    numbers.push_back(*number);
    skip_spaces(text);
    comma = !text.empty() && text.front() == ',';
    if (comma) text.remove_prefix(1);
  }
  if (comma) return std::nullopt;
  return numbers;
}

Result<DrawnLength> read_drawn_length(std::string_view text) {
  struct UnitOfPaper {
    std::string_view name;
    double nm;
  };
  constexpr double inch = 25'400'000;
  // CSS Values and Units 3, "absolute lengths".
  static constexpr std::array units{UnitOfPaper{"mm", 1e6},      UnitOfPaper{"cm", 1e7},
                                    UnitOfPaper{"in", inch},     UnitOfPaper{"pt", inch / 72},
                                    UnitOfPaper{"pc", inch / 6}, UnitOfPaper{"q", 250'000},
                                    UnitOfPaper{"px", inch / 96}};
  std::string_view rest = trim(text);
  const auto number = take_number(rest);
  const std::string unit = fold(trim(rest));
  if (number && unit.empty()) return DrawnLength{*number, false, false};
  for (const UnitOfPaper& one : units)
    if (number && unit == one.name) return DrawnLength{*number * one.nm, true, unit == "px"};
  Problem problem;
  problem.what = fmt::format("{} is no length of a drawing", in_quotes(text));
  problem.expected = "a figure with mm, cm, in, pt, pc, px or no unit";
  return failure(std::move(problem));
}

MappedEllipse map_ellipse(const Transform& map, double rx, double ry, double turned) {
  // The ellipse is the unit circle under M = map · turn · scale; its new axes are the singular values of M,
  // and they lie along the left singular vectors.
  const double angle = turned * radians_in_degree;
  const Transform circle =
      map * Transform{std::cos(angle), std::sin(angle), -std::sin(angle), std::cos(angle), 0, 0} *
      Transform{rx, 0, 0, ry, 0, 0};
  const double e = (circle.a + circle.d) / 2, f = (circle.a - circle.d) / 2;
  const double g = (circle.b + circle.c) / 2, h = (circle.b - circle.c) / 2;
  const double q = std::hypot(e, h), r = std::hypot(f, g);
  const double along = std::atan2(g, f), across = std::atan2(h, e);
  return {q + r, std::abs(q - r), (across + along) / 2 / radians_in_degree};
}

}  // namespace insetbook
