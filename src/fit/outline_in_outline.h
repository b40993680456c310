// SPDX-License-Identifier: GPL-3.0-or-later
//
// The exact check for a panel that is an outline itself: no edge of the panel nearer to an edge of the
// opening than the border and what both may be wrong by, every ring of the panel inside the opening and none
// of the opening inside the panel. Panels that come within a quarter of a nanometre of the edge with no
// border at all are undecided: whether outlines that touch also cross is not gone into.
#pragma once

#include "fit/in_outline.h"

namespace insetbook {

// `panel`: its box from (0, 0); the middle of its box lies at `middle` of the opening. border ≥ 0, ticks.
// `soon`: what is not surely inside is undecided.
Where outline_lies_at(const EdgeTree& opening, const EdgeTree& panel, Middle middle, std::int64_t border,
                      bool soon = false);

// How deep the panel lies in the opening with its middle there (nm): the least depth of its corners in the
// opening, or by how little the opening's corners stay outside it, whichever is less; about the border that
// it keeps there, negative where it does not lie inside. In doubles, of the edges as they are. Goes no
// farther than to a figure below `enough`. `thorough`: else only some corners of the panel are looked at.
double panel_depth(const EdgeTree& opening, const EdgeTree& panel, double x, double y, double enough,
                   bool thorough);

// Whether it is certain that a panel does not lie with its middle within `reach` (nm) of a place where it is
// so deep.
bool lies_nowhere_near(const EdgeTree& opening, const EdgeTree& panel, double depth, double reach,
                       double border);

}  // namespace insetbook
