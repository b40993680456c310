// SPDX-License-Identifier: GPL-3.0-or-later
//
// All panels of one shape in an opening that is an outline, and the one wanted of them: what family.h is for
// plain shapes. A rectangle, square and circle are whole figures; every other shape is an outline of its own,
// scaled to its box: the opening's own, an oval.
#pragma once

#include <utility>

#include "fit/fit.h"
#include "fit/free_outline.h"
#include "fit/outline_ground.h"

namespace insetbook {

// Of panels that are no outline of their own.
bool is_whole_figure(ShapeKind kind);

class OutlineFamily {
 public:
  // `drawn`: the outline of every panel of the family, to be scaled; empty for rectangle, square and circle.
  // With a `pattern`, the panels are drawn from its figures instead, each in its size: an arch stays round.
  OutlineFamily(const OutlineGround& ground, ShapeKind kind, std::optional<CurvedOutline> drawn,
                Length border, Length step, std::optional<Shape> pattern = std::nullopt);

  FoundPlace largest() const;  // rectangles: by area; else the opening's proportions
  FoundPlace proportional() const;
  FoundPlace even_border() const;
  FoundPlace given_side(std::optional<Length> width, std::optional<Length> height) const;

  // The same panel where it is to be shown: in the middle where it keeps the border there, else where it
  // leaves the most on its tightest side, as far as two steps more, to about a sixteenth of a step.
  struct Shown {
    Middle middle;
    Length border;
    bool centred = false;
  };
  Shown shown(const Placed& placed) const;
  // The same panel where it leaves the most border of all places, to about 20 µm (an outline to 0.2 mm); in
  // the middle where that is as much.
  Shown widest(const Placed& placed) const;

  // A panel in the middle, where it keeps the border there.
  std::optional<Placed> in_the_middle(Sides sides) const;
  // There, else where it is found to keep the border. Empty: it does not, or that is not known.
  std::optional<Placed> somewhere(Sides sides) const;

  // Whether the panel lies somewhere in this or another opening with a border.
  bool lies_in(const OutlineGround& other, Sides sides, Length border) const;

 private:
  FoundPlace last(const OutlineGround& ground, Length border, const Chain& chain) const;
  class Check;
  EdgeTree panel_edges(Sides sides) const;  // empty where it cannot be drawn
  Length border_at(const Placed& placed) const;
  std::pair<Placed, std::int64_t> deepest(const Placed& placed) const;
  std::pair<Placed, std::int64_t> widest_plain(const Placed& placed, std::int64_t most) const;
  Placed amid(Placed placed, std::int64_t border) const;
  Placed aligned(const Placed& placed, std::int64_t border) const;
  Chain by_width() const;
  Chain by_height() const;

  const OutlineGround& ground_;
  ShapeKind kind_;
  std::optional<CurvedOutline> drawn_;
  std::optional<Shape> pattern_;
  Length border_;
  std::int64_t step_;
};

}  // namespace insetbook
