// SPDX-License-Identifier: GPL-3.0-or-later
//
// What fits inside an opening and what frames a panel. The rules are those of "What fits":
// an opening is closed; a panel fits with border b when each of its points is at least b from the opening's
// edge; touching counts. Circle, rectangle, rounded rectangle and polygon are decided exactly (integers and
// one exact sign function); ovals and drawn outlines between an inner and an outer outline refined as far as
// 1 nm, and what stays undecided counts as not fitting. Panels lie parallel to the die, anywhere in it, and
// are rounded down to the cutting step. A computed panel is a promise: it lies inside, and nothing one step
// larger of that kind does. In a drawn outline larger ones are excluded down to places 2 nm apart; what is
// closer is not taken, and said in the panel's note.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shape/shape.h"

namespace insetbook {

enum class Verdict {
  fits,       // stays inside the line even if the opening is give_or_take smaller (smaller_opening.h)
  snug,       // inside as measured only: "cut one and try"
  too_big,    // not inside as measured
  undecided,  // closer than 1 nm to deciding; counts as not fitting, and is said
};

enum class PanelKind { largest, even_border, proportional, given_side };
std::string_view panel_kind_word(PanelKind kind);  // "largest", "even-border", "proportional", "given-side"
std::string_view verdict_word(Verdict verdict);    // "fits", "snug", ...

struct Opening {
  Shape shape;
  Length give_or_take;  // u: how much smaller (or larger) each figure, the whole width and height, may be
};

struct FitQuestion {
  Length border;                        // b, on each side
  Length step;                          // the cutting step, > 0
  std::vector<ShapeKind> shapes;        // empty: the opening's own, rectangle, square, circle
  std::optional<Length> width, height;  // given side(s): the other is the largest that fits
};

struct Panel {
  PanelKind kind = PanelKind::largest;
  Shape shape;
  Length border;  // the least distance from the panel to the line, at its place
  Verdict verdict = Verdict::fits;
  std::string note;  // "" or why something was left undecided
  // Where its box lies in the opening's, from the left and from the top, to the nanometre below: in the
  // middle where it fits there too, else where it leaves about the most border.
  Length left, top;
  bool centred = true;
};

// Every panel asked for, largest area first within a shape, no panel twice (a panel that is two kinds keeps
// the first). An opening that cannot be computed is a Problem that says "not computed yet" or the figure that
// is missing; so is, where nothing was found, what could not be excluded. Empty when the opening is too small
// for one step.
Result<std::vector<Panel>> panels_inside(const Opening& opening, const FitQuestion& question);

// Whether `panel` fits anywhere in the opening with border `border`: the exact check that panels_inside also
// passes. Problem as above.
Result<Verdict> verdict_of(const Opening& opening, const Shape& panel, Length border);

// How a panel lies in an opening where it leaves the most border, in the middle where that is as much: the
// distance from the panel's box to the line on each side, and the greatest border with which it still fits.
// Alike means within half a cutting step.
struct Framing {
  Length left, right, top, bottom;
  Length greatest_border;   // rounded down to 1 µm or better; in a drawn outline to about 20 µm, of a drawn
                            // panel 0.2 mm
  bool even = false;        // the four distances are alike: also those of a circle in a square
  bool even_strip = false;  // the strip that stays visible is as wide everywhere: never of such two
  bool turned = false;      // fits only, or tighter, with the panel turned by a quarter
  Verdict verdict = Verdict::fits;
};
// Empty when it does not fit with at least `border`. `may_turn`: an unplaced size may be turned by a quarter.
Result<std::optional<Framing>> framing(const Opening& opening, const Shape& panel, Length border, Length step,
                                       bool may_turn);

// The greatest border that a panel keeps in the middle, lying as it is or turned, where panel or opening is
// an outline and the panel keeps `border` there; empty where it does not. Much sooner than framing(), which
// says just that, or more where the panel lies elsewhere when turned the other way.
std::optional<Length> border_in_the_middle(const Opening& opening, const Shape& panel, Length border,
                                           bool may_turn);

// An opening nobody measured, between two measured ones of the same nested set and edge, by size order: width
// and height each on its own. `known[i]` is the size of rank i+1 (largest first), empty where not measured.
// Beyond the measured ones nothing is estimated: the element stays empty. `spread` is the larger of the
// greatest give-or-take and half the greatest departure from an even step (two dies only: half a step).
struct Ranked {
  Length width, height, give_or_take;
};
struct Estimate {
  Length width, height, spread;
};
std::vector<std::optional<Estimate>> estimates(const std::vector<std::optional<Ranked>>& known);

}  // namespace insetbook
