// SPDX-License-Identifier: GPL-3.0-or-later
//
// All panels of one shape whose sides are whole cutting steps, and the one wanted of them. Every answer rests
// on the exact check, in which a panel that fits stays one that fits when a side is made shorter; searches
// only decide which panels are looked at.
#pragma once

#include <optional>

#include "fit/fit.h"
#include "fit/inside.h"
#include "fit/sides.h"

namespace insetbook {

class Family {
 public:
  // `pattern`: a shape of the kind, with the corner radius or number of sides of every panel of the family.
  // `opening` must live as long.
  Family(const Opening& opening, const Ground& ground, Shape pattern, Length border, Length step);

  Shape shape(Sides sides) const;
  Form form(Sides sides) const;
  Where where(Sides sides) const;

  // Empty: not even one step fits.
  std::optional<Sides> largest()
      const;  // by area; ties nearest the opening's proportions, then the upright one
  std::optional<Sides> even_border()
      const;  // what is left and right is what is above and below, within half a step on each side
  std::optional<Sides> proportional() const;  // the opening's proportions, each side rounded down
  std::optional<Sides> given_side(std::optional<Length> width, std::optional<Length> height) const;

  // Whether a panel one step larger was not taken only because the check could not decide.
  bool larger_undecided(Sides sides) const;

 private:
  bool fits(Sides sides) const { return holds(where(sides)); }
  bool one_figure() const { return pattern_.kind == ShapeKind::circle || pattern_.kind == ShapeKind::square; }
  std::optional<Sides> largest_of_one_figure() const;
  std::optional<Sides> largest_of_two_figures(std::int64_t step) const;
  Sides longest(std::int64_t given, bool given_is_width, std::int64_t step, std::int64_t guess) const;
  Sides in_proportion_to_width(std::int64_t width) const;
  Sides in_proportion_to_height(std::int64_t height) const;
  bool better(Sides a, Sides b) const;

  const Opening& opening_;
  const Ground& ground_;
  Shape pattern_;
  std::int64_t border_;                    // ticks
  std::int64_t step_;                      // nm
  std::int64_t most_width_, most_height_;  // nm, of the opening less the border
};

}  // namespace insetbook
