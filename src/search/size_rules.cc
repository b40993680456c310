// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/size_rules.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

#include "measure/write.h"

namespace insetbook {
namespace {

// Beyond any length that can be stored; small enough to be added to.
constexpr std::int64_t no_limit = std::int64_t{1} << 60;

std::int64_t exact_within(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 32).nm() : 800'000;
}
std::int64_t about_within(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 8).nm() : 3'000'000;
}

std::int64_t within(const SizeIs& size) {
  if (size.tolerance) return size.tolerance->nm();
  return size.relation == Relation::about ? about_within(size.unit) : exact_within(size.unit);
}

Band band(const SizeIs& size, std::int64_t figure) {
  switch (size.relation) {
    case Relation::exact:
    case Relation::about:
      return {figure - within(size), figure + within(size)};
    case Relation::under:
      return {-no_limit, figure - 1};
    case Relation::at_most:
      return {-no_limit, figure};
    case Relation::over:
      return {figure + 1, no_limit};
    case Relation::at_least:
      return {figure, no_limit};
    case Relation::between:
      return {size.low.nm(), size.high.nm()};
  }
  return {};
}

std::int64_t side_distance(const Band& from, std::int64_t side) {
  return std::max({std::int64_t{0}, from.low - side, side - from.high});
}

std::optional<std::int64_t> two_sides(const SizeRule& rule, std::int64_t a, std::int64_t b) {
  if (!rule.first.holds(a) || !rule.second.holds(b)) return std::nullopt;
  return std::max(side_distance(rule.from_first, a), side_distance(rule.from_second, b));
}

std::optional<std::int64_t> lesser(std::optional<std::int64_t> a, std::optional<std::int64_t> b) {
  if (!a || !b) return a ? a : b;
  return std::min(*a, *b);
}

std::optional<std::int64_t> one_side(const SizeRule& rule, std::optional<std::int64_t> side) {
  if (!side || !rule.first.holds(*side)) return std::nullopt;
  return side_distance(rule.from_first, *side);
}

std::optional<std::int64_t> one_figure_distance(const SizeRule& rule, const SidesOnRecord& sides) {
  if (rule.placed && sides.placed) return one_side(rule, rule.of_height ? sides.height : sides.width);
  const auto of_width = one_side(rule, sides.width);
  const auto of_height = one_side(rule, sides.height ? sides.height : sides.width);
  if (rule.either_side || rule.placed) return lesser(of_width, of_height);
  if (!of_width || !of_height) return std::nullopt;
  return std::max(*of_width, *of_height);
}

// To the nearest mark: a 64th of an inch, a tenth of a millimetre.
std::string away(std::int64_t difference_nm, Unit unit, const char* more, const char* less) {
  const Length mark = unit == Unit::mm ? Length::nm(100'000) : Length::inch_fraction(1, 64);
  const Length exact = Length::nm(std::abs(difference_nm));
  const Length said = std::max((exact + mark / 2) / mark, std::int64_t{1}) * mark;
  const std::string about = exact < mark ? "less than " : "";
  return about + write(said, unit) + (difference_nm > 0 ? more : less);
}

std::string two_figures_away(std::int64_t wide, std::int64_t high, Unit unit) {
  if (wide == high && wide != 0) return away(wide, unit, " larger each way", " smaller each way");
  std::string said;
  if (wide != 0) said = away(wide, unit, " wider", " narrower");
  if (high != 0) said += (said.empty() ? "" : " and ") + away(high, unit, " taller", " shorter");
  return said;
}

std::string two_figures_difference(const SizeIs& size, const SidesOnRecord& sides) {
  const std::int64_t width = sides.width.value_or(0);
  const std::int64_t height = sides.height.value_or(0);
  const auto departure = [&](Length a, Length b) {
    return std::max(std::abs(width - a.nm()), std::abs(height - b.nm()));
  };
  const bool turned =
      !(size.placed && sides.placed) && departure(size.second, size.low) < departure(size.low, size.second);
  const Length a = turned ? size.second : size.low;
  const Length b = turned ? size.low : size.second;
  return two_figures_away(width - a.nm(), height - b.nm(), size.unit);
}

std::int64_t nearer(std::int64_t a, std::int64_t b, std::int64_t target) {
  return std::abs(b - target) < std::abs(a - target) ? b : a;
}

// The side that the answer hangs on: the nearer one for exact and about, the worse one for limits.
std::int64_t deciding_side(const SizeIs& size, const SidesOnRecord& sides) {
  if (size.placed && sides.placed) return (size.height ? sides.height : sides.width).value_or(0);
  const std::int64_t width = sides.width.value_or(0);
  const std::int64_t height = sides.height.value_or(width);
  switch (size.relation) {
    case Relation::under:
    case Relation::at_most:
      return size.placed ? std::min(width, height) : std::max(width, height);
    case Relation::over:
    case Relation::at_least:
      return size.placed ? std::max(width, height) : std::min(width, height);
    case Relation::between:
      return std::max(width, height) > size.high.nm() ? std::max(width, height) : std::min(width, height);
    default:
      return nearer(width, height, size.low.nm());
  }
}

bool same(const SizeIs& a, const SizeIs& b) {
  return a.relation == b.relation && a.one_figure == b.one_figure && a.low == b.low && a.high == b.high &&
         a.second == b.second && a.placed == b.placed && a.height == b.height && a.tolerance == b.tolerance &&
         a.unit == b.unit;
}

}  // namespace

SizeRule size_rule(const SizeIs& size, Length slack) {
  const bool has_target = size.relation == Relation::exact || size.relation == Relation::about;
  const bool told = size.relation == Relation::exact && size.tolerance;
  SizeRule rule;
  rule.two_figures = !size.one_figure && size.relation != Relation::between;
  rule.either_side = has_target;
  rule.placed = size.placed;
  rule.of_height = size.height;
  rule.first = band(size, size.low.nm());
  rule.second = rule.two_figures ? band(size, size.second.nm()) : rule.first;
  rule.from_first = has_target ? Band{size.low.nm(), size.low.nm()} : rule.first;
  rule.from_second = has_target ? Band{size.second.nm(), size.second.nm()} : rule.second;
  rule.exact = !has_target ? 0 : told ? size.tolerance->nm() : exact_within(size.unit);
  rule.ranks = has_target || slack > Length();
  for (Band* each : {&rule.first, &rule.second}) {
    each->low = std::max(each->low - slack.nm(), -no_limit);
    each->high = std::min(each->high + slack.nm(), no_limit);
  }
  return rule;
}

bool Relaxed::holds(const SizeIs& size) const {
  return std::any_of(sizes.begin(), sizes.end(), [&](const SizeIs& each) { return same(each, size); });
}

SizeRule Relaxed::rule(const SizeIs& size) const {
  return size_rule(size, holds(size) ? slack : Length());
}

std::optional<std::int64_t> distance(const SizeRule& rule, const SidesOnRecord& sides) {
  if (!sides.width) return std::nullopt;
  if (!rule.two_figures) return one_figure_distance(rule, sides);
  if (!sides.height) return std::nullopt;
  const auto straight = two_sides(rule, *sides.width, *sides.height);
  if (rule.placed && sides.placed) return straight;
  return lesser(straight, two_sides(rule, *sides.height, *sides.width));
}

std::string difference(const SizeIs& size, const SidesOnRecord& sides) {
  std::string said;
  if (!size.one_figure && size.relation != Relation::between) {
    said = two_figures_difference(size, sides);
  } else {
    const std::int64_t side = deciding_side(size, sides);
    const bool from_high = size.relation == Relation::between && side > size.high.nm();
    const std::int64_t from = from_high ? size.high.nm() : size.low.nm();
    if (side != from) said = away(side - from, size.unit, " larger", " smaller");
  }
  return said.empty() ? "exactly that size" : said;
}

}  // namespace insetbook
