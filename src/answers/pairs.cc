// SPDX-License-Identifier: GPL-3.0-or-later
#include "answers/pairs.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/opening_said.h"
#include "answers/options.h"
#include "answers/thing_said.h"
#include "book/names.h"
#include "book/settings.h"
#include "shape/shape_outline.h"

namespace insetbook {
namespace {

// A line with its outline.
struct Cut {
  OpeningRecord record;
  Shape shape;
};

Length least_seen(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 64) : Length::nm(500'000);
}

Length widest_difference(Unit unit) {
  return unit == Unit::inch ? Length::inch_fraction(1, 4) : Length::mm(6);
}

// The strip between two, or empty where one does not lie in the other or they are of different shapes.
std::optional<DiePair> strip_between(const Cut& outer, const Cut& inner, Length step) {
  const Result<std::optional<Framing>> framed =
      framing({outer.shape, outer.record.give_or_take}, inner.shape, Length(), step, true);
  if (!framed || !*framed) return std::nullopt;
  const Framing& found = **framed;
  DiePair pair{.outer = outer.record,
               .inner = inner.record,
               .least = found.greatest_border,
               .greatest = std::max({found.left, found.right, found.top, found.bottom}),
               .even = found.even_strip,
               .turned = found.turned,
               .give_or_take = (outer.record.give_or_take + inner.record.give_or_take) / 2};
  if (pair.even) pair.greatest = pair.least;
  if (!pair.even && outer.shape.kind != inner.shape.kind) return std::nullopt;
  return pair;
}

class Pairing {
 public:
  Pairing(Unit unit, Length step, std::optional<Length> border) : unit_(unit), step_(step), border_(border) {}

  void add(const Cut& outer, const Cut& inner, std::vector<DiePair>& pairs) const {
    if (!may_be(outer, inner) || !may_be_even(outer.shape, inner.shape)) return;
    std::optional<DiePair> pair = strip_between(outer, inner, step_);
    if (pair && wanted(*pair)) pairs.push_back(std::move(*pair));
  }

  void sort(std::vector<DiePair>& pairs) const {
    std::stable_sort(pairs.begin(), pairs.end(), [&](const DiePair& a, const DiePair& b) {
      if (a.even != b.even) return a.even;
      if (border_ && off(a) != off(b)) return off(a) < off(b);
      return a.least < b.least;
    });
  }

 private:
  // A drawn outline leaves an even strip round one of its own kind only, and takes a while to find out.
  static bool may_be_even(const Shape& outer, const Shape& inner) {
    return outer.kind == inner.kind || std::max(outer.kind, inner.kind) <= ShapeKind::polygon;
  }
  // By the boxes alone, which is quick: the strip lies between these two differences.
  bool may_be(const Cut& outer, const Cut& inner) const {
    const auto [across, along] = std::minmax(outer.shape.width, outer.shape.height);
    const auto [inner_across, inner_along] = std::minmax(inner.shape.width, inner.shape.height);
    const Length least = std::min(across - inner_across, along - inner_along) / 2;
    if (least < Length()) return false;
    return !border_ || least + step_ / 2 >= *border_ - step_;
  }
  bool wanted(const DiePair& pair) const {
    if (!pair.even && pair.greatest - pair.least > widest_difference(unit_)) return false;
    if (!border_) return pair.least >= least_seen(unit_);
    return off(pair) * 2 <= step_;
  }
  // How far the strip is from the border asked, where it is farthest from it.
  Length off(const DiePair& pair) const {
    const auto away = [&](Length width) { return width < *border_ ? *border_ - width : width - *border_; };
    return std::max(away(pair.least), away(pair.greatest));
  }

  Unit unit_;
  Length step_;
  std::optional<Length> border_;
};

// The cut edge of every die that has one, and how many could not be taken.
std::vector<Cut> cut_edges(const Book& book, int& not_computed) {
  std::vector<Cut> cuts;
  for (OpeningRecord& record : measured_openings(book, std::nullopt)) {
    if (record.line_kind != "cut") continue;
    const Result<Shape> shape = shape_of(record);
    if (shape && has_outline(*shape))
      cuts.push_back({std::move(record), *shape});
    else
      ++not_computed;
  }
  return cuts;
}

Problem not_computed_yet(const OpeningRecord& opening, const Shape& shape) {
  Problem problem;
  problem.kind = ProblemKind::refused;
  problem.what =
      fmt::format("{} is not computed yet: the shape \"{}\"", describe(opening), opening.shape_word);
  problem.expected =
      missing_figure(shape).empty() ? "a shape that has figures, or path data" : missing_figure(shape);
  return problem;
}

Problem no_border_said() {
  Problem problem;
  problem.what = "neither a die nor the width of the frame is said";
  problem.expected =
      "a die, as in \"pairs tidepool rectangles 2\", or a width: \"which two dies make a frame "
      "1/4 in wide\"";
  return problem;
}

// Whether what is left beside the box is as wide as the strip. Not so where corners stick out: a hexagon's
// box grows by more than its sides move.
bool strip_is_beside_box(const Shape& shape) {
  return shape.kind < ShapeKind::polygon;
}

// Every two whose boxes differ by twice the border at least, and where their shapes allow, not by more.
void add_any(const Pairing& pairing, std::vector<Cut> cuts, Length border, Length step, PairsAnswer& answer) {
  const auto wider = [](const Cut& cut) { return std::max(cut.shape.width, cut.shape.height); };
  std::sort(cuts.begin(), cuts.end(), [&](const Cut& a, const Cut& b) { return wider(a) < wider(b); });
  for (const Cut& inner : cuts) {
    // The longer sides differ by twice the strip, in whichever way the inner one is turned; by up to four
    // times it where corners stick out (of a triangle it is 3.5).
    const Length from = wider(inner) + border * 2 - step * 2, to = wider(inner) + border * 2 + step * 2;
    const Length farthest = wider(inner) + border * 4 + step * 2;
    auto outer = std::lower_bound(cuts.begin(), cuts.end(), from,
                                  [&](const Cut& cut, Length least) { return wider(cut) < least; });
    for (; outer != cuts.end(); ++outer) {
      if (wider(*outer) > farthest) break;
      if (wider(*outer) > to && strip_is_beside_box(outer->shape) && strip_is_beside_box(inner.shape))
        continue;
      if (outer->record.die_id != inner.record.die_id) pairing.add(*outer, inner, answer.any);
    }
  }
}

}  // namespace

Result<PairsAnswer> pairs_of(const Book& book, const PairsAsked& asked) {
  const Settings set = settings(book);
  PairsAnswer answer;
  answer.unit = set.unit;
  std::optional<Cut> into, round;
  if (!asked.opening.empty()) {
    const Result<OpeningSaid> said = opening_or_size_said(book, asked.opening);
    if (!said) return failure(said.error());
    const Result<Shape> shape = shape_of(said->opening);
    if (!shape) return failure(shape.error());
    if (!has_outline(*shape)) return failure(not_computed_yet(said->opening, *shape));
    answer.opening = said->opening;
    answer.note = said->note;
    answer.unit = said->opening.unit;
    into = round = Cut{said->opening, *shape};
  } else if (!asked.border) {
    return failure(no_border_said());
  }
  if (asked.border) {
    const Result<Length> border = length_option("border", *asked.border, answer.unit, false);
    if (!border) return failure(border.error());
    answer.border = *border;
  }
  std::vector<Cut> cuts = cut_edges(book, answer.not_computed);
  const Pairing pairing(answer.unit, set.cutting_step, answer.border);
  if (into && opening_wanted(asked.opening).line.empty())
    for (const Cut& cut : cuts)
      if (cut.record.die_id == into->record.die_id) round = cut;
  if (asked.in_set) {
    const Result<NameHit> named = find_name(book, *asked.in_set, RecordKind::set);
    if (!named) return failure(named.error());
    std::erase_if(cuts, [&](const Cut& cut) { return cut.record.set_id != named->id; });
  }
  if (!into) {
    add_any(pairing, cuts, *answer.border, set.cutting_step, answer);
    pairing.sort(answer.any);
    return answer;
  }
  if (round->record.line_id != into->record.line_id) answer.cut_edge = round->record;
  for (const Cut& cut : cuts) {
    if (cut.record.die_id == into->record.die_id) continue;
    pairing.add(cut, *round, answer.around);
    pairing.add(*into, cut, answer.in);
  }
  pairing.sort(answer.around);
  pairing.sort(answer.in);
  return answer;
}

}  // namespace insetbook
